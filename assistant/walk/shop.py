"""What the shop brings to a visit: its instruments, the default for each quantity, what may be opened."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from assistant.quantity.instrument import Instrument
from assistant.quantity.shop import read_instruments


@dataclass(frozen=True)
class Shop:
    """`defaults`: kind -> the instrument that is meant where none is named. `may`: what may be opened."""

    instruments: dict[str, Instrument] = field(default_factory=dict)
    defaults: dict[str, str] = field(default_factory=dict)
    may: tuple[str, ...] = ()

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
    may = data.get("may", ())
    if not isinstance(may, (list, tuple)):
        problems.append("may lists what the shop's people may open, like [gas, vent].")
        may = ()
    known = {kind: name for kind, name in defaults.items() if name in instruments}
    return Shop(instruments, known, tuple(str(word) for word in may)), problems
