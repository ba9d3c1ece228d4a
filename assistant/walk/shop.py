"""What the shop brings to a visit: its instruments, the default for each quantity, what may be opened."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from assistant.quantity.instrument import Instrument
from assistant.quantity.shop import read_instruments


@dataclass(frozen=True)
class Shop:
    """`defaults`: kind -> the instrument that is meant where none is named. `may`: what its people may open,
    None where the shop's file says nothing; `told` is what was answered since, by opening.
    """

    instruments: dict[str, Instrument] = field(default_factory=dict)
    defaults: dict[str, str] = field(default_factory=dict)
    may: tuple[str, ...] | None = None
    told: dict[str, bool] = field(default_factory=dict)

    def may_open(self, name: str) -> bool:
        """Whether its people may open this; as long as nobody has said anything, they may."""
        return self.told.get(name, self.may is None or name in self.may)

    def untold(self, names: tuple[str, ...]) -> tuple[str, ...]:
        """Those of `names` of which nobody has said whether they may be opened."""
        return tuple(name for name in names if self.may is None and name not in self.told)

    def instrument(self, kind: str, named: str | None) -> Instrument | None:
        """The instrument that a reading of `kind` was taken with: the one named if it reads that kind, else
        the shop's default for it; None where nothing is known of it.
        """
        for name in (named, self.defaults.get(kind)):
            known = self.instruments.get(name or "")
            if known is not None and kind in known.covers:
                return known
        return None


def read_shop(data: Mapping) -> tuple[Shop, list[str]]:
    """The shop from plain data (`instruments`, `defaults`, `may`), and a sentence for all that is wrong."""
    instruments, problems = read_instruments(data.get("instruments", []))
    defaults = data.get("defaults", {})
    if not isinstance(defaults, Mapping):
        problems.append("defaults names an instrument for each quantity, like ac_voltage: clamp meter.")
        defaults = {}
    for kind, name in defaults.items():
        if name not in instruments or kind not in instruments[name].covers:
            problems.append(f"defaults: '{name}' is not an instrument of this list that reads {kind}.")
    may = data.get("may")
    if may is not None and not isinstance(may, (list, tuple)):
        problems.append("may lists what the shop's people may open, like [gas, vent].")
        may = None
    known = {kind: name for kind, name in defaults.items() if name in instruments}
    return Shop(instruments, known, None if may is None else tuple(str(word) for word in may)), problems
