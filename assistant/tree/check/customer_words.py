"""The customer pays for something and has a right to know what, in words that need no trade. The sentence on
the first page says what was wrong so that a person who never saw a furnace can repeat it.
"""

from __future__ import annotations

import re

from assistant.house.place import Place
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Finding, Return, Step, Stop, Tree

MEND = "Say in the customer's words what the thing did or did not do, without a word that needs the trade."

TRADE_WORDS = (
    "inducer", "manifold", "plenum", "rollout", "pressure switch", "limit switch", "flame rod", "ohm",
    "ohms", "amp", "amps", "microamp", "microamps", "millivolt", "millivolts", "volt", "volts", "vac",
    "inwc", "static", "transformer", "secondary", "primary", "winding", "windings", "solenoid",
    "terminal", "polarity", "neutral", "condensate", "orifice", "orifices", "harness", "relay",
    "contactor", "capacitor", "psc", "ecm", "r-c", "l-n", "l-g", "flc", "lra", "tesp", "24 v", "120 v",
    "w wire", "call for heat", "lockout", "end switch", "actuator",
)
_TRADE = re.compile(
    r"(?<![\w-])(" + "|".join(re.escape(word) for word in TRADE_WORDS) + r")(?![\w-])", re.IGNORECASE
)


def trade_words(text: str) -> list[str]:
    """The words of the trade that a text uses, each once."""
    return list(dict.fromkeys(match.group().lower() for match in _TRADE.finditer(text)))


def in_tree(_study: Study, tree: Tree) -> Faults:
    """Sentences for the customer that are missing or need the trade."""
    for name, step in tree.steps.items():
        place = step.common.place
        if isinstance(step, Finding):
            yield from _plain(name, step.customer, place)
        elif _tells(tree, step):
            yield from _said(name, step.customer, place)


def _tells(tree: Tree, step: Step) -> bool:
    """Whether a stop or a return says what was found, and so has a sentence of its own."""
    if isinstance(step, Stop):
        return step.finding is not None
    return isinstance(step, Return) and tree.purpose == "cause" and step.outcome == "found"


def _said(name: str, text: str | None, place: Place) -> Faults:
    if text is None:
        yield place, f"'{name}' tells the customer nothing; write customer: with a plain sentence"
    else:
        yield from _plain(name, text, place)


def _plain(name: str, text: str, place: Place) -> Faults:
    words = trade_words(text)
    if words:
        yield place, (f"'{name}' tells the customer about {' and '.join(repr(word) for word in words)}; say "
                      "what it does instead of what the trade calls it")
