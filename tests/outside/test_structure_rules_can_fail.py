"""Each rule on the shape of a tree refuses a tree that was spoiled in the way it speaks of."""

import copy
import json

import pytest
import test_structure_rules as rules

NO_HEAT = "no_heat"


@pytest.fixture
def trees(monkeypatch):
    """The texts of the shipped trees, for a test to spoil."""
    spoiled = copy.deepcopy(rules.TREES)
    monkeypatch.setattr(rules, "TREES", spoiled)
    return spoiled


def first(tree, *fields):
    """The first step of a tree that has these fields."""
    return next(step for step in tree["steps"].values() if all(field in step for field in fields))


def refused(rule, *arguments):
    with pytest.raises(AssertionError):
        rule(*arguments)


@pytest.mark.parametrize("where", ["choices", "then", "cannot", "close", "bands"])
def test_a_reference_to_nowhere(trees, where):
    step = first(trees[NO_HEAT], where)
    if where == "choices":
        step["choices"][next(iter(step["choices"]))] = "nowhere"
    elif where == "bands":
        next(band for band in step["bands"] if "then" in band)["then"] = "nowhere"
    else:
        step[where] = "nowhere"
    refused(rules.test_a_reference_names_a_step_that_is_there, NO_HEAT)


def test_a_start_that_is_not_there(trees):
    trees[NO_HEAT]["start"] = "nowhere"
    refused(rules.test_a_reference_names_a_step_that_is_there, NO_HEAT)


def test_a_name_given_twice(monkeypatch, tmp_path):
    again = tmp_path / "again.yaml"
    again.write_text("format: 1\nsteps:\n  one: {return: done}\n  one: {return: done}\n", encoding="utf-8")
    monkeypatch.setattr(rules, "FILES", [*rules.FILES, again])
    monkeypatch.setattr(rules, "TREES", {**rules.TREES, "again": {}})
    refused(rules.test_no_name_is_given_twice)


def test_two_files_of_one_name(monkeypatch):
    monkeypatch.setattr(rules, "FILES", [*rules.FILES, rules.FILES[0]])
    refused(rules.test_no_name_is_given_twice)


@pytest.mark.parametrize("spoil", ["one label twice", "no label", "a last band with a limit",
                                   "a band before it without", "no way on", "a band leads nowhere"])
def test_an_outcome_with_two_successors_or_none(trees, spoil):
    step = next(step for step in trees[NO_HEAT]["steps"].values() if "then" not in step
                and len(step.get("bands", ())) > 1 and all("then" in band for band in step["bands"]))
    one, last = step["bands"][0], step["bands"][-1]
    if spoil == "one label twice":
        one["is"] = last["is"]
    elif spoil == "no label":
        del one["is"]
    elif spoil == "a last band with a limit":
        last["under"] = "5"
    elif spoil == "a band before it without":
        del one["under"]
    elif spoil == "a band leads nowhere":
        del one["then"]
    else:
        for field in ("bands", "close", "cannot"):
            step.pop(field, None)
    refused(rules.test_each_outcome_has_exactly_one_successor, NO_HEAT)


def test_a_circle(trees):
    tree = trees[NO_HEAT]
    step = next(name for name, body in tree["steps"].items()
                if "cannot" in body and name != tree["start"] and "bands" in body)
    tree["steps"][step]["cannot"] = tree["start"]
    refused(rules.test_there_is_no_cycle_and_every_leaf_has_a_diagnosis, NO_HEAT)


@pytest.mark.parametrize("spoil", ["says nothing", "is a bare act"])
def test_a_leaf_without_a_diagnosis(trees, spoil):
    step = first(trees[NO_HEAT], "finding", "condemns")
    step["finding"] = " "
    if spoil == "is a bare act":
        del step["finding"]
    refused(rules.test_there_is_no_cycle_and_every_leaf_has_a_diagnosis, NO_HEAT)


@pytest.mark.parametrize("spoil", ["one forgotten", "one too many"])
def test_a_call_that_does_not_know_what_comes_back(trees, spoil):
    step = next(step for tree in trees.values() for step in tree["steps"].values()
                if "call" in step and len(step["then"]) > 1)
    if spoil == "one forgotten":
        step["then"].popitem()
    else:
        step["then"]["something else"] = next(iter(step["then"].values()))
    refused(rules.test_calls_name_a_return_of_what_they_call_and_all_of_them)


@pytest.mark.parametrize("spoil", ["nothing closes it", "it is undone by nothing known", "power is not said"])
def test_something_left_open_or_a_requirement_not_stated(trees, monkeypatch, spoil):
    house = rules.load(rules.trees_folder() / "house.yaml")
    opening = next(act for act in house["acts"].values() if "opens" in act and "undo" in act)
    if spoil == "nothing closes it":
        del opening["undo"]
    elif spoil == "it is undone by nothing known":
        opening["undo"] = "nothing_known"
    else:
        points = house["points"]
        live = next(step for step in trees[NO_HEAT]["steps"].values() if "needs" in step
                    and step.get("quantity") == "ac_voltage" and "circuit" in points[step["at"][0]])
        del live["needs"]
    monkeypatch.setattr(rules, "load", lambda path: house)
    refused(rules.test_a_procedure_states_its_requirements_and_closes_out_what_it_opened)


def test_a_session_whose_way_is_not_written(trees):
    tree = trees["zone_spillover"]
    start = tree["steps"][tree["start"]]
    start["choices"] = dict.fromkeys(start["choices"], "elsewhere")
    refused(rules.test_a_session_records_each_step_with_its_outcome)


@pytest.mark.parametrize("trap", rules.TRAPS, ids=lambda trap: trap["case"])
def test_a_trap_read_as_something_else(trap):
    """What is to be refused is not read, and what is to be read is not read as a number or a word."""
    turned = {"case": trap["case"], "text": trap["text"], "reads": {"something": "else"}}
    refused(rules.test_a_trap_of_yaml_is_refused_or_read_as_it_is_written, turned)


def test_a_pattern_with_a_unicode_class(tmp_path):
    schema = tmp_path / "one.schema.json"
    schema.write_text(json.dumps({"properties": {"name": {"pattern": r"^\p{L}+$"}}}), encoding="utf-8")
    refused(rules.test_no_pattern_for_editors_needs_unicode_classes, schema)


def test_every_case_that_the_parser_wrongly_takes_is_a_trap():
    """YAML test suite against PyYAML 6.0.3: 14 texts that must fail are accepted. The numbers were read."""
    numbers = ["9C9N", "9HCY", "9JBA", "CVW2", "DK95/01", "EB22", "G5U8", "MUS6/01", "QB6E", "RHX7", "S98Z",
               "SU5Z", "U99R", "YJV2"]
    assert {f"suite {number}" for number in numbers} == {
        trap["case"] for trap in rules.TRAPS if trap["case"].startswith("suite ")}
