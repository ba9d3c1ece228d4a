"""Holds one entry's meaning against what the grammar wrote; returns the complaint, or "" when all is well."""

from __future__ import annotations

import math
import re
from decimal import Decimal

from entry_grammar import Entry, Meant

from assistant.quantity.entry import Blank, Doubt, Meaning, NotUnderstood, Understood, understand

OUTCOMES = {Blank: "blank", Understood: "understood", Doubt: "doubt", NotUnderstood: "refused"}
# Digits that belong to a unit's name and not to a number.
IN_UNITS = re.compile(r"h2o|m3h|(?<![a-z])(?:ft|in|m)[23](?![0-9a-z]|[.,][0-9])", re.IGNORECASE)
UNSEEN = dict.fromkeys("\u200b\u200e\u200f\u2060\ufeff", "")
FRACTIONS = str.maketrans(
    {**UNSEEN, "½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅔": " 2/3"}
)


def complaint(entry: Entry) -> str:
    """What is wrong with the program's answer to `entry`."""
    meaning = understand(entry.text, entry.kind, entry.field)
    outcome = OUTCOMES[type(meaning)]
    trouble = sanity(entry, meaning)
    if trouble or entry.outcome == "anything":
        return trouble
    if outcome != entry.outcome:
        return f"{outcome}, but it is {entry.outcome}: {meaning}"
    if isinstance(meaning, Understood):
        return _difference(meaning, entry.meant[0], with_step=True)
    if isinstance(meaning, Doubt):
        return _choices(entry, meaning)
    return ""


def sanity(entry: Entry, meaning: Meaning) -> str:
    """What must hold for every text: no digit lost, sentences are sentences, choices and echoes read back."""
    if isinstance(meaning, NotUnderstood):
        return "" if _is_sentence(meaning.message) else f"no sentence: {meaning.message!r}"
    if isinstance(meaning, Doubt):
        if not meaning.choices or not _is_sentence(meaning.message):
            return f"a doubt without choices or words: {meaning}"
        for choice in meaning.choices:
            if not isinstance(understand(choice, entry.kind, entry.field), Understood):
                return f"the choice {choice!r} is not understood"
    if isinstance(meaning, Understood):
        return _echo_trouble(entry, meaning)
    return ""


def _is_sentence(message: str) -> bool:
    return message[-1:] in (".", "?") and message.isprintable() and len(message) < 300


def _echo_trouble(entry: Entry, meaning: Understood) -> str:
    if not meaning.echo.isprintable():
        return f"the echo can't be shown: {meaning.echo!r}"
    if meaning.over_range != math.isinf(meaning.interval.hi):
        return f"infinite without being over range: {meaning}"
    if meaning.over_range:
        return ""
    said = re.split(r" \(|: ", meaning.echo)[0]
    again = understand(said, entry.kind, entry.field)
    same = isinstance(again, Understood) and again.interval == meaning.interval
    if not same:
        return f"the echo {said!r} reads back as {again}"
    if ":" in entry.text:
        return ""
    typed, echoed = numbers(entry.text), numbers(said)
    if {value for _, value in typed} != {value for _, value in echoed} or not echoed <= typed:
        return f"{sorted(typed)} was typed, {sorted(echoed)} is echoed"
    return ""


def numbers(text: str) -> set[tuple[str, Decimal]]:
    """The numbers of a text as (digits without leading zeros, value), without zeros beside other numbers."""
    text = IN_UNITS.sub(" ", text.translate(FRACTIONS)).replace(",", ".")
    runs = re.findall(r"[0-9.]*[0-9][0-9.]*", text)
    found = {(run.replace(".", "").lstrip("0"), Decimal(run)) for run in runs}
    return {(run, value) for run, value in found if value} or found


def _difference(meaning: Understood, meant: Meant, with_step: bool) -> str:
    high = math.inf if meant.high is None else float(meant.high)
    step = None if meant.step is None else float(meant.step)
    got = (meaning.interval.lo, meaning.interval.hi, meaning.over_range, not meaning.top_known)
    expected = (float(meant.low), high, meant.high is None, meant.top_unknown)
    if got != expected:
        return f"got {got}, expected {expected}"
    if with_step and meaning.resolution_si != step:
        return f"got a step of {meaning.resolution_si}, expected {step}"
    return ""


def _choices(entry: Entry, doubt: Doubt) -> str:
    read = [understand(choice, entry.kind, entry.field) for choice in doubt.choices]
    for meant in entry.meant:
        if all(_difference(meaning, meant, with_step=False) for meaning in read):
            return f"no choice of {doubt.choices} means {meant}"
    for meaning in read:
        if all(_difference(meaning, meant, with_step=False) for meant in entry.meant):
            return f"the choice {meaning.echo!r} is nothing that was written"
    return ""
