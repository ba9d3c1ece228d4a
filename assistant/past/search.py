"""Finding visits by name, address, part, finding, reading or note, all visits at once."""

from __future__ import annotations

import re
from pathlib import Path

from assistant.past.page import SECTIONS
from assistant.past.store import COLUMNS, Store
from assistant.trail.shelf import Shelved

MOST = 200
"""Visits shown at once; a word more makes the list shorter."""


def latest(store: Store, shelf: Path, most: int = MOST) -> list[Shelved]:
    """The visits that were worked on last."""
    rows = store.base.execute(
        f"select {COLUMNS} from visit join (select id, last as when_last from worked order by last desc"
        " limit ?) using (id) order by when_last desc, folder desc",
        (most,),
    )
    return store.listed(shelf, rows)


def count(store: Store) -> int:
    """How many visits there are."""
    return store.base.execute("select count(*) from worked").fetchone()[0]


def search(store: Store, shelf: Path, typed: str, most: int = MOST) -> list[Shelved]:
    """Visits that hold every word, or one that begins with it, anywhere; the latest first.

    `part:igniter` looks only among the parts; the same with name, complaint, finding, reading and note.
    Any text can be typed: signs mean nothing.
    """
    query = expression(typed)
    if not query:
        return latest(store, shelf, most)
    rows = store.base.execute(
        f"select {COLUMNS} from visit join (select id, worked.last as when_last from words"
        " join worked on worked.id = words.rowid where words match ? order by worked.last desc limit ?)"
        " using (id) order by when_last desc, folder desc",
        (query, most),
    )
    return store.listed(shelf, rows)


def expression(typed: str) -> str:
    """What was typed as a full-text query: each word in quotes and with a star, so that no sign has a
    meaning of its own.
    """
    asked = []
    for chunk in typed.split():
        section, colon, rest = chunk.partition(":")
        own = bool(colon) and section.casefold() in SECTIONS
        words = re.findall(r"\w+", rest if own else chunk)
        prefix = f"{section.casefold()} : " if own else ""
        asked += [f'{prefix}"{word}" *' for word in words if word.strip("_")]
    return " AND ".join(asked)
