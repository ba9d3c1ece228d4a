"""Loading a tree: what a good file gives, and every mistake at its place with what to write instead."""


import pytest

from assistant.tree.library import read_folder
from assistant.tree.load import load_tree
from assistant.tree.model import Compute, Finding, Measure, Return, Stop, Watch, ways_of
from tests.tree.mistakes import AIR, GOOD, MISTAKES

LIBRARY = read_folder(GOOD)
VOCABULARY = LIBRARY.vocabulary


def load(text: str, file: str = AIR):
    return load_tree(text.encode(), file, VOCABULARY)


def with_steps(steps: str, top: str = "purpose: complaint") -> str:
    return f"format: 1\n{top}\ntitle: A tree\nstart: first\nsteps:\n" + steps + "  end: {hand_over: no_air}\n"


def problems_of(steps: str, **more):
    return [str(problem) for problem in load(with_steps(steps, **more))[1]]


def test_the_good_trees_have_no_problem():
    assert LIBRARY.problems == ()
    assert sorted(LIBRARY.trees) == ["blower_runs", "make_dead", "no_air", "restore_line", "water"]


def test_a_measure_keeps_all_that_was_written():
    _, step = LIBRARY.step("no_air.volts")
    assert isinstance(step, Measure)
    assert not step.group
    reading = step.readings[0]
    assert (reading.name, reading.kind, reading.unit) == ("plug_volts", "ac_voltage", "V")
    assert reading.at == step.common.at == ("plug.line", "plug.neutral")
    assert reading.meter == "low impedance"
    assert reading.plausible == (0.0, 300.0)
    assert reading.safe.under.text == "1.25 * supply_volts"
    assert reading.safe.over is None
    assert reading.safe.stop == "electrician"
    assert [band.label for band in reading.bands] == ["no supply", "low supply", "supplied"]
    assert [band.then.to for band in reading.bands] == ["no_supply", "no_supply", "lift"]
    assert [band.normal for band in reading.bands] == [False, False, True]
    assert reading.bands[-1].under is None
    assert reading.source == "motor_tolerance"
    assert (step.close.to, step.cannot.to, step.then) == ("no_supply", "unproved", None)
    assert step.common.needs == {"line": "live"}
    assert step.common.caution == ("line_voltage", "rotating_parts")
    assert step.common.minutes == 2.0
    assert len(step.common.how) == 2
    assert step.common.teach.startswith("A load")
    assert ("cannot", step.cannot) in ways_of(step)


def test_places_are_those_of_the_file():
    text = (GOOD / AIR).read_text(encoding="utf-8").split("\n")
    _, step = LIBRARY.step("no_air.volts")
    assert text[step.common.place.line - 1] == "  volts:"
    band = step.readings[0].bands[1]
    line = text[band.under.place.line - 1]
    assert line[band.under.place.column - 1 :].startswith("0.90 * supply_volts")
    assert line[band.then.place.column - 1 :].startswith("no_supply}")


def test_a_group_keeps_its_readings_in_order_and_inherits_the_source():
    _, step = LIBRARY.step("make_dead.proof")
    assert step.group
    assert [reading.name for reading in step.readings] == [
        "known_before",
        "line_neutral",
        "line_ground",
        "neutral_ground",
        "control",
        "known_after",
    ]
    assert {reading.source for reading in step.readings} == {"dead_limit"}
    assert [reading.known_live for reading in step.readings] == [True, False, False, False, False, True]
    assert step.verifies == ("line", "control")
    assert step.common.needs == {"$circuit": "off"}
    assert step.then.to == "done"
    assert step.readings[1].bands[0].then is None


