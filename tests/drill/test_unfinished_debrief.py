"""A debrief that the program was closed over is worked out the next time, and comes to the same."""

from __future__ import annotations

from houses import library
from practice_matter import drills, faults
from test_practice_along import at, step

from assistant.drill.practice.debrief import Debrief, debrief
from assistant.drill.practice.houses import Houses
from assistant.drill.practice.sitting import Sitting
from assistant.drill.practice.unfinished import FILE, finished, keep_unfinished, unfinished


def whole(work, **more) -> Debrief:
    return next(one for one in debrief(work, library(), faults(), **more) if isinstance(one, Debrief))


def read_back(tmp_path, work):
    folder = tmp_path / "p-ed" / "2026-11-26"
    keep_unfinished(folder, "Ed", "2026-11-26T09:00:00-05:00", work)
    ((place, ended),) = unfinished(tmp_path, drills())
    assert place == folder
    assert (ended.apprentice, ended.began) == ("Ed", "2026-11-26T09:00:00-05:00")
    return folder, ended


def test_free_work_is_told_the_same_after_a_restart(tmp_path):
    sitting = Sitting(drills()["dark"], library(), clock=lambda: 0.0)
    sitting.look("code_light", "steady")
    sitting.act("hold_door_switch")
    sitting.meter.function, sitting.meter.red, sitting.meter.black = "ohms", "switch.load", "box.neutral"
    sitting.read("OL")
    sitting.wait(30)
    sitting.look("service_switch")
    sitting.conclude("switch_off", "switched_off", "It was off.")
    folder, ended = read_back(tmp_path, sitting)
    assert whole(ended) == whole(sitting)
    finished(folder)
    assert list(unfinished(tmp_path, drills())) == []


def test_a_walk_is_told_the_same_after_a_restart(tmp_path):
    along = at("dark")
    while along.ask().kind not in ("finding", "stop", "handed_over"):
        step(along, "0")
    along.conclude("switch_off", "switched_off", "")
    _, ended = read_back(tmp_path, along)
    assert whole(ended) == whole(along)


def test_what_can_not_be_read_and_a_drill_that_is_gone_are_passed_over(tmp_path):
    sitting = Sitting(drills()["dark"], library(), clock=lambda: 0.0)
    sitting.conclude("switch_off", "", "")
    folder, _ = read_back(tmp_path, sitting)
    assert list(unfinished(tmp_path, {})) == []
    for text in ("", "[]", "{}", '{"drill": "dark"}', '{"drill": "dark", "log": 3, "calls": [[1]]}'):
        (folder / FILE).write_text(text, encoding="utf-8")
        assert list(unfinished(tmp_path, drills())) == [], text


def test_houses_made_while_somebody_works_tell_the_same_and_are_used_up():
    drill = drills()["dark"]
    sitting = Sitting(drill, library(), clock=lambda: 0.0)
    sitting.look("code_light")
    sitting.look("service_switch")
    sitting.conclude("switch_off", "switched_off", "")
    houses = Houses(drill, faults())
    houses.begin()
    while len(houses.made) < len(houses.others):
        houses._thread.join(0.05)
    houses.end()
    assert whole(sitting, houses=houses) == whole(sitting)
    assert houses.made == {}


def test_what_guards_people_is_counted_neither_in_the_own_path_nor_in_the_best():
    """Gas in the room and a flame that stays are looked for first; nobody is told that they took one more."""
    along = at("dark")
    while along.ask().kind not in ("finding", "stop", "handed_over"):
        step(along, "0")
    along.conclude("switch_off", "switched_off", "")
    made = whole(along)
    guarding = [entry for entry in along.log.entries if entry.guards and entry.asks]
    assert guarding
    asked = [e for e in along.log.entries if e.asks and not e.aside and not e.guards]
    assert made.figures.asked == sum(max(1, len(e.told)) if e.kind == "read" else 1 for e in asked)
    assert made.figures.best == made.figures.asked
    assert "what guards people not counted" in "\n".join(line for s in made.sections for line in s.lines)
