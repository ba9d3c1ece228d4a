"""Visits found by what they hold; the index is derived, made anew where damaged, and never in the way."""

import shutil
import sqlite3

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shelved import brought_up, put

from assistant.past.page import Page
from assistant.past.search import count, latest, search
from assistant.past.store import index_file, open_store
from assistant.trail.shelf import Shelved

OPEN_IGNITER = "Igniter open"


@pytest.fixture(scope="module")
def shelf(tmp_path_factory):
    root = tmp_path_factory.mktemp("shelf")
    put(root, "one", "no_heat/igniter_open", 0, person={"name": "Zoë Öst", "address": "12 Sample St."})
    put(root, "two", "no_heat/fuse_blown", 1, person={"name": "Mx Example", "address": "3 Mill Lane"})
    put(root, "three", "blower_silent/capacitor_bad", 2)
    put(root, "practice", "no_heat/igniter_open", 3, practice=True)
    return root


@pytest.fixture(scope="module")
def store(shelf, tmp_path_factory):
    store = open_store(tmp_path_factory.mktemp("cache") / "index.sqlite")
    assert brought_up(store, shelf) == 4
    yield store
    store.close()


def names(found):
    return [each.folder.name for each in found]


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("", ["three", "two", "one"]),
        ("zoe", ["one"]),
        ("OST", ["one"]),
        ("12 sample", ["one"]),
        ("igniter", ["one"]),
        ("part:igni", ["one"]),
        ("name:igniter", []),
        ("finding:fuse", ["two"]),
        ("capacitor", ["three"]),
        ("mill ex", ["two"]),
        ("no such words", []),
        ("2026-01-14", ["one"]),
    ],
)
def test_a_visit_is_found_by_what_it_holds(store, shelf, typed, found):
    assert names(search(store, shelf, typed)) == found


def test_a_reading_is_found_as_it_was_shown(store, shelf):
    shown, visit = store.base.execute(
        "select text, folder from reading join visit on visit.id = visit where text like '26.2 V%'"
    ).fetchone()
    assert visit in names(search(store, shelf, f"reading:{shown}"))
    assert len(names(search(store, shelf, "reading:26.2"))) < 3


@given(st.text(max_size=30))
def test_anything_may_be_typed(store, shelf, typed):
    assert len(search(store, shelf, typed)) <= 3


def test_practice_is_neither_listed_nor_counted(store, shelf):
    assert "practice" not in names(latest(store, shelf))
    assert count(store) == 3
    for table in ("found", "taken", "reading", "fitted"):
        used = {row[0] for row in store.base.execute(f"select distinct visit from {table}")}
        practice = store.base.execute("select id from visit where practice").fetchone()[0]
        assert practice not in used


def test_only_what_changed_is_read_again(shelf, tmp_path):
    copy = shutil.copytree(shelf, tmp_path / "shelf")
    store = open_store(tmp_path / "index.sqlite")
    assert brought_up(store, copy) == 4
    assert brought_up(store, copy) == 0
    shutil.rmtree(copy / "two")
    put(copy, "four", "no_heat/gas_off", 5)
    assert brought_up(store, copy) == 1
    assert names(latest(store, copy)) == ["four", "three", "one"]
    store.close()
    again = open_store(tmp_path / "index.sqlite")
    assert names(latest(again, copy)) == ["four", "three", "one"]
    again.close()


def test_a_broken_visit_is_listed_and_hides_no_other(shelf, tmp_path):
    copy = shutil.copytree(shelf, tmp_path / "shelf")
    (copy / "empty").mkdir()
    trail = next((copy / "two").glob("trail-*"))
    trail.write_bytes(trail.read_bytes()[:300] + b"x" + trail.read_bytes()[301:])
    store = open_store(tmp_path / "index.sqlite")
    brought_up(store, copy)
    listed = {each.folder.name: each for each in latest(store, copy)}
    assert set(listed) == {"one", "two", "three", "empty"}
    assert listed["two"].state == listed["empty"].state == "broken"
    assert listed["two"].trouble
    store.close()


@pytest.mark.parametrize("damage", [b"not a database at all" * 50, b""])
def test_a_damaged_index_is_made_anew(shelf, tmp_path, damage):
    file = tmp_path / "index.sqlite"
    file.write_bytes(damage)
    store = open_store(file)
    assert not store.in_memory
    assert brought_up(store, shelf) == 4
    store.close()


def test_an_index_of_another_version_is_made_anew(shelf, tmp_path):
    file = tmp_path / "index.sqlite"
    base = sqlite3.connect(file)
    base.executescript("create table visit (other text); pragma user_version = 99;")
    base.close()
    store = open_store(file)
    assert brought_up(store, shelf) == 4
    store.close()


def test_where_it_cannot_be_written_it_is_kept_in_memory(shelf, tmp_path):
    (tmp_path / "a file").write_text("in the way")
    store = open_store(tmp_path / "a file" / "index.sqlite")
    assert store.in_memory
    assert brought_up(store, shelf) == 4
    assert names(search(store, shelf, "igniter")) == ["one"]
    store.close()


def test_each_shelf_has_an_index_of_its_own_and_none_lies_among_the_visits(tmp_path):
    one, two = index_file(tmp_path / "a"), index_file(tmp_path / "b")
    assert one != two
    assert not one.is_relative_to(tmp_path)


def test_the_latest_comes_first_whatever_zone_its_clock_was_in(tmp_path):
    """Eleven at night in New York is after one in the morning in Berlin of the next day."""
    store = open_store(tmp_path / "index.sqlite")
    for name, last in (("berlin", "2026-01-15T01:00:00+01:00"), ("new-york", "2026-01-14T23:00:00-05:00")):
        store.put(Page(Shelved(tmp_path / name, "open", last=last), "", words={"name": "sample"}))
    for typed in ("", "sample"):
        assert names(search(store, tmp_path, typed)) == ["new-york", "berlin"], typed
    store.close()
