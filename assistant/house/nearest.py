"""The name that was probably meant."""

from __future__ import annotations

import difflib
from collections.abc import Collection

MOST_COMPARED = 400
"""Beyond this many names only those one slip of the key away are found: comparing all would take too long."""
LONGEST = 60


def nearest(word: str, names: Collection[str]) -> str | None:
    """The one of `names` that is most like `word`, or None when none is near."""
    if not word or len(word) > LONGEST:
        return None
    plain = word.strip().lower().replace(" ", "_").replace("-", "_")
    if plain in names:
        return plain
    if len(names) > MOST_COMPARED:
        return next((other for other in _one_slip_away(plain) if other in names), None)
    by_case = {name.lower(): name for name in names if len(name) <= LONGEST}
    found = difflib.get_close_matches(plain, list(by_case), 1, 0.6)
    return by_case[found[0]] if found else None


def suggestion(word: str, names: Collection[str]) -> str:
    """ "; did you mean 'x'?", the names themselves where there are few, or nothing."""
    near = nearest(word, names)
    if near is not None:
        return f"; did you mean '{near}'?"
    if 0 < len(names) <= 6:
        return "; there is " + ", ".join(f"'{name}'" for name in names)
    return ""


_LETTERS = "abcdefghijklmnopqrstuvwxyz0123456789_."


def _one_slip_away(word: str):
    """Every word with one letter less, two exchanged, one other or one more."""
    for i in range(len(word)):
        yield word[:i] + word[i + 1 :]
        yield word[:i] + word[i + 1 : i + 2] + word[i] + word[i + 2 :]
    for i in range(len(word) + 1):
        for letter in _LETTERS:
            yield word[:i] + letter + word[i + 1 :]
            yield word[:i] + letter + word[i:]
