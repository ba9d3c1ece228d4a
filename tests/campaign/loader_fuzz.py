"""Tree files, house files and limits without end: python tests/campaign/loader_fuzz.py [N] [SEED], N =
100,000.

Half of the files are changed gently (words, numbers, lines: most still read), half roughly (bits, cuts,
signs). Each must end in a tree, a vocabulary or problems with places in the file, and in little time.
"""

# ruff: noqa: E402  run as a script, from a checkout

import random
import sys
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from _fuzz import Complaint, asked_for, fuzz

from assistant.house.encoding import decode
from assistant.house.load import FILES, load_house
from assistant.house.place import Place
from assistant.house.reader import Unreadable, read
from assistant.quantity.kind import KINDS
from assistant.tree.library import read_folder
from assistant.tree.limits import BadLimit, evaluate, parse_limit, unit_of
from assistant.tree.load import load_tree
from assistant.tree.model import Compute, bands_of, readings_of
from tests.tree.mutation import changed, gently_changed

OF_FORM = {"field", "missing", "type", "verb", "format", "yaml"}
PIECES = [
    "supply_volts",
    "rise_min",
    "t",
    "1",
    "0.5",
    "1e9",
    "5 V",
    "70 F",
    "9 Fdiff",
    "heat_rise(",
    "difference(",
    "(",
    ")",
    "+",
    "-",
    "*",
    "/",
    ",",
    " ",
    "inwc",
    "9" * 30,
    "1e-12",
    ".",
    "$",
    "\n",
    "é",
    "V",
    "__class__",
    "[0]",
    "'",
]


def stages(data: bytes, file: str, library):
    """The stages that a file gets past, in order."""
    yield "written"
    if decode(data, file)[1] is None:
        yield "decoded"
        try:
            read(data, file)
            yield "read as YAML"
        except Unreadable:
            pass
    if file in FILES:
        problems = [p for p in load_house({**library.texts, file: data})[1] if p.file == file]
        tree = None
    else:
        tree, problems = load_tree(data, file, library.vocabulary)
        assert (tree is None) == bool(problems)
    if not OF_FORM & {problem.rule for problem in problems}:
        yield "form right"
    if not problems:
        yield "loaded"
        if tree is not None:
            work_out(tree, library)
        yield "limits worked out"
    if not places_are_in(data, problems):
        raise Complaint("a place outside the file")


def work_out(tree, library) -> None:
    env = {name: value.span for name, value in library.vocabulary.plate.items()}
    for step in tree.steps.values():
        unit = step.unit if isinstance(step, Compute) else None
        limits = [(band.under, unit or readings_of(step)[0].unit) for band in bands_of(step)]
        for reading in readings_of(step):
            limits += (
                [(reading.safe.over, reading.unit), (reading.safe.under, reading.unit)]
                if reading.safe
                else []
            )
        for limit, unit_of_limit in limits:
            if limit is not None:
                got = evaluate(limit, env, unit_of_limit)
                assert got.lo <= got.hi


def places_are_in(data: bytes, problems) -> bool:
    lines = data.decode("utf-8", "replace").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return all(
        1 <= p.line <= len(lines) and 1 <= p.column <= len(lines[p.line - 1]) + 1 and p.message
        for p in problems
    )


def well_formed(chance: random.Random, depth: int = 0) -> str:
    """A limit that the grammar allows; whether its units agree is left to luck."""
    if depth > 3 or chance.random() < 0.3:
        return chance.choice(
            ("supply_volts", "rise_min", "t", "2", "0.5", "5 V", "70 F", "9 Fdiff", "10 percent")
        )
    inner = [well_formed(chance, depth + 1) for _ in range(2)]
    forms = (
        "{0} + {1}",
        "{0} - {1}",
        "{0} * {1}",
        "{0} / {1}",
        "-{0}",
        "({0})",
        "({0} - {1})",
        "difference({0}, {1})",
        "heat_rise({0}, {1})",
    )
    return chance.choice(forms).format(*inner)


def try_limit(chance: random.Random, kinds) -> str:
    text = "".join(chance.choice(PIECES) for _ in range(chance.randint(0, 25)))
    if chance.random() < 0.5:
        text = well_formed(chance)
    try:
        limit = parse_limit(text, Place("f", 1, 1))
    except BadLimit:
        return "refused"
    evaluate(limit, {}, chance.choice(("V", "F", "inwc", "percent")))
    try:
        unit_of(limit, kinds)
    except BadLimit:
        return "parsed"
    return "units agree"


def main(count: int, seed: int) -> int:
    library = read_folder(ROOT / "tests" / "tree" / "examples" / "good")
    shipped = read_folder(ROOT / "trees")
    inputs = [(file, data, library) for file, data in library.texts.items()]
    inputs += [(file, data, shipped) for file, data in shipped.texts.items() if len(data) < 12_000]
    kinds = {"supply_volts": "ac_voltage", "rise_min": "temperature_difference", "t": "temperature"}
    assert set(kinds.values()) <= set(KINDS)
    limits = Counter()

    def one(chance, number):
        file, data, of = chance.choice(inputs)
        rough = number % 2 == 0
        data = (changed if rough else gently_changed)(data, chance.randrange(2**32))
        limits[try_limit(chance, kinds)] += 1
        return "roughly" if rough else "gently", file, stages(data, file, of)

    found = fuzz(f"changed files of {len(inputs)} valid ones", one, count, seed)
    print("limits: " + ", ".join(f"{word} {number:,}" for word, number in limits.most_common()))
    return found


if __name__ == "__main__":
    sys.exit(main(*asked_for(seed=0)))
