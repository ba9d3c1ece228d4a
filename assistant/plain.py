"""Texts that people typed, made harmless for a page and for a spreadsheet."""

from __future__ import annotations

import re

_CONTROL = re.compile("[\x00-\x1f\x7f-\x9f\u2028\u2029]+")
_DIRECTION = re.compile("[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]")
_HALF = re.compile("[\ud800-\udfff\ufffe\uffff]")
_FORMULA = re.compile(r"[=+\-@|%]")
_NUMBER = re.compile(r"[+-]?\d[\d.,]*(\s?[\w\u00b5\u03a9\u00b0%./ ]{1,12})?")


def one_line(text: str) -> str:
    """The text on one line, control characters as spaces, marks of direction left out, half characters as
    \\ufffd.

    A mark of direction could make a later number read backwards; letters that run right to left need none.
    """
    return _HALF.sub("\ufffd", _DIRECTION.sub("", _CONTROL.sub(" ", text))).strip()


def harmless(text: str) -> str:
    """The text on one line for a cell, an apostrophe in front where a spreadsheet would work it out: what
    a customer is called must not run as a command on the office's computer. A number with a sign stays one.
    """
    line = one_line(text)
    if _FORMULA.match(line) and not _NUMBER.fullmatch(line):
        return f"'{line}"
    return line
