"""The proof as a whole: verdicts, sums, and that neither names, cores nor the order of walks change it."""

from __future__ import annotations

import json
import random
from dataclasses import replace

import pytest
from anything import written
from houses import FEW, library, texts
from renamed import renamed

import assistant.__main__ as front
from assistant.drill.as_json import as_json
from assistant.drill.case import HEALTHY, Case, cases, healthy_houses, house_of
from assistant.drill.fits import problems_of
from assistant.drill.outcome import RIGHT, UNDECIDED, WRONG, Outcome, cause_named, judged
from assistant.drill.proof import summary, together
from assistant.drill.prove import prove
from assistant.drill.run import BROKEN, Matter, Worker
from assistant.drill.table import table
from assistant.rig.fault_file import load_faults
from assistant.rig.parts import COMPONENTS
from assistant.tree.library import from_texts

FAULTS, _ = load_faults(FEW, "few.yaml")
KEYS = {
    "faults", "samples", "isolated", "undecided", "wrong", "false_condemnations", "mean_readings",
    "mean_minutes", "cost_over_best", "floor",
}  # fmt: skip
HOUSE = Case("no_heat", HEALTHY)


def proved(**given):
    """A proof of the few faults on one core."""
    wanted = {"samples": 1, "jobs": 1, "orders": False, "healthy": False, **given}
    return prove(wanted.pop("texts", texts()), {"few.yaml": wanted.pop("faults", FEW)}, ["no_heat"], **wanted)


@pytest.fixture(scope="module")
def once():
    """One proof with the best order, shared by the tests that only look at it."""
    return proved(orders=True)[0]


def test_the_faults_are_isolated_and_nothing_is_told_wrongly(once):
    sums = summary(once)
    assert sums["faults"] == 3
    assert sums["wrong"] == 0
    assert sums["false_condemnations"] == 0
    assert sums["isolated"] + sums["ambiguous"] + sums["undecided"] + sums["wrong"] == sums["samples"]
    assert {o.end for o in once.usual.values()} == {"igniter_open", "valve_wire", "switch_off"}


def test_healthy_houses_of_every_kind_are_walked():
    features = {case.features for case in healthy_houses("no_heat", 0)}
    assert {(("kind", "condensing"),), (("zone_panel", "yes"),), ()} <= features
    matter = Matter(texts(), {"few.yaml": FEW}, 0, {"no_heat": "no_heat"})
    found = Worker(matter).do(Case("no_heat", HEALTHY, features=(("kind", "condensing"),)))
    assert judged(found, None, "no_heat") == RIGHT


def test_a_fault_of_another_complaint_is_right_where_it_is_handed_over(once):
    (outcome,) = once.elsewhere
    assert once.verdict(outcome) == RIGHT
    assert outcome.kind == "handed_over"


def test_the_sums_have_their_keys_in_all_and_for_each_tree(once):
    told = json.loads(json.dumps(as_json([once])))["summary"]
    assert set(told) >= KEYS
    assert set(told["trees"]["no_heat"]) >= KEYS
    assert told["samples"] == told["trees"]["no_heat"]["samples"]
    both = together([once, replace(once, tree="another", said={})])
    assert both["samples"] == 2 * told["samples"]
    assert both["trees"]["another"]["cost_over_best"] is None
    assert both["cost_over_best"] == pytest.approx(told["cost_over_best"])


def test_no_order_is_cheaper_than_the_floor_nor_the_tree_than_the_best(once):
    costs = once.costs
    assert costs is not None
    assert costs.floor <= costs.best <= costs.tree
    assert costs.over_best == pytest.approx(costs.tree / costs.best)


def test_the_table_names_every_fault_and_what_is_to_be_looked_at(once):
    said = table(once)
    assert all(name in said for name in once.usual)
    assert "isolated" in said
    assert "healthy houses" in said


def test_the_table_says_of_a_wrong_end_what_is_right_and_what_was_read(once):
    """Without it nobody can tell at which reading a walk went wrong."""
    ended = next(o for o in once.own if o.case.fault == "cracked_element" and o.steps)
    astray = replace(ended, end="valve_dead")
    said = table(replace(once, outcomes=[astray if o is ended else o for o in once.outcomes]))
    (line,) = (line for line in said.splitlines() if "wrong: valve_dead" in line)
    assert "right is igniter_open" in line
    assert line.endswith("read: " + ", ".join(name for name, _ in ended.steps))


def test_the_same_seed_gives_the_same_proof_on_any_number_of_cores():
    first, again, cores = proved(), proved(), proved(jobs=2)
    assert first[0].outcomes == again[0].outcomes == cores[0].outcomes
    noisy = Case("no_heat", "lead_off", noisy=True)
    assert house_of(noisy, FAULTS["lead_off"], 0) != house_of(noisy, FAULTS["lead_off"], 1)


