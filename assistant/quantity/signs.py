"""The many ways a keyboard, a phone or a pasted page writes the same sign, made one.

Both micro signs become u, both ohm signs "ohm", every dash a minus, every kind of space a space, a one-piece
fraction 1/2, inch and foot marks straight. Digits of other scripts are refused instead of guessed at.
"""

from __future__ import annotations

import re

from assistant.quantity.meaning import refuse

# Longer than any reading; what is longer was pasted or typed by accident.
LONGEST = 80

_SAME = str.maketrans({
    "\u00b5": "u", "\u03bc": "u", "\u2126": "ohm", "\u03a9": "ohm",
    "\u00b0": "deg", "\u00ba": "deg", "\u02da": "deg", "\u2103": "degC", "\u2109": "degF",
    **dict.fromkeys("\u2010\u2011\u2012\u2013\u2014\u2015\u2212\ufe63\uff0d", "-"),
    **dict.fromkeys("\u00a0\u2002\u2003\u2007\u2008\u2009\u200a\u202f\u3000\t\r\n", " "),
    **dict.fromkeys("\u200b\u200e\u200f\u2060\ufeff", ""),
    **dict.fromkeys("\u2033\u201c\u201d\u201e\u201f", '"'), **dict.fromkeys("\u2032\u2018\u2019", "'"),
    "\u2044": "/", "\u2215": "/", "\uff05": "%",
    "\u00bd": " 1/2", "\u2153": " 1/3", "\u2154": " 2/3", "\u00bc": " 1/4", "\u00be": " 3/4",
    "\u215b": " 1/8", "\u215c": " 3/8", "\u215d": " 5/8", "\u215e": " 7/8",
})
_SUPERSCRIPT = re.compile("(?<=[A-Za-z])[\u00b2\u00b3]")


def plain(text: str) -> str:
    """The text in plain signs with single spaces; "" when nothing is left. Raises UnclearError."""
    if not text or text.isspace():
        return ""
    if len(text) > 4 * LONGEST:
        raise refuse(_too_long(text))
    same = _SUPERSCRIPT.sub(lambda found: "2" if found[0] == "\u00b2" else "3", text).translate(_SAME)
    same = " ".join(same.replace("''", '"').split())
    if len(same) > LONGEST:
        raise refuse(_too_long(text))
    if any(c.isnumeric() and not "0" <= c <= "9" for c in same):
        raise refuse("Write the number with the digits 0 to 9.")
    return same


def _too_long(text: str) -> str:
    return f"That is {len(text)} characters; a reading has at most {LONGEST}. Write number and unit only."
