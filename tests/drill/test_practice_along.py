"""Along the tree: each reading comes from the house, and the walk is the same as on a visit."""

from __future__ import annotations

from dataclasses import replace

import pytest
from houses import library
from practice_matter import drills, faults

from assistant.drill.practice.along import NOT_HERE, NOT_TAKEN, Along, Loose, _parted
from assistant.drill.practice.debrief import Debrief, debrief
from assistant.drill.practice.sitting import CantDo
from assistant.drill.trial import opened
from assistant.rig.house import NotDone
from assistant.trail.live import LiveVisit
from assistant.walk.event import Read, Saw
from assistant.walk.visit import BadAnswer


def at(name: str = "dark") -> Along:
    drill = drills()[name]
    return Along(drill, library(), Loose(opened(library(), "no_heat", stated=True)), clock=lambda: 0.0)


def step(along: Along, expected: str = "") -> None:
    along.live.send(along.take(expected))


def to_the_end(along: Along) -> None:
    while along.ask().kind not in ("finding", "stop", "handed_over"):
        step(along)


def test_a_reading_that_was_not_taken_is_refused_and_one_that_was_is_not():
    along = at()
    event = Saw("2026-01-14T09:00:00-05:00", along.ask().step, "oil")
    assert along.refuses(event) == NOT_TAKEN
    taken = along.take("gas")
    assert isinstance(taken, Saw)
    assert taken.value != "oil"
    assert along.refuses(taken) == ""
    assert along.take() is taken  # the house is asked once


def test_a_reading_written_otherwise_than_it_was_shown_is_told():
    along = at()
    step(along)
    taken = along.take()
    name = next(iter(taken.readings))
    event = Read(taken.at, taken.step, {**taken.readings, name: replace(taken.readings[name], text="5")})
    along.before(event)
    assert along.log.entries[-1].words.startswith("Wrote 5 where the display showed")


def test_what_guards_people_is_never_called_of_no_use():
    """Gas in the room: its page tells nothing about a switch, and nobody is told so."""
    along = at()
    to_the_end(along)
    room = next(n for n, entry in enumerate(along.log.entries) if entry.step.endswith(".room"))
    assert along.log.entries[room].guards
    along.conclude("switch_off", "switched_off", "")
    made = next(one for one in debrief(along, library(), faults()) if isinstance(one, Debrief))
    assert "told nothing new" not in made.own_path[room]
    empty = next(one for one in made.sections if one.title == "Told nothing new")
    assert not any(line.startswith(f"{room + 1}. ") for line in empty.lines)


def test_one_expectation_is_judged_by_the_first_field_alone():
    along = at()
    step(along)
    along.take("0")
    assert along.log.entries[-1].parted is False
    one, other = (typed.text for typed in along.taken.readings.values())
    several = replace(along.taken, readings=dict(zip("ab", along.taken.readings.values(), strict=True)))
    ask = along.ask()
    assert _parted("50", several, ask) is True, (one, other)
    live = replace(ask, readings=tuple(replace(one, known_live=True) for one in ask.readings))
    assert _parted("50", several, live) is None


@pytest.mark.parametrize("problem", [KeyError("blower.does"), NotDone("the door is shut")])
def test_what_the_house_does_not_give_is_a_sentence_and_no_name(monkeypatch, problem):
    along = at()

    def refuse(_visit):
        raise problem

    monkeypatch.setattr(along.hand, "event", refuse)
    with pytest.raises(CantDo) as said:
        along.take("gas")
    assert str(said.value) in (NOT_HERE, "The door is shut.")


def test_what_was_taken_goes_with_its_page():
    along = at()
    step(along)
    assert along.taken is None
    assert along.refuses(Read("", along.ask().step, {})) == NOT_TAKEN


def test_a_walk_comes_to_the_finding_and_the_debrief_follows():
    along = at()
    along.take("gas")
    to_the_end(along)
    finding, cause = along.found()
    assert finding == "switch_off"
    along.conclude(finding, "switched_off", "Somebody had switched it off.")
    made = next(one for one in debrief(along, library(), faults()) if isinstance(one, Debrief))
    assert made.figures.right
    assert made.figures.asked == made.figures.best
    assert not along.log.unsafe  # the walk is not over, so nothing is left behind yet
    assert cause == ""


def test_a_reading_that_stops_the_walk_is_the_danger_that_it_shows():
    along = at("smell")
    to_the_end(along)
    assert along.found() == ("hazard.gas_smell", "")
    along.conclude("hazard.gas_smell", "", "Please come out with me.")
    assert not along.log.unsafe


def test_a_page_that_takes_nothing_says_so():
    along = at()
    to_the_end(along)
    with pytest.raises(CantDo):
        along.take()


def test_an_implausible_display_is_still_what_the_house_showed():
    """The page may ask whether it is a slip; the reading stays what it was."""
    along = at("cold")
    while along.ask().kind not in ("finding", "stop", "handed_over"):
        try:
            step(along)
        except BadAnswer:
            from assistant.drill.hand import insisted

            along.live.send(insisted(along.take()))
    assert along.found()[0] == "igniter_open"


def test_a_recorded_walk_is_marked_in_every_line(tmp_path):
    drill = drills()["dark"]
    live = LiveVisit.start(tmp_path / "drill", library(), ((drill.complaint, drill.words),), practice=True)
    along = Along(drill, library(), live, clock=lambda: 0.0)
    step(along)
    step(along)
    live.close()
    lines = (next((tmp_path / "drill").glob("trail-*.jsonl"))).read_text(encoding="utf-8").splitlines()
    assert len(lines) == 4
    assert all('"practice":true' in line for line in lines)
