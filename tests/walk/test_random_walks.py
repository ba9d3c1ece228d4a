"""Properties of every walk: whatever a person answers, in whatever order, these hold."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.tree.power import lacking, needs_of
from assistant.walk.ask import Ask
from assistant.walk.event import (
    Back,
    Cannot,
    Concluded,
    Did,
    GoOn,
    Hazard,
    Note,
    Opened,
    Paused,
    PlateRead,
    PutDown,
    Read,
    Resumed,
    Saw,
    Settled,
    StillTrue,
    TakeUp,
    Typed,
)
from assistant.walk.visit import BadAnswer, OutOfOrder, Visit, asked, begin, fold
from tests.walk.small import AT, DEAD, library

LIBRARY = library()
TEXTS = st.sampled_from(
    ["0", "0.4", "5", "30", "50", "70", "100", "106-110", "118.4", "121", "240", "OL", "", "x"]
)
PLATES = {
    "supply_volts": ["120", "240", "not readable"],
    "rise_min": ["35", "not readable"],
    "rise_max": ["65", "not readable"],
}


def answer(ask: Ask, data: st.DataObject):
    """An event that fits what is asked, drawn at random."""
    if ask.kind == "plate":
        return PlateRead(AT, ask.plate, data.draw(st.sampled_from(PLATES[ask.plate])))
    if ask.kind == "look":
        return Saw(AT, ask.step, data.draw(st.sampled_from(ask.choices)))
    if ask.kind == "do":
        return Did(AT, ask.step)
    if ask.kind == "measure":
        if ask.offer and data.draw(st.booleans()):
            return StillTrue(AT, ask.step)
        own = ask.step.split(".")[1]
        names = [reading.name or own for reading in ask.readings]
        if "live_before" in names and data.draw(st.booleans()):
            return Read(AT, ask.step, {name: Typed(text) for name, text in DEAD.items()})
        return Read(AT, ask.step, {name: Typed(data.draw(TEXTS), sure=True) for name in names})
    if ask.kind == "conclude":
        return Concluded(AT, ask.step, data.draw(st.sampled_from(ask.choices)))
    if ask.kind in ("finding", "stop", "handed_over"):
        return GoOn(AT, ask.step)
    if ask.kind == "choose":
        return TakeUp(AT, data.draw(st.sampled_from(ask.choices)))
    if ask.kind == "notes":
        return Settled(AT, ask.complaint, "done")
    if ask.kind == "paused":
        return Resumed(AT)
    return Note(AT, "nothing left to ask")


def anything(visit: Visit, data: st.DataObject):
    """Now and then something that can come at any time; otherwise an answer."""
    ask = asked(visit)
    word = data.draw(
        st.sampled_from(["answer"] * 8 + ["back", "pause", "hazard", "put", "cannot", "take_up"])
    )
    if word == "back" and visit.path:
        return Back(AT, data.draw(st.sampled_from([taken.step for taken in visit.path])))
    if word == "pause":
        return Paused(AT, "a break")
    if word == "hazard":
        return Hazard(AT, "gas_smell")
    if word == "put":
        return PutDown(AT, "ac_voltage", ("l", "n"), Typed(data.draw(TEXTS)))
    if word == "cannot" and ask.kind in ("measure", "look"):
        return Cannot(AT, ask.step)
    if word == "take_up":
        return TakeUp(AT, "no_heat")
    return answer(ask, data)


@settings(max_examples=300, deadline=None)
@given(st.data())
def test_whatever_happens_a_step_is_asked_only_in_the_house_it_needs(data: st.DataObject) -> None:
    """Ohms only on dead, energized steps never on off or dead, whatever was answered, gone back to or paused;
    a refused answer changes nothing; the history only grows; hazards are always accepted."""
    visit = fold(begin(LIBRARY), Opened(AT, (("no_heat", "no heat"), ("noise", "noise"))))
    for _ in range(data.draw(st.integers(5, 60))):
        event = anything(visit, data)
        try:
            moved = fold(visit, event)
        except (BadAnswer, OutOfOrder):
            continue
        assert len(moved.history) >= len(visit.history)
        assert moved.events == (*visit.events, event)
        visit = moved
        ask = asked(visit)
        if ask.kind in ("measure", "look", "watch") and ask.body is not None:
            assert lacking(needs_of(ask.body, ask.circuit), visit.house.circuits) == []
        if ask.kind not in ("signed", "paused"):
            assert asked(fold(visit, Hazard(AT, "gas_smell"))).kind == "stop"
