"""Spoils the shipped trees in one place at a time and says who notices:
python tests/campaign/tree_mutants.py [--number 2000] [--seed 1] [--properties 0] [--workers 1]
    [--survivors FILE]

Catchers, one after the other: the loader and the checker's rules; the second statements of limits
(tests/trees/limits*.yaml, by_source.yaml); the recorded walks (mutant_walks.py); and, on a sample of what
is left, the ten properties. A mutant that only a stored copy, count or hash would notice is a survivor here;
what the walks notice has a column of its own. Every survivor is put in a class with its verdict
(mutant_classes.py). Which mutants are made follows from the seed and the trees alone.
"""

from __future__ import annotations

import argparse
import hashlib
import json
import random
import re
import sys
import time
from collections import Counter, defaultdict
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, replace
from pathlib import Path

import yaml
from mutant_classes import class_of, classes_table
from mutant_walks import Walks

from assistant.quantity.interval import Interval
from assistant.quantity.kind import to_si
from assistant.resources import trees_folder
from assistant.tree.check import RULES, Study, stem
from assistant.tree.check.circuits import Circuits
from assistant.tree.library import Library, read_folder
from assistant.tree.limits import evaluate, parse_quantity
from assistant.tree.load import load_tree
from assistant.tree.model import Compute, readings_of

TESTS = Path(__file__).parents[1]
COLUMNS = ("loader", "check", "limits", "walks", "property", "left", "tried")
LIMITS = ("limits swapped", "band moved", "plausible narrowed")
"""Kinds that only touch numbers: no other rule reads what they change."""
ABOUT_LIMITS = ("sources", "band_order", "band_words", "plausible", "dead_proof", "read_first")
SEARCHES = ("thermostat_off", "reset", "second_trip", "leak_check", "lockout", "no_air", "may_open",
            "guarded", "call_circle", "needs_met", "procedure_state")
"""Rules whose problem may show in another tree than the one that was spoiled."""
STILL = ("words of bands swapped", "caution dropped", "one caution dropped", "source removed", "other source",
         "one fact dropped", "part changed", "part dropped", "normal dropped", "plausible dropped",
         "meter dropped", "other point", "wait dropped", "trade word for the customer")
"""Kinds that change no way, act, call or need, so that of those rules only `guarded` can see them."""
QUICK = [name for name in RULES if name not in SEARCHES]


@dataclass(frozen=True)
class Mutant:
    kind: str
    file: str
    line: int
    was: str
    now: str
    data: bytes


def pick(rng, lines, pattern):
    """A random line with a match, as (number, match); None where there is none."""
    found = [(number, match) for number, line in enumerate(lines) if (match := re.search(pattern, line))]
    return rng.choice(found) if found else None


def on_line(rng, lines, pattern, new):
    """Lines with one match of `pattern` changed by `new(match)`."""
    hit = pick(rng, lines, pattern)
    if hit is None:
        return None
    number, match = hit
    text = new(match)
    if text is None or text == match.group(0):
        return None
    line = lines[number][:match.start()] + text + lines[number][match.end():]
    return number, [*lines[:number], *([line] if line.strip() else []), *lines[number + 1:]]


def dropped(pattern):
    return lambda rng, lines, tree, house: on_line(rng, lines, pattern, lambda _: "")


def one_dropped(field):
    """One name of a list of several."""
    def make(rng, lines, tree, house):
        def new(match):
            names = [name.strip() for name in match.group(2).split(",")]
            names.remove(rng.choice(names))
            return f"{match.group(1)}[{', '.join(names)}]"
        return on_line(rng, lines, rf"(\b{field}: )\[([^\]]*,[^\]]*)\]", new)
    return make


def moved(rng, lines, tree, house):
    by = rng.choice((0.7, 0.9, 0.95, 1.05, 1.1, 1.4))

    def new(match):
        number = re.search(r"(?<![\w.])\d+(\.\d+)?", match.group(1))
        if number is None:
            return f"under: {by:g} * ({match.group(1)})" if "(" not in match.group(1) else None
        value = f"{float(number.group(0)) * by:.6g}"
        text = match.group(1)
        return "under: " + text[:number.start()] + value + text[number.end():]
    return on_line(rng, lines, r"\bunder: ([^,}]+?)(?=[,}]|$)", new)


