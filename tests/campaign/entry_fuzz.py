"""Entries without end: python tests/campaign/entry_fuzz.py [N] [SEED], N = 100,000 when left out.

Counts how many texts got past each stage of reading an entry, those that the grammar wrote and mutations of
them.
"""

# ruff: noqa: E402  the grammar lies beside its tests and is no package, so its folder comes first

import contextlib
import sys
from collections import Counter
from pathlib import Path

TESTS = Path(__file__).parents[1]
sys.path[:0] = [str(TESTS / "quantity"), str(TESTS.parent)]

from _fuzz import Complaint, asked_for, fuzz
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

MARKS = ("decimal marks", "one number or spread", "units and figures", "read")
"""The stages that an entry over the meter's range is past at once."""


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
        yield from MARKS
        return
    dotted = with_dots(typed)
    yield "decimal marks"
    ends(dotted, kind)
    yield "one number or spread"
    amounts(dotted, kind, entry.field)
    yield "units and figures"
    if OUTCOMES[type(understand(entry.text, entry.kind, entry.field))] == "understood":
        yield "read"


def main(count: int, seed: int) -> int:
    grammar = Grammar(seed)
    outcomes, forms = {"grammar": Counter(), "mutation": Counter()}, Counter()

    def one(_chance, _number):
        entry = grammar.entry()
        source = "mutation" if entry.form == "mutation" else "grammar"
        forms[entry.form] += 1
        return source, f"{entry.text[:60]!r} as {entry.kind} in {entry.field}", tried(entry, outcomes[source])

    found = fuzz("entries", one, count, seed)
    for outcome in OUTCOMES.values():
        said = "".join(f"{counted[outcome]:>14,}" for counted in outcomes.values())
        print(f"= {outcome:24}{said}")
    print("forms: " + ", ".join(f"{form} {number:,}" for form, number in forms.most_common()))
    return found


def tried(entry, outcomes):
    """The stages that the entry gets past; how it was understood is counted in `outcomes`."""
    outcomes[OUTCOMES[type(understand(entry.text, entry.kind, entry.field))]] += 1
    with contextlib.suppress(UnclearError):
        yield from stages(entry)
    if trouble := complaint(entry):
        raise Complaint(trouble)


if __name__ == "__main__":
    sys.exit(main(*asked_for(seed=0)))
