"""What three voltages at a plug say about hot, neutral and ground, and two legs about the service."""

from __future__ import annotations

from assistant.trade.entry import Result, Source, argument, computation

SIGNS = Source(
    "circuit theory: each broken or exchanged conductor leaves its own pattern on the three pairs, under "
    "load; healthy limits as used by the trade",
    "reasoned",
)
DEAD = 5.0
"""Under this a low-impedance meter counts as reading nothing on a hot line here, V."""
WORDS = {
    "normal": "hot, neutral and ground as they should be",
    "loaded neutral": "the neutral carries more drop to ground than 3 V: look for a poor splice or a shared "
    "load",
    "no supply": "nothing on any pair: supply off, or hot open",
    "open neutral": "hot to ground is live and hot to neutral is not: the neutral is open, its load side is "
    "hot",
    "open ground": "hot to neutral is live, hot to ground is not and neutral to ground is dead: the ground "
    "is open",
    "reversed": "neutral to ground is live and hot to ground is not: hot and neutral are exchanged",
    "floating": "about half on both sides to ground: the source's neutral is not bonded to ground",
    "unclear": "the three do not fit one pattern; take them again with a low-impedance meter under load",
}


def _pair(name: str, example: float, words: str):
    return argument(name, "ac_voltage", "V", 0, 350, example, None, words)


@computation(
    "What hot, neutral and ground say together",
    takes=(
        _pair("line_neutral", 0, "hot to neutral"),
        _pair("line_ground", 121, "hot to ground"),
        _pair("neutral_ground", 120, "neutral to ground"),
        argument(
            "nominal", "ac_voltage", "V", 100, 280, 120, None, "what line to neutral should be", default=120
        ),
    ),
    gives={"word": Result("words", "", "pattern"), "meaning": Result("words", "", "meaning")},
    formula="{line_neutral}, {line_ground} and {neutral_ground} against the patterns at {nominal}",
    source=SIGNS,
)
def neutral_signature(
    line_neutral: float, line_ground: float, neutral_ground: float, nominal: float
) -> dict[str, str]:
    """Pattern of L-N, L-G, N-G in volts: normal, open neutral, reversed, open ground, floating, no supply,
    unclear.

    Live is 80 to 115 % of nominal, nothing is under 5 V, half is 30 to 70 %. Read with a low-impedance meter,
    the load on. Range: 0 to 350 V. Raises ArgumentError outside. Source: circuit theory (reasoned), limits
    common practice.
    """

    def live(volts: float) -> bool:
        return 0.80 * nominal <= volts <= 1.15 * nominal

    def half(volts: float) -> bool:
        return 0.30 * nominal <= volts <= 0.70 * nominal

    ln, lg, ng = line_neutral, line_ground, neutral_ground
    if max(ln, lg, ng) < DEAD:
        word = "no supply"
    elif live(ln) and live(lg) and ng < DEAD:
        word = "normal" if ng <= 3 else "loaded neutral"
    elif ln < DEAD and live(lg) and live(ng):
        word = "open neutral"
    elif live(ln) and lg < DEAD and live(ng):
        word = "reversed"
    elif live(ln) and half(lg) and half(ng):
        word = "floating"
    elif live(ln) and lg < DEAD and ng < DEAD:
        word = "open ground"
    else:
        word = "unclear"
    return {"word": word, "meaning": WORDS[word]}


@computation(
    "Two legs of a service and what lies across them",
    takes=(
        _pair("leg_1", 121, "line 1 to neutral"),
        _pair("leg_2", 119, "line 2 to neutral"),
        argument("across", "ac_voltage", "V", 0, 700, 240, None, "line 1 to line 2"),
    ),
    gives={
        "word": Result("words", "", "judgement"),
        "difference": Result("ac_voltage", "V", "difference of the legs"),
        "gap": Result("ac_voltage", "V", "sum less across"),
    },
    formula="{leg_1} + {leg_2} - {across}",
    source=SIGNS,
)
def split_phase(leg_1: float, leg_2: float, across: float) -> dict[str, float | str]:
    """leg_1 + leg_2 = across holds with any neutral; legs more than 8 V apart point to an open or poor one.

    Volts.

    Range: 0 to 350 V a leg. Raises ArgumentError outside. Source: circuit theory (reasoned); 4 and 8 V common
    practice.
    """
    difference, gap = abs(leg_1 - leg_2), leg_1 + leg_2 - across
    if abs(gap) > 0.05 * max(across, 1.0):
        word = "the three do not add up: take them again"
    elif difference > 8:
        word = "suspect the neutral: stop, run no electronics, call the utility or an electrician"
    else:
        word = "usual" if difference <= 4 else "uneven: watch both legs while a load starts"
    return {"word": word, "difference": difference, "gap": gap}
