"""Files of faults: what is shipped is whole, and every mistake in one's own file is named at its place."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.rig.fault_file import load_faults, shipped
from assistant.rig.fault_words import EXAMPLE, FIELDS, components
from assistant.rig.house import built
from assistant.rig.part import DEGREES, applied
from assistant.rig.parts import COMPONENTS
from assistant.rig.unit import FEATURES, REFERENCE

COMPLAINTS = ("no_heat", "tripped_breaker", "blower_silent", "zone_spillover")


def test_the_shipped_faults_have_no_mistake():
    faults, problems = shipped()
    assert not problems
    assert len(faults) >= 110
    for complaint in COMPLAINTS:
        assert sum(fault.complaint == complaint for fault in faults.values()) >= 15


def test_the_shipped_faults_use_every_kind_of_trouble():
    """Some come and go, some have a cause that harms again, some are graded, most name a cause."""
    faults = shipped()[0].values()
    assert sum(f.comes_and_goes is not None for f in faults) >= 2
    assert sum(f.consequence is not None for f in faults) >= 6
    assert sum(len(f.degrees) > 1 for f in faults) >= 30
    assert all(f.absent for f in faults if f.comes_and_goes)
    assert sum(f.cause is not None for f in faults) > 70
    words = {deed.change for fault in faults for deed in fault.deeds}
    for kind in (
        "open",
        "short",
        "resistance",
        "leakage",
        "stuck",
        "slips",
        "swapped",
        "wet",
        "clogged",
        "wrong setting",
        "bridged",
        "missing",
        "off",
    ):
        assert any(kind in word for word in words | {c for k in COMPONENTS.values() for c in k.changes}), kind


def test_every_component_can_be_built():
    """A change sets settings that exist, to values of the same kind; nominal is always a degree."""
    settings = built(REFERENCE)
    for component in COMPONENTS.values():
        for name, change in component.changes.items():
            assert "nominal" in change.degrees, (component.name, name)
            assert set(change.degrees) <= set(DEGREES)
            for degree in change.degrees:
                for setting, value in applied(component, name, degree).items():
                    assert setting in settings, setting
                    assert isinstance(value, str) == isinstance(settings[setting], str), setting


def test_a_change_changes_something():
    """No change leaves every setting as built."""
    settings = built(REFERENCE)
    for component in COMPONENTS.values():
        for name, change in component.changes.items():
            for degree in change.degrees:
                assert any(settings[k] != v for k, v in applied(component, name, degree).items()), (
                    component.name,
                    name,
                )


def test_the_list_of_components_names_all():
    text = components()
    assert all(component.name in text and component.title in text for component in COMPONENTS.values())
    assert EXAMPLE in text


def test_the_list_tells_the_houses_and_every_field_that_a_fault_can_have():
    """What a reader of the list may write: each feature with its values, and no field left untold."""
    text = components()
    assert all(f"    {name}: {', '.join(values)}" in text for name, values in FEATURES.items())
    data = b"format: 1\nfaults:\n  a: {colour: red}"
    nothing_known = {name for name in ("cause", "house", "found", "also", "absent") if name not in FIELDS}
    assert not nothing_known
    for name in FIELDS:
        _, problems = load_faults(data.replace(b"colour", name.encode()), "mine.yaml")
        assert (name == "degree") == any(f"has no field '{name}'" in p.message for p in problems), name


def test_the_example_is_a_file():
    faults, problems = load_faults(EXAMPLE.encode(), "mine.yaml")
    assert not problems and len(faults) == 6


A = "format: 1\nfaults:\n  a: {title: t, complaint: c, finding: f, "
OPEN = "change: [{part: igniter, change: open}]"
WRONG = {
    "format: 2\nfaults: {}": "1:9: format",
    "faults: {}": "1:1: missing",
    "format: 1\nfaults: {Big: {}}": "2:10: name",
    "format: 1\nfaults:\n  a: {title: t, complaint: c, " + OPEN + "}": "3:3: missing",
    A + "change: [{part: ignitor, change: open}]}": "3:59: name",
    A + "change: [{part: igniter, change: opn}]}": "3:76: name",
    A + "change: [{part: igniter, change: open, degree: mild}]}": "3:90: name",
    A + "degrees: [bad], " + OPEN + "}": "3:53: name",
    A + "house: {kind: steam}, " + OPEN + "}": "3:57: name",
    A + OPEN + ", colour: red}": "3:84: field",
    A + "change: igniter}": "3:51: type",
    A + "also: {no_heat: Bad}, " + OPEN + "}": "3:59: name",
    A + "also: {No_heat: g}, " + OPEN + "}": "3:50: name",
    A + "also: {no_heat: {g: h}}, " + OPEN + "}": "3:59: type",
    A + "also: [[g]], " + OPEN + "}": "3:50: type",
    A + OPEN + ", intermittent: {there: 5 min, away: soon}, absent: g}": "3:119: number",
    A + OPEN + ", intermittent: {there: 20, away: 5 min}, absent: g}": "3:106: number",
    A + OPEN + ", also: no_heat.g}": "3:90: name",
    A + OPEN + ", intermittent: {there: 5 min, away: 5 min}}": "3:84: missing",
    "format: 1\nfaults: [a]": "2:9: type",
    "- a": "1:1: type",
    "format: 1\nfaults: {a: 1}": "2:13: type",
}


@pytest.mark.parametrize("text", WRONG)
def test_a_mistake_is_named_at_its_place(text):
    """line:column: rule, and a sentence; the fault is left out."""
    faults, problems = load_faults(text.encode(), "mine.yaml")
    assert any(str(problem).startswith(f"mine.yaml:{WRONG[text]}") for problem in problems), [
        str(p) for p in problems
    ]
    assert "a" not in faults


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (A + "house: {blouwer: psc}, " + OPEN + "}", "did you mean 'blower'"),
        (A + "house: {colour: red}, " + OPEN + "}", "there is kind, zone_panel, float, plug_fuse, blower"),
        (A + OPEN + ", cause: no_heat.rod_dirty}", "write 'rod_dirty' alone"),
        (A + OPEN + ", intermittent: {there: 20, away: 5 min}, absent: g}", "write 20 min or 20 s"),
    ],
)
def test_a_mistake_says_what_to_write_instead(text, words):
    problems = load_faults(text.encode(), "mine.yaml")[1]
    assert any(words in problem.message for problem in problems), [str(p) for p in problems]


def test_a_part_brings_the_house_that_has_it_unless_the_file_says_another():
    """A capacitor in a house whose motor has none changes nothing, and the tree would be called wrong."""

    def house(more: str) -> dict[str, str]:
        faults, problems = load_faults((A + more + "}").encode(), "mine.yaml")
        assert not problems
        return dict(faults["a"].house)

    assert house("change: [{part: capacitor, change: open}]") == {"blower": "psc"}
    assert house("change: [{part: damper2, change: slips}]") == {"zone_panel": "yes"}
    assert house("house: {blower: torque}, change: [{part: blower_module, change: heat tap dead}]") == {
        "blower": "torque"
    }
    spills = 'format: 1\nfaults: {a: {title: t, complaint: zone_spillover, finding: f, '
    spills += "change: [{part: fan_switch, change: runs always}]}}"
    assert load_faults(spills.encode(), "mine.yaml")[0]["a"].house == {"zone_panel": "yes"}
    for component in COMPONENTS.values():
        assert all(value in FEATURES[name] for name, value in component.house.items()), component.name


def test_the_shipped_faults_stand_in_houses_that_have_their_parts():
    """The module's and the motor half's faults may stand with any motor that has them."""
    for fault in shipped()[0].values():
        for deed in fault.deeds:
            for name, value in COMPONENTS[deed.part].house.items():
                other = value == "electronic" and fault.house[name] != "psc"
                assert fault.house[name] == value or other, (fault.name, deed.part)


def test_other_right_findings_are_a_list_or_lists_by_complaint():
    def read(also: str):
        faults, problems = load_faults((A + f"also: {also}, " + OPEN + "}").encode(), "mine.yaml")
        assert not problems
        return faults["a"]

    assert read("[g, h]").also == read("{c: [g, h]}").also == ("g", "h")
    both = read("{c: g, no_heat: [k, l]}")
    assert both.right("c") == ("f", "g")
    assert both.right("no_heat") == ("k", "l")
    assert both.right("another") == ()


@given(st.one_of(st.text(), st.binary().map(lambda b: b.decode("latin-1"))))
def test_no_file_makes_it_fall(text):
    load_faults(text.encode("utf-8", "surrogatepass"), "mine.yaml")


@given(st.integers(0, len(EXAMPLE)), st.integers(0, 30), st.text("{}[],: \n#abc", max_size=5))
def test_no_damage_to_a_good_file_makes_it_fall(start, length, instead):
    load_faults((EXAMPLE[:start] + instead + EXAMPLE[start + length :]).encode(), "mine.yaml")
