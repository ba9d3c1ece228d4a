"""What published rules for fault trees and procedures ask of the shape of a tree, held against every file by
means of its own: the YAML is read here with PyYAML's plain loader and not with the program's.

Sources: IEEE 1232 (AI-ESTATE), from memory: each outcome of a step has exactly one successor, leaves carry a
diagnosis, no cycles, and a session records each step with its outcome. S1000D default business rules, read in
a public implementation's rule set (facts only): BREX-S1-00052, a reference to a step names a step or the end
of the procedure that is there; BREX-S1-00165 and -00166, alternatives are marked with what they apply to; a
procedure states its requirements before its steps and closes out what it opened. YAML: the YAML test suite
and PyYAML 6.0.3, as data/yaml_traps.yaml says; JSON Schema: the JSON-Schema-Test-Suite's draft 2020-12 cases
that need Unicode classes in a pattern, which the library for editors refuses.
"""

import json
from pathlib import Path

import pytest
import yaml

from assistant.house.reader import Fields, Items, Unreadable, read
from assistant.resources import resources_folder, trees_folder
from assistant.tree.library import read_folder
from assistant.walk.event import Cannot, Did, Opened, Saw
from assistant.walk.visit import asked, begin, fold

AT = "2026-11-25T09:14:00-05:00"
FILES = sorted(path for path in trees_folder().rglob("*.yaml") if path.parent != trees_folder())


def load(path):
    """A file with every scalar as text."""
    return yaml.load(path.read_text(encoding="utf-8"), yaml.BaseLoader)  # noqa: S506 - it makes texts only


TREES = {path.stem: load(path) for path in FILES}
ENDS = ("finding", "stop", "hand_over", "return")
TRAPS = load(Path(__file__).parent / "data" / "yaml_traps.yaml")["traps"]


def readings(step):
    """The readings of a step: those it lists, or itself."""
    own = step.get("readings")
    return list(own.values()) if isinstance(own, dict) else [step] if "at" in step else []


def pages(step):
    """Its bands, a list for each reading that has any."""
    listed = [*readings(step), step] if "compute" in step else readings(step)
    return [page["bands"] for page in listed if "bands" in page]


def outcomes(step):
    """(outcome, successor) of everything that can come of a step, as written."""
    found = [(f"choice {value}", to) for value, to in step.get("choices", {}).items()]
    found += [(f"missing {event}", to) for event, to in step.get("missing", {}).items()]
    if isinstance(step.get("then"), dict):
        found += [(f"return {value}", to) for value, to in step["then"].items()]
    else:
        found += [("then", step["then"])] if "then" in step else []
    for number, bands in enumerate(pages(step)):
        found += [(f"band {number} {band.get('is')}", band["then"]) for band in bands if "then" in band]
    return found + [(word, step[word]) for word in ("close", "cannot") if word in step]


def diagnosed(step):
    return any(verb in step for verb in ENDS)


@pytest.mark.parametrize("name", TREES)
def test_a_reference_names_a_step_that_is_there(name):
    """S1000D BREX-S1-00052."""
    steps = TREES[name]["steps"]
    assert TREES[name]["start"] in steps
    for step, body in steps.items():
        for outcome, to in outcomes(body):
            assert to in steps, f"{name}.{step}: {outcome} leads to {to}"


def test_no_name_is_given_twice():
    """S1000D: identifiers are unique; a step's address is its tree's name and its own."""
    assert len(TREES) == len(FILES)
    for path in FILES:
        node = yaml.compose(path.read_text(encoding="utf-8"), yaml.BaseLoader)
        waiting = [node]
        while waiting:
            at = waiting.pop()
            if isinstance(at, yaml.MappingNode):
                keys = [key.value for key, _ in at.value]
                assert len(keys) == len(set(keys)), f"{path.name}:{at.start_mark.line + 1}: {keys}"
                waiting += [value for _, value in at.value]
            elif isinstance(at, yaml.SequenceNode):
                waiting += at.value


@pytest.mark.parametrize("name", TREES)
def test_each_outcome_has_exactly_one_successor(name):
    """IEEE 1232; S1000D BREX-S1-00165 and -00166: alternatives are marked with what they apply to."""
    for step, body in TREES[name]["steps"].items():
        found = [outcome for outcome, _ in outcomes(body)]
        assert len(found) == len(set(found)), f"{name}.{step}: {found}"
        if not diagnosed(body):
            assert found, f"{name}.{step} leads nowhere"
        for bands in pages(body):
            labels = [band.get("is") for band in bands]
            assert all(labels), f"{name}.{step}: an alternative without its mark"
            assert len(labels) == len(set(labels)), f"{name}.{step}: {labels}"
            assert all("under" in band for band in bands[:-1])
            assert "under" not in bands[-1]
        falls_through = all(any("then" not in band for band in bands) for bands in pages(body))
        if pages(body) and falls_through:
            assert "then" in body, f"{name}.{step}: a band leads nowhere"


