"""The quantities a reading can be, and how each may be written.

A kind says in which units its readings are typed (the first is the default, as US technicians use it), what a
display's zero, a minus and an OL mean for it, and whether exchanging the two leads changes the reading.
"""

from __future__ import annotations

from dataclasses import dataclass

from assistant.quantity.table import Dimension
from assistant.quantity.units import UNITS, from_si, show, show_interval, to_si

__all__ = ["KINDS", "UNITS", "Kind", "from_si", "show", "show_interval", "to_si"]

_MINUS = "{Title} has no minus sign. Write it without, or take it again if the display shows one."
_OVER = "OL on {words} means more than this range can show. Turn to a higher range and take it again."
_GAS_OVER = (
    "OL on {words} means more than the instrument can show. Where it is the air that people breathe, "
    "everybody leaves now. Anywhere else take the probe out, let it clear and take it again."
)


@dataclass(frozen=True)
class Kind:
    """One quantity. `units` are the allowed ones, the default first; `si` is what the numbers inside are in.

    `low_is_zero`: a display's 0.00 means from zero up to half a count.
    `symmetric`: exchanging the two points gives the same reading.
    `can_be_negative`: a minus sign is part of the reading.
    `over_range`: OL is a reading, from the top of the range to infinity; elsewhere it means "take it again".
    `fractions`: 3/8 and 1 1/2 are usual ways to write it. `whole`: only whole numbers are.
    `example` is a way to write it; `minus` and `over` say what to do about a minus or an OL that can't be.
    """

    name: str
    title: str
    si: str
    units: tuple[str, ...]
    example: str
    low_is_zero: bool = False
    symmetric: bool = False
    can_be_negative: bool = False
    over_range: bool = False
    fractions: bool = False
    whole: bool = False
    minus: str = _MINUS
    over: str = _OVER

    @property
    def dimension(self) -> Dimension:
        """Exponents of metre, kilogram, second, ampere and kelvin."""
        return UNITS[self.units[0]].dimension

    @property
    def words(self) -> str:
        """The title as it stands inside a sentence: "AC voltage", "insulation resistance"."""
        return self.title if self.title[:2].isupper() else self.title[0].lower() + self.title[1:]

    @property
    def minus_sentence(self) -> str:
        return self.minus.format(Title=self.title)

    @property
    def over_sentence(self) -> str:
        return self.over.format(words=self.words)


_OHMS_MINUS = (
    "{Title} is never negative. A minus on ohms means that there is voltage on what you measure, or that the "
    "leads were nulled wrongly: prove it dead, null the leads, take it again."
)
_VOLTS_OVER = (
    "OL on {words} means that the range is too low. Turn to a higher range and take it again; on the highest "
    "range, take the leads off: it is more than this meter is made for."
)
_CAPACITANCE_OVER = (
    "OL on {words} means that the range is too low, the capacitor is shorted or it still holds a charge. "
    "Discharge it, prove it with volts, and take it again on a higher range."
)
_TEMPERATURE_OVER = (
    "OL on {words} means that the probe is open, not plugged in or beyond its range. Look at the probe and "
    "take it again."
)

# Read across two points, in any order, on a display whose zero hides up to half a count.
_ACROSS = {"low_is_zero": True, "symmetric": True}
_OHMS = {**_ACROSS, "over_range": True, "minus": _OHMS_MINUS}

KINDS: dict[str, Kind] = {kind.name: kind for kind in (
    Kind("ac_voltage", "AC voltage", "V", ("V", "mV", "kV"), "118.4 V", **_ACROSS, over=_VOLTS_OVER),
    Kind("dc_voltage", "DC voltage", "V", ("V", "mV", "kV"), "-0.15 V", can_be_negative=True,
         over=_VOLTS_OVER),
    Kind("resistance", "Resistance", "ohm", ("ohm", "kohm", "Mohm"), "1.2k or OL", **_OHMS),
    Kind("insulation", "Insulation resistance", "ohm", ("Mohm", "kohm", "Gohm", "ohm"), "20 Mohm or OL",
         **_OHMS),
    Kind("ac_current", "AC current", "A", ("A", "mA", "uA"), "4.2 A", **_ACROSS),
    Kind("dc_current", "DC current", "A", ("A", "mA", "uA"), "3.5 uA", can_be_negative=True),
    Kind("capacitance", "Capacitance", "farad", ("uF", "nF"), "7.4 uF", **_ACROSS, over=_CAPACITANCE_OVER),
    Kind("frequency", "Frequency", "Hz", ("Hz", "kHz"), "60 Hz", **_ACROSS),
    Kind("power", "Power", "W", ("W", "kW", "hp"), "450 W", low_is_zero=True, fractions=True),
    Kind("apparent_power", "Apparent power", "VA", ("VA", "kVA"), "40 VA", low_is_zero=True),
    Kind("pressure", "Pressure", "Pa", ("inwc", "Pa", "kPa", "psi", "mbar", "osi"), "-0.15 inwc",
         can_be_negative=True, fractions=True),
    Kind("temperature", "Temperature", "K", ("F", "C"), "72.5 F", can_be_negative=True,
         over=_TEMPERATURE_OVER),
    Kind("temperature_difference", "Temperature difference", "K", ("Fdiff", "K"), "55 F",
         can_be_negative=True, over=_TEMPERATURE_OVER),
    Kind("concentration", "Concentration", "1", ("ppm", "percent"), "35 ppm", low_is_zero=True,
         over=_GAS_OVER),
    Kind("percent", "Percentage", "1", ("percent",), "8.5 %", low_is_zero=True, over=_GAS_OVER),
    Kind("duration", "Duration", "s", ("s", "min", "h"), "90 s or 1:30", fractions=True),
    Kind("heat_rate", "Heat rate", "W", ("Btuh", "kBtuh", "kW", "W"), "80000 Btuh"),
    Kind("airflow", "Airflow", "m3/s", ("cfm", "m3h", "Lps"), "1200 cfm", low_is_zero=True),
    Kind("gas_flow", "Gas flow", "m3/s", ("cfh", "m3h"), "62 cfh"),
    Kind("velocity", "Air velocity", "m/s", ("fpm", "mps"), "700 fpm", low_is_zero=True),
    Kind("length", "Length", "m", ("in", "ft", "mm", "cm", "m"), "3/8 in", fractions=True),
    Kind("area", "Area", "m2", ("ft2", "in2", "m2"), "2.5 ft2"),
    Kind("volume", "Volume", "m3", ("ft3", "gal", "L", "m3"), "1/2 ft3", fractions=True),
    Kind("heating_value", "Heating value", "J/m3", ("btuft3", "MJm3"), "1029 Btu/ft3"),
    Kind("speed", "Speed of turning", "turns/s", ("rpm",), "1075 rpm", low_is_zero=True),
    Kind("count", "Count", "1", ("count",), "3", whole=True),
)}
