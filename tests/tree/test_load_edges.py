"""Loading a tree at the edges: empty lists, values of another shape, exact bounds, what a step inherits."""

import pytest

from tests.tree.test_load_tree import load, problems_of, with_steps

VOLTS = "quantity: ac_voltage, unit: V"


@pytest.mark.parametrize(
    ("step", "words"),
    [
        ("{measure: A, readings: {}, then: end}", "'readings' is empty"),
        (
            "{measure: A, readings:, then: end}".replace("readings:,", "readings: '',"),
            "'readings' must be fields",
        ),
        ("{measure: A, readings: [a], then: end}", "'readings' must be fields"),
        (f"{{measure: A, {VOLTS}, bands: [], then: end}}", "'bands' is a list"),
        (f"{{measure: A, {VOLTS}, bands: high, then: end}}", "'bands' is a list"),
        (f"{{measure: A, {VOLTS}, bands: {{is: high}}, then: end}}", "'bands' is a list"),
        (f"{{measure: A, {VOLTS}, safe: 5, then: end}}", "'safe' must be fields"),
        (f"{{measure: A, {VOLTS}, plausible: 5, then: end}}", "two numbers"),
        (f"{{measure: A, {VOLTS}, plausible: [3, 3], then: end}}", "low one comes first"),
        ("{watch: A, within: 1 min, events: [], missing: {x: end}, then: end}", "'events' is empty"),
        ("{watch: A, within: 1 min, events: [blower.runs], then: end}", "'missing'"),
        ("{watch: A, within: 1 min, events: [blower.runs], missing: [end], then: end}", "must be fields"),
        (
            "{watch: A, within: 0 s, events: [blower.runs], missing: {blower.runs: end}, then: end}",
            "no duration",
        ),
        (
            "{watch: A, within: -5 s, events: [blower.runs], missing: {blower.runs: end}, then: end}",
            "no duration",
        ),
        (
            "{compute: control_load_percent, from: {loads: [5 VA, 3 A], rating: 9 VA}, name: a, then: end}",
            "loads is something in W",
        ),
        (
            "{compute: duct_flow, from: {diameter: 6 in, rate: 1, material: tin}, name: a, then: end}",
            "'tin' is no word for 'material'",
        ),
        (
            "{compute: duct_flow, from: {diameter: 6 in, rate: 1}, name: a, then: end}",
            "no reading or number here can be 'rate'",
        ),
        (
            "{compute: operating_point, from: {statics: 0.1 inwc, airflows: 900 cfm}, name: a, then: end}",
            "write gives: and one of airflow, static",
        ),
        (
            "{compute: operating_point, gives: word, from: {statics: [0.1 inwc]}, name: a, then: end}",
            "'word' is no number that 'operating_point' gives",
        ),
        (
            "{compute: heat_rise, gives: rise, from: {supply: 9 F, return_air: 6 F}, name: a, then: end}",
            "'rise' is no number",
        ),
        (
            "{compute: difference, from: {first: 5 V, second: 3 A}, name: a, unit: V, then: end}",
            "second is something in V",
        ),
        (
            "{compute: difference, from: {first: 5 V, second: 3}, name: a, unit: V, then: end}",
            "write its unit",
        ),
        ("{compute: difference, from: [a], name: a, unit: V, then: end}", "must be fields"),
        ("{compute: heat_rise, from: {supply: 70 F, return_air: 60 F}, then: end}", "'name'"),
        ("{compute: heat_rise, from: {supply: 70 F, return_air: 60 F}, name: a}", "needs 'bands'"),
        (
            "{compute: heat_rise, from: {supply: 70 F, return_air: 60 F}, name: a, bands: [{is: x}]}",
            "needs 'then'",
        ),
        (
            "{compute: service_voltage_class, from: {volts: 5 V, nominal: 5 V}, name: a, then: end}",
            "gives several results",
        ),
        ("{compute: air_density, from: {}, name: a, then: end}", "no single reading"),
        ("{call: make_dead, then: {}}", "'then' is empty"),
        ("{call: make_dead, then: {done: [end]}}", "must be one text"),
        ("{do: '', then: end}", "'do' is empty"),
        ("{do: x, minutes: -1, then: end}", "more than 0"),
        ("{do: x, wait: 5, then: end}", "no duration"),
        ("{do: x, why: [a], then: end}", "must be one text"),
    ],
)
def test_a_value_of_another_shape_is_told(step, words):
    problems = problems_of(f"  first: {step}\n")
    assert any(words in problem for problem in problems), problems


