"""Writes entries as technicians type them, and knows what each one means before any parser has seen it.

A text is built from a value, so its meaning is exact arithmetic in fractions. Nothing here imports the
program.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from random import Random

from near_misses import near_misses
from typed_units import ABOVE_ZERO_KELVIN, FACTOR, INCH, KINDS, Exact, Written


@dataclass(frozen=True)
class Meant:
    """A reading in SI; `top_unknown` is an OL without its range; `step` None where digits say nothing."""

    low: Fraction
    high: Fraction | None
    step: Fraction | None = None
    top_unknown: bool = False


@dataclass(frozen=True)
class Entry:
    """A typed text and what it means: `outcome` is understood, doubt, refused, blank or anything."""

    text: str
    kind: str
    field: str
    outcome: str
    meant: tuple[Meant, ...] = ()
    form: str = ""


@dataclass(frozen=True)
class _Number:
    text: str
    value: Fraction
    step: Fraction
    thousands: Fraction | None = None  # what it is when its comma is a thousands mark


def in_si(value: Fraction, unit: str) -> Fraction:
    return value * FACTOR[unit] + ABOVE_ZERO_KELVIN.get(unit, 0)


class Grammar:
    """Entries without end from one seed."""

    def __init__(self, seed: int) -> None:
        self.random = Random(seed)
        self.forms = (
            (30, self.number), (16, self.spread), (8, self.fraction), (5, self.clock), (4, self.in_parts),
            (6, self.over_range), (4, self.wrong_unit), (3, self.minus), (3, self.negative_spread),
            (10, self.near_miss), (2, self.blank), (2, self.small_m),
        )  # fmt: skip

    def entry(self) -> Entry:
        """One entry; one in three is a mutation of one."""
        weights = [weight for weight, _ in self.forms]
        form = self.random.choices([make for _, make in self.forms], weights)[0]
        entry = form()
        return self.mutated(entry) if self.random.random() < 1 / 3 else entry

    def kind(self, wanted=lambda written: True) -> tuple[str, Written, str]:
        name = self.random.choice([name for name, written in KINDS.items() if wanted(written)])
        return name, KINDS[name], self.random.choice(KINDS[name].fields)

    def unit(self, written: Written, field_unit: str) -> tuple[str, str]:
        """A unit's text, with the space in front of it, and its name."""
        if self.random.random() < 0.35:
            return "", field_unit
        spelling, unit = self.random.choice([*written.loose.items(), *written.exact.items()])
        if spelling == "k" and written.fields == ("Btuh",):
            unit = "kBtuh"
        if spelling in written.loose and spelling.isascii() and self.random.random() < 0.3:
            spelling = self.random.choice((str.lower, str.upper, str.title))(spelling)
        return self.random.choice(("", " ", " ", "\u00a0", "  ")) + spelling, unit

    def figure(self, most: int = 9999, comma: bool = True) -> _Number:
        """A decimal number in one of the ways that people write it."""
        r = self.random
        whole, places = (
            r.choice((r.randint(0, 9), r.randint(0, 300), r.randint(0, most))),
            r.choice((0, 0, 1, 1, 2, 3, 4)),
        )
        decimals = "".join(r.choices("0123456789", k=places))
        value = Exact(int(f"{whole}{decimals}"), 10**places)
        step = Exact(1, 10**places)
        if not places:
            return _Number(str(whole) + r.choice(("", "", "", ".")), value, step)
        mark = r.choice((".", ".", ",")) if comma else "."
        start = "" if whole == 0 and r.random() < 0.4 else r.choice(("", "", "", "0")) + str(whole)
        thousands = value * 1000 if mark == "," and places == 3 and whole else None
        return _Number(f"{start}{mark}{decimals}", value, step, thousands)

    def number(self) -> Entry:
        name, written, field_unit = self.kind()
        number, (unit_text, unit) = self.figure(), self.unit(written, field_unit)
        sign = (
            self.random.choice(("", "", "+"))
            if not written.signed
            else self.random.choice(("", "-", "−", "+", "- "))
        )
        text = f"{sign}{number.text}{unit_text}"
        factor = -1 if sign[:1] in ("-", "−") else 1
        values = [number.value] if number.thousands is None else [number.thousands, number.value]
        meant = [self.meant(written, factor * value, number.step, unit) for value in values]
        if name == "temperature" and any(one.low < 0 for one in meant):
            meant = [one for one in meant if one.low >= 0]
            outcome = "refused" if not meant else "doubt" if number.thousands is not None else "understood"
            return Entry(self.padded(text), name, field_unit, outcome, tuple(meant), "number")
        if number.thousands is not None:
            return Entry(self.padded(text), name, field_unit, "doubt", tuple(meant), "thousands")
        return Entry(self.padded(text), name, field_unit, "understood", tuple(meant), "number")

    def meant(self, written: Written, value: Fraction, step: Fraction | None, unit: str) -> Meant:
        step_si = None if step is None else step * FACTOR[unit]
        if value == 0 and written.zero_is_half and step is not None:
            return Meant(Exact(0), step_si / 2, step_si)
        return Meant(in_si(value, unit), in_si(value, unit), step_si)

    def spread(self) -> Entry:
        name, written, field_unit = self.kind()
        one, two = self.figure(300, comma=False), self.figure(300, comma=False)
        unit_text, unit = self.unit(written, field_unit)
        apart = self.random.choice(("-", " - ", "–", " to ", " TO ", " – ", "-"))
        inner = unit_text if self.random.random() < 0.2 else ""
        text = f"{one.text}{inner}{apart}{two.text}{unit_text}"
        low, high = sorted((one.value, two.value))
        step = min(one.step, two.step) * FACTOR[unit]
        high_si = step / 2 if high == 0 and written.zero_is_half else in_si(high, unit)
        meant = Meant(Exact(0) if high == 0 and written.zero_is_half else in_si(low, unit), high_si, step)
        return Entry(self.padded(text), name, field_unit, "understood", (meant,), "spread")

    def negative_spread(self) -> Entry:
        name, written, field_unit = self.kind(lambda written: written.signed)
        one, two = self.figure(40, comma=False), self.figure(40, comma=False)
        unit_text, unit = self.unit(written, field_unit)
        step = min(one.step, two.step) * FACTOR[unit]

        def between(first: Fraction, second: Fraction) -> Meant:
            low, high = sorted((first, second))
            return Meant(in_si(low, unit), in_si(high, unit), step)

        both, across = between(-one.value, -two.value), between(-one.value, two.value)
        dash, meant = self.random.choice(
            (
                ("-", (both, across)),
                (" - ", (both, across)),
                (" - -", (both,)),
                ("--", (both,)),
                (" to -", (both,)),
                (" to ", (across,)),
            )
        )
        text = f"-{one.text}{dash}{two.text}{unit_text}"
        outcome = "doubt" if len(meant) > 1 else "understood"
        if name == "temperature":
            meant = tuple(one for one in meant if one.low >= 0)
            outcome = outcome if meant else "refused"
        return Entry(text, name, field_unit, outcome, meant, "negative spread")

    def fraction(self) -> Entry:
        name, written, field_unit = self.kind(lambda written: written.fractions)
        parts = self.random.choice((2, 4, 8, 16, 32, 64, 3))
        over, whole = self.random.randint(1, parts - 1), self.random.randint(0, 12)
        unit_text, unit = self.unit(written, field_unit)
        value = whole + Exact(over, parts)
        fraction = f"{over}/{parts}"
        one_piece = {"1/2": "½", "1/4": "¼", "3/4": "¾", "3/8": "⅜", "1/8": "⅛", "2/3": "⅔"}.get(fraction)
        if one_piece and self.random.random() < 0.5:
            text = f"{whole or ''}{one_piece}{unit_text}"
        else:
            text = f"{whole} {fraction}{unit_text}" if whole else f"{fraction}{unit_text}"
        alone = Meant(in_si(value, unit), in_si(value, unit))
        if whole and self.random.random() < 0.25:
            part = Exact(over, parts)
            meant = (alone, Meant(in_si(part, unit), in_si(Exact(whole), unit), FACTOR[unit]))
            return Entry(
                f"{whole}-{fraction}{unit_text}", name, field_unit, "doubt", meant, "fraction with a dash"
            )
        return Entry(self.padded(text), name, field_unit, "understood", (alone,), "fraction")

    def clock(self) -> Entry:
        field_unit = self.random.choice(("s", "min", "h"))
        first, second, third = (
            self.random.randint(0, 120),
            self.random.randint(0, 59),
            self.random.randint(0, 59),
        )
        if self.random.random() < 0.3:
            value, text, step = 3600 * first + 60 * second + third, f"{first}:{second:02}:{third:02}", 1
        elif field_unit == "h":
            value, text, step = 3600 * first + 60 * second, f"{first}:{second:02}", 60
        else:
            value, text, step = 60 * first + second, f"{first}:{second:02}", 1
        meant = Meant(Exact(value), Exact(value), Exact(step))
        return Entry(self.padded(text), "duration", field_unit, "understood", (meant,), "clock")

    def in_parts(self) -> Entry:
        r = self.random
        if r.random() < 0.5:
            feet, inches = r.randint(1, 12), r.randint(0, 11)
            text = r.choice(("{} ft {} in", "{}' {}\"", "{}ft{}in", "{} feet {} inches")).format(feet, inches)
            meant = Meant((12 * feet + inches) * INCH, (12 * feet + inches) * INCH, INCH)
            return Entry(text, "length", r.choice(("in", "ft")), "understood", (meant,), "in parts")
        minutes, seconds = r.randint(0, 90), r.randint(0, 59)
        text = r.choice(("{} min {} s", "{}m {}s", "{}m{}s", "{} min {} sec")).format(minutes, seconds)
        meant = Meant(Exact(60 * minutes + seconds), Exact(60 * minutes + seconds), Exact(1))
        return Entry(text, "duration", r.choice(("s", "min")), "understood", (meant,), "in parts")

    def over_range(self) -> Entry:
        r = self.random
        sign = r.choice(("OL", "O.L", "o l", "0L", "0.L", ".OL", "ol", "O.L.", "OVER", "overload", "OFL"))
        name, written, field_unit = self.kind()
        if not written.over:
            return Entry(r.choice(("", "-")) + sign, name, field_unit, "refused", (), "OL")
        if r.random() < 0.5:
            return Entry(
                self.padded(sign), name, field_unit, "understood", (Meant(Exact(0), None, None, True),), "OL"
            )
        top = r.choice((40, 60, 50, 400, 4))
        text, unit = r.choice(
            (("M", "Mohm"), (" M", "Mohm"), (" Mohm", "Mohm"), ("k", "kohm"), (" MΩ", "Mohm"))
        )
        lead = r.choice((f"{sign} ", f"{sign} > ", ">", "> ", f"{sign} at "))
        meant = Meant(top * FACTOR[unit], None)
        return Entry(f"{lead}{top}{text}", name, field_unit, "understood", (meant,), "OL with its range")

    def wrong_unit(self) -> Entry:
        name, written, field_unit = self.kind()
        text = f"{self.figure(comma=False).text} {self.random.choice(written.wrong)}"
        return Entry(text, name, field_unit, "refused", (), "wrong unit")

    def minus(self) -> Entry:
        name, written, field_unit = self.kind(lambda written: not written.signed)
        unit_text, _ = self.unit(written, field_unit)
        sign = self.random.choice(("-", "−", "– "))
        return Entry(
            f"{sign}{self.figure(comma=False).text}{unit_text}", name, field_unit, "refused", (), "minus"
        )

    def small_m(self) -> Entry:
        number = self.figure(600, comma=False)
        text = number.text + self.random.choice(("m", " m", " mohm", "mΩ", " m ohm"))
        meant = tuple(
            Meant(Exact(0), number.step * factor / 2)
            if not number.value
            else Meant(number.value * factor, number.value * factor)
            for factor in (Exact(10**6), Exact("1e-3"))
        )
        name, _, field_unit = self.kind(lambda written: written.over)
        return Entry(text, name, field_unit, "doubt", meant, "small m")

    def near_miss(self) -> Entry:
        name, _, field_unit = self.kind()
        text = self.random.choice(near_misses(self.random.randint(1, 999)))
        return Entry(text, name, field_unit, "refused", (), "near miss")

    def blank(self) -> Entry:
        name, _, field_unit = self.kind()
        return Entry(
            self.random.choice(("", " ", "\t", "\u00a0", "\n ", "\u200b", " " * 20000)),
            name,
            field_unit,
            "blank",
            (),
            "blank",
        )

    def mutated(self, entry: Entry) -> Entry:
        """One or two characters inserted, removed, doubled or exchanged: what it means is open."""
        letters = list(entry.text[:200])
        for _ in range(self.random.choice((1, 1, 2))):
            at = self.random.randrange(len(letters) + 1)
            act = self.random.choice(("insert", "remove", "replace", "double", "swap"))
            if act == "insert" or not letters or at == len(letters):
                letters.insert(at, self.random.choice("0123456789.,-+/: kMmuVFo\"'%½٣−€\u200e"))
            elif act == "remove":
                del letters[at]
            elif act == "replace":
                letters[at] = self.random.choice("0123456789.,- kMm")
            elif act == "double":
                letters.insert(at, letters[at])
            elif at:
                letters[at - 1], letters[at] = letters[at], letters[at - 1]
        return Entry("".join(letters), entry.kind, entry.field, "anything", (), "mutation")

    def padded(self, text: str) -> str:
        return self.random.choice(("", "", "", " ", "\t")) + text + self.random.choice(("", "", "", " "))