def swapped(pattern):
    """Two matches on one line, or on neighbouring lines of one list, change places."""
    def make(rng, lines, tree, house):
        blocks, block = [], []
        for number, line in enumerate(lines):
            found = list(re.finditer(pattern, line))
            if found:
                block += [(number, match) for match in found]
            if not found or len(found) > 1:
                blocks.append(block)
                block = []
        wide = [block for block in blocks if len({match.group(1) for _, match in block}) > 1]
        if not wide:
            return None
        one, other = rng.sample(rng.choice(wide), 2)
        if one[1].group(1) == other[1].group(1):
            return None
        out = list(lines)
        for (number, match), text in sorted(((one, other[1].group(1)), (other, one[1].group(1))),
                                            key=lambda pair: (pair[0][0], -pair[0][1].start())):
            line = out[number]
            out[number] = line[:match.start(1)] + text + line[match.end(1):]
        return one[0], out
    return make


def pointed_elsewhere(rng, lines, tree, house):
    def new(match):
        others = [name for name in tree.steps if name != match.group(2)]
        return match.group(1) + rng.choice(others) if match.group(2) in tree.steps and others else None
    return on_line(rng, lines, r"(\b(?:then|close|cannot|[a-z ]+): )(\w+)(?=[,}]|$)", new)


def other_name(field, names):
    def make(rng, lines, tree, house):
        def new(match):
            others = [name for name in names(house) if name != match.group(2)]
            return match.group(1) + rng.choice(others)
        return on_line(rng, lines, rf"(\b{field}: )(\w+)\b", new)
    return make


def other_point(rng, lines, tree, house):
    def new(match):
        points = [point.strip() for point in match.group(1).split(",")]
        known = house.vocabulary.points
        kin = [name for name in known if points[0] in known and name not in points
               and (known[name].circuit, known[name].of) == (known[points[0]].circuit, known[points[0]].of)]
        return f"at: [{', '.join([rng.choice(kin), *points[1:]])}]" if kin else None
    return on_line(rng, lines, r"\bat: \[([^\]]+)\]", new)


def other_state(rng, lines, tree, house):
    return on_line(rng, lines, r"(\bneeds: \{[^}]*?\w+: \"?)(live|off|dead)\b",
                   lambda match: match.group(1) + rng.choice([state for state in ("live", "off", "dead")
                                                              if state != match.group(2)]))


def narrowed(rng, lines, tree, house):
    return on_line(rng, lines, r"plausible: \[([-\d.]+), ([-\d.]+)\]",
                   lambda match: f"plausible: [{match.group(1)}, {float(match.group(2)) * 0.2:.6g}]")


def trade_word(rng, lines, tree, house):
    return on_line(rng, lines, r"(customer: )(\w)",
                   lambda match: f"{match.group(1)}The inducer. {match.group(2)}")


def names_of(purpose):
    return lambda house: [tree.name for tree in house.trees.values() if tree.purpose == purpose]