def test_the_other_verbs():
    watch = LIBRARY.step("no_air.cycle")[1]
    assert isinstance(watch, Watch)
    assert watch.within == 150.0
    assert watch.events == ("inducer.runs", "burner.lights", "blower.runs")
    assert watch.missing["blower.runs"].to == "volts"
    assert [reading.name for reading in watch.readings] == ["t_supply", "t_return"]
    compute = LIBRARY.step("no_air.rise")[1]
    assert isinstance(compute, Compute)
    assert (compute.kind, compute.unit, compute.result) == ("temperature_difference", "Fdiff", "rise")
    assert compute.arguments == {"supply": "t_supply", "return_air": "t_return"}
    do = LIBRARY.step("no_air.lift")[1]
    assert (do.act, do.wait) == ("leads_off", 60.0)
    motor = LIBRARY.step("no_air.motor")[1]
    assert isinstance(motor, Finding)
    assert (motor.fault, motor.condemns, motor.causes, motor.proof) == (
        True,
        "blower_motor",
        ("water",),
        "blower_runs",
    )
    works = LIBRARY.step("no_air.works")[1]
    assert not works.fault
    assert works.reason
    wet = LIBRARY.step("no_air.wet")[1]
    assert isinstance(wet, Stop)
    assert (wet.page, wet.finding, wet.shows) == ("electrician", "Winding shorted", ("winding_ohms",))
    found = LIBRARY.step("water.found")[1]
    assert isinstance(found, Return)
    assert (found.outcome, found.repair) == ("found", ("lead_water_away",))


@pytest.mark.parametrize("mistake", MISTAKES, ids=lambda m: m.new.strip()[-60:])
def test_a_mistake_is_told_where_it_is(mistake):
    tree, problems = load(mistake.text, mistake.file)
    assert tree is None
    found = [p for p in problems if p.rule == mistake.rule and mistake.words in p.message]
    assert found, [str(p) for p in problems]
    assert any(p.line in mistake.lines for p in found)
    lines = mistake.text.split("\n")
    for problem in problems:
        assert problem.file == mistake.file
        assert 1 <= problem.column <= len(lines[problem.line - 1]) + 1


ALONE = {"name", "way", "value", "number", "unit", "band", "limit", "verb", "format", "circuit", "choice"}


@pytest.mark.parametrize(
    "mistake", [m for m in MISTAKES if m.rule in ALONE], ids=lambda m: m.new.strip()[-60:]
)
def test_one_mistake_does_not_drag_others_along(mistake):
    problems = load(mistake.text, mistake.file)[1]
    used_elsewhere = {"name: Static", "name: static_rated", "name: rpm", "name: t_supply"}
    most = 3 if mistake.new.strip() in used_elsewhere or "../" in mistake.new else 2
    assert len(problems) <= most, [str(p) for p in problems]


def test_all_mistakes_of_a_file_are_told_at_once():
    text = (GOOD / AIR).read_text(encoding="utf-8")
    for old, new in (
        ("purpose: complaint", "purpose: x"),
        ("sees: service_switch", "sees: x9"),
        ("within: 150 s", "within: x"),
        ("unit: inwc", "unit: x"),
        ("condemns: blower_motor", "condemns: x"),
        ("act: leads_off", "act: x9"),
    ):
        assert text.count(old) == 1
        text = text.replace(old, new)
    problems = load(text)[1]
    assert len(problems) == 6
    assert problems == sorted(problems)


