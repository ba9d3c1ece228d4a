"""What the words of a page ask to be done beside its act and its reading: a load switched, a wire moved.

As in moment.py nothing but the page's own words is known here. Each is done before the answer; what has to
be put back at once is put back after it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass


@dataclass(frozen=True)
class Beside:
    """`before` the answer is given, `after` it: names of what the simulated house knows how to do."""

    before: tuple[str, ...] = ()
    after: tuple[str, ...] = ()


WORDS: tuple[tuple[str, str, str], ...] = (
    (r"line plug off|plug off the board and out", "board_off", ""),
    (r"wire apart in the junction box|wires apart at the furnace", "splices_apart", ""),
    (r"white off the device", "white_off", ""),
    (r"flex every wire|flex the cable|while it moves|are moved|move the wire", "move_wires", "leave_wires"),
    (r"other loads (?:still )?off|switch them off again", "others_off", ""),
    (
        r"(?:every one|each) of them running|all loads of the branch on|everything (?:still )?on\b"
        r"|all else of the branch on|everything on the branch switched on",
        "others_on",
        "",
    ),
    (r"wheel slid off", "wheel_off", ""),
    (r"with warm air", "warm_air", ""),
    (r"a quart of water over the coil", "pour_coil", "water_over"),
    (r"humidifier's water run by hand", "pour_pad", "water_over"),
    (r"garden hose", "hose_outside", "water_over"),
    (r"minutes of what tripped it", "mode_again", "water_over"),
    (r"highest value begun anew", "hold_anew", ""),
    (r"filter slot shut", "shut_air_side", ""),
)
AFTERWARDS = r"then switch them off again"
STAYS_OFF = r"heat stays off where w is off"
OPENED = r"say that it can't be taken"
"""With `it opened` before it: the reading is none where the device has opened."""


def beside(texts: list[str]) -> Beside:
    """What a page's texts ask for."""
    text = " ".join(texts).lower()
    before = [act for words, act, _ in WORDS if re.search(words, text)]
    after = [undo for words, _, undo in WORDS if undo and re.search(words, text)]
    if re.search(AFTERWARDS, text):
        before = [act for act in before if act != "others_off"]
        after.append("others_off")
    return Beside(tuple(before), tuple(after))


def instead(act: str, texts: list[str], w_off: bool) -> str:
    """The act that is done for the one that a page names: where W is off, a page may leave the heat off."""
    stays = act == "stat_on" and w_off and re.search(STAYS_OFF, " ".join(texts).lower())
    return "fan_again" if stays else act


def on_at_once(texts: list[str]) -> bool:
    """Whether a wait ends as soon as the breaker opens."""
    return any("if it opens, go on at once" in text.lower() for text in texts)


def none_if_opened(texts: list[str]) -> bool:
    """Whether the page wants no reading where the breaker or device has opened."""
    return any(re.search(r"it opened (?:already|meanwhile)\? " + OPENED, text.lower()) for text in texts)
