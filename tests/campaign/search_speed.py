"""Searching, counting and opening at 100, 5,000 and 50,000 visits, beside a bare query of the same rows:
python tests/campaign/search_speed.py [SIZE...].

The visits are walks of the tests, recorded once; each row of the index then gets a name and an address of its
own. Folders are made for all of them, so that the look at the disk is the real one.
"""

import os
import shutil
import sqlite3
import statistics
import sys
import tempfile
import time
from dataclasses import replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parents[1] / "past"))

from shelved import WALKS, put

from assistant.past.calls import findings, step_costs
from assistant.past.extract import Extractor
from assistant.past.page import SECTIONS
from assistant.past.refresh import refresh, signature_of
from assistant.past.search import expression, search
from assistant.past.store import open_store
from assistant.trail.earlier import place
from assistant.trail.live import LiveVisit

SIZES = (100, 5_000, 50_000)
WORDS = ("igniter", "name:4711", "sample 12 fuse", "finding:capacitor", "reading:26.2", "no such word here")
AGAIN = 7


def timed(work, again=AGAIN):
    """Median seconds."""
    spent = []
    for _ in range(again):
        begun = time.perf_counter()
        work()
        spent.append(time.perf_counter() - begun)
    return statistics.median(spent)


def main():
    root = Path(tempfile.mkdtemp(prefix="search-speed-"))
    try:
        base = root / "base"
        walks = [f"{file.parent.name}/{file.stem}" for file in sorted(WALKS.glob("*/*.yaml"))[::8]]
        for number, walk in enumerate(walks):
            put(base, f"{number:02d}", walk, number, person={"name": "X", "address": "Y"})
        extractor = Extractor()
        folders = sorted(base.iterdir())
        begun = time.perf_counter()
        pages = [extractor.page(folder, "") for folder in folders]
        each = (time.perf_counter() - begun) / len(pages)
        print(f"{len(pages)} visits of the tests read and followed: {each * 1000:.1f} ms each")
        begun = time.perf_counter()
        live = LiveVisit.take_up(folders[0])
        print(f"one visit opened: {(time.perf_counter() - begun) * 1000:.0f} ms")
        live.close()
        for size in map(int, sys.argv[1:]) if sys.argv[1:] else SIZES:
            measure(root, pages, folders, size)
    finally:
        shutil.rmtree(root)


def measure(root, pages, folders, size):
    shelf = root / f"shelf-{size}"
    shelf.mkdir()
    store = open_store(root / f"{size}.sqlite")
    bare = sqlite3.connect(root / f"bare-{size}.sqlite")
    bare.execute(f"create virtual table words using fts5 ({', '.join(SECTIONS)}, prefix = '2 3')")
    begun = time.perf_counter()
    for number in range(size):
        page, source = pages[number % len(pages)], folders[number % len(pages)]
        folder = shelf / f"2026-{number:06d}"
        (folder / "kept").mkdir(parents=True)
        for trail in source.glob("trail-*"):
            os.link(trail, folder / trail.name)
        name = f"Customer {number} {number % 97} Sample Street {number % 1013}"
        words = {**page.words, "name": name}
        store.put(
            replace(
                page,
                shelved=replace(page.shelved, folder=folder),
                signature=signature_of(folder),
                place=place(f"{number % 97} Sample Street {number % 1013}"),
                words=words,
            )
        )
        bare.execute(
            f"insert into words values (?{', ?' * (len(SECTIONS) - 1)})",
            [words.get(section, "") for section in SECTIONS],
        )
    store.commit()
    bare.commit()
    made = time.perf_counter() - begun
    load = f", load {os.getloadavg()[0]:.1f}" if hasattr(os, "getloadavg") else ""
    print(f"\n{size:,} visits (rows and folders made in {made:.0f} s{load})")
    again = timed(lambda: list(refresh(store, shelf)), 3)
    print(f"  the disk looked over, nothing changed: {again * 1000:.0f} ms")
    for typed in WORDS:
        query = expression(typed)
        ours = timed(lambda typed=typed: search(store, shelf, typed))
        raw = timed(
            lambda query=query: bare.execute(
                "select rowid from words where words match ? order by rowid desc limit 200", (query,)
            ).fetchall()
        )
        print(f"  {typed!r}: {ours * 1000:.1f} ms, bare query {raw * 1000:.1f} ms, ratio {ours / raw:.1f}")
    print(f"  the latest, as the list opens: {timed(lambda: search(store, shelf, '')) * 1000:.1f} ms")
    print(
        f"  findings counted: {timed(lambda: findings(store, '2027-01-01T00:00:00+00:00'), 3) * 1000:.0f} ms"
    )
    print(f"  dear steps counted: {timed(lambda: step_costs(store), 3) * 1000:.0f} ms")
    store.base.execute("update visit set place = 'onesampleplace'")
    one = timed(lambda: findings(store, "2027-01-01T00:00:00+00:00"), 3)
    print(f"  findings counted, all of them at one address: {one * 1000:.0f} ms")
    store.base.rollback()
    store.close()
    bare.close()
    shutil.rmtree(shelf)


if __name__ == "__main__":
    main()