class TestLimitsAndNames:
    def test_a_limit_may_name_a_reading_of_a_later_line(self):
        steps = (
            "  first: {measure: A, quantity: ac_voltage, unit: V, name: one,"
            " bands: [{under: two / 2, is: low, then: second}, {is: high, then: second}]}\n"
            "  second: {measure: B, quantity: ac_voltage, unit: V, name: two, bands: [{is: x, then: end}]}\n"
        )
        assert problems_of(steps) == []

    def test_a_limit_may_call_a_monotone_function_and_no_other(self):
        step = (
            "  first: {{measure: A, quantity: ac_current, unit: A,"
            " bands: [{{under: '{}', is: low, then: end}}, {{is: high, then: end}}]}}\n"
        )
        assert problems_of(step.format("transformer_load_amps(40 VA, supply_volts)")) == []
        assert "compute step" in problems_of(step.format("coil_window(supply_volts)"))[0]
        assert "did you mean" in problems_of(step.format("transformer_load_amp(40 VA, supply_volts)"))[0]

    def test_the_quantity_of_a_difference_is_that_of_its_readings(self):
        steps = (
            "  first: {measure: A, readings: {a: {ask: A, quantity: temperature, unit: F},"
            " b: {ask: B, quantity: temperature, unit: F}}, then: two}\n"
            "  two: {compute: difference, from: {first: a, second: b}, name: gap, unit: K, then: end}\n"
            "  three: {compute: difference, from: {first: gap, second: 5 K}, name: d, unit: K, then: end}\n"
        )
        tree, problems = load(with_steps(steps))
        assert problems == []
        assert tree.steps["two"].kind == tree.steps["three"].kind == "temperature_difference"

    def test_computes_in_a_circle_are_told(self):
        steps = (
            "  first: {compute: difference, from: {first: b, second: b}, name: a, unit: V, then: end}\n"
            "  two: {compute: difference, from: {first: a, second: a}, name: b, unit: V, then: end}\n"
        )
        assert any("computed from itself" in problem for problem in problems_of(steps))

    def test_a_difference_of_numbers_only_has_no_quantity(self):
        steps = (
            "  first: {compute: difference, from: {first: 5 V, second: 3 V}, name: a, unit: V, then: end}\n"
        )
        assert any("can't be told" in problem for problem in problems_of(steps))

    def test_a_plain_number_is_no_share(self):
        steps = "  first: {compute: excess_air, from: {o2: 5}, name: a, then: end}\n"
        assert any("write its unit" in problem for problem in problems_of(steps))
        assert problems_of(steps.replace("o2: 5", "o2: 5 percent")) == []

    def test_a_name_is_used_once_in_a_tree(self):
        steps = (
            "  first: {measure: A, quantity: ac_voltage, unit: V, name: volts, then: two}\n"
            "  two: {measure: A, readings: {volts: {ask: B, quantity: ac_voltage, unit: V}}, then: end}\n"
        )
        assert any("two readings, on line 6 and on line 7" in problem for problem in problems_of(steps))

    def test_an_unknown_quantity_is_told_once_and_not_at_each_limit(self):
        steps = (
            "  first: {measure: A, quantity: volts, unit: V, name: one, then: second}\n"
            "  second: {measure: B, quantity: ac_voltage, unit: V,"
            " bands: [{under: one, is: low, then: end}, {is: high, then: end}]}\n"
        )
        assert len(problems_of(steps)) == 1


def test_a_mistake_in_a_limit_on_several_lines_is_told_where_it_begins():
    step = (
        "  first: {measure: A, quantity: ac_voltage, unit: V,\n    bands: [{under: supply_volts *\n"
        "    0.5 +, is: low, then: end}, {is: high, then: end}]}\n"
    )
    problems = load(with_steps(step))[1]
    assert [(p.line, p.column) for p in problems] == [(7, 21)]


class TestCircuit:
    procedure = "purpose: procedure\ntakes: [circuit]"

    def test_a_procedure_may_write_circuit_where_circuits_stand(self):
        steps = (
            "  first: {measure: Dead, verifies: [$circuit], needs: {$circuit: off},"
            " readings: {a: {ask: A, quantity: ac_voltage, unit: V}}, then: second}\n"
            "  second: {call: discharge, with: $circuit, then: {done: end}}\n"
        )
        tree, problems = load(with_steps(steps, self.procedure))
        assert problems == []
        assert tree.takes == ("circuit",)
        assert tree.steps["second"].circuit == "$circuit"

    @pytest.mark.parametrize(
        "step",
        [
            "{measure: A, verifies: [$circuit], readings: {a: {ask: A, quantity: speed}}, then: end}",
            "{do: A, needs: {$circuit: dead}, then: end}",
            "{call: discharge, with: $circuit, then: {done: end}}",
        ],
    )
    def test_other_trees_may_not(self, step):
        assert [p for p in problems_of(f"  first: {step}\n") if ": circuit: " in p]

    @pytest.mark.parametrize(
        "step", ["{do: A, act: $circuit, then: end}", "{do: A, at: [$circuit], then: end}"]
    )
    def test_it_stands_for_nothing_but_a_circuit(self, step):
        found = [str(p) for p in load(with_steps(f"  first: {step}\n", self.procedure))[1]]
        assert [p for p in found if ": name: " in p]


