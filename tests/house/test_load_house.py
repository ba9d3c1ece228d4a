"""The three house files: what they give, and every mistake at its place with what to write instead."""

from pathlib import Path

import pytest

from assistant.house.load import load_house
from assistant.quantity.interval import Interval

GOOD = Path(__file__).parents[1] / "tree" / "examples" / "good"
TEXTS = {name: (GOOD / name).read_bytes() for name in ("house.yaml", "cautions.yaml", "sources.yaml")}


def edited(file: str, old: str, new: str) -> dict[str, bytes]:
    """The good files with one place changed; the place must be there exactly once."""
    text = TEXTS[file].decode()
    assert text.count(old) == 1, (old, text.count(old))
    return {**TEXTS, file: text.replace(old, new).encode()}


def test_the_good_house_has_no_problem():
    vocabulary, problems = load_house(TEXTS)
    assert problems == []
    assert vocabulary.circuits["control"].fed_by == "line"
    assert vocabulary.circuits["line"].pairs[1] == ("plug.line", "ground")
    assert vocabulary.points["ground"].circuit is None
    assert vocabulary.points["ground"].of == "ground"
    assert vocabulary.points["r"].circuit == "control"
    assert vocabulary.seen["service_switch"].values == ("on", "off")
    assert vocabulary.seen["blower.wheel"].title == "blower wheel"
    assert vocabulary.happens["burner.lights"] == "flame"
    assert vocabulary.acts["breaker_off"].sets == {"line": "off"}
    assert vocabulary.acts["leads_off"].undo == "leads_on"
    assert vocabulary.acts["leads_off"].needs == {"line": "dead"}
    assert vocabulary.acts["fit_motor"].fits == "blower_motor"
    assert vocabulary.conditions == {"airflow": ("static", "rise")}
    assert vocabulary.parts["limit"].safety
    assert vocabulary.parts["blower_motor"].costs
    assert not vocabulary.parts["filter"].costs
    assert vocabulary.parts["filter"].title == "filter"
    assert vocabulary.hazards == {"gas_smell": "leave_the_house", "hot_panel": "electrician"}
    assert vocabulary.complaints["no_air"].tree == "no_air"
    assert vocabulary.complaints["tripped_breaker"].tree is None
    assert vocabulary.cautions["line_voltage"].word == "danger"
    assert len(vocabulary.stops["leave_the_house"].lines) == 3
    assert vocabulary.sources["rating_plate"].mark == "read"


def test_plate_values_are_in_si():
    plate = load_house(TEXTS)[0].plate
    assert plate["supply_volts"].span == Interval(120, 240)
    assert plate["supply_volts"].choices == (120, 240)
    # 1 Fdiff is 5/9 K; the conventional inch of water is 249.08891 Pa (NIST SP 811, 2008, appendix B.8).
    assert plate["rise_min"].span.lo == pytest.approx(20 * 5 / 9)
    assert plate["rise_max"].by.hi == pytest.approx(40 * 5 / 9)
    assert plate["static_rated"].span.hi == pytest.approx(249.08891)


def test_a_plate_temperature_has_its_offset_and_its_difference_none():
    texts = edited(
        "house.yaml",
        "  static_rated:",
        "  opens: {quantity: temperature, unit: F, range: [110, 260], where: stamp}\n"
        "  hotter: {quantity: temperature, unit: F, range: [120, 300], over: opens, by: [9, 18], where: x}\n"
        "  static_rated:",
    )
    plate = load_house(texts)[0].plate
    # 110 F = 316.48 K, 9 F difference = 5 K (NIST SP 811, 2008, section B.9).
    assert plate["opens"].span.lo == pytest.approx(316.483, abs=1e-3)
    assert plate["hotter"].by == Interval(5, 10)


HOUSE, CAUTIONS, SOURCES = "house.yaml", "cautions.yaml", "sources.yaml"

