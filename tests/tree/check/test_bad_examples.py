"""Every rule has trees that it alone refuses, at the marked place, and a sound library that none touches.

A folder under examples/bad is named for its rule; its files stand over those of examples/sound. A comment
`refused: 12` ends each line that the rule must name, with the column.
"""

import re
from itertools import pairwise
from pathlib import Path

import pytest

from assistant.resources import resources_folder
from assistant.tree.check import RULES, check, stem
from assistant.tree.library import from_texts
from assistant.tree.model import ways_of
from tests.tree.check import shown_examples

EXAMPLES = Path(__file__).parent.parent / "examples"
BAD = sorted(path.name for path in (EXAMPLES / "bad").iterdir())
MARK = re.compile(r"  # refused: (\d+)$")


def texts(folder):
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in sorted(folder.rglob("*.yaml"))}


def marked(files):
    return {(name, number, int(mark.group(1))) for name, data in files.items()
            for number, line in enumerate(data.decode().splitlines(), 1) if (mark := MARK.search(line))}


SOUND = texts(EXAMPLES / "sound")


def test_the_sound_library_has_no_problem():
    assert check(from_texts(SOUND)) == []


@pytest.mark.parametrize("example", BAD)
def test_its_rule_alone_refuses_it_at_the_marked_place(example):
    files = texts(EXAMPLES / "bad" / example)
    problems = check(from_texts(SOUND | files))
    rules = {problem.rule for problem in problems}
    assert rules == {example.partition(".")[0]}, "\n".join(map(str, problems))
    assert {(problem.file, problem.line, problem.column) for problem in problems} == marked(files)
    for problem in problems:
        assert re.search(r"; |\. [A-Z]", problem.message), f"what to write instead? {problem}"


def test_every_rule_has_an_example_and_every_example_a_rule():
    assert {name.partition(".")[0] for name in BAD} == set(RULES)


@pytest.mark.parametrize("rule", RULES.values(), ids=list(RULES))
def test_every_rule_says_why_it_is_there(rule):
    assert rule.name == rule.name.lower()
    assert len(rule.reason.split()) >= 25
    assert len(rule.mend.split()) >= 6
    assert rule.in_tree or rule.in_house


def test_problems_come_sorted_and_once():
    everything = {name: data for example in BAD for name, data in texts(EXAMPLES / "bad" / example).items()}
    problems = check(from_texts(SOUND | everything))
    assert problems == sorted(set(problems))


def test_the_examples_that_are_shown_are_these():
    assert (resources_folder() / shown_examples.FILE).read_text(encoding="utf-8") == shown_examples.written()


PATHS = ["across_feed", "act_needs", "circle", "guarded", "leak_check", "lockout", "needs_met", "no_air",
         "read_first", "reset", "second_trip", "switched_off", "thermostat_off", "two_facts.one_path",
         "undecided"]


@pytest.mark.parametrize("example", PATHS)
def test_a_rule_about_paths_shows_one(example):
    problems = check(from_texts(SOUND | texts(EXAMPLES / "bad" / example)))
    for problem in problems:
        assert problem.path
        tree = from_texts(SOUND | texts(EXAMPLES / "bad" / example)).trees[stem(problem.file)]
        names = [line.partition(":")[0] for line in problem.path]
        assert set(names) <= set(tree.steps)
        assert tree.steps[names[0]].common.name == tree.start or example == "circle"
        ways = {name: {way.to for _, way in ways_of(tree.steps[name])} for name in names}
        assert all(after in ways[before] for before, after in pairwise(names))


@pytest.mark.parametrize("example", ["leak_check.handed_over", "lockout.handed_over", "no_air.after_repair",
                                     "may_open.within", "leak_check.after_cause", "leak_check.after_repair"])
def test_a_path_through_several_trees_begins_where_it_begins(example):
    library = from_texts(SOUND | texts(EXAMPLES / "bad" / example))
    for problem in check(library):
        own = stem(problem.file)
        steps = [line.partition(": ")[0] for line in problem.path]
        whole = [step if "." in step else f"{own}.{step}" for step in steps]
        trees = list(dict.fromkeys(step.partition(".")[0] for step in whole))
        assert len(trees) > 1
        assert trees[-1] == own
        for tree in trees:
            names = [step.partition(".")[2] for step in whole if step.startswith(f"{tree}.")]
            known = library.trees[tree]
            assert names[0] == known.start
            assert all(after in {way.to for _, way in ways_of(known.steps[before])}
                       for before, after in pairwise(names))
