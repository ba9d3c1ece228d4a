"""Texts that look like a reading and are none, in any quantity: each must be refused with a sentence."""

from __future__ import annotations


def near_misses(n: int) -> tuple[str, ...]:
    """All near-misses around the number `n`, from 1 to 999."""
    return (
        # Powers of ten, two decimal marks, thousands marks that leave no doubt and are refused all the same.
        f"{n}e3", f"{n}E-2", f"{n}.{n}.{n}", f"{n},{n},{n}", f"1,{n:03},{n:03}", f"1,{n:03}.5", f"1.{n:03},5",
        f"1'{n:03}", f"{n}_000", f"0x{n}",
        # More than one number, tolerances, comparisons, sums.
        f"{n} {n}", f"{n}\n{n}", f"{n} +/- 2", f"{n}±2", f"~{n}", f"<{n}", f"={n}", f"{n}?", f"{n}+{n}",
        f"${n}", f"{n}-{n}-{n}", f"--{n}", f"+-{n}", f"{n}+", f"{n} to", f"to {n}",
        f"({n})", f"{n}%%", f"{n} V V",
        # Fractions and times that are none.
        f"{n}/{n}/{n}", f"{n}/0", f"{n}/240", "1/7", f"{n}:{n}:{n}:{n}", "1:75", "1:5",
        # Marks and words alone.
        "-", "+", ".", ",", "/", ":", "to", " to ", "- to -", "V", "ohm", "°", "L1",
        "nan", "NaN", "inf", "-inf", "Infinity", "open", "none", "n/a", "true",
        # Digits of other scripts, signs that are no text.
        "٣٤", f"{n}٣", "１２０", "四", "Ⅳ", "5²", "\x00", f"{n}\x00", "\ud800", "💧", f"{n} 💧",
        # Too many digits.
        "1" * 16, f"{n}" + "0" * 20, f"{n}.{'0' * 16}", "9" * 400, "1" * 5000,
        # What is typed to break a program.
        f"${{{n}}}", "__import__('os')", f"{n}; drop", "'; --", "{0}", "%s",
    )  # fmt: skip
