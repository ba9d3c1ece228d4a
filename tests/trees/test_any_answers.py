"""Whatever is answered, the shipped trees lead somewhere, and nobody measures ohms on what is not dead."""

from __future__ import annotations

import random

import pytest
from sound_furnace import AT, ENDS, MOST_STEPS, Furnace, complaint_of, opened, walked

from assistant.tree.model import readings_of
from assistant.walk.event import Cannot, Event, Read, Saw, Typed, Watched
from assistant.walk.visit import asked, fold

NUMBERS = range(300)
FIRST = {"tripped_breaker": ("kind", "panel", "room", "which"),
         "no_heat": ("kind", "room"), "blower_silent": ("room", "flame_out"), "zone_spillover": ("kind",)}
"""Steps of each tree that are answered as usual, or nearly every walk would end there."""
MANY_ENDS = {"tripped_breaker": 30, "no_heat": 35, "blower_silent": 25, "zone_spillover": 30}
ENERGIZED = {"ac_voltage", "ac_current", "dc_current"}


def anything(ask, chance: random.Random, usual: Furnace) -> Event:
    """An answer by chance: a value in reach, one of the choices, or that it can't be taken."""
    tree, _, step = ask.step.partition(".")
    if step in FIRST.get(tree, ()):
        return usual.event(ask)
    if ask.kind in ("look", "measure", "watch") and ask.body.cannot and chance.random() < 0.03:
        return Cannot(AT, ask.step)
    if ask.kind == "look":
        return Saw(AT, ask.step, chance.choice(ask.choices)) if chance.random() < 0.6 else usual.event(ask)
    if ask.kind == "measure":
        if "proof" in step or chance.random() < 0.7:  # a dead-proof by chance would end most walks at once
            return usual.event(ask)
        typed = {one.name or step: Typed(value(one, chance), sure=True) for one in ask.readings}
        if ask.body.survey:
            typed = {name: Typed(survey(chance)) for name in typed}
        return Read(AT, ask.step, typed)
    if ask.kind == "watch":
        happened = chance.randrange(len(ask.body.events) + 1)
        return Watched(AT, ask.step, {name: 10.0 * i for i, name in enumerate(ask.body.events[:happened])})
    return usual.event(ask)


def value(reading, chance: random.Random) -> str:
    low, high = reading.plausible
    if reading.kind == "resistance":
        return chance.choice(["0.3", "5", "60", "700", "OL"])
    return f"{chance.triangular(low, high, low + (high - low) * chance.random() / 10):.2f}"


def survey(chance: random.Random) -> str:
    """Three thermostats by four registers, drawn right, their air by chance."""
    row = lambda: ",".join(chance.choice(("0", "0", "15", "50", "110", "some", "-")) for _ in range(4))  # noqa: E731
    return f"fan=a:{row()}/b:{row()}/c:{row()} drawn=a,b,c,a"


@pytest.mark.parametrize("tree", walked())
@pytest.mark.parametrize("number", NUMBERS)
def test_a_walk_ends_and_is_safe_on_the_way(tree: str, number: int):
    chance, usual, visit = random.Random(number), Furnace(), opened(complaint_of(tree))
    for _ in range(MOST_STEPS):
        ask = asked(visit)
        if ask.kind in ENDS:
            break
        if ask.kind == "measure":
            for reading in readings_of(ask.body):
                states = {visit.house.circuits[circuit] for point in reading.at
                          if (circuit := visit.vocabulary.points[point].circuit)}
                if reading.kind == "resistance":
                    assert states <= {"dead"}, ask.step
                elif reading.kind in ENERGIZED and not ask.body.verifies:
                    assert not states & {"off", "dead"}, ask.step
        visit = fold(visit, anything(ask, chance, usual))
    else:
        raise AssertionError(f"no end after {MOST_STEPS} answers")
    assert asked(visit).kind in ENDS


@pytest.mark.parametrize("tree", walked())
def test_the_walks_by_chance_come_far(tree: str):
    """The test above means little if all its walks end at the door."""
    ends = set()
    for number in NUMBERS:
        chance, usual, visit = random.Random(number), Furnace(), opened(complaint_of(tree))
        while (ask := asked(visit)).kind not in ENDS:
            visit = fold(visit, anything(ask, chance, usual))
        ends.add(ask.step)
    assert len(ends) >= MANY_ENDS[tree]
