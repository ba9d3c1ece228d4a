"""Finding a computation by the words that a technician has in mind: "amps", "capacitor", "btu rise".

Every word must be found somewhere: in the title, in what is asked for or given, in a quantity's name or in
the spellings of its units. What has a word in its title stands before what only takes it.
"""

from __future__ import annotations

import re
from functools import cache

from assistant.quantity.kind import KINDS
from assistant.quantity.units import UNITS
from assistant.trade.entry import Entry
from assistant.trade.registry import REGISTRY
from assistant.trade.unit import symbol

ALSO = {
    "airflow": "air cfm", "pressure": "static suction vacuum inches", "ac_current": "current draw",
    "capacitance": "mfd cap", "heat_rate": "input output fire", "temperature_difference": "rise delta split",
    "insulation": "megger megohms", "gas_flow": "gas meter", "friction_rate": "friction duct",
    "concentration": "co monoxide", "duration": "time",
}  # fmt: skip
"""The trade's other words for a quantity."""


def find(words: str) -> list[Entry]:
    """The computations in which every word begins some word, the nearest first; all of them for no word.
    Where none has every word, those that have most of them.
    """
    wanted = re.findall(r"[^\s,;]+", words.lower())
    scored = [(*_score(name, wanted), place, name) for place, name in enumerate(REGISTRY)]
    least = min(missed for missed, *_ in scored)
    if wanted and least == len(wanted):
        return []
    return [REGISTRY[name] for missed, _, _, name in sorted(scored) if missed == least]


def _score(name: str, wanted: list[str]) -> tuple[int, int]:
    """(words that are nowhere, how far down the others stand); a whole word is nearer than a beginning."""
    missed = total = 0
    for word in wanted:
        place = next((i for i, field in enumerate(_fields(name)) if _begins(word, field)), None)
        if place is None:
            missed += 1
        else:
            total += 2 * place + (word not in _fields(name)[place])
    return missed, total


def _begins(word: str, field: frozenset[str]) -> bool:
    return any(known.startswith(word) for known in field)


@cache
def _fields(name: str) -> tuple[frozenset[str], ...]:
    """The entry's words: its title, its results, its arguments, its quantities and units, its formula."""
    entry = REGISTRY[name]
    results = (entry.results or {"": entry.result}).values()
    quantities = [*entry.arguments, *results]
    return (
        _split(f"{entry.title} {name}"),
        _split(" ".join(r.words for r in results)) | _of_units(results),
        _split(" ".join(f"{a.name} {a.words}" for a in entry.arguments)),
        _of_units(quantities),
        _split(f"{entry.formula} {entry.source.text}"),
    )


def _of_units(quantities) -> frozenset[str]:
    said = []
    for each in quantities:
        known = KINDS.get(each.kind)
        said += [known.title if known else each.kind, ALSO.get(each.kind, ""), symbol(each.unit)]
        if each.unit in UNITS:
            said += UNITS[each.unit].spellings
    return _split(" ".join(said))


def _split(text: str) -> frozenset[str]:
    plain = text.lower().replace("_", " ")
    return frozenset(re.findall(r"[^\s,;:().]+", plain)) | frozenset(re.findall(r"[a-z0-9]+", plain))
