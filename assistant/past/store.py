"""The index on disk: one sqlite file of this computer, beside no visit, which may be deleted at any time.

It is never synced with the visits: each computer has its own, in the user's cache folder. One that is damaged
or of another version is made anew; where it can't be written at all it is kept in memory.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import sqlite3
from collections.abc import Iterable, Iterator
from pathlib import Path

from assistant.folders import cache_folder
from assistant.past.page import SECTIONS, Page
from assistant.trail.clock import sortable
from assistant.trail.shelf import Shelved

VERSION = 4
TABLES = f"""
create table visit (
    id integer primary key, folder text unique not null, signature text not null, practice integer not null,
    state text not null, place text not null, began text not null, last text not null, step text not null,
    paused text not null, trouble text not null, complaints text not null, person text not null
);
create table worked (id integer primary key, last text not null);
create index worked_last on worked (last desc);
create index visit_place on visit (place);
create virtual table words using fts5 (
    {", ".join(SECTIONS)}, tokenize = "unicode61 remove_diacritics 2", prefix = '2 3'
);
create table found (
    visit integer not null, complaint text, step text, title text, fault integer, part text, proof text,
    at text
);
create index found_visit on found (visit);
create table taken (
    visit integer not null, complaint text, step text, verb text, way text, minutes real
);
create index taken_visit on taken (visit);
create index taken_step on taken (step);
create table reading (
    visit integer not null, kind text, points text, text text, verdict text, step text, at text
);
create index reading_visit on reading (visit);
create table fitted (visit integer not null, part text, at text);
create index fitted_visit on fitted (visit);
pragma user_version = {VERSION};
"""
BESIDE = ("found", "taken", "reading", "fitted")
"""What is known of a visit besides its line in the list. `worked`: when each visit that is no practice was
last worked on, in UTC; a table of its own, so that many can be put in order quickly."""


def index_file(shelf: Path) -> Path:
    """Where the index of this shelf lies on this computer; it need not exist yet."""
    name = hashlib.sha256(str(Path(shelf).absolute()).encode("utf-8", "surrogateescape")).hexdigest()[:16]
    return cache_folder() / f"visits-{name}.sqlite"


class Store:
    """Made by `open_store`. Writes are kept by `commit` only."""

    def __init__(self, base: sqlite3.Connection, in_memory: bool) -> None:
        self.base, self.in_memory = base, in_memory

    def signatures(self) -> dict[str, str]:
        """Folder name -> what it looked like when it was read."""
        return dict(self.base.execute("select folder, signature from visit"))

    def put(self, page: Page) -> None:
        """This visit instead of what was known of it."""
        shelved = page.shelved
        self.remove([shelved.folder.name])
        row = (
            shelved.folder.name,
            page.signature,
            page.practice,
            shelved.state,
            page.place,
            shelved.began,
            shelved.last,
            shelved.step,
            shelved.why_paused,
            shelved.trouble,
            json.dumps(shelved.complaints),
            json.dumps(shelved.person),
        )
        number = self.base.execute(
            f"insert into visit values (null{', ?' * len(row)})", tuple(_storable(value) for value in row)
        ).lastrowid
        marks = ", ?" * len(SECTIONS)
        self.base.execute(
            f"insert into words (rowid, {', '.join(SECTIONS)}) values (?{marks})",
            (number, *(_storable(page.words.get(section, "")) for section in SECTIONS)),
        )
        if not page.practice:
            self.base.execute("insert into worked values (?, ?)", (number, sortable(shelved.last)))
        if page.practice:
            return  # listed as practice where somebody looks into its folder, and counted nowhere
        for table, rows in (
            ("found", [tuple(vars(row).values()) for row in page.found]),
            ("taken", [tuple(vars(row).values()) for row in page.steps]),
            ("reading", [tuple(vars(row).values()) for row in page.readings]),
            ("fitted", list(page.fitted)),
        ):
            if rows:
                self.base.executemany(
                    f"insert into {table} values (?{', ?' * len(rows[0])})",
                    [(number, *(_storable(value) for value in row)) for row in rows],
                )

    def remove(self, folders: Iterable[str]) -> None:
        """Forget visits that are no longer there."""
        for folder in folders:
            known = self.base.execute(
                "select id from visit where folder = ?", (_storable(folder),)
            ).fetchone()
            if known:
                for table in BESIDE:
                    self.base.execute(f"delete from {table} where visit = ?", known)
                self.base.execute("delete from words where rowid = ?", known)
                self.base.execute("delete from worked where id = ?", known)
                self.base.execute("delete from visit where id = ?", known)

    def commit(self) -> None:
        """Keep what was written. The index is derived: a disk that is full loses nothing but time."""
        try:
            self.base.commit()
        except sqlite3.OperationalError:
            with contextlib.suppress(sqlite3.Error):
                self.base.rollback()

    def listed(self, shelf: Path, rows: Iterable[tuple]) -> list[Shelved]:
        """Rows of `COLUMNS` as the list of visits shows them."""
        return [_shelved(Path(shelf), row) for row in rows]

    def close(self) -> None:
        """Let go of the file."""
        self.base.close()

    def __del__(self) -> None:
        self.base.close()  # a window that is dropped closes nothing by itself


COLUMNS = (
    "visit.folder, visit.state, visit.complaints, visit.person, visit.began, visit.last, visit.step,"
    " visit.paused, visit.trouble"
)


def open_store(path: Path) -> Store:
    """The index in this file, made where there is none; in memory where the file can't be used. Never
    raises for what the disk does.
    """
    for _ in range(2):
        with contextlib.suppress(OSError, sqlite3.Error):
            path.parent.mkdir(parents=True, exist_ok=True)
            return Store(_opened(str(path)), False)
        with contextlib.suppress(OSError):
            path.unlink()  # damaged: it is made anew
    return Store(_opened(":memory:"), True)


def _opened(name: str) -> sqlite3.Connection:
    base = sqlite3.connect(name, timeout=2.0, check_same_thread=False)
    try:
        base.execute("pragma journal_mode = wal")
        base.execute("pragma synchronous = off")
        found = base.execute("pragma user_version").fetchone()[0]
        tables = {row[0] for row in base.execute("select name from sqlite_master where type = 'table'")}
        if tables and (found != VERSION or not {"visit", "words", "worked", *BESIDE} <= tables):
            raise sqlite3.DatabaseError("the index of another version")
        if not tables:
            base.executescript(TABLES)
        base.execute("select count(*) from words").fetchone()
    except sqlite3.Error:
        base.close()
        raise
    return base


def _storable(value: object) -> object:
    """Half a surrogate pair, as a file name of another system may hold, is no text for sqlite."""
    return value.encode("utf-8", "replace").decode("utf-8") if isinstance(value, str) else value


def _shelved(shelf: Path, row: tuple) -> Shelved:
    folder, state, complaints, person, began, last, step, paused, trouble = row
    return Shelved(
        shelf / folder,
        state,
        tuple(_pairs(complaints)),
        tuple(_pairs(person)),
        began,
        last,
        step,
        paused,
        trouble,
    )


def _pairs(text: str) -> Iterator[tuple[str, str]]:
    yield from ((name, value) for name, value in json.loads(text))