ONE_MISTAKE = [
    # circuits
    (
        HOUSE,
        "title: furnace branch circuit\n    make_dead: make_dead",
        "title: furnace branch circuit",
        "missing",
        "'make_dead'",
    ),
    (HOUSE, "fed_by: line", "fed_by: lin", "name", "did you mean 'line'"),
    (HOUSE, "fed_by: line", "fed_by: control", "circle", "control <- control"),
    (HOUSE, "pairs: [[r, c]]", "pairs: [[r, x9]]", "name", "'x9' is no point"),
    (HOUSE, "pairs: [[r, c]]", "pairs: [[r, r]]", "value", "two different points"),
    (HOUSE, "pairs: [[r, c]]", "pairs: [r, c]", None, "a pair is two points"),
    (HOUSE, "pairs: [[r, c]]", "pairs: []", "type", "list of pairs"),
    (HOUSE, "pairs: [[r, c]]", "pairs: [[r, supply.air]]", "value", "'supply.air' is not on it"),
    (HOUSE, "pairs: [[r, c]]", "pears: [[r, c]]", None, "did you mean 'pairs'"),
    # points
    (
        HOUSE,
        "c:             {circuit: control, ",
        "c:             {circuit: contrl, ",
        "name",
        "did you mean 'control'",
    ),
    (
        HOUSE,
        "r:             {circuit: control, ",
        "r:             {circuit: control, of: air, ",
        "field",
        "one of 'circuit'",
    ),
    (HOUSE, "known.line:    {of: room, ", "known.line:    {", "missing", "needs one of 'circuit'"),
    (HOUSE, "known.line:    {of: room, ", "known.line:    {of: cellar, ", "value", "one of gas, air, vent"),
    (
        HOUSE,
        "supply.air:    {of: air, drawing: air",
        "supply.air:    {of: air, drawing: ducts",
        "value",
        "can't be a drawing",
    ),
    (HOUSE, "supply.air:    {of: air, drawing: air, ", "supply.air:    {of: air, ", "missing", "'drawing'"),
    (HOUSE, "  supply.air:  ", "  Supply Air:  ", "name", "write 'supply_air'"),
    # seen, happens
    (HOUSE, "values: [dry, wet]", "values: [dry]", "value", "at least two values"),
    (HOUSE, "values: [dry, wet]", "values: [dry, dry]", "value", "'dry' is written twice"),
    (HOUSE, "values: [dry, wet]", "values: dry", "type", "must be a list"),
    (HOUSE, "[turning, still, humming]", "turning", "type", "list of words"),
    (HOUSE, "burner.lights: flame", "burner.lights:", "missing", "is empty"),
    # acts
    (HOUSE, "{say: Switch the service switch on, line: live}", "{line: live}", "missing", "'say'"),
    (
        HOUSE,
        "{say: Switch the service switch on, line: live}",
        "{say: x, line: dead}",
        "value",
        "write off or live",
    ),
    (
        HOUSE,
        "{say: Switch the service switch on, line: live}",
        "{say: x, lime: live}",
        "field",
        "did you mean 'line'",
    ),
    (HOUSE, "undo: leads_on", "undo: lead_on", "name", "did you mean 'leads_on'"),
    (
        HOUSE,
        "leads_on:    {say: Put the leads back on the motor, ",
        "leads_on:    {say: x, undo: leads_off, ",
        "circle",
        "leads_off -> leads_on",
    ),
    (HOUSE, "fits: blower_motor", "fits: blowermotor", "name", "did you mean 'blower_motor'"),
    (
        HOUSE,
        "fits: blower_motor, needs: {line: dead}",
        "fits: blower_motor, needs: {line: lead}",
        "value",
        "live, off, dead",
    ),
    (
        HOUSE,
        "fits: blower_motor, needs: {line: dead}",
        "fits: blower_motor, needs: {lone: dead}",
        "name",
        "did you mean 'line'",
    ),
    (HOUSE, "Lead the water away from the motor for good}", "x, counts: Two Words}", "name", "tally"),
    # conditions, parts
    (HOUSE, "airflow: [static, rise]", "airflow: rise", "type", "must be a list"),
    (HOUSE, "guards: airflow", "guards: air_flow", "name", "did you mean 'airflow'"),
    (HOUSE, "safety: yes, guards: airflow", "safety: yes", "missing", "'guards'"),
    (HOUSE, "safety: yes", "safety: true", "type", "yes or no"),
    (HOUSE, "filter:       {costs: no}", "filter:       {price: no}", "field", "no field 'price'"),
    # plate
    (HOUSE, "one_of: [120, 240]", "one_of: [240, 120]", "number", "stand in order"),
    (HOUSE, "one_of: [120, 240]", "one_of: [120, 2_40]", "number", "write 240"),
    (HOUSE, "one_of: [120, 240]", "one_of: 120", "type", "list of numbers"),
    (HOUSE, "one_of: [120, 240]", "range: [120, 240], one_of: [120, 240]", "field", "one of 'range'"),
    (HOUSE, "one_of: [120, 240], ", "", "missing", "one of 'range'"),
    (HOUSE, "range: [0.2, 1]", "range: [1, 0.2]", "number", "low one comes first"),
    (HOUSE, "range: [0.2, 1]", "range: [0.2]", "type", "two numbers"),
    (HOUSE, "range: [0.2, 1]", "range: [0.2, 1e999]", "number", "numbers lie between"),
    (HOUSE, "range: [0.2, 1]", "range: [.2, 1]", "number", "write 0.2"),
    (HOUSE, "range: [0.2, 1]", "range: [0,2, 1]", "type", "not 3 items"),
    (HOUSE, "range: [0.2, 1]", "range: [0.2, 017]", "number", "write 17"),
    (HOUSE, "unit: inwc", "unit: in. w.c.", "unit", "write 'inwc'"),
    (HOUSE, "unit: inwc", "unit: V", "unit", "there is inwc, Pa"),
    (HOUSE, "quantity: pressure", "quantity: presure", "name", "did you mean 'pressure'"),
    (HOUSE, "by: [10, 40]", "by: [-1, 40]", "number", "can't be negative"),
    (HOUSE, ", by: [10, 40]", "", "missing", "together"),
    (HOUSE, "over: rise_min", "over: rise_mim", "name", "did you mean 'rise_min'"),
    (HOUSE, "over: rise_min", "over: static_rated", "unit", "a pressure"),
    (HOUSE, "over: rise_min", "over: rise_max", "circle", "rise_max > rise_max"),
    (
        HOUSE,
        "ask: highest static pressure, where: rating plate",
        "ask: highest static pressure",
        "missing",
        "'where'",
    ),
    # hazards, complaints
    (HOUSE, "hot_panel: electrician", "hot_panel: electricien", "name", "did you mean 'electrician'"),
    (HOUSE, "words: The breaker keeps tripping.", "tree: x", "missing", "'words'"),
    (HOUSE, "tree: no_air.yaml", "tree: complaint/no_air.yaml", "name", "without folders"),
    (HOUSE, "circuits:\n", "format: 2\ncircuits:\n", "format", "reads format 1"),
    (HOUSE, "circuits:\n", "extra: x\ncircuits:\n", "field", "no field 'extra'"),
    # cautions, stops, sources
    (CAUTIONS, "word: danger", "word: alarm", "value", "danger, warning, caution, notice"),
    (CAUTIONS, "    short: Keep hands out of the blower.\n", "", "missing", "'short'"),
    (
        CAUTIONS,
        "Keep people away, Call an electrician]",
        "Keep people away, Call, Wait]",
        "value",
        "at most 3",
    ),
    (CAUTIONS, "also: [Write", "alsp: [Write", "field", "did you mean 'also'"),
    (SOURCES, "  mark: read", "  mark: heard", "value", "read, computed, reasoned"),
    (SOURCES, "  place: inside the door\n", "  where: inside the door\n", "field", "no field 'where'"),
]


