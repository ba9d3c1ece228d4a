"""A step that says how long to wait also counts it: the wait is shown, a short one is written down, and what
is read after it can be trusted. One that says "wait a minute" and counts nothing is passed over with a tap,
and a limit that has not cooled or a module that has not discharged is read as a fault. One that counts and
does not say it leaves whoever hears it read aloud, or has it on paper, without the time.
"""

from __future__ import annotations

import re

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Do, Tree

MEND = "Write wait: with the time that the step says, such as 5 min, or say another time."

_NUMBERS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "ten": 10, "fifteen": 15,
            "twenty": 20, "thirty": 30, "half an": 0.5, "half a": 0.5, "quarter of an": 0.25}
_UNITS = {"second": 1, "minute": 60, "hour": 3600}
_TIME = re.compile(rf"\b(half an?|quarter of an|{'|'.join(_NUMBERS)}|\d+)[ -](second|minute|hour)s?\b",
                   re.IGNORECASE)


def in_tree(_study: Study, tree: Tree) -> Faults:
    """Things to do that say a time and wait for none or for another, or that wait and say no time."""
    for name, step in tree.steps.items():
        if not isinstance(step, Do):
            continue
        told = _told(step.ask)
        if told and step.wait is None:
            yield step.common.place, (f"'{name}' says '{step.ask}' and counts no time; write wait: "
                                      f"{max(told):g} s")
        elif step.wait is not None and not told:
            yield step.common.place, (f"'{name}' waits {step.wait:g} s and '{step.ask}' says no time; say "
                                      "how long, in words or figures")
        elif told and step.wait not in told:
            yield step.common.place, (f"'{name}' says '{step.ask}' and waits {step.wait:g} s; write the same "
                                      "time in both")


def _told(text: str) -> list[float]:
    """The times that a text says, in seconds."""
    return [_number(match.group(1)) * _UNITS[match.group(2).lower()] for match in _TIME.finditer(text)]


def _number(word: str) -> float:
    return float(word) if word.isdigit() else _NUMBERS[word.lower()]