KINDS = {
    "limits swapped": (2, swapped(r"\bunder: ([^,}]+?)(?=[,}]|$)")),
    "band moved": (5, moved),
    "pointed elsewhere": (5, pointed_elsewhere),
    "choices swapped": (3, swapped(r"(?<=: )(\w+)(?=[,}])(?!.*under)")),
    "words of bands swapped": (1, swapped(r"\bis: ([^,}]+)(?=[,}])")),
    "way on dropped": (2, dropped(r"^    (close|cannot): \w+$")),
    "caution dropped": (2, dropped(r"^ +caution: .*$")),
    "one caution dropped": (1, one_dropped("caution")),
    "need dropped": (2, dropped(r"^ +needs: .*$")),
    "need changed": (2, other_state),
    "source removed": (2, dropped(r"^ +source: .*$|, source: \w+")),
    "other source": (1, other_name("source", lambda house: list(house.vocabulary.sources))),
    "proof dropped": (1, dropped(r"^ +proof: .*$")),
    "other proof": (1, other_name("proof", names_of("proof"))),
    "causes dropped": (1, dropped(r"^ +causes: .*$")),
    "one cause dropped": (1, one_dropped("causes")),
    "repair dropped": (1, dropped(r"^ +repair: .*$")),
    "one fact dropped": (1, one_dropped("shows")),
    "part changed": (1, other_name("condemns", lambda house: list(house.vocabulary.parts))),
    "part dropped": (1, dropped(r"^ +condemns: .*$")),
    "act dropped": (2, dropped(r"^ +act: .*$")),
    "other act": (1, other_name("act", lambda house: list(house.vocabulary.acts))),
    "normal dropped": (1, dropped(r", normal: yes")),
    "plausible narrowed": (1, narrowed),
    "plausible dropped": (1, dropped(r"^ +plausible: .*$")),
    "meter dropped": (1, dropped(r"^ +meter: .*$")),
    "other point": (2, other_point),
    "dead-proof's circuits dropped": (1, dropped(r"^ +verifies: .*$")),
    "wait dropped": (1, dropped(r"^ +wait: .*$")),
    "opening dropped": (1, dropped(r"^ +opens: .*$|, opens: \w+")),
    "trade word for the customer": (1, trade_word),
}


def mutants(library: Library, number: int, seed: int):
    """The mutants of a seed, each different."""
    rng, seen = random.Random(seed), set()
    kinds = [kind for kind, (weight, _) in KINDS.items() for _ in range(weight)]
    files = [tree.file for tree in library.trees.values()]
    weights = [len(library.texts[file]) for file in files]
    while len(seen) < number:
        kind, file = rng.choice(kinds), rng.choices(files, weights)[0]
        lines = library.texts[file].decode().split("\n")
        made = KINDS[kind][1](rng, lines, library.trees[stem(file)], library)
        if made is None:
            continue
        at, changed = made
        data = "\n".join(changed).encode()
        if data == library.texts[file] or (file, data) in seen:
            continue
        seen.add((file, data))
        now = changed[at] if len(changed) == len(lines) else "(line dropped)"
        yield Mutant(kind, file, at + 1, lines[at].strip(), now.strip(), data)


class Second:
    """The second statements of limits, and the names that lists of findings and outside tables rest on."""

    def __init__(self) -> None:
        files = [yaml.safe_load(path.read_text(encoding="utf-8"))
                 for path in sorted((TESTS / "trees").glob("limits*.yaml"))]
        self.plate = {name: Interval.exact(si(text)) for one in files
                      for name, text in one.get("plate", {}).items()}
        said = yaml.safe_load((TESTS / "trees" / "by_source.yaml").read_text(encoding="utf-8"))["sources"]
        self.sources = {name: [si(text) for text in values] for name, values in said.items()}
        self.rows = defaultdict(list)
        for one in files:
            for row in one.get("bands", []):
                self.rows[row["step"].partition(".")[0]].append((row, row["band"]))
            for row in one.get("safe", []):
                self.rows[row["step"].partition(".")[0]].append((row, None))

    def refuses(self, tree) -> str | None:
        """The row that a tree no longer keeps."""
        for step in tree.steps.values():
            page = [one for _, one in step.page] if isinstance(step, Compute) else readings_of(step)
            for what in page:
                safe = getattr(what, "safe", None)
                limits = [(band.under, band.source) for band in what.bands]
                limits += [(safe.over, safe.source), (safe.under, safe.source)] if safe else []
                for limit, source in limits:
                    values = self.sources.get(source or what.source or getattr(step, "source", None) or "")
                    if limit is None or values is None:
                        continue
                    value = evaluate(limit, self.plate, what.unit)
                    if not any(abs(value.lo - one) <= 1e-6 * max(1e-6, abs(one)) for one in values):
                        return f"limits: {tree.name}.{step.common.name} by its source"
        for row, label in self.rows.get(tree.name, ()):
            step = tree.steps.get(row["step"].partition(".")[2])
            whats = [step] if isinstance(step, Compute) else [
                one for one in readings_of(step) if (one.name or step.common.name) == row["reading"]
            ] if step else []
            band = next((band for what in whats for band in what.bands if band.label == label), None)
            limit = (band.under if band else None) if label else (whats[0].safe.under if whats else None)
            if limit is None:
                return f"limits: {row['step']}"
            value = evaluate(limit, self.plate, whats[0].unit)
            if abs(value.lo - si(row["value"])) > 1e-9 * max(1.0, abs(value.lo)):
                return f"limits: {row['step']}"
        return None