@pytest.mark.parametrize("name", TREES)
def test_there_is_no_cycle_and_every_leaf_has_a_diagnosis(name):
    """IEEE 1232."""
    steps, state = TREES[name]["steps"], {}

    def visit(start):
        stack = [(start, iter(outcomes(steps[start])))]
        state[start] = "open"
        while stack:
            at, ways = stack[-1]
            to = next((to for _, to in ways), None)
            if to is None:
                state[at] = "done"
                stack.pop()
            else:
                assert state.get(to) != "open", f"{name}: {at} leads back to {to}"
                if to not in state:
                    state[to] = "open"
                    stack.append((to, iter(outcomes(steps[to]))))

    for step in steps:
        if step not in state:
            visit(step)
    for step, body in steps.items():
        if not outcomes(body):
            assert diagnosed(body), f"{name}.{step} is a leaf without a diagnosis"
            verb = next(verb for verb in ENDS if verb in body)
            assert body[verb].strip()


def test_calls_name_a_return_of_what_they_call_and_all_of_them():
    """IEEE 1232, across files: each outcome of a called tree has its successor."""
    for name, tree in TREES.items():
        for step, body in tree["steps"].items():
            if "call" in body:
                given = {one["return"] for one in TREES[body["call"]]["steps"].values() if "return" in one}
                assert set(body["then"]) == given, f"{name}.{step}"


def test_a_procedure_states_its_requirements_and_closes_out_what_it_opened():
    """S1000D: preliminary requirements, main procedure, close-out. What an act opens, some act closes."""
    house = load(trees_folder() / "house.yaml")
    acts = house["acts"]
    for name, act in acts.items():
        if "undo" in act:
            assert act["undo"] in acts, f"{name}: {act['undo']}"
        if "opens" in act:
            assert "undo" in act, f"{name} opens {act['opens']} and nothing closes it"
    hot = [(name, step) for name, tree in TREES.items() for step, body in tree["steps"].items()
           if {page.get("quantity") for page in readings(body)} & {"ac_voltage", "dc_voltage", "resistance"}
           and not (body.get("needs") or "verifies" in body)]
    points = house["points"]
    for name, step in hot:
        at = [point for page in readings(TREES[name]["steps"][step]) for point in page.get("at", [])]
        assert not any("circuit" in points[point] for point in at), f"{name}.{step} says nothing of the power"


def test_a_session_records_each_step_with_its_outcome():
    """IEEE 1232: a visit's history, by one answer of each kind."""
    library = read_folder(trees_folder())
    visit = begin(library)
    visit = fold(visit, Opened(AT, (("zone_spillover", ""),)))
    for _ in range(12):
        ask = asked(visit)
        if ask.kind == "look":
            visit = fold(visit, Saw(AT, ask.step, ask.choices[0]))
        elif ask.kind == "do":
            visit = fold(visit, Did(AT, ask.step, 600.0))
        elif ask.kind in ("measure", "watch"):
            visit = fold(visit, Cannot(AT, ask.step))
        else:
            break
    assert len(visit.history) >= 3
    for taken in visit.history:
        _, step = library.step(taken.step)
        assert taken.answer.strip()
        assert taken.at == AT
        written = TREES[taken.step.split(".")[0]]["steps"][step.common.name]
        assert taken.way in {to for _, to in outcomes(written)}


def plain(node):
    if isinstance(node, Fields):
        return {name: plain(value) for name, value in node.entries.items()}
    return [plain(item) for item in node.items] if isinstance(node, Items) else node.value


@pytest.mark.parametrize("trap", TRAPS, ids=lambda trap: trap["case"])
def test_a_trap_of_yaml_is_refused_or_read_as_it_is_written(trap):
    try:
        got = plain(read(trap["text"].encode(), "trap.yaml"))
    except Unreadable:
        assert "refused" in trap
        return
    assert got == trap["reads"], trap.get("why")


@pytest.mark.parametrize("file", sorted(resources_folder().glob("*.schema.json")), ids=lambda path: path.name)
def test_no_pattern_for_editors_needs_unicode_classes(file):
    """JSON-Schema-Test-Suite, draft 2020-12: such a class in a pattern is an error in the Python library."""
    waiting = [json.loads(file.read_text(encoding="utf-8"))]
    while waiting:
        at = waiting.pop()
        if isinstance(at, dict):
            assert "\\p" not in str(at.get("pattern", "")).lower()
            waiting += at.values()
        elif isinstance(at, list):
            waiting += at