@pytest.mark.parametrize(("file", "old", "new", "rule", "words"), ONE_MISTAKE)
def test_one_mistake_is_told_where_it_is(file, old, new, rule, words):
    texts = edited(file, old, new)
    problems = load_house(texts)[1]
    if rule is not None:
        assert [p.rule for p in problems] == [rule], [str(p) for p in problems]
    problem = next(p for p in problems if words in p.message)
    assert problem.file == file
    line = texts[file].decode().split("\n")[problem.line - 1]
    first = TEXTS[file].decode().split(old)[0].count("\n") + 1
    assert first - 6 <= problem.line <= first + new.count("\n") + 1
    assert 1 <= problem.column <= len(line) + 1


def test_all_mistakes_of_the_three_files_are_told_at_once():
    texts = {
        "house.yaml": TEXTS["house.yaml"]
        .replace(b"fed_by: line", b"fed_by: lime")
        .replace(b"unit: inwc", b"unit: feet"),
        "cautions.yaml": TEXTS["cautions.yaml"].replace(b"word: danger", b"word: Danger"),
        "sources.yaml": TEXTS["sources.yaml"].replace(b"mark: read", b"mark: Read"),
    }
    problems = load_house(texts)[1]
    assert [(p.file, p.rule) for p in problems] == [
        ("house.yaml", "name"),
        ("house.yaml", "unit"),
        ("cautions.yaml", "value"),
        ("sources.yaml", "value"),
    ]