def test_three_plate_values_in_one_limit_are_allowed_and_four_readings_may_be_watched():
    limit = "static_rated * supply_volts / supply_volts * rise_min / rise_min"
    bands = f"[{{under: {limit}, is: low}}, {{is: high}}]"
    step = f"{{measure: A, quantity: pressure, unit: inwc, bands: {bands}, then: end}}"
    assert problems_of(f"  first: {step}\n") == []
    readings = ", ".join(f"a{n}: {{ask: A, {VOLTS}}}" for n in range(4))
    step = (
        f"{{watch: A, within: 1 s, events: [blower.runs], missing: {{blower.runs: end}},"
        f" readings: {{{readings}}}, then: end}}"
    )
    assert problems_of(f"  first: {step}\n") == []


@pytest.mark.parametrize(
    ("limit", "column"),
    [
        ("5 Vo", 22),
        ("'5 Vo'", 23),
        ('"5 Vo"', 23),
        ("5 V + 1 A", 24),
        ("'5 V + 1 A'", 25),
        ("nothing", 20),
        ("'nothing'", 21),
    ],
)
def test_a_place_inside_a_limit_counts_its_quote(limit, column):
    step = (
        f"  first:\n    measure: A\n    {VOLTS.replace(', ', chr(10) + '    ')}\n    then: end\n    bands:\n"
    )
    step += f"      - {{   under: {limit}, is: low}}\n      - {{is: high}}\n"
    problems = load(with_steps(step))[1]
    assert [(p.line, p.column) for p in problems] == [(12, column)]


def test_readings_of_a_group_inherit_points_and_source_unless_they_name_their_own():
    steps = (
        "  first:\n    measure: A\n    at: [r, c]\n    source: dead_limit\n    then: end\n    readings:\n"
        f"      one: {{ask: A, {VOLTS}}}\n"
        f"      two: {{ask: A, {VOLTS}, at: [plug.line, ground], source: rating_plate}}\n"
    )
    tree, problems = load(with_steps(steps))
    assert problems == []
    one, two = tree.steps["first"].readings
    assert (one.at, one.source) == (("r", "c"), "dead_limit")
    assert (two.at, two.source) == (("plug.line", "ground"), "rating_plate")


def test_a_compute_may_take_plate_values_and_keeps_what_was_written():
    steps = (
        "  first: {compute: difference, from: {first: rise_max, second: rise_min},"
        " name: gap, unit: Fdiff, then: end}\n"
    )
    tree, problems = load(with_steps(steps))
    assert problems == []
    assert tree.steps["first"].arguments == {"first": "rise_max", "second": "rise_min"}
    assert tree.steps["first"].kind == "temperature_difference"


def test_what_is_computed_from_a_broken_reading_is_told_once():
    steps = (
        "  first: {measure: A, quantity: temprature, unit: F, name: a, then: two}\n"
        "  two: {compute: heat_rise, from: {supply: a, return_air: 60 F}, name: b, then: end}\n"
        "  three: {compute: difference, from: {first: a, second: a}, name: c, unit: K, then: end}\n"
    )
    assert len(problems_of(steps)) == 1


@pytest.mark.parametrize(
    ("written", "words"),
    [
        ("0.0000000000001", "numbers lie between"),
        ("1000000000001", "numbers lie between"),
        ("1_000.5", "write 1000.5"),
        ("1,5", "write"),
        ("+5", "write 5"),
        ("007", "write 7"),
        ("- 5", "write -5"),
        ("5.", "write 5"),
        ("five", "write digits"),
        ("-.5", "write -0.5"),
        ("1e5x", "write digits"),
        ("9" * 31, "numbers lie between"),
    ],
)
def test_what_to_write_instead_of_a_number(written, words):
    problems = problems_of(f"  first: {{do: x, minutes: '{written}', then: end}}\n")
    assert len(problems) == 1
    assert words in problems[0]


@pytest.mark.parametrize("written", ["0.000000000001", "1000000000000", "1e12", "0.5", "9" * 12])
def test_the_smallest_and_greatest_numbers_are_read(written):
    tree, problems = load(with_steps(f"  first: {{do: x, minutes: {written}, then: end}}\n"))
    assert problems == []
    assert tree.steps["first"].common.minutes == float(written)
