"""What the readers of a tree's steps share: the vocabulary, the tree's own names, and how both are referred
to.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from assistant.house.desk import Desk
from assistant.house.fields import Form
from assistant.house.model import Vocabulary
from assistant.house.place import Place
from assistant.house.reader import Text
from assistant.quantity.kind import KINDS
from assistant.tree.limit_units import sort_of, sort_of_kind
from assistant.tree.limits import BadLimit, Limit, evaluate, parse_limit
from assistant.tree.model import Way
from assistant.tree.power import BOUND

MOST_PLATE_VALUES = 3
"""In one limit: for more the order of bands can't be proved in reasonable time."""


@dataclass
class TreeDesk(Desk):
    """`steps`: every step's name. `values`: every reading and compute of the tree with its quantity (None
    where that is not known because of another mistake). `takes_circuit`: `$circuit` may be used.
    """

    vocabulary: Vocabulary = field(default_factory=Vocabulary)
    steps: Mapping[str, Place] = field(default_factory=dict)
    values: Mapping[str, str | None] = field(default_factory=dict)
    takes_circuit: bool = False

    def __post_init__(self) -> None:
        self.names = {
            section: getattr(self.vocabulary, section)
            for section in (
                "circuits",
                "points",
                "seen",
                "happens",
                "openings",
                "acts",
                "conditions",
                "parts",
                "plate",
                "complaints",
                "cautions",
                "stops",
                "sources",
            )
        }
        self.kinds = {name: value.kind for name, value in self.vocabulary.plate.items()}
        self.kinds |= {name: kind for name, kind in self.values.items() if kind}

    def way(self, text: Text | None) -> Way | None:
        """A way on to a step of this tree."""
        if text is None:
            return None
        if text.value in self.steps:
            return Way(text.value, text.place)
        self.problems.unknown(text, "step of this tree", self.steps, "way")
        return None

    def all_known(self, texts: tuple[Text, ...], section: str, what: str) -> tuple[str, ...]:
        names = (self.known(text, section, what) for text in texts)
        return tuple(dict.fromkeys(name for name in names if name))

    def circuit(self, text: Text | None) -> str | None:
        """A circuit's name, or `$circuit` in a procedure that takes it."""
        if text is None or text.value != BOUND:
            return self.known(text, "circuits", "circuit")
        if not self.takes_circuit:
            self.problems.add(
                text.place, "circuit", f"{BOUND} only stands in a procedure that has 'takes: [circuit]'"
            )
        return BOUND

    def shown(self, form: Form) -> tuple[str, ...]:
        """`shows`: readings and computes of this tree."""
        texts = form.texts("shows")
        for text in texts:
            if text.value not in self.values:
                self.problems.unknown(text, "reading or compute of this tree", self.values)
        return tuple(dict.fromkeys(text.value for text in texts))

    def limit(self, text: Text | None, kind: str | None) -> Limit | None:
        """A limit for readings of `kind`: parsed, its names known, its unit right."""
        if text is None:
            return None
        place = text.place
        if text.quoted:
            place = Place(place.file, place.line, place.column + 1)
        try:
            limit = parse_limit(text.value, place)
            plate = [name for name in limit.names if name in self.vocabulary.plate]
            if len(plate) > MOST_PLATE_VALUES:
                self.problems.add(
                    place,
                    "limit",
                    f"{len(plate)} plate values in one limit ({', '.join(plate)}); at most "
                    f"{MOST_PLATE_VALUES}. Use a compute step first",
                )
            self.check_unit(limit, kind)
            if not limit.names and not evaluate(limit, {}, KINDS[kind].units[0] if kind else "count").finite:
                self.problems.add(place, "limit", "this comes to no number: it divides by 0 or is too great")
        except BadLimit as bad:
            bad.at = bad.at if text.one_line else 0
            self.problems.take(bad.problem(place))
            return None
        return limit

    def check_unit(self, limit: Limit, kind: str | None) -> None:
        """Note a limit that is no number of `kind`. Raises BadLimit where its own parts do not agree."""
        if limit.plain or any(name in self.values and self.values[name] is None for name in limit.names):
            return
        sort = sort_of(limit.expression, self.kinds)
        if kind is not None and sort != sort_of_kind(kind):
            self.problems.add(
                limit.place,
                "unit",
                f"this limit is {sort.words}, but the reading is {sort_of_kind(kind).words}",
            )
