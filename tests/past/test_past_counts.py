"""What our own calls say, counted by hand on a few visits."""

import csv
import io

import pytest
from shelved import put, visits_of

from assistant.past.calls import as_csv, findings, never_changed, step_costs
from assistant.past.refresh import refresh
from assistant.past.store import open_store
from assistant.past.usual import FEW, OPENS_AFTER, telling, usual

TODAY = "2026-06-01T09:00:00-04:00"
SAMPLE, MILL = {"address": "12 Sample St."}, {"address": "3, Mill Lane"}


@pytest.fixture(scope="module")
def shelf(tmp_path_factory):
    root = tmp_path_factory.mktemp("shelf")
    put(root, "a", "no_heat/igniter_open", 0, person=SAMPLE)
    put(root, "b", "no_heat/igniter_open", 59, person={"address": "12 sample st"})  # called back to a
    put(root, "c", "no_heat/igniter_open", 10, person=MILL)
    put(root, "d", "no_heat/fuse_blown", 75, person=MILL)  # more than 60 days after c
    put(root, "e", "no_heat/fuse_blown", 130)  # nobody knows where
    put(root, "f", "no_heat/gas_off", 137, person={"address": "9 New Road"})  # today is 1 day later
    put(root, "practice", "no_heat/gas_off", 20, practice=True)
    return root


@pytest.fixture(scope="module")
def store(shelf, tmp_path_factory):
    store = open_store(tmp_path_factory.mktemp("cache") / "index.sqlite")
    for _ in refresh(store, shelf):
        pass
    yield store
    store.close()


def test_how_often_a_finding_held(store):
    counted = {
        each.step: (each.visits, each.held, each.came_back, each.too_early, each.unknown)
        for each in findings(store, TODAY)
    }
    assert counted == {
        "no_heat.igniter_open": (3, 2, 1, 0, 0),
        "no_heat.fuse_blown": (2, 1, 0, 0, 1),
        "no_heat.gas_off": (1, 0, 0, 1, 0),
    }
    assert findings(store, TODAY)[0].step == "no_heat.igniter_open"


def test_where_the_time_goes(store):
    costs = {each.step: each for each in step_costs(store)}
    room = costs["no_heat.room"]
    assert (room.times, room.mean_minutes, room.total_minutes) == (6, 2.0, 12.0)
    assert [each.total_minutes for each in step_costs(store)] == sorted(
        (each.total_minutes for each in step_costs(store)), reverse=True
    )


def test_a_pause_is_no_work(tmp_path, store):
    root = tmp_path / "shelf"
    put(root, "slow", "no_heat/igniter_open", 0, minutes=200)
    own = open_store(tmp_path / "index.sqlite")
    for _ in refresh(own, root):
        pass
    assert step_costs(own) == []
    own.close()


def test_readings_that_never_changed_anything(store):
    told = {each.step: each for each in never_changed(store)}
    assert told["no_heat.room"].times == 6
    ways = store.base.execute("select count(distinct way) from taken where step = 'no_heat.thermostat'")
    assert ("no_heat.thermostat" in told) == (ways.fetchone()[0] == 1)
    assert never_changed(store, few=7) == []


def test_the_table_is_safe_in_a_spreadsheet(store):
    rows = list(csv.reader(io.StringIO(as_csv(findings(store, TODAY)))))
    assert rows[0][:3] == ["complaint", "step", "title"]
    assert len(rows) == 4
    bad = [type(findings(store, TODAY)[0])("no_heat", "=cmd()", " +cmd", 1, 0, 0, 0, 1)]
    assert list(csv.reader(io.StringIO(as_csv(bad))))[1][1:3] == ["'=cmd()", "'+cmd"]


def test_what_was_usually_found_is_shut_until_two_readings_are_in(store):
    """Opened along a real walk: nothing before two readings, then only findings still possible."""
    readings = 0
    for visit in visits_of("no_heat/igniter_open"):
        taken = sum(record.computed is None for step in visit.path for record in step.records)
        if visit.position is None or visit.position.stage != "walking":
            continue
        said = usual(store, visit)
        if taken < OPENS_AFTER:
            assert said == []
            assert telling(store, visit) == []
        else:
            readings += 1
            assert [each.times for each in said] == sorted((each.times for each in said), reverse=True)
            assert all(each.of == sum(one.times for one in said) for each in said)
    assert readings > 3


def test_the_reading_that_told_most(tmp_path):
    """Of two findings told apart by one look, that look is worth something and the others are not."""
    root = tmp_path / "shelf"
    for number in range(FEW):
        put(root, f"i{number}", "no_heat/igniter_open", number)
        put(root, f"f{number}", "no_heat/fuse_blown", 30 + number)
    store = open_store(tmp_path / "index.sqlite")
    for _ in refresh(store, root):
        pass
    best = [telling(store, visit) for visit in visits_of("no_heat/igniter_open")]
    told = next(each for each in best if each)
    assert told[0].visits >= FEW
    assert told[0].gain > 0
    assert [each.per_minute for each in told] == sorted((e.per_minute for e in told), reverse=True)
    store.close()
