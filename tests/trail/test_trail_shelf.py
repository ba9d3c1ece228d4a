"""The list of visits: all of them, the broken ones included, and found by words."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from visits import LIBRARY, answers, at, finished

from assistant.trail.names import folder_name
from assistant.trail.record import Recorder
from assistant.trail.shelf import find, shelf_folder, visits
from assistant.walk.event import Opened, Paused, Person, Resumed


def put(root, name, minute, events, words="no heat since last night", person=None):
    with Recorder.create(root / name, LIBRARY, Opened(at(minute), (("no_heat", words),))) as recorder:
        if person:
            recorder.append(Person(at(minute), recorder.keep_person(person)))
        for event in events:
            recorder.append(event)
    return root / name


@pytest.fixture
def shelf(tmp_path):
    put(tmp_path, "one", 1, finished(6), person={"name": "Mx Example", "address": "12 Sample Street"})
    put(
        tmp_path,
        "two",
        2,
        [*answers(2), Paused(at(50), "waiting for a part")],
        "the den blows when it shouldn't",
    )
    put(tmp_path, "three", 3, [Paused(at(20), "lunch"), Resumed(at(21)), *answers(2, 40)])
    return tmp_path


def test_the_latest_comes_first_with_its_state(shelf):
    listed = visits(shelf)
    assert [(each.folder.name, each.state) for each in listed] == [
        ("two", "paused"),
        ("three", "open"),
        ("one", "signed"),
    ]
    assert listed[0].why_paused == "waiting for a part"
    assert listed[0].complaints == (("no_heat", "the den blows when it shouldn't"),)
    assert listed[1].step == "no_heat.light"
    assert dict(listed[2].person)["name"] == "Mx Example"
    assert (listed[2].began, listed[2].last) == (at(1), at(7))


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("", ["two", "three", "one"]),
        ("DEN", ["two"]),
        ("sample mx", ["one"]),
        ("last night", ["three", "one"]),
        ("paused", ["two"]),
        ("2026-01-14", ["two", "three", "one"]),
        ("nobody", []),
    ],
)
def test_visits_are_found_by_any_words(shelf, words, found):
    assert [each.folder.name for each in find(visits(shelf), words)] == found


def test_a_broken_visit_hides_no_other(shelf):
    (shelf / "empty").mkdir()
    (shelf / "letter.txt").write_text("no visit")
    (shelf / "noise").mkdir()
    (shelf / "noise" / "trail-1.jsonl").write_bytes(b"\xff\xfe{}\n[]\n" + b"[" * 100_000 + b"\n")
    (shelf / "folder").mkdir()
    (shelf / "folder" / "trail-1.jsonl").mkdir()
    (file,) = (shelf / "two").glob("trail-*")
    file.write_bytes(file.read_bytes().replace(b"three flashes", b"seven flashes"))
    listed = visits(shelf)
    assert len(listed) == 6
    broken = {each.folder.name: each.trouble for each in listed if each.state == "broken"}
    assert set(broken) == {"empty", "noise", "folder", "two"}
    assert all(sentence.endswith(".") for sentence in broken.values())
    assert "never begun" in broken["empty"]
    assert "line 3" in broken["two"]
    assert {each.folder.name for each in find(listed, "den")} == {"two"}


def test_no_shelf_yet_is_an_empty_list(tmp_path):
    assert visits(tmp_path / "nowhere") == []


def test_the_shelf_lies_in_the_users_folder(monkeypatch, tmp_path):
    monkeypatch.setenv("FAULT_TRAIL_HOME", str(tmp_path))
    assert shelf_folder() == tmp_path / "visits"


# Microsoft, "Naming Files, Paths, and Namespaces": reserved characters and device names, and no name
# that ends in a space or a dot (from memory)
DEVICES = {"con", "prn", "aux", "nul", *(f"com{n}" for n in range(10)), *(f"lpt{n}" for n in range(10))}


@given(st.lists(st.text(max_size=200), max_size=4), st.text(max_size=30) | st.just(at(3)))
def test_folder_names_are_taken_by_every_system(words, when):
    name = folder_name(when, tuple(words))
    assert re.fullmatch("[0-9a-z-]+", name)
    assert name.split(".")[0] not in DEVICES
    assert len(name) < 100


def test_a_folder_name_tells_when_and_what():
    name = folder_name("2026-01-14T09:05:00-05:00", ("no_heat", "Chauffage à l'étage?"))
    assert re.fullmatch("2026-01-14-0905-no-heat-chauffage-a-l-etage-[0-9a-f]{4}", name)
    assert folder_name(at(1)) != folder_name(at(1))