class TestWaysOn:
    def test_a_single_reading_may_leave_its_ways_to_the_step(self):
        assert problems_of("  first: {measure: A, quantity: ac_voltage, unit: V, then: end}\n") == []
        assert (
            problems_of(
                "  first: {measure: A, quantity: ac_voltage, unit: V, then: end, bands: [{is: any}]}\n"
            )
            == []
        )

    def test_a_reading_without_a_way_on_is_told(self):
        assert "needs 'bands'" in problems_of("  first: {measure: A, quantity: ac_voltage, unit: V}\n")[0]

    def test_a_group_whose_one_reading_always_decides_needs_no_then(self):
        steps = (
            "  first: {measure: A, readings: {a: {ask: A, quantity: ac_voltage, unit: V,"
            " bands: [{under: 5, is: low, then: end}, {is: high, then: end}]}}}\n"
        )
        assert problems_of(steps) == []

    def test_five_readings_are_too_many_to_watch(self):
        readings = ", ".join(f"a{n}: {{ask: A, quantity: ac_voltage, unit: V}}" for n in range(5))
        steps = (
            f"  first: {{watch: A, within: 1 min, events: [blower.runs], missing: {{blower.runs: end}},"
            f" readings: {{{readings}}}, then: end}}\n"
        )
        assert any("at most 4" in problem for problem in problems_of(steps))

    def test_a_unit_may_be_left_out_where_there_is_only_one(self):
        assert problems_of("  first: {measure: A, quantity: speed, then: end}\n") == []


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "empty"),
        ("- a\n", "set of fields"),
        ("text", "set of fields"),
        ("format: 1\n", "'steps'"),
        ("format: 1\nsteps: [a]\n", "must be fields"),
        ("format: 1\nsteps: {}\n", "is empty"),
        ("format: 99\nx: [\n", "not closed"),
    ],
)
def test_files_of_another_shape(text, words):
    tree, problems = load(text)
    assert tree is None
    assert any(words in problem.message for problem in problems)


def test_a_newer_format_is_told_and_nothing_else():
    _, problems = load("format: 2\nsomething: new\n")
    assert [p.rule for p in problems] == ["format"]


@pytest.mark.parametrize(
    "file",
    ["complaint/No Air.yaml", "complaint/1st.yaml", "complaint/.yaml", "complaint/" + "a" * 70 + ".yaml"],
)
def test_a_file_whose_name_can_not_be_a_tree(file):
    assert any(p.rule == "name" for p in load_tree((GOOD / AIR).read_bytes(), file, VOCABULARY)[1])


def test_ten_thousand_steps_load_with_places():
    one = (
        "  s{0}:\n    measure: Voltage at the plug\n    quantity: ac_voltage\n    unit: V\n"
        "    at: [plug.line, plug.neutral]\n"
        "    needs: {{line: live}}\n    caution: [line_voltage]\n    name: v{0}\n    plausible: [0, 300]\n"
        "    bands:\n"
        "      - {{under: 0.1 * supply_volts, is: none, then: s{1}}}\n      - {{is: some, then: s{1}}}\n"
        "    close: end\n"
        "    cannot: end\n    source: motor_tolerance\n"
    )
    steps = "".join(one.format(n, n + 1) for n in range(10_000)) + "  s10000: {hand_over: no_air}\n"
    text = with_steps(steps).replace("start: first", "start: s0").encode()
    tree, problems = load_tree(text, "complaint/big.yaml", VOCABULARY)
    assert problems == []
    assert len(tree.steps) == 10_002
    assert tree.steps["s9999"].common.place.line == 6 + 15 * 9_999
