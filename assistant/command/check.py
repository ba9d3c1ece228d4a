"""Check trees: what can be proved of them without a furnace.

Without a FILE or FOLDER the trees that come with the program are checked. A folder with a house.yaml is a
library of its own; a file or folder below one is checked together with the rest of it; any other file is
checked among the trees that come with the program.

Exit code 0: no problem. 1: at least one. 2: it could not be checked.
"""

from __future__ import annotations

import argparse
import json
import os
from pathlib import Path

from assistant.house.nearest import suggestion
from assistant.resources import trees_folder
from assistant.tree.check import RULES
from assistant.tree.check.examples import example_of
from assistant.tree.check.selection import listing, select


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """FILE or FOLDER..., --json, --rules and --explain."""
    parser.add_argument("paths", nargs="*", metavar="FILE|FOLDER", type=Path, help="trees to check")
    parser.add_argument("--json", action="store_true", help="print one JSON object instead of lines")
    parser.add_argument("--rules", action="store_true", help="list the rules, with the reason for each")
    parser.add_argument("--explain", nargs="?", const="", metavar="RULE",
                        help="why there is this rule, how to mend what it refuses, and an example of that")


def run(arguments: argparse.Namespace) -> int:
    """Prints what is wrong, and how much was looked at."""
    if arguments.rules:
        print("\n\n".join(f"{rule.name}\n{rule.reason}" for rule in RULES.values()))
        return 0
    if arguments.explain is not None:
        return _explain(arguments.explain)
    shipped = trees_folder()
    trees: dict[str, dict] = {}
    for path in arguments.paths or [_near(shipped)]:
        for entry in listing(select(path, shipped)):
            trees.setdefault(json.dumps(entry), entry)
    entries = sorted(trees.values(), key=lambda entry: (entry["tree"], entry["purpose"]))
    problems = [problem for entry in entries for problem in entry["problems"]]
    if arguments.json:
        print(json.dumps({"trees": entries}, indent=2, ensure_ascii=False))
    else:
        for problem in sorted(problems, key=lambda one: (one["file"], one["line"], one["column"])):
            print("{file}:{line}:{column}: {rule}: {message}".format_map(problem))
            for step in problem["path"]:
                print(f"    {step}")
        print(_summary(entries, len(problems)))
    return 1 if problems else 0


def _explain(wanted: str) -> int:
    """Prints one rule, or the list of them where there is none of that name; 2 then, but where none was
    asked for."""
    rule = RULES.get(wanted)
    if rule is None:
        if wanted:
            print(f"There is no rule '{wanted}'{suggestion(wanted, list(RULES)) or '.'}\n")
        width = max(map(len, RULES))
        print("Rules; --explain RULE says more about one:")
        print("\n".join(f"  {rule.name:{width}}  {rule.in_short}" for rule in RULES.values()))
        return 2 if wanted else 0
    print(f"{rule.name}\n\n{rule.reason}\n\nHow to mend it: {rule.mend}\n\nRefused, for example:\n")
    print("\n".join(f"    {line}".rstrip() for line in example_of(rule.name).splitlines()))
    return 0


def _summary(entries: list[dict], problems: int) -> str:
    steps = sum(entry["steps"] for entry in entries)
    findings = sum(len(entry["findings"]) for entry in entries)
    trees = sum(entry["purpose"] != "house" for entry in entries)
    found = "no problem" if problems == 0 else _counted(problems, "problem")
    return f"{_counted(trees, 'tree')}, {_counted(steps, 'step')}, {_counted(findings, 'finding')}: {found}."


def _counted(number: int, what: str) -> str:
    return f"{number:,} {what}{'' if number == 1 else 's'}"


def _near(folder: Path) -> Path:
    """The folder as seen from where the person is, where that is shorter to read."""
    try:
        return Path(os.path.relpath(folder)) if folder.is_relative_to(Path.cwd()) else folder
    except (OSError, ValueError):  # no working folder any more, or another drive
        return folder
