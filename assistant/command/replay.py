"""`replay ENTRIES.yaml --out FOLDER`: a recorded list of answers walked as a person would walk it."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from assistant.errors import UserError
from assistant.house.reader import Unreadable, read
from assistant.resources import trees_folder
from assistant.trail.clock import now
from assistant.trail.error import TrailError
from assistant.trail.live import LiveVisit
from assistant.trail.shop_file import shop_data
from assistant.tree.check import check
from assistant.tree.library import read_folder
from assistant.walk.entries import Entry, complaints_of, events_of, read_entries
from assistant.walk.state import BadAnswer, OutOfOrder

SUMMARY = "walk a recorded list of answers; FOLDER becomes the visit, with its reports in it"
FINISHED = ("finding", "stop", "handed_over", "choose", "leave", "signed", "paused", "conclude")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The words after `replay`."""
    parser.add_argument("entries", metavar="ENTRIES.yaml", type=Path, help="a list of answers in order")
    parser.add_argument("--out", metavar="FOLDER", type=Path, required=True, help="a new folder for it")
    parser.add_argument("--trees", metavar="FOLDER", type=Path, help="other trees than the shipped ones")
    parser.add_argument("--shop", metavar="FILE", type=Path, help="the shop's instruments (shop.yaml)")
    parser.add_argument("--paper", choices=("letter", "a4"), default="letter", help="paper of report.pdf")


def run(arguments: argparse.Namespace) -> int:
    """0: ends in a finding, a stop, a hand-over or signed; 2: can't finish (the trail is kept) or can't
    start.
    """
    entries = _entries(arguments.entries)
    library = read_folder(arguments.trees or trees_folder())
    if problems := check(library):
        for problem in problems:
            print(problem, file=sys.stderr)
        raise UserError("The trees have errors (above), so nothing is walked with them. Mend them first.")
    trees = {c.tree: c.name for c in library.vocabulary.complaints.values() if c.tree}
    names = complaints_of(entries, trees)
    if not names and not any(entry.key == "complaints" for entry in entries):
        raise UserError(
            f"{arguments.entries} answers no complaint's tree; begin with `- complaints: [no_heat]`."
        )
    complaints = library.vocabulary.complaints
    words = tuple((name, complaints[name].words if name in complaints else name) for name in names)
    shop, mistakes = shop_data(arguments.shop) if arguments.shop else ({}, [])
    if mistakes:
        raise UserError("\n".join(mistakes))
    try:
        live = LiveVisit.start(arguments.out, library, words, shop=shop)
    except (TrailError, BadAnswer) as problem:
        raise UserError(str(problem)) from problem
    try:
        failed = _walk(live, entries)
    finally:
        live.close()
    return _finish(live, arguments, failed)


def _entries(path: Path) -> list[Entry]:
    try:
        entries, problems = read_entries(read(path.read_bytes(), str(path)))
    except OSError as problem:
        raise UserError(f"{path} can't be read: {problem.strerror}.") from problem
    except Unreadable as unreadable:
        entries, problems = [], unreadable.problems
    if problems:
        raise UserError("\n".join(str(problem) for problem in sorted(problems)))
    return entries


def _walk(live: LiveVisit, entries: list[Entry]) -> str | None:
    """Sends every entry; a sentence with the place of the first that can't be taken, or None."""
    for entry in entries:
        try:
            for make in events_of(entry, now()):
                event = make(live.visit)
                if event is not None:
                    live.send(event)
        except (BadAnswer, OutOfOrder, TrailError) as problem:
            place = entry.place
            return f"{place.file}:{place.line}:{place.column}: {entry.key}: {problem}"
    return None


def _finish(live: LiveVisit, arguments: argparse.Namespace, failed: str | None) -> int:
    ask = live.ask()
    from assistant.report.export import write_all

    said = write_all(arguments.out, arguments.out, paper=arguments.paper)
    print(f"The visit and its reports are in {arguments.out}.")
    if said:
        print(said, file=sys.stderr)
    if failed:
        print(failed, file=sys.stderr)
        return 2
    if ask.kind not in FINISHED:
        where = f"{ask.kind} {ask.step}".strip()
        print(f"The list of answers ends before the walk does: {where} is still asked.", file=sys.stderr)
        return 2
    return 2 if said else 0