def test_new_names_for_every_step_give_the_same_table():
    """What a step is called says nothing to hand or house; only the file of faults names findings."""
    new_texts, new_faults, back = renamed(texts(), FEW, seed=4)
    assert not from_texts(new_texts).problems
    assert not set(back) & set(back.values())
    old, new = proved()[0], proved(texts=new_texts, faults=new_faults)[0]

    def rows(proof):
        return [
            (o.case, o.kind, back.get(o.end, o.end), o.condemns, o.minutes, o.readings, o.causes, o.cured,
             tuple((back.get(name, name), close) for name, close in o.steps), proof.verdict(o))
            for o in proof.outcomes
        ]  # fmt: skip

    assert rows(old) == rows(new)


def test_names_in_the_faults_file_are_what_makes_a_finding_right():
    """The same walks against other right findings: nothing is right any more by itself."""
    wrong = FEW.replace(b"finding: igniter_open", b"finding: valve_dead")
    assert summary(proved(faults=wrong, samples=0)[0])["wrong"] == 1


def outcome(end: str, kind: str = "finding", **more) -> Outcome:
    """An outcome that ended there."""
    return Outcome(more.pop("case", HOUSE), kind, end, **more)


def test_an_open_end_is_undecided_and_never_isolated():
    assert judged(outcome("", "open"), FAULTS["lead_off"], "no_heat") == UNDECIDED


def test_a_healthy_house_is_right_where_nothing_is_found():
    assert judged(outcome("works_now", "nothing"), None, "no_heat") == RIGHT
    assert judged(outcome("igniter_open"), None, "no_heat") == WRONG
    assert judged(outcome("to_blower", "handed_over"), None, "no_heat") == WRONG


def test_a_fault_of_another_complaint_may_be_found_only_if_that_cures_it():
    elsewhere = FAULTS["capacitor_open"]
    assert judged(outcome("limit_bad"), elsewhere, "no_heat") == WRONG
    assert judged(outcome("limit_bad", cured=True), elsewhere, "no_heat") == RIGHT
    assert judged(outcome("works_now", "nothing"), elsewhere, "no_heat") == RIGHT


def test_a_fault_may_say_what_is_right_to_find_under_another_complaint():
    own = b"complaint: blower_silent"
    text = FEW.replace(own, own + b"\n    also: {no_heat: [limit_bad]}")
    fault = load_faults(text, "f.yaml")[0]["capacitor_open"]
    assert judged(outcome("limit_bad"), fault, "no_heat") == RIGHT
    assert judged(outcome("igniter_open"), fault, "no_heat") == WRONG
    assert judged(outcome("limit_bad"), fault, "zone_spillover") == WRONG


@pytest.mark.parametrize(
    ("also", "words"),
    [("{no_heat: limit_bed}", "did you mean 'limit_bad'"), ("{no_hot: limit_bad}", "no complaint is called")],
)
def test_a_finding_under_another_complaint_is_held_to_that_complaints_tree(also: str, words: str):
    text = FEW.decode().replace("complaint: blower_silent", f"complaint: blower_silent\n    also: {also}")
    (problem,) = problems_of({"mine.yaml": text.encode()}, texts(), ["no_heat"])
    assert words in problem.message


def test_a_fault_that_comes_and_goes_may_be_missed_only_while_it_is_away():
    text = FEW.replace(
        b"    change: [{part: igniter, change: open}]",
        b"    absent: works_now\n    intermittent: {there: 20 min, away: 40 min}\n"
        b"    change: [{part: igniter, change: open}]",
    )
    fault = load_faults(text, "f.yaml")[0]["cracked_element"]
    assert judged(outcome("works_now", "nothing", present=False), fault, "no_heat") == RIGHT
    assert judged(outcome("works_now", "nothing", present=True), fault, "no_heat") == WRONG
    assert judged(outcome("igniter_open"), fault, "no_heat") == RIGHT


def test_a_cause_counts_as_named_only_where_it_was_asked_for():
    fault = FAULTS["cracked_element"]
    assert cause_named(outcome("igniter_open"), fault) is None
    assert cause_named(outcome("igniter_open", asked_causes=True), fault) is False
    assert cause_named(outcome("igniter_open", asked_causes=True, causes=("igniter_harm",)), fault)


