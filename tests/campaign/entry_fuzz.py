"""Entries without end: python tests/campaign/entry_fuzz.py [N] [SEED], N = 100,000 when left out.

Prints how many texts got past each stage of reading an entry, for those that the grammar wrote and for
mutations of them, and every complaint. Ends with 1 when there was one.
"""

# ruff: noqa: E402  the grammar lies beside its tests and is no package, so its folder comes first

import sys
import time
from collections import Counter
from pathlib import Path

TESTS = Path(__file__).parents[1]
sys.path[:0] = [str(TESTS / "quantity"), str(TESTS.parent)]

from entry_check import OUTCOMES, complaint
from entry_grammar import Grammar

from assistant.quantity.amount import amounts
from assistant.quantity.entry import understand
from assistant.quantity.figure import with_dots
from assistant.quantity.kind import KINDS
from assistant.quantity.meaning import UnclearError
from assistant.quantity.over import over_range
from assistant.quantity.signs import plain
from assistant.quantity.split import ends

STAGES = (
    "written",
    "plain signs",
    "not blank",
    "decimal marks",
    "one number or spread",
    "units and figures",
    "read",
)


def stages(entry):
    """The stages that the entry's text gets past, in order."""
    kind = KINDS[entry.kind]
    yield "written"
    typed = plain(entry.text)
    yield "plain signs"
    if not typed:
        return
    yield "not blank"
    if over_range(typed, kind, entry.field, None):
        yield from STAGES[3:]
        return
    dotted = with_dots(typed)
    yield "decimal marks"
    ends(dotted, kind)
    yield "one number or spread"
    amounts(dotted, kind, entry.field)
    yield "units and figures"
    if OUTCOMES[type(understand(entry.text, entry.kind, entry.field))] == "understood":
        yield "read"


def main(count=100_000, seed=0):
    grammar = Grammar(seed)
    past = {"grammar": Counter(), "mutation": Counter()}
    outcomes = {"grammar": Counter(), "mutation": Counter()}
    forms, complaints, slowest = Counter(), [], (0.0, "")
    for _ in range(count):
        entry = grammar.entry()
        source = "mutation" if entry.form == "mutation" else "grammar"
        forms[entry.form] += 1
        started = time.perf_counter()
        meaning = understand(entry.text, entry.kind, entry.field)
        slowest = max(slowest, (time.perf_counter() - started, entry.text[:40]))
        outcomes[source][OUTCOMES[type(meaning)]] += 1
        try:
            for stage in stages(entry):
                past[source][stage] += 1
        except UnclearError:
            pass
        if trouble := complaint(entry):
            complaints.append(f"{entry.text[:60]!r} as {entry.kind} in {entry.field}: {trouble}")
    print(f"{count} entries from seed {seed}; past each stage:")
    print(f"{'':24}{'grammar':>10}{'mutations':>12}")
    for stage in STAGES:
        print(f"{stage:24}{past['grammar'][stage]:>10}{past['mutation'][stage]:>12}")
    for outcome in OUTCOMES.values():
        print(f"= {outcome:22}{outcomes['grammar'][outcome]:>10}{outcomes['mutation'][outcome]:>12}")
    print("forms: " + ", ".join(f"{form} {number}" for form, number in forms.most_common()))
    print(f"slowest: {slowest[0] * 1000:.2f} ms for {slowest[1]!r}")
    print(f"complaints: {len(complaints)}")
    print("\n".join(complaints[:20]))
    return 1 if complaints else 0


if __name__ == "__main__":
    sys.exit(main(*map(int, sys.argv[1:3])))
