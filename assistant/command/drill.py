"""Practice on a simulated house: list the drills, or work one from a file of entries.

--list shows every drill: name, complaint, difficulty, what the customer says. What is wrong in it stays
hidden unless --foreman is said. --run FILE does what FILE says (`--example` prints one) and tells afterwards
how it went. --prepare works out the shortest good paths, some minutes for each complaint, once for a text of
the trees; without it the tree's own walk stands for them.

Exit code 0: found, the cause named, nothing unsafe, nothing condemned without proof. 1: something of that
was otherwise. 2: it could not run, or the entries end before a finding. Nothing is recorded: practice is no
visit.
"""

from __future__ import annotations

import argparse
import json
import sys
import time
from dataclasses import asdict
from pathlib import Path

from assistant.errors import UserError
from assistant.resources import trees_folder


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """--list, --run FILE, --prepare, --example, and what goes with them."""
    what = parser.add_mutually_exclusive_group(required=True)
    what.add_argument("--list", action="store_true", help="every drill, one a line")
    what.add_argument("--run", type=Path, metavar="FILE", help="work a drill from a file of entries")
    what.add_argument("--prepare", action="store_true", help="work out the shortest good paths")
    what.add_argument("--example", action="store_true", help="print a whole file of entries")
    parser.add_argument("--foreman", action="store_true", help="with --list: also what is wrong")
    parser.add_argument("--complaint", metavar="NAME", help="only this complaint's drills or paths")
    parser.add_argument("--difficulty", metavar="WORD", help="with --list: only these (easy, usual, hard)")
    parser.add_argument("--json", action="store_true", help="print JSON instead of words")


def run(arguments: argparse.Namespace) -> int:
    """Does one of the four."""
    if arguments.example:
        from assistant.drill.practice.script import EXAMPLE

        print(EXAMPLE, end="")
        return 0
    library, faults, drills = _matter()
    known = library.vocabulary.complaints
    if arguments.complaint and arguments.complaint not in known:
        raise UserError(f"There is no complaint '{arguments.complaint}'; there is {', '.join(known)}.")
    if arguments.list:
        return _list(arguments, drills, library)
    if arguments.prepare:
        return _prepare(arguments, library, faults)
    return _run(arguments, library, faults, drills)


def _matter():
    from assistant.drill.practice.answers import answerable
    from assistant.drill.practice.drills import all_drills, all_faults
    from assistant.tree.library import read_folder

    library = read_folder(trees_folder())
    if library.problems:
        raise UserError(f"No drill on trees with an error: {library.problems[0]}")
    faults, wrong = all_faults()
    drills, also_wrong = all_drills(library.vocabulary, faults)
    for problem in (*wrong, *also_wrong):
        print(problem, file=sys.stderr)
    return library, faults, {name: one for name, one in drills.items() if answerable(one, library)}


def _list(arguments: argparse.Namespace, drills, library) -> int:
    from assistant.drill.practice.drill import DIFFICULTIES

    wanted = arguments.difficulty
    if wanted and wanted not in DIFFICULTIES:
        raise UserError(f"There is no difficulty '{wanted}'; there is {', '.join(DIFFICULTIES)}.")
    chosen = [
        drill
        for drill in sorted(
            drills.values(), key=lambda one: (one.complaint, DIFFICULTIES.index(one.difficulty), one.name)
        )
        if (not arguments.complaint or drill.complaint == arguments.complaint)
        and (not wanted or drill.difficulty == wanted)
    ]
    if arguments.json:
        print(
            json.dumps([_plain(drill, arguments.foreman) for drill in chosen], indent=1, ensure_ascii=False)
        )
        return 0
    width = max((len(drill.name) for drill in chosen), default=0)
    for drill in chosen:
        complaint = library.vocabulary.complaints[drill.complaint].title
        print(f"{drill.name.ljust(width)}  {drill.difficulty:6}  {complaint}: \u201c{drill.words}\u201d")
        if arguments.foreman:
            print(f"{' ' * width}          {drill.title} ({drill.ending})")
    if not chosen:
        print("No drill is like that.")
    return 0


def _plain(drill, foreman: bool) -> dict[str, str]:
    shown = {
        "name": drill.name,
        "complaint": drill.complaint,
        "difficulty": drill.difficulty,
        "words": drill.words,
        "origin": drill.origin,
    }
    return {**shown, "title": drill.title, "ending": drill.ending} if foreman else shown


def _prepare(arguments: argparse.Namespace, library, faults) -> int:
    from assistant.drill.practice.answers import tree_of
    from assistant.drill.practice.best import prepare, prepared

    for complaint in library.vocabulary.complaints:
        if arguments.complaint not in (None, complaint) or tree_of(library, complaint) is None:
            continue
        if prepared(library, faults, complaint) is None:
            for done, of_all in prepare(library, faults, complaint):
                if done == of_all or done % 20 == 0:
                    print(f"{complaint}: {done} of {of_all} houses", file=sys.stderr, flush=True)
        print(f"{complaint}: the shortest good paths are there.")
    return 0


def _run(arguments: argparse.Namespace, library, faults, drills) -> int:
    from assistant.drill.practice.debrief import Debrief, debrief
    from assistant.drill.practice.drills import from_fault
    from assistant.drill.practice.script import CantFinish, load_script, play

    try:
        data = arguments.run.read_bytes()
    except OSError as problem:
        raise UserError(f"{arguments.run} can't be read ({problem.strerror or problem}).") from problem
    script, problems = load_script(data, str(arguments.run))
    if script is None:
        raise UserError("\n".join(str(problem) for problem in problems))
    drill = drills.get(script.drill)
    if drill is None and script.drill in faults:
        drill = from_fault(faults[script.drill], library.vocabulary)
    if drill is None:
        raise UserError(f"There is no drill '{script.drill}'; `drill --list` shows them.")
    try:
        sitting = play(script, drill, library, time.monotonic)
    except CantFinish as problem:
        raise UserError(str(problem)) from problem
    told = next(step for step in debrief(sitting, library, faults) if isinstance(step, Debrief))
    if arguments.json:
        print(json.dumps(_told(told, drill), indent=1, ensure_ascii=False))
    else:
        print(_words(told, drill))
    condemned = any(section.title == "Condemned without proof" for section in told.sections)
    figures = told.figures
    good = figures.right and figures.cause is not False and not figures.unsafe and not condemned
    return 0 if good else 1


def _told(told, drill) -> dict[str, object]:
    return {
        "practice": True,
        "drill": drill.name,
        "sections": [{"title": one.title, "lines": list(one.lines)} for one in told.sections],
        "path": list(told.own_path),
        "best_path": list(told.best_path),
        "best_by": told.best_by,
        "figures": {**asdict(told.figures), "beyond": told.figures.beyond},
    }


def _words(told, drill) -> str:
    lines = [told.text(), "", "Your path"]
    lines += [f"  {n}. {line}" for n, line in enumerate(told.own_path, 1)]
    lines += ["", f"The shortest good path ({told.best_by})" if told.best_path else ""]
    lines += [f"  {n}. {line}" for n, line in enumerate(told.best_path, 1)]
    return "\n".join([f"The customer says: \u201c{drill.words}\u201d", *lines]).rstrip()
