"""Clocks that are wrong, set back, of another zone, changed to winter time: nothing is refused or lost."""

from __future__ import annotations

import time

import pytest
from visits import LIBRARY, load_events, opened

from assistant.report.invoice import sessions
from assistant.trail.clock import moment, now, set_back, sortable
from assistant.trail.record import Recorder
from assistant.trail.shelf import visits
from assistant.walk.event import Note, Opened, Paused, Resumed

# Daylight saving time in the United States ends on the first Sunday of November at 2 a.m. and begins on the
# second Sunday of March at 2 a.m. (15 U.S.C. 260a, as amended 2005; from memory): 1 November 2026, 14 March
# 2027.
BEFORE_WINTER, IN_WINTER = "2026-11-01T01:55:00-04:00", "2026-11-01T01:05:00-05:00"
BEFORE_SUMMER, IN_SUMMER = "2027-03-14T01:55:00-05:00", "2027-03-14T03:05:00-04:00"


@pytest.mark.parametrize(("first", "second"), [(BEFORE_WINTER, IN_WINTER), (BEFORE_SUMMER, IN_SUMMER)])
def test_the_change_to_winter_or_summer_time_is_ten_minutes_and_no_clock_set_back(first, second):
    assert not set_back(first, second)
    (session,) = sessions([Opened(first, ()), Paused(second, "lunch")])
    assert session.minutes == 10


def test_a_clock_that_was_set_back_counts_no_minutes_and_the_others_are_counted():
    events = [
        Opened("2026-01-14T09:00:00-05:00", ()),
        Paused("2026-01-14T08:00:00-05:00", "lunch"),
        Resumed("2026-01-14T09:00:00-05:00", "B."),
        Paused("2026-01-14T09:30:00-05:00", "done"),
    ]
    assert [each.minutes for each in sessions(events)] == [None, 30]


def test_visits_stand_in_the_order_they_happened_whatever_zone_the_clock_was_in(tmp_path):
    """Eleven at night in New York is after one in the morning in Berlin of the next day."""
    for name, at in (("berlin", "2026-01-15T01:00:00+01:00"), ("new-york", "2026-01-14T23:00:00-05:00")):
        Recorder.create(tmp_path / name, LIBRARY, Opened(at, (), opened().files)).close()
    assert [each.folder.name for each in visits(tmp_path)] == ["new-york", "berlin"]


@pytest.mark.parametrize(
    "at", ["1970-01-01T00:00:00+00:00", "9999-12-31T23:59:59-12:00", "0001-01-01T00:00:00+14:00", "", "soon"]
)
def test_a_clock_that_is_wrong_by_ages_refuses_nothing(tmp_path, at):
    folder = tmp_path / "visit"
    with Recorder.create(folder, LIBRARY, Opened(at, (("no_heat", "cold"),), opened().files)) as recorder:
        recorder.append(Note(at, "a"))
        recorder.append(Note("2026-01-14T09:00:00-05:00", "b"))
    events, _ = load_events(folder)
    assert [event.at for event in events] == [at, at, "2026-01-14T09:00:00-05:00"]
    (listed,) = visits(tmp_path)
    assert listed.began == at and not listed.trouble
    assert sortable(at)[:4] in (at[:4], "")


@pytest.mark.skipif(not hasattr(time, "tzset"), reason="Windows has one zone a computer")
@pytest.mark.parametrize("zone", ["UTC", "America/St_Johns", "Asia/Kathmandu", "Pacific/Kiritimati", "none"])
def test_the_time_written_down_names_its_offset_in_every_zone(zone, monkeypatch):
    monkeypatch.setenv("TZ", zone)
    time.tzset()
    try:
        assert abs(moment(now()).timestamp() - time.time()) < 5
    finally:
        monkeypatch.undo()
        time.tzset()
