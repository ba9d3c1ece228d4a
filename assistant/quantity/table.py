"""The units of the trade, each with its exact factor to SI.

Source of the relations: NIST Special Publication 811 (2008), Appendix B, factors for units listed by kind
of quantity (from memory). Units that are defined exactly (inch, foot, pound, standard gravity, International
Table Btu) are kept as exact fractions and the rest is built from them (computed); SP 811 prints the same
factors rounded to seven digits.

Two choices that others make differently:

- `inwc` is the *conventional* inch of water: water of exactly 1000 kg/m3 under standard gravity,
  249.08891 Pa (SP 811 prints 2.490889 E+02). The inch of water at 39.2 F and at 60 F are other units.
- `Btuh`, `kBtuh` and `btuft3` stand on the International Table Btu, 1055.05585262 J; the thermochemical
  Btu is 0.07 % smaller.

A unit's name has no dots, so that it can stand in an expression; its symbol is what a page shows.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

# Exponents of metre, kilogram, second, ampere, kelvin.
Dimension = tuple[int, int, int, int, int]

NUMBER: Dimension = (0, 0, 0, 0, 0)
LENGTH: Dimension = (1, 0, 0, 0, 0)
AREA: Dimension = (2, 0, 0, 0, 0)
VOLUME: Dimension = (3, 0, 0, 0, 0)
DURATION: Dimension = (0, 0, 1, 0, 0)
FREQUENCY: Dimension = (0, 0, -1, 0, 0)
VELOCITY: Dimension = (1, 0, -1, 0, 0)
FLOW: Dimension = (3, 0, -1, 0, 0)
CURRENT: Dimension = (0, 0, 0, 1, 0)
VOLTAGE: Dimension = (2, 1, -3, -1, 0)
RESISTANCE: Dimension = (2, 1, -3, -2, 0)
CAPACITANCE: Dimension = (-2, -1, 4, 2, 0)
POWER: Dimension = (2, 1, -3, 0, 0)
PRESSURE: Dimension = (-1, 1, -2, 0, 0)
ENERGY_PER_VOLUME: Dimension = PRESSURE
TEMPERATURE: Dimension = (0, 0, 0, 0, 1)

INCH = Fraction("0.0254")
FOOT = 12 * INCH
POUND = Fraction("0.45359237")
GRAVITY = Fraction("9.80665")
PSI = POUND * GRAVITY / INCH**2
BTU = Fraction("1055.05585262")
KILO, MEGA, MILLI, MICRO, NANO = (Fraction(10) ** power for power in (3, 6, -3, -6, -9))


@dataclass(frozen=True)
class Unit:
    """One unit: SI value = `factor` x number + `offset` (both exact fractions).

    `decimals` is how far a worked-out number is shown. `stem` and `prefix` name the family, so that the `k`
    of "1.2k" finds `kohm` in a field of ohms. `spellings` are accepted in any case; of those in `strict` the
    first letter's case counts, because m is a thousandth and M a million. Spellings leave out spaces and
    dots.
    """

    name: str
    symbol: str
    dimension: Dimension
    factor: Fraction
    decimals: int
    spellings: tuple[str, ...] = ()
    strict: tuple[str, ...] = ()
    stem: str = ""
    prefix: str = ""
    offset: Fraction = Fraction(0)

    @property
    def is_point(self) -> bool:
        """True for a place on a scale (a temperature in F or C), False for an amount."""
        return self.offset != 0


_WATER = ("wc", "iwc", "iwg", '"wg', *(
    inch + of for inch in ("in", "inch", "inches", '"')
    for of in ("", "wc", "wg", "h2o", "water", "ofwater", "ofwc", "watercolumn", "ofwatercolumn")
))

UNITS: dict[str, Unit] = {unit.name: unit for unit in (
    Unit("V", "V", VOLTAGE, Fraction(1), 1, ("v", "volt", "volts"), stem="V"),
    Unit("mV", "mV", VOLTAGE, MILLI, 1, ("millivolt", "millivolts"), ("mv", "mvolt", "mvolts"), "V", "m"),
    Unit("kV", "kV", VOLTAGE, KILO, 3, ("kv", "kilovolt", "kilovolts"), stem="V", prefix="k"),
    Unit("A", "A", CURRENT, Fraction(1), 2, ("a", "amp", "amps", "ampere", "amperes"), stem="A"),
    Unit("mA", "mA", CURRENT, MILLI, 2, ("milliamp", "milliamps"), ("ma", "mamp", "mamps"), "A", "m"),
    Unit("uA", "µA", CURRENT, MICRO, 2, ("ua", "uamp", "uamps", "microamp", "microamps"), (), "A", "u"),
    Unit("ohm", "ohm", RESISTANCE, Fraction(1), 2, ("ohm", "ohms"), stem="ohm"),
    Unit("kohm", "kohm", RESISTANCE, KILO, 3, ("kohm", "kohms", "kiloohm", "kiloohms", "kilohm", "kilohms"),
         stem="ohm", prefix="k"),
    Unit("Mohm", "Mohm", RESISTANCE, MEGA, 3, ("meg", "megs", "megohm", "megohms", "megaohm"),
         ("Mohm", "Mohms"), "ohm", "M"),
    Unit("Gohm", "Gohm", RESISTANCE, KILO * MEGA, 3, ("gohm", "gohms", "gigohm", "gigohms"),
         stem="ohm", prefix="G"),
    Unit("uF", "µF", CAPACITANCE, MICRO, 2, ("uf", "ufd", "mfd", "microfarad", "microfarads"), (), "F", "u"),
    Unit("nF", "nF", CAPACITANCE, NANO, 1, ("nf", "nanofarad", "nanofarads"), stem="F", prefix="n"),
    Unit("Hz", "Hz", FREQUENCY, Fraction(1), 1, ("hz", "hertz", "cps"), stem="Hz"),
    Unit("kHz", "kHz", FREQUENCY, KILO, 3, ("khz", "kilohertz"), stem="Hz", prefix="k"),
    Unit("W", "W", POWER, Fraction(1), 0, ("w", "watt", "watts"), stem="W"),
    Unit("kW", "kW", POWER, KILO, 2, ("kw", "kilowatt", "kilowatts"), stem="W", prefix="k"),
    # The electric horsepower of motor plates, 746 W exactly; the mechanical one is 745.7 W.
    Unit("hp", "hp", POWER, Fraction(746), 2, ("hp", "horsepower")),
    Unit("VA", "VA", POWER, Fraction(1), 0, ("va", "voltamp", "voltamps"), stem="VA"),
    Unit("kVA", "kVA", POWER, KILO, 2, ("kva",), stem="VA", prefix="k"),
    Unit("Btuh", "Btu/h", POWER, BTU / 3600, 0, ("btuh", "btu/h", "btu/hr", "btuperhour", "btu"), (), "Btuh"),
    Unit("kBtuh", "kBtu/h", POWER, KILO * BTU / 3600, 1, ("kbtuh", "kbtu/h", "kbtu/hr", "mbh", "kbtu"),
         stem="Btuh", prefix="k"),
    Unit("inwc", "in. w.c.", PRESSURE, 1000 * GRAVITY * INCH, 2, _WATER),
    Unit("Pa", "Pa", PRESSURE, Fraction(1), 1, ("pa", "pascal", "pascals"), stem="Pa"),
    Unit("kPa", "kPa", PRESSURE, KILO, 3, ("kpa", "kilopascal", "kilopascals"), stem="Pa", prefix="k"),
    Unit("mbar", "mbar", PRESSURE, Fraction(100), 2, ("mbar", "millibar", "millibars", "hpa")),
    Unit("psi", "psi", PRESSURE, PSI, 2, ("psi", "psig", "lb/in2", "lbs", "pounds")),
    # Gas pressure in ounces per square inch, "4 oz" in the trade.
    Unit("osi", "oz/in2", PRESSURE, PSI / 16, 2, ("osi", "oz", "oz/in2", "ounce", "ounces")),
    Unit("F", "°F", TEMPERATURE, Fraction(5, 9), 1,
         ("f", "degf", "degreesf", "fahrenheit", "degreesfahrenheit"), offset=Fraction("459.67") * 5 / 9),
    Unit("C", "°C", TEMPERATURE, Fraction(1), 1,
         ("c", "degc", "degreesc", "celsius", "degreescelsius"), offset=Fraction("273.15")),
    Unit("Fdiff", "°F", TEMPERATURE, Fraction(5, 9), 1,
         ("fdiff", "f", "degf", "degreesf", "fahrenheit", "fdeg", "fdifference", "degfdifference", "frise",
          "degfrise")),
    Unit("K", "K", TEMPERATURE, Fraction(1), 1,
         ("k", "kelvin", "kelvins", "c", "degc", "degreesc", "celsius", "cdifference", "degcdifference")),
    Unit("s", "s", DURATION, Fraction(1), 1, ("s", "sec", "secs", "second", "seconds")),
    Unit("min", "min", DURATION, Fraction(60), 1, ("m", "min", "mins", "minute", "minutes")),
    Unit("h", "h", DURATION, Fraction(3600), 2, ("h", "hr", "hrs", "hour", "hours")),
    Unit("ppm", "ppm", NUMBER, MICRO, 0, ("ppm", "partspermillion")),
    Unit("percent", "%", NUMBER, Fraction(1, 100), 1, ("%", "percent", "pct")),
    Unit("count", "", NUMBER, Fraction(1), 0, ("count", "counts", "times", "x")),
    Unit("cfm", "cfm", FLOW, FOOT**3 / 60, 0, ("cfm", "ft3/min", "cuft/min", "cubicfeetperminute")),
    Unit("cfh", "cfh", FLOW, FOOT**3 / 3600, 1, ("cfh", "ft3/h", "ft3/hr", "cuft/h", "cubicfeetperhour")),
    Unit("m3h", "m3/h", FLOW, Fraction(1, 3600), 2, ("m3h", "m3/h", "m3/hr")),
    Unit("Lps", "L/s", FLOW, MILLI, 1, ("lps", "l/s")),
    Unit("fpm", "fpm", VELOCITY, FOOT / 60, 0, ("fpm", "ft/min", "feetperminute")),
    Unit("mps", "m/s", VELOCITY, Fraction(1), 2, ("mps", "m/s")),
    Unit("in", "in", LENGTH, INCH, 3, ("in", "inch", "inches", '"')),
    Unit("ft", "ft", LENGTH, FOOT, 2, ("ft", "foot", "feet", "'")),
    Unit("mm", "mm", LENGTH, MILLI, 1, ("mm", "millimeter", "millimeters")),
    Unit("cm", "cm", LENGTH, Fraction(1, 100), 1, ("cm", "centimeter", "centimeters")),
    Unit("m", "m", LENGTH, Fraction(1), 3, ("m", "meter", "meters", "metre", "metres")),
    Unit("ft2", "ft2", AREA, FOOT**2, 2, ("ft2", "sqft", "squarefeet", "squarefoot")),
    Unit("in2", "in2", AREA, INCH**2, 1, ("in2", "sqin", "squareinches", "squareinch")),
    Unit("m2", "m2", AREA, Fraction(1), 3, ("m2", "sqm", "squaremeters")),
    Unit("ft3", "ft3", VOLUME, FOOT**3, 2, ("ft3", "cuft", "cf", "cubicfeet", "cubicfoot")),
    Unit("gal", "gal", VOLUME, 231 * INCH**3, 2, ("gal", "gals", "gallon", "gallons")),
    Unit("L", "L", VOLUME, MILLI, 2, ("l", "liter", "liters", "litre", "litres")),
    Unit("m3", "m3", VOLUME, Fraction(1), 4, ("m3", "cubicmeters")),
    Unit("btuft3", "Btu/ft3", ENERGY_PER_VOLUME, BTU / FOOT**3, 0,
         ("btuft3", "btu/ft3", "btu/cf", "btu/cuft", "btupercubicfoot", "btu")),
    Unit("MJm3", "MJ/m3", ENERGY_PER_VOLUME, MEGA, 2, ("mjm3", "mj/m3")),
    # Revolutions per second, not radians: 1 rpm is 1/60 of one.
    Unit("rpm", "rpm", FREQUENCY, Fraction(1, 60), 0, ("rpm", "rev/min", "r/min", "turnsperminute")),
)}