def si(text: str) -> float:
    number, unit = parse_quantity(text)
    return to_si(number, unit)


def checked(mutant: Mutant, library: Library, known: frozenset,
            sound: Study) -> tuple[str | None, Library | None]:
    """What of loader and checker refuses a mutant, and the library with it in place where it loads. What was
    worked out about the other trees in `sound` is used again."""
    tree, problems = load_tree(mutant.data, mutant.file, library.vocabulary)
    if tree is None:
        return f"loader: {problems[0].rule}", None
    spoiled = replace(library, trees={**library.trees, tree.name: tree},
                      texts={**library.texts, mutant.file: mutant.data})
    study = Study(library.vocabulary, {tree.name: tree}, known)
    study.trees = spoiled.trees
    study.graphs |= {name: graph for name, graph in sound.graphs.items() if name != tree.name}
    study.circuits = Circuits(library.vocabulary, study.graphs)
    study.circuits.chains = sound.circuits.chains
    only = (ABOUT_LIMITS if mutant.kind in LIMITS else (*QUICK, "guarded") if mutant.kind in STILL
            else (*QUICK, *SEARCHES))
    for name in only:
        rule = RULES[name]
        alone = name in QUICK and (tree.purpose == "complaint" or name not in ("returns", "proof", "called"))
        found = (next(rule.in_tree(study, tree), None) if alone and rule.in_tree
                 else next(rule.problems(study), None))
        if found is not None:
            return f"check: {name}", spoiled
    return None, spoiled


def address_of(mutant: Mutant, library: Library) -> str:
    """The step that holds a mutant's line, as tree.step."""
    tree = library.trees[stem(mutant.file)]
    above = [(step.common.place.line, name) for name, step in tree.steps.items()
             if step.common.place.line <= mutant.line]
    return f"{tree.name}.{max(above)[1] if above else tree.start}"


def grouped(by_file: dict[str, Counter]) -> dict[str, Counter]:
    """Counts by tree, those that are no complaint's by what they are for."""
    out: dict[str, Counter] = defaultdict(Counter)
    for file, row in by_file.items():
        purpose, _, name = file.partition("/")
        out[stem(name) if purpose == "complaint" else f"{purpose} trees"] += row
    return out


def properties(library: Library) -> str | None:
    """The first of the ten properties that fails."""
    sys.path.insert(0, str(TESTS.parent))
    from tests.outside.test_ten_properties import PROPERTIES, NotOnlyTheLink
    from tests.outside.whole_paths import Paths

    for property_ in PROPERTIES:
        more = (library,) if property_ is NotOnlyTheLink else ()
        if Paths(library, property_(library.vocabulary, *more)).follow():
            return f"property: {property_.__name__}"
    return None


def digest(library: Library) -> str:
    """Stands for the texts of a library: what was noticed counts for the same texts only."""
    return hashlib.sha256(repr(sorted(library.texts.items())).encode()).hexdigest()


def told_of(file: Path, library: Library) -> dict[int, str | None]:
    """What was noticed, from a file that `--told` wrote. Raises ValueError where the trees changed since."""
    kept = json.loads(file.read_text())
    if kept["of"] != digest(library):
        raise ValueError(f"{file} tells of other trees than these")
    return {int(place): caught for place, caught in kept["told"].items()}


