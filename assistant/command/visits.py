"""Our own visits: find them, count what they say, try changed trees on them, erase a customer.

    visits find WORDS...             those with all the words; part:igniter looks among the parts only
    visits counts [--to FOLDER]      findings and how often they held, dear steps, idle readings
    visits again TREES               every visit walked again on these trees: what would end differently
    visits erase VISIT... --by NAME  name, address, photos and reports go; the trails stay whole

Practice is never among them. Exit code 0: done; 1: `again` found a visit that would end differently; 2: it
could not run or not finish.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from assistant.errors import UserError
from assistant.past.again import Again, walked_again
from assistant.past.calls import as_csv, findings, never_changed, step_costs
from assistant.past.refresh import refresh
from assistant.past.search import count, search
from assistant.past.store import Store, index_file, open_store
from assistant.trail.clock import now
from assistant.trail.shelf import shelf_folder

SHOWN = 10


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """A word of its own for each of the four, and the shelf they all ask."""
    parser.add_argument(
        "--shelf", metavar="FOLDER", type=Path, help="where the visits lie; the user's own if not said"
    )
    words = parser.add_subparsers(dest="word", required=True, metavar="find|counts|again|erase")
    find = words.add_parser("find", help="find visits")
    find.add_argument("words", nargs="*")
    counts = words.add_parser("counts", help="count what the visits say")
    counts.add_argument(
        "--to", metavar="FOLDER", type=Path, help="write the three tables as CSV files as well"
    )
    again = words.add_parser("again", help="walk the visits again on changed trees")
    again.add_argument("trees", metavar="TREES", type=Path, help="a folder with a house.yaml")
    erase = words.add_parser("erase", help="erase a customer")
    erase.add_argument("visits", nargs="+", metavar="VISIT", type=Path)
    erase.add_argument(
        "--by", required=True, metavar="NAME", help="who erases; it is written beside the trail"
    )
    erase.add_argument("--keep-photos", action="store_true", help="photos show no customer and stay")


def run(arguments: argparse.Namespace) -> int:
    """One of the four words."""
    shelf = arguments.shelf or shelf_folder()
    if arguments.word == "erase":
        return _erase(arguments)
    if not shelf.is_dir():
        raise UserError(f"There is no folder of visits at {shelf}. Name another one with --shelf.")
    if arguments.word == "again":
        return _again(shelf, arguments.trees)
    store = _ready(shelf)
    try:
        return (
            _find(store, shelf, arguments.words) if arguments.word == "find" else _counts(store, arguments.to)
        )
    finally:
        store.close()


def _ready(shelf: Path) -> Store:
    store = open_store(index_file(shelf))
    for done, to_do in refresh(store, shelf):
        if sys.stderr.isatty() and to_do > SHOWN:
            print(
                f"\rreading visits: {done} of {to_do}",
                end="\n" * (done == to_do),
                file=sys.stderr,
                flush=True,
            )
    return store


def _find(store: Store, shelf: Path, words: list[str]) -> int:
    for shelved in search(store, shelf, " ".join(words)):
        person = dict(shelved.person)
        who = ", ".join(part for part in (person.get("name", ""), person.get("address", "")) if part)
        said = "; ".join(words or name for name, words in shelved.complaints)
        print(" | ".join((shelved.began[:10], shelved.folder.name, who, said, shelved.state)))
    return 0


def _counts(store: Store, to: Path | None) -> int:
    print(f"{count(store)} visits of our own.")
    tables = {
        "findings": findings(store, now()),
        "step-costs": step_costs(store),
        "never-changed": never_changed(store),
    }
    print("\nFindings (visits; held 60 days/came back/too early to say/no address):")
    for row in tables["findings"][:SHOWN]:
        held = f"{row.held}/{row.came_back}/{row.too_early}/{row.unknown}"
        print(f"  {row.visits:4d}  {row.complaint}: {row.title} ({held})")
    print("\nSteps that cost most (minutes in all, times, minutes each):")
    for row in tables["step-costs"][:SHOWN]:
        print(f"  {row.total_minutes:7.0f}  {row.times:4d}  {row.mean_minutes:5.1f}  {row.step}")
    print("\nTaken often and never changed anything (times, always led to, minutes in all):")
    for row in tables["never-changed"][:SHOWN]:
        print(f"  {row.times:4d}  {row.step} -> {row.way}  {row.minutes:.0f}")
    if to is not None:
        try:
            to.mkdir(parents=True, exist_ok=True)
            for name, rows in tables.items():
                (to / f"{name}.csv").write_text(as_csv(rows), encoding="utf-8", newline="")
        except OSError as problem:
            raise UserError(
                f"The tables can't be written to {to} ({problem.strerror}). Name another folder."
            ) from problem
        print(f"\nThe tables are in {to}.")
    return 0


def _again(shelf: Path, trees: Path) -> int:
    from assistant.tree.check import check
    from assistant.tree.library import read_folder

    library = read_folder(trees)
    problems = check(library)
    if problems:
        raise UserError(f"{problems[0]}\nThese trees have {len(problems)} problems; mend them first.")
    walked = differ = unread = 0
    for result in walked_again(sorted(path for path in shelf.iterdir() if path.is_dir()), library):
        if not isinstance(result, Again):
            print(f"{result[0].name}: {result[1]}", file=sys.stderr)
            continue
        walked += 1
        if result.differs:
            differ += 1
            print(f"{result.folder.name}: then {'; '.join(result.then)}; now {'; '.join(result.now)}")
        if result.unread:
            unread += 1
            print(f"{result.folder.name}: now asks what was not read: {result.unread}")
    print(
        f"{walked} visits walked again: {differ} would end differently, {unread} would ask what was not read."
    )
    return 1 if differ else 0


def _erase(arguments: argparse.Namespace) -> int:
    from assistant.past.erase import erase_customer
    from assistant.trail.erased import in_words

    for folder in arguments.visits:
        result = erase_customer(folder, now(), arguments.by, photos=not arguments.keep_photos)
        said = in_words(list(result.gone)) or "Nothing was left to erase."
        stays = f" {result.stays} lines of the trail hold free words and stay." if result.stays else ""
        print(f"{folder}: {said}{stays}")
    return 0
