"""What a shop's people may not open is not opened: the step goes its way on, and the trail says why."""

import pytest

from assistant.resources import trees_folder
from assistant.tree.library import read_folder
from assistant.walk.event import Opened, Saw, ShopMay, TakeUp
from assistant.walk.state import BadAnswer
from assistant.walk.visit import asked, begin, fold

AT = "2026-11-25T09:14:00-05:00"
LIBRARY = read_folder(trees_folder())
MARKED = [(tree.name, step) for tree in LIBRARY.trees.values() for step in tree.steps.values()
          if step.common.opens]


def visit(shop=None):
    from dataclasses import replace

    from assistant.tree.library import Library

    tree = LIBRARY.trees["tripped_breaker"]
    trees = {**LIBRARY.trees, tree.name: replace(tree, start="may_open")}
    library = Library(LIBRARY.vocabulary, trees, LIBRARY.texts, [])
    opened = fold(begin(library), Opened(AT, (("tripped_breaker", ""),), shop=shop or {}))
    return opened if asked(opened).kind != "choose" else fold(opened, TakeUp(AT, "tripped_breaker"))


def test_where_nobody_has_said_anything_the_step_is_asked_and_says_so():
    ask = asked(visit())
    assert ask.step == "tripped_breaker.may_open"
    assert ask.untold == ("breaker_panel",)
    after = fold(visit(), Saw(AT, ask.step, "ours to open"))
    assert after.path[-1].way == "cover_off"


@pytest.mark.parametrize("may", [[], ["gas", "vent"]])
def test_a_shop_that_may_not_goes_the_way_on(may):
    after = visit({"may": may})
    assert after.path[-1].step == "tripped_breaker.may_open"
    assert after.path[-1].way == "size_low"
    assert "do not open the breaker panel's cover" in after.path[-1].answer
    assert after.path[-1].passed
    assert after.path[-1].undecided


def test_a_shop_that_may_is_asked_as_ever_and_not_for_leave():
    ask = asked(visit({"may": ["breaker_panel"]}))
    assert (ask.step, ask.untold) == ("tripped_breaker.may_open", ())


@pytest.mark.parametrize(("said", "step"), [("yes", "may_open"), ("no", None)])
def test_the_answer_counts_at_once(said, step):
    after = fold(visit(), ShopMay(AT, {"breaker_panel": said, "gas": "no", "vent": "no"}))
    assert asked(after).untold == ()
    assert (asked(after).step == f"tripped_breaker.{step}") == (step is not None)


@pytest.mark.parametrize("may", [{"cellar": "yes"}, {"gas": "perhaps"}])
def test_an_answer_that_says_nothing_is_refused(may):
    with pytest.raises(BadAnswer):
        fold(visit(), ShopMay(AT, may))


def test_everything_that_is_said_to_open_is_opened_somewhere():
    assert {name for _, step in MARKED for name in step.common.opens} == set(LIBRARY.vocabulary.openings)
