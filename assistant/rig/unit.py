"""One furnace and its house as built: its rating plate, its kind, and the numbers it was designed to.

The reference unit is invented: 80,000 Btu/h natural gas, 80 percent, single stage, 120 V split-capacitor
blower. Other units follow from their plates, so that each is consistent in itself. SI throughout.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from random import Random

from assistant.quantity.units import to_si

FEATURES = {
    "kind": ("eighty", "condensing"),
    "zone_panel": ("no", "yes"),
    "float": ("no", "yes"),
    "plug_fuse": ("no", "yes"),
    "blower": ("psc", "electronic", "torque", "level", "data"),
    "aux": ("blower compartment", "vent or spill switch", "fusible link"),
    "meter": ("yes", "no"),
    "panel_cover": ("ours to open", "not ours"),
    "others": ("none", "pump"),
    "feed": ("wired", "cord"),
}
"""What a house can have; the first is how the reference house is built."""
SELDOM = ("feed",)
"""Features that a house has only where it is said: most rules want a furnace wired in, with a switch."""
BLOWER_AMPS, BLOWER_MICROFARADS, BLOWER_RPM, REFERENCE_FLOW = 3.7, 10.0, 1075.0, 0.559
"""Of the reference's blower motor."""
MODULE_AMPS = 5.2
"""Of the same with a module, whose rectifier takes its watts in short peaks."""
BOARD_AMPS, MOST_BREAKER = 0.6, 20.0
PLAIN = {name: values[0] for name, values in FEATURES.items()}


def _si(value: float, unit: str) -> float:
    return to_si(value, unit)


@dataclass(frozen=True)
class Unit:
    """A furnace. `rated_volts` as on its plate; `rise` lowest and highest (K); `stamp` of the pressure
    switch.

    `margin`: vacuum it was designed to have, as a share of the stamp. `limit_opens` in K. `manifold`, inlet
    limits in Pa. `heating_value` in J/m3. `altitude` is sea level.
    """

    name: str = "reference"
    rated_volts: float = 120.0
    frequency: float = 60.0
    input: float = _si(80_000, "Btuh")
    rise: tuple[float, float] = (_si(35, "Fdiff"), _si(65, "Fdiff"))
    static_rated: float = _si(0.5, "inwc")
    inlet: tuple[float, float] = (_si(4.5, "inwc"), _si(10.5, "inwc"))
    manifold: float = _si(3.5, "inwc")
    stamp: float = _si(0.60, "inwc")
    margin: float = 1.58
    limit_opens: float = _si(170, "F")
    inducer_amps: float = 1.5
    igniter_volts: float = 120.0
    dial: float = _si(2, "ft3")
    heating_value: float = _si(1030, "btuft3")
    transformer_va: float = 40.0
    features: Mapping[str, str] = field(default_factory=lambda: dict(PLAIN))

    def __deepcopy__(self, _memo: dict) -> Unit:
        return self

    @property
    def condensing(self) -> bool:
        return self.features["kind"] == "condensing"

    @property
    def efficiency(self) -> float:
        return 0.93 if self.condensing else 0.80

    @property
    def design_rise(self) -> float:
        """The rise that its ducts and blower give when all is well, K: the middle of the plate's range."""
        return sum(self.rise) / 2

    @property
    def design_flow(self) -> float:
        """Air that makes that rise, m3/s of standard air: heat over density, specific heat and rise."""
        return self.input * self.efficiency / (1.2014 * 1005.0 * self.design_rise)

    @property
    def blower_size(self) -> float:
        """Power of its blower motor against the reference's."""
        return self.design_flow / REFERENCE_FLOW

    @property
    def blower_amps(self) -> float:
        """On the blower motor's plate: a little more than its ducts ask of it."""
        amps = BLOWER_AMPS if self.features["blower"] == "psc" else MODULE_AMPS
        return round(amps * self.blower_size, 1)

    def plate(self) -> dict[str, float]:
        """The rating plate, by the names of house.yaml, in SI."""
        return {
            "supply_volts": self.rated_volts,
            "input": self.input,
            "rise_min": self.rise[0],
            "rise_max": self.rise[1],
            "static_rated": self.static_rated,
            "inlet_min": self.inlet[0],
            "inlet_max": self.inlet[1],
            "manifold": self.manifold,
            "pressure_stamp": self.stamp,
            "limit_opens": self.limit_opens,
            "inducer_amps": self.inducer_amps,
            "igniter_volts": self.igniter_volts,
            "meter_dial": self.dial,
            "heating_value": self.heating_value,
            "transformer_va": self.transformer_va,
            "blower_amps": self.blower_amps,
            "blower_rpm": BLOWER_RPM / 60,
            "capacitor_plate": round(BLOWER_MICROFARADS * self.blower_size, 1) * 1e-6,
            "min_circuit": round(1.25 * self.blower_amps + self.inducer_amps + BOARD_AMPS, 1),
            "max_breaker": MOST_BREAKER,
            "panel_va": 40.0,
            "least_air": 0.65 * self.design_flow,
        }


REFERENCE = Unit()
CONDENSING = Unit(
    name="condensing",
    rise=(_si(40, "Fdiff"), _si(70, "Fdiff")),
    stamp=_si(1.0, "inwc"),
    margin=1.5,
    limit_opens=_si(175, "F"),
    features={**PLAIN, "kind": "condensing"},
)


def with_features(unit: Unit, features: Mapping[str, str]) -> Unit:
    """The unit in a house with other features. Raises ValueError for one that a house can't have."""
    for name, value in features.items():
        if value not in FEATURES.get(name, ()):
            raise ValueError(f"a house has no {name} '{value}'")
    wanted = {**unit.features, **features}
    if wanted["kind"] != unit.features["kind"]:
        base = CONDENSING if wanted["kind"] == "condensing" else REFERENCE
        unit = replace(base, name=unit.name)
    return replace(unit, features=wanted)


def varied(unit: Unit, random: Random) -> Unit:
    """Another plate of the same kind: another size, rise, stamp, limit, dial and gas."""
    lowest = random.choice([25, 30, 35, 40, 45])
    condensing = unit.condensing
    return replace(
        unit,
        name=f"{unit.name} {random.randrange(1000):03d}",
        rated_volts=random.choice([115.0, 120.0]),
        input=_si(random.choice([60_000, 80_000, 100_000, 120_000]), "Btuh"),
        rise=(_si(lowest, "Fdiff"), _si(lowest + 30, "Fdiff")),
        stamp=_si(random.choice([0.9, 1.0, 1.2, 1.4] if condensing else [0.5, 0.6, 0.65, 0.8]), "inwc"),
        margin=random.uniform(1.45, 1.7),
        limit_opens=_si(5 * int((105 + 1.3 * (lowest + 15)) / 5), "F"),
        dial=_si(random.choice([0.5, 1, 2]), "ft3"),
        heating_value=_si(random.choice([1000, 1015, 1029, 1040]), "btuft3"),
    )