def test_a_broken_entry_is_told_once_and_not_at_each_use():
    texts = edited(
        "house.yaml",
        "plug.line:     {circuit: line, drawing: line_voltage",
        "plug.line:     {circuit: line, drawing: x",
    )
    assert len(load_house(texts)[1]) == 1


def test_a_file_that_can_not_be_read_leaves_the_others():
    texts = {**TEXTS, "sources.yaml": b"a: [\n"}
    vocabulary, problems = load_house(texts)
    assert [p.file for p in problems] == ["sources.yaml"]
    assert vocabulary.circuits
    assert not vocabulary.sources
    problems = load_house({**TEXTS, "cautions.yaml": b"a: ["})[1]
    assert [p.file for p in problems] == ["cautions.yaml"]  # and not one for each hazard's stop page


@pytest.mark.parametrize(
    ("texts", "words"),
    [
        ({}, "there is no house.yaml"),
        ({"house.yaml": b""}, "empty"),
        ({"house.yaml": b"- a\n"}, "set of fields"),
        ({"house.yaml": b"text\n"}, "set of fields"),
        ({"house.yaml": b"circuits: [a]\n"}, "must be fields"),
        ({"house.yaml": b"happens: x\n"}, "list of events"),
        ({"house.yaml": b"circuits: {line: 5}\n"}, "must be fields"),
    ],
)
def test_files_of_another_shape(texts, words):
    problems = load_house(texts)[1]
    assert any(words in p.message for p in problems)


def test_circuits_that_feed_each_other_in_a_circle_are_told_once():
    texts = edited(
        "house.yaml",
        "    title: furnace branch circuit\n",
        "    title: furnace branch circuit\n    fed_by: control\n",
    )
    problems = load_house(texts)[1]
    assert [p.rule for p in problems] == ["circle"]


def test_a_flood_of_mistakes_is_cut_with_a_count():
    many = b"points:\n" + b"".join(b"  p%d: {circuit: nowhere, drawing: air}\n" % n for n in range(2000))
    problems = load_house({"house.yaml": many})[1]
    assert len(problems) < 600
    assert problems[-1].rule == "more"
    assert "1500 more" in problems[-1].message


def test_titles_are_those_written_and_otherwise_the_names_as_words():
    vocabulary = load_house(TEXTS)[0]
    assert vocabulary.circuits["line"].title == "furnace branch circuit"
    assert vocabulary.points["known.line"].label == "hot slot of an outlet on another circuit"
    assert vocabulary.seen["water.track"].title == "water marks"
    assert vocabulary.plate["rise_min"].title == "lowest rise"
    assert vocabulary.complaints["no_air"].title == "No air"
    assert vocabulary.stops["electrician"].title == "Electrician"
    bare = load_house(
        {
            "house.yaml": b"circuits: {main_line: {make_dead: x, pairs: [[a.b, c]]}}\n"
            b"points: {a.b: {circuit: main_line, drawing: air}, c: {of: ground, drawing: air}}\n"
            b"seen: {some.thing: [x, y]}\nhappens: [fan.runs]\ncomplaints: {no_heat: {words: Cold.}}\n"
        }
    )
    assert bare[1] == []
    assert bare[0].circuits["main_line"].title == "main line"
    assert bare[0].circuits["main_line"].restore is None
    assert bare[0].points["a.b"].label == "a b"
    assert bare[0].seen["some.thing"].title == "some thing"
    assert bare[0].happens == {"fan.runs": "fan runs"}
    assert bare[0].complaints["no_heat"].title == "no heat"


def test_a_circuit_can_not_have_the_name_of_an_acts_field():
    text = (
        b"circuits: {undo: {make_dead: x, pairs: [[a, b]]}}\npoints: {a: {circuit: undo, drawing: air},"
        b" b: {circuit: undo, drawing: air}}\nacts: {one: {say: x, undo: two}, two: {say: y}}\n"
    )
    vocabulary, problems = load_house({"house.yaml": text})
    assert [p.rule for p in problems] == ["name"]
    assert "acts have a field of that name" in problems[0].message
    assert vocabulary.acts["one"].sets == {}
