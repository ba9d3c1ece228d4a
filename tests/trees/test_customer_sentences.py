"""What the customer reads under a finding or a cause says what was wrong, and never that something was done.

The report prints these sentences also where the visit ends before the repair, waiting for a part: "it was
replaced" would then be a false record. What was done is told from the acts that were answered.
"""

from __future__ import annotations

import re

import pytest
from sound_furnace import shipped

from assistant.tree.model import Finding, Return, Stop

_DONE = (
    "replaced|exchanged|swapped out|mended|repaired|renewed|remade|restored|cleaned|cleared|freed|dried|"
    "set|put|adjusted|turned on|switched on|fitted|installed|reset|rerouted|moved|labelled|tightened|"
    "reconnected|resealed|sealed|closed|opened|checked|tested|tried|measured|looked (at|for|into)|"
    "inspected|verified|shown|told|fixed|corrected"
)
CLAIMS = (
    re.compile(rf"\b(was|were|is|are|has been|have been|got)( (now|then|also|all|both))* ({_DONE})\b",
               re.IGNORECASE),
    re.compile(r"\b(we|the technician|it|they) (have |has )?(found|looked|checked|measured|replaced|cleaned|"
               r"mended|fitted|tested|put|set|renewed|repaired|cleared)\b", re.IGNORECASE),
    re.compile(r"\b(is|are|has|have|does|do|slopes|runs|turns|works|closes|opens|passes)\b[^.,]*"
               r"\b(now|again)\b(?! and then)", re.IGNORECASE),
    re.compile(r"\b(is|are) (clear|fine|good|in order|right|sound)\b", re.IGNORECASE),
)
_STILL_TO_DO = re.compile(r"\buntil\b[^.]*", re.IGNORECASE)


def claims(words: str) -> list[str]:
    """What a sentence says was done. What is waited for ('until it has been looked at') claims nothing."""
    said = _STILL_TO_DO.sub("", words)
    return [match.group() for pattern in CLAIMS if (match := pattern.search(said))]


def told():
    """(address, sentence) of every finding, stop that is one, and cause."""
    for tree in shipped().trees.values():
        for name, step in tree.steps.items():
            if isinstance(step, (Finding, Return, Stop)) and step.customer:
                yield f"{tree.name}.{name}", step.customer


TOLD = dict(told())


@pytest.mark.parametrize("address", TOLD)
def test_a_sentence_for_the_customer_claims_nothing_done(address: str):
    assert claims(TOLD[address]) == []


@pytest.mark.parametrize("address", TOLD)
def test_a_sentence_for_the_customer_begins_and_ends_as_one(address: str):
    words = TOLD[address]
    assert words[0].isupper()
    assert words.endswith(".")


def test_there_are_sentences_of_every_kind():
    kinds = {address.partition(".")[0] == "no_heat" for address in TOLD}
    assert kinds == {True, False}
    assert len(TOLD) > 120


@pytest.mark.parametrize("words", [
    "A safety switch had failed. It was replaced.",
    "A wire had come apart. It was remade and tested.",
    "The drain was clogged. It was cleaned and given the slope it needs.",
    "The gas was too weak. The supply was put right and checked.",
    "The switch had been taken for a light switch. It is labelled now.",
    "The exhaust pipe sagged. It slopes now.",
    "The switch had been turned off. It is on again, and you were shown where it is.",
    "The part had burnt out. We found why before replacing it.",
    "Water had filled the fan. The drain is clear and the fan turns freely.",
    "The thermostat was not asking for heat. It does now.",
    "A pipe was blocked. Every joint has been checked.",
    "The sensor was coated. They have been cleaned.",
])
def test_a_claim_is_seen(words: str):
    assert claims(words)


@pytest.mark.parametrize("words", [
    "The fuse that was in there was the wrong one for this heater.",
    "The heater has to stay off until they have been looked at.",
    "A loose connection let the heater start only now and then.",
    "The heater had been set up for another kind of gas.",
    "The batteries were used up. They want changing every year.",
])
def test_what_was_wrong_is_no_claim(words: str):
    assert claims(words) == []
