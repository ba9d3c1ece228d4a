"""A drill's trail is marked in every line, and nothing that asks for a visit takes it."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from visits import LIBRARY, answers, at, opened

from assistant.command import report as report_command
from assistant.command import verify as verify_command
from assistant.report.export import write_all, write_one
from assistant.trail.error import TrailError
from assistant.trail.live import LiveVisit
from assistant.trail.practice import PracticeError
from assistant.trail.read import read_trail
from assistant.trail.record import Recorder
from assistant.trail.shelf import PRACTICE, find, visits
from assistant.trail.verify import COULD_NOT, verify
from assistant.walk.event import Signed


@pytest.fixture
def drill(tmp_path):
    """A drill's folder that somebody put among the visits, signed as if it were one."""
    folder = tmp_path / "visits" / "2026-01-14-0900-practice"
    folder.parent.mkdir()
    with Recorder.create(folder, LIBRARY, replace(opened(), practice=True)) as recorder:
        for event in [*answers(10), Signed(at(20), "A. Pprentice")]:
            recorder.append(event)
    return folder


def test_every_line_says_so_and_events_read_back_as_they_were(drill):
    (file,) = drill.glob("trail-*.jsonl")
    lines = [json.loads(line) for line in file.read_text(encoding="utf-8").splitlines()]
    assert len(lines) == 13
    assert all(line["practice"] is True for line in lines)
    trail = read_trail(drill)
    assert trail.practice
    assert not trail.damage
    assert trail.events[1:11] == answers(10)


def test_a_visit_has_the_mark_in_no_line(tmp_path):
    with Recorder.create(tmp_path / "visit", LIBRARY, opened()) as recorder:
        recorder.append(answers(1)[0])
    (file,) = (tmp_path / "visit").glob("trail-*.jsonl")
    assert "practice" not in file.read_text(encoding="utf-8")
    assert not read_trail(tmp_path / "visit").practice


def test_it_can_not_be_taken_up_as_a_visit(drill):
    with pytest.raises(PracticeError, match="PRACTICE"):
        LiveVisit.take_up(drill)
    with pytest.raises(PracticeError):
        Recorder.open(drill)


def test_the_shelf_names_it_and_counts_it_for_no_visit(drill):
    (shelved,) = visits(drill.parent)
    assert shelved.state == PRACTICE
    assert shelved.complaints == ()
    assert "No house was visited" in shelved.trouble


def test_a_search_for_the_customers_words_does_not_find_it(drill):
    assert find(visits(drill.parent), "no heat since last night") == []


def test_verify_refuses_it(drill, capsys):
    checked = verify(drill)
    assert checked.code == COULD_NOT
    assert checked.sentences[0].startswith("PRACTICE")
    assert checked.fingerprint == ""
    import argparse

    assert verify_command.run(argparse.Namespace(visits=[drill], fingerprint=None)) == COULD_NOT
    assert "PRACTICE" in capsys.readouterr().out


def test_no_report_is_made_of_it(drill, tmp_path):
    import argparse

    for kind in ("html", "txt", "csv", "pdf"):
        file = tmp_path / f"out.{kind}"
        with pytest.raises(PracticeError):
            write_one(drill, file)
        assert not file.exists()
    with pytest.raises(PracticeError):
        write_all(drill, tmp_path)
    for name, parts in (("x.txt", False), ("x.json", True)):
        words = argparse.Namespace(visit=drill, to=tmp_path / name, paper="letter", parts=parts)
        with pytest.raises(PracticeError):
            report_command.run(words)


def test_the_mark_taken_off_a_line_shows_as_altered(drill):
    """Whoever takes the mark off alters every line, and the chain says so."""
    (file,) = drill.glob("trail-*.jsonl")
    file.write_bytes(file.read_bytes().replace(b'"practice":true,', b""))
    trail = read_trail(drill)
    assert trail.damage
    assert verify(drill).code != 0
    with pytest.raises(TrailError, match="altered"):
        LiveVisit.take_up(drill)
