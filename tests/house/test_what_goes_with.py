"""What goes with the things of a house: words, quantities with their power state and caution, how high a
fault can bring a spot, what a source's numbers are about; and each mistake in them at its place.
"""

import pytest

from assistant.house.around import NEEDS
from assistant.house.load import load_house
from tests.house.test_load_house import HOUSE, TEXTS, edited

TIP = 'static.supply: {of: air, drawing: air, label: "supply plenum, static tip"}'
SOURCES = "sources.yaml"


def tip(more: str) -> dict[str, bytes]:
    return edited(HOUSE, TIP, f"{TIP[:-1]}, {more}}}")


def test_a_spot_says_what_can_be_read_there_and_in_which_state():
    vocabulary, problems = load_house(tip(
        "words: [static tip, \"supply|coil\"], "
        "reads: {pressure: {needs: {line: live}, caution: rotating_parts, up_to: 2 inwc}, length: {}}"))
    assert problems == []
    point = vocabulary.points["static.supply"]
    assert point.words == ("static tip", "supply|coil")
    assert point.reads["pressure"].needs == {"line": "live"}
    assert point.reads["pressure"].caution == ("rotating_parts",)
    # the conventional inch of water is 249.08891 Pa (NIST SP 811, 2008, appendix B.8)
    assert point.reads["pressure"].up_to == pytest.approx(2 * 249.08891)
    assert point.reads["length"].needs == {}
    assert point.reads["length"].up_to is None


def test_an_event_a_thing_and_a_circuit_say_theirs():
    texts = edited(HOUSE, "  burner.lights: flame",
                   "  burner.lights: {say: flame, needs: {line: live}, caution: rotating_parts}")
    texts[HOUSE] = texts[HOUSE].replace(
        b"values: [dry, wet]}",
        b"values: [dry, wet], caution: [rotating_parts], hidden: yes, good: dry}").replace(
        b"    pairs: [[r, c]]", b"    pairs: [[r, c]]\n    up_to: {ac_voltage: 40 V}\n    loads: [r, c]")
    vocabulary, problems = load_house(texts)
    assert problems == []
    assert vocabulary.happens["burner.lights"] == "flame"
    assert vocabulary.watched["burner.lights"].needs == {"line": "live"}
    assert vocabulary.watched["burner.lights"].caution == ("rotating_parts",)
    assert vocabulary.seen["water.track"].caution == ("rotating_parts",)
    assert vocabulary.seen["water.track"].hidden
    assert vocabulary.seen["water.track"].good == ("dry",)
    assert not vocabulary.seen["service_switch"].hidden
    assert vocabulary.circuits["control"].up_to == {"ac_voltage": 40}
    assert vocabulary.circuits["control"].loads == ("r", "c")


def test_a_source_says_what_its_numbers_are_about():
    texts = {**TEXTS, SOURCES: TEXTS[SOURCES].replace(b"mark: read", b"mark: read\n  limits: [pressure]", 1)}
    vocabulary, problems = load_house(texts)
    assert problems == []
    assert ("pressure",) in [source.limits for source in vocabulary.sources.values()]


@pytest.mark.parametrize(("more", "rule", "words"), [
    ("reads: {presure: {}}", "value", "'presure' can't be a quantity"),
    ("reads: {pressure: [live]}", "type", "'pressure' is fields"),
    ("reads: {pressure: {up_to: 2}}", "number", "is no pressure; write a number and its unit"),
    ("reads: {pressure: {up_to: 2 V}}", "number", "is no pressure; write a number and its unit"),
    ("reads: {pressure: {needs: {line: hot}}}", "value", ", ".join(NEEDS)),
    ("reads: {pressure: {needs: {lime: live}}}", "name", "did you mean 'line'"),
    ("reads: {pressure: {caution: rotatin_parts}}", "name", "did you mean 'rotating_parts'"),
    ("reads: {pressure: {top: 2 inwc}}", "field", "has no field 'top'"),
    ("words: {a: b}", "type", "must be a list"),
])
def test_a_mistake_at_a_spot_is_told(more, rule, words):
    problems = load_house(tip(more))[1]
    assert [problem.rule for problem in problems] == [rule], [str(problem) for problem in problems]
    assert words in problems[0].message


@pytest.mark.parametrize(("event", "rule", "words"), [
    ("{needs: {line: live}}", "missing", "'say'"),
    ("{say: flame, caution: fire}", "name", "'fire' is no caution"),
    ("[flame]", "type", "must be one text"),
])
def test_a_mistake_at_an_event_is_told(event, rule, words):
    problems = load_house(edited(HOUSE, "  burner.lights: flame", f"  burner.lights: {event}"))[1]
    assert [problem.rule for problem in problems] == [rule], [str(problem) for problem in problems]
    assert words in problems[0].message
