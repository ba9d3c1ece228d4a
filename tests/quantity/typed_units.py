"""How readings are typed, kind by kind, and what one of each unit is: the grammar's own tables.

Factors are worked out (computed) from the definitions of inch, pound, standard gravity and International
Table Btu as NIST Special Publication 811 (2008), Appendix B, gives them (from memory).
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

Exact = Fraction
INCH, GRAVITY = Exact("0.0254"), Exact("9.80665")
PSI = Exact("0.45359237") * GRAVITY / INCH**2
BTU_PER_HOUR = Exact("1055.05585262") / 3600
FOOT3 = Exact("0.3048") ** 3
FACTOR = {
    "V": Exact(1), "mV": Exact("1e-3"), "kV": Exact(1000), "A": Exact(1), "mA": Exact("1e-3"),
    "uA": Exact("1e-6"), "ohm": Exact(1), "kohm": Exact(1000), "Mohm": Exact(10**6), "Gohm": Exact(10**9),
    "uF": Exact("1e-6"), "Hz": Exact(1), "W": Exact(1), "kW": Exact(1000), "inwc": 1000 * GRAVITY * INCH,
    "Pa": Exact(1), "kPa": Exact(1000), "psi": PSI, "osi": PSI / 16, "F": Exact(5, 9), "C": Exact(1),
    "Fdiff": Exact(5, 9), "K": Exact(1), "ppm": Exact("1e-6"), "percent": Exact("1e-2"), "s": Exact(1),
    "min": Exact(60), "h": Exact(3600), "Btuh": BTU_PER_HOUR, "kBtuh": 1000 * BTU_PER_HOUR,
    "cfm": FOOT3 / 60, "cfh": FOOT3 / 3600, "in": INCH, "ft": 12 * INCH, "mm": Exact("1e-3"),
    "rpm": Exact(1, 60),
}  # fmt: skip
ABOVE_ZERO_KELVIN = {"F": Exact("459.67") * 5 / 9, "C": Exact("273.15")}


@dataclass(frozen=True)
class Written:
    """How a kind is typed: its field units, spellings (in any case, in exact case), and what doesn't fit."""

    fields: tuple[str, ...]
    loose: dict[str, str]
    exact: dict[str, str] = field(default_factory=dict)
    wrong: tuple[str, ...] = ("psi", "V")
    signed: bool = False
    zero_is_half: bool = False
    fractions: bool = False
    over: bool = False


_PRESSURE = {
    "in.w.c.": "inwc",
    "in. w.c.": "inwc",
    "inwc": "inwc",
    "in wc": "inwc",
    '"wc': "inwc",
    '"w.c.': "inwc",
    "inh2o": "inwc",
    '"': "inwc",
    "″ wc": "inwc",
    "Pa": "Pa",
    "kPa": "kPa",
    "psi": "psi",
    "oz": "osi",
}
_OHMS = {
    "ohm": "ohm",
    "ohms": "ohm",
    "\u2126": "ohm",
    "\u03a9": "ohm",
    "kohm": "kohm",
    "kΩ": "kohm",
    "k ohm": "kohm",
    "meg": "Mohm",
}
_BIG_OHMS = {"Mohm": "Mohm", "M\u2126": "Mohm", "M\u03a9": "Mohm", "M ohm": "Mohm", "M": "Mohm", "k": "kohm"}
KINDS = {
    "ac_voltage": Written(
        ("V", "mV"),
        {"V": "V", "volts": "V", "Vac": "V", "V AC": "V", "kV": "kV"},
        {"mV": "mV", "m": "mV", "mVac": "mV"},
        ("psi", "A", "ohm", "Vdc", "F"),
        zero_is_half=True,
    ),
    "dc_voltage": Written(
        ("V", "mV"),
        {"V": "V", "Vdc": "V", "V DC": "V"},
        {"mV": "mV", "m": "mV", "mVDC": "mV"},
        ("psi", "uA", "ohm", "Vac"),
        signed=True,
    ),
    "resistance": Written(("ohm", "kohm"), _OHMS, _BIG_OHMS, ("V", "in", "uF"), zero_is_half=True, over=True),
    "insulation": Written(
        ("Mohm",), _OHMS, {**_BIG_OHMS, "Gohm": "Gohm"}, ("V", "psi"), zero_is_half=True, over=True
    ),
    "ac_current": Written(
        ("A",),
        {"A": "A", "amps": "A", "Aac": "A"},
        {"mA": "mA", "ma": "mA", "m": "mA"},
        ("V", "mV", "Adc", "W"),
        zero_is_half=True,
    ),
    "dc_current": Written(
        ("uA", "mA"),
        {"uA": "uA", "\u00b5A": "uA", "\u03bcA": "uA", "A": "A", "u": "uA"},
        {"mA": "mA", "ma": "mA", "m": "mA"},
        ("V", "uF", "mV"),
        signed=True,
    ),
    "capacitance": Written(
        ("uF",),
        {"uF": "uF", "\u00b5F": "uF", "\u03bcF": "uF", "mfd": "uF", "u": "uF"},
        wrong=("V", "ohm", "F", "uA"),
        zero_is_half=True,
    ),
    "frequency": Written(("Hz",), {"Hz": "Hz", "hertz": "Hz"}, wrong=("V", "rpm", "s"), zero_is_half=True),
    "power": Written(
        ("W",),
        {"W": "W", "watts": "W", "kW": "kW", "k": "kW"},
        wrong=("VA", "V"),
        zero_is_half=True,
        fractions=True,
    ),
    "pressure": Written(
        ("inwc", "Pa"), _PRESSURE, wrong=("V", "cfm", "F", "mm"), signed=True, fractions=True
    ),
    "temperature": Written(
        ("F", "C"),
        {"F": "F", "°F": "F", "degF": "F", "deg F": "F", "℉": "F", "C": "C", "°C": "C"},
        wrong=("V", "psi", "K"),
        signed=True,
    ),
    "temperature_difference": Written(
        ("Fdiff",),
        {"F": "Fdiff", "°F": "Fdiff", "Fdiff": "Fdiff", "K": "K", "C": "K"},
        wrong=("V", "psi", "%"),
        signed=True,
    ),
    "concentration": Written(("ppm",), {"ppm": "ppm", "%": "percent"}, wrong=("V", "F"), zero_is_half=True),
    "percent": Written(
        ("percent",),
        {"%": "percent", "percent": "percent", "pct": "percent"},
        wrong=("V", "F", "ppm"),
        zero_is_half=True,
    ),
    "duration": Written(
        ("s", "min"),
        {"s": "s", "sec": "s", "min": "min", "h": "h", "hr": "h"},
        wrong=("V", "Hz"),
        fractions=True,
    ),
    "heat_rate": Written(
        ("Btuh",),
        {"Btuh": "Btuh", "Btu/h": "Btuh", "MBH": "kBtuh", "kW": "kW", "k": "kBtuh"},
        wrong=("V", "VA", "cfm"),
    ),
    "airflow": Written(
        ("cfm",), {"cfm": "cfm", "ft3/min": "cfm"}, wrong=("V", "cfh", "fpm"), zero_is_half=True
    ),
    "length": Written(
        ("in", "ft"),
        {"in": "in", "inch": "in", '"': "in", "”": "in", "ft": "ft", "'": "ft", "mm": "mm"},
        wrong=("V", "ft2", "psi"),
        fractions=True,
    ),
    "speed": Written(("rpm",), {"rpm": "rpm"}, wrong=("Hz", "fpm"), zero_is_half=True),
}
