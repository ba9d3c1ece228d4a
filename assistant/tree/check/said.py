"""Whether a text says what the house says of a thing: some word of each of its choices."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from assistant.tree.model import Reading, Step


def unsaid(text: str, words: Iterable[str]) -> list[str]:
    """Those of `words` that a text does not have. Each is a word, words in a row, or a choice of them as in
    "hot|black". Capitals alone (W, OFF) stand for what is printed there and are looked for as written; of
    other words the beginning is enough."""
    return [word for word in words if not _pattern(word).search(text)]


def text_of(step: Step, reading: Reading | None = None) -> str:
    """All that a page says about what is done on it."""
    own = [] if reading is None else [reading.ask]
    return " . ".join([*own, getattr(step, "ask", ""), *step.common.how])


def one_of(word: str) -> str:
    """A choice as it is read aloud: "hot or black"."""
    return " or ".join(f"'{one}'" for one in word.split("|"))


@lru_cache(maxsize=4096)
def _pattern(word: str) -> re.Pattern[str]:
    choices = (rf"{re.escape(one)}(?!\w)" if one.isupper() else f"(?i:{re.escape(one)})"
               for one in word.split("|"))
    return re.compile(rf"(?<!\w)(?:{'|'.join(choices)})")
