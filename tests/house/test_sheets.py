"""The sheets around the walk, the healthy readings and the plan for the night, as the shop writes them."""

import pytest

from assistant.house.load import load_house

HOUSE = """format: 1
points:
  room.air: {of: room, drawing: air, label: room air}
sheets:
  triage:
    title: On the telephone
    mark: common practice
    ask:
      smell: {words: Gas?, choices: ["no", "yes"], leave: {"yes": out}}
  before:
    mark: common practice
    ask:
      room: {words: Room, quantity: concentration, unit: ppm, at: [room.air], over: 70, over_page: out}
baseline:
  room: {words: Room, quantity: concentration, unit: ppm, at: [room.air]}
spread: {mark: from memory, pressure: 20}
"""
CAUTIONS = """stops:
  out: {title: Out, lines: [Everybody out.], no_heat: yes}
tonight:
  title: No heat tonight
  mark: common practice
  people: [Somewhere warm.]
  heat: [One to a circuit.]
  freeze: [Taps running.]
"""


def load(house=HOUSE, cautions=CAUTIONS):
    return load_house({"house.yaml": house.encode(), "cautions.yaml": cautions.encode()})


def test_a_shop_can_write_its_own():
    """Everything that stands in the two files is read."""
    vocabulary, problems = load()
    assert problems == []
    assert vocabulary.sheets["triage"].questions["smell"].leave == {"yes": "out"}
    assert vocabulary.sheets["before"].title == "before"
    assert vocabulary.sheets["before"].questions["room"].over == pytest.approx(70e-6)
    assert vocabulary.baseline["room"].at == ("room.air",)
    assert vocabulary.spread == {"pressure": pytest.approx(0.2)} and vocabulary.spread_mark == "from memory"
    assert vocabulary.tonight.freeze == ("Taps running.",) and vocabulary.stops["out"].no_heat


def test_a_house_without_them_is_sound():
    """As older trees are."""
    vocabulary, problems = load_house({"house.yaml": b"format: 1\n"})
    assert problems == [] and not vocabulary.sheets and vocabulary.tonight is None


@pytest.mark.parametrize(
    ("file", "old", "new", "words"),
    [
        ("house", "  triage:", "  weather:", "no page for a sheet 'weather'"),
        ("house", "title: On the telephone\n    mark: common practice", "title: On the telephone", "mark"),
        ("house", 'leave: {"yes": out}', 'leave: {"maybe": out}', "no choice of this question"),
        ("house", 'leave: {"yes": out}', 'leave: {"yes": ouch}', "'ouch' is no stop page"),
        ("house", 'leave: {"yes": out}', 'leave: {"yes": [out]}', "must be one text"),
        ("house", "over: 70, over_page: out", "over: 70", "over_page"),
        ("house", "unit: ppm, at: [room.air], over: 70", "unit: V, at: [room.air], over: 70", "'V'"),
        ("house", "{words: Gas?, ", "{", "needs the field 'words'"),
        ("house", "pressure: 20", "pressure: 200", "percentage"),
        ("house", "pressure: 20", "colour: 20", "no quantity"),
        ("house", "{mark: from memory, pressure", "{pressure", "mark"),
        ("house", "baseline:\n  room: {words: Room, ", "baseline:\n  room: {words: Room, at: [moon], ", "at"),
        ("cautions", "  heat: [One to a circuit.]\n", "", "heat"),
        ("cautions", "no_heat: yes", "no_heat: perhaps", "yes or no"),
    ],
)
def test_a_mistake_gets_its_place_and_a_sentence(file, old, new, words):
    """And nothing raises."""
    texts = {"house": HOUSE, "cautions": CAUTIONS}
    assert texts[file].count(old) == 1
    texts[file] = texts[file].replace(old, new)
    _, problems = load(texts["house"], texts["cautions"])
    assert problems and any(words in str(problem) for problem in problems), [str(p) for p in problems]
    assert all(problem.line >= 1 for problem in problems)