def noticed(part: tuple[int, int, int, int]) -> list[tuple[int, str | None]]:
    """Of every so-many-th mutant: its place, and what caught it."""
    number, seed, first, step = part
    library, second = read_folder(trees_folder()), Second()
    sound = Study(library.vocabulary, library.trees, frozenset(map(stem, library.texts)))
    walks, began, told = Walks(library), time.process_time(), []
    for place, mutant in enumerate(mutants(library, number, seed)):
        if place % step != first:
            continue
        caught, spoiled = checked(mutant, library, sound.known, sound)
        if caught is None and spoiled is not None:
            caught = (second.refuses(spoiled.trees[stem(mutant.file)])
                      or walks.refuses(spoiled, address_of(mutant, library)))
        told.append((place, caught))
        if len(told) % 100 == 0:
            spent = time.process_time() - began
            print(f"... {len(told)} mutants, {spent:.0f} s", file=sys.stderr, flush=True)
    return told


def main() -> int:
    """Prints the table; 1 where the unspoiled trees are refused."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--number", type=int, default=2000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--workers", type=int, default=1, help="processes that share the mutants")
    parser.add_argument("--properties", type=int, default=0,
                        help="of how many survivors the ten properties are asked")
    parser.add_argument("--told", type=Path, help="where to keep what was noticed, or to take it from")
    parser.add_argument("--survivors", type=Path, help="where to list what nobody noticed")
    chosen = parser.parse_args()
    library, second = read_folder(trees_folder()), Second()
    sound = Study(library.vocabulary, library.trees, frozenset(map(stem, library.texts)))
    if any(second.refuses(tree) for tree in library.trees.values()):
        print("The shipped trees themselves do not keep the second statement of their limits.")
        return 1
    made = list(mutants(library, chosen.number, chosen.seed))
    if chosen.told and chosen.told.exists():
        told = told_of(chosen.told, library)
    elif chosen.workers > 1:
        parts = [(chosen.number, chosen.seed, part, chosen.workers) for part in range(chosen.workers)]
        with ProcessPoolExecutor(chosen.workers) as pool:
            told = {place: caught for some in pool.map(noticed, parts) for place, caught in some}
    else:
        told = dict(noticed((chosen.number, chosen.seed, 0, 1)))
    if chosen.told:
        chosen.told.write_text(json.dumps({"of": digest(library), "told": told}))
    table: dict[str, Counter] = defaultdict(Counter)
    by_rule: Counter = Counter()
    by_tree: dict[str, Counter] = defaultdict(Counter)
    left: list[Mutant] = []
    for place, mutant in enumerate(made):
        caught = told[place]
        catcher = caught.partition(":")[0] if caught else "left"
        table[mutant.kind][catcher] += 1
        by_tree[mutant.file][catcher] += 1
        by_rule[caught or "left"] += 1
        if caught is None:
            left.append(mutant)
    rng = random.Random(chosen.seed)
    for mutant in rng.sample(left, min(chosen.properties, len(left))):
        caught = properties(checked(mutant, library, sound.known, sound)[1])
        table[mutant.kind]["tried"] += 1
        if caught:
            table[mutant.kind].update({"property": 1, "left": -1})
            by_tree[mutant.file].update({"property": 1, "left": -1})
            by_rule[caught] += 1
            left.remove(mutant)
    total = Counter()
    for row in table.values():
        total += row
    for title, rows in (("kind", table), ("tree", grouped(by_tree))):
        print(f"{title:32}" + "".join(f"{name:>10}" for name in COLUMNS))
        for name, row in [*sorted(rows.items()), ("all", total)]:
            print(f"{name:32}" + "".join(f"{row[column]:10}" for column in COLUMNS))
    shares = ", ".join(f"{name} {total[name] / len(made):.1%}" for name in COLUMNS if total[name])
    print(f"seed {chosen.seed}, {len(made)} mutants: {shares}")
    walks = Walks(library)
    classes = [class_of(mutant, address_of(mutant, library), library, sound, walks) for mutant in left]
    print("\n".join(classes_table(list(zip(left, classes, strict=True)))))
    print("by rule: " + ", ".join(f"{name} {times}" for name, times in by_rule.most_common()))
    if chosen.survivors:
        chosen.survivors.write_text("\n".join(sorted(
            f"{klass}\t{mutant.kind}\t{mutant.file}:{mutant.line}\t{address_of(mutant, library)}"
            f"\t{mutant.was}\t->\t{mutant.now}" for mutant, klass in zip(left, classes, strict=True))) + "\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
