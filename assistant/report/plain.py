"""Texts that people typed, made harmless for a page: no control character, no mark that turns the line
round."""

from __future__ import annotations

import re

_CONTROL = re.compile("[\x00-\x1f\x7f-\x9f\u2028\u2029]+")
_DIRECTION = re.compile("[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]")
_HALF = re.compile("[\ud800-\udfff\ufffe\uffff]")


def one_line(text: str) -> str:
    """The text on one line, control characters as spaces, marks of direction left out, half characters as
    \\ufffd.

    A mark of direction could make a later number read backwards; letters that run right to left need none.
    """
    return _HALF.sub("\ufffd", _DIRECTION.sub("", _CONTROL.sub(" ", text))).strip()