def test_noisy_samples_have_other_plates_within_the_vocabularys_ranges():
    plates = {name: set() for name in ("input", "pressure_stamp", "limit_opens", "rise_min")}
    for case in cases("no_heat", "no_heat", FAULTS, 12, seed=3):
        unit = house_of(case, FAULTS.get(case.fault), 3)
        for name, value in unit.plate().items():
            span = library().vocabulary.plate[name].span
            assert span.lo - 1e-9 <= value <= span.hi + 1e-9
            if name in plates:
                plates[name].add(value)
    assert all(len(values) > 2 for values in plates.values())


def test_a_mistake_in_a_file_of_faults_is_told_at_its_place(tmp_path, capsys):
    file = tmp_path / "mine.yaml"
    file.write_text(FEW.decode().replace("part: igniter", "part: ignitor").replace("igniter_harm", "harm"))
    assert front.main(["prove", "--faults", str(file)]) == 2
    said = capsys.readouterr().err
    assert f"{file}:8:" in said
    assert "Traceback" not in said


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("finding: igniter_open", "finding: igniter_opened", "did you mean 'igniter_open'"),
        ("complaint: no_heat", "complaint: no_hot_water", "no complaint is called"),
        ("cause: igniter_harm", "cause: igniter_harms", "did you mean 'igniter_harm'"),
        ("finding: igniter_open", "finding: cycle", "no finding of no_heat is called 'cycle'"),
    ],
)
def test_a_name_that_no_tree_knows_is_told(old: str, new: str, words: str):
    data = FEW.decode().replace(old, new).encode()
    problems = problems_of({"mine.yaml": data}, texts(), ["no_heat"])
    assert problems
    assert words in problems[0].message
    lines = data.decode().splitlines()
    assert lines[problems[0].line - 1][problems[0].column - 1 :] == new.partition(": ")[2]


def test_a_file_without_a_fault_is_told():
    (problem,) = problems_of({"mine.yaml": b"format: 1\nfaults: {}"}, texts(), ["no_heat"])
    assert "no fault is in it" in problem.message


def test_a_finding_of_a_tree_that_does_not_exist_is_left_alone():
    assert problems_of({"few.yaml": FEW}, texts(), ["no_heat"]) == []


def test_unknown_trees_and_files_get_a_sentence(tmp_path, capsys):
    assert front.main(["prove", "no_heet"]) == 2
    assert "no_heat" in capsys.readouterr().err
    assert front.main(["prove", "--faults", str(tmp_path / "none.yaml")]) == 2
    assert front.main(["prove", "--samples", "-1"]) == 2
    assert "Traceback" not in capsys.readouterr().err


def test_the_components_are_listed_with_an_example_that_loads(capsys):
    assert front.main(["prove", "--components"]) == 0
    said = capsys.readouterr().out
    assert "igniter: hot surface igniter" in said
    assert "mild, nominal, severe" in said
    example = said[said.index("format: 1") :]
    faults, problems = load_faults(example.encode(), "example.yaml")
    assert faults
    assert not problems


def test_the_command_says_by_its_exit_code_whether_anything_was_told_wrongly(tmp_path, capsys):
    lines = FEW.decode().split("  lead_off:")[0]
    file = tmp_path / "mine.yaml"
    file.write_text(lines.replace("finding: igniter_open", "finding: valve_dead"))
    words = ["prove", "no_heat", "--faults", str(file), "--samples", "0", "--json"]
    assert front.main(words) == 1
    told = json.loads(capsys.readouterr().out)
    assert told["summary"]["wrong"] == 1


def test_any_change_of_any_component_at_any_degree_is_walked():
    """A few of them by chance, one by one and two together; the long run walks every one."""
    chance = random.Random(20)
    every = [
        (component.name, name, degree)
        for component in COMPONENTS.values()
        for name, change in component.changes.items()
        for degree in change.degrees
    ]
    pairs = [chance.sample(every, number) for number in (1, 1, 1, 2, 2)]
    data = written(pairs)
    assert problems_of({"any.yaml": data}, texts(), ["no_heat"]) == []
    worker = Worker(Matter(texts(), {"any.yaml": data}, 0, {"no_heat": "no_heat"}))
    for name in worker.faults:
        found = worker.do(Case("no_heat", name, wholly=True))
        assert not any(BROKEN in words for words in found.undone), (name, pairs)


def test_a_house_that_breaks_is_told_and_takes_nothing_else_away(monkeypatch):
    def broken(*_args, **_more):
        raise ZeroDivisionError("no such house")

    monkeypatch.setattr("assistant.drill.run.Rig", broken)
    monkeypatch.setattr("assistant.drill.run.tried", broken)
    (proof,) = proved(samples=0, orders=True)
    assert summary(proof)["undecided"] == summary(proof)["samples"] > 0
    assert proof.costs is None
    assert f"{BROKEN}: ZeroDivisionError: no such house" in table(proof)
