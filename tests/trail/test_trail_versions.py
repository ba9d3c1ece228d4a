"""A visit of the first version of this program, one of a version to come, a tree edited between two days."""

from __future__ import annotations

import json
import tarfile
from pathlib import Path

import pytest

from assistant.report.load import story_of
from assistant.report.text import to_text
from assistant.trail.chain import START, seal
from assistant.trail.error import ReadOnlyError
from assistant.trail.live import LiveVisit
from assistant.trail.record import Recorder
from assistant.trail.verify import FINE, verify
from assistant.tree.library import from_texts
from assistant.walk.event import Note, Paused, PlateRead, Read, Resumed, Saw, Typed
from tests.walk.small import AT, library

FIRST = Path(__file__).parent / "data" / "first_version_visit.tar.xz"
"""The demo visit as the program of 720e9f7 (2026-11-25) walked and kept it, with its trees of that day."""


@pytest.fixture
def first(tmp_path):
    folder = tmp_path / "first"
    with tarfile.open(FIRST) as packed:
        for member in packed.getmembers():
            if member.isfile():
                (folder / member.name).parent.mkdir(parents=True, exist_ok=True)
                (folder / member.name).write_bytes(packed.extractfile(member).read())
    return folder


def test_a_visit_of_the_first_version_is_whole_and_is_told_in_full(first):
    assert verify(first).code == FINE
    live = LiveVisit.take_up(first)
    assert live.remarks == [] and live.recorder.read_only is None
    live.send(Note("2026-11-27T09:00:00-05:00", "the customer rang: it is warm"))
    live.close()
    story = story_of(first)
    assert story.complaints[0] == ("No heat", "repaired and proved")
    assert story.remarks == () and len(story.rows) > 60
    assert [finding.title for finding in story.findings] == ["Igniter open"]


def test_a_visit_of_a_newer_version_is_shown_with_what_is_not_known_and_takes_nothing(tmp_path):
    """Another format, and in it a kind of event and a field that this version has never heard of."""
    folder, made = tmp_path / "newer", library()
    live = LiveVisit.start(folder, made, (("no_heat", "cold"),), at=AT)
    live.send(Saw(AT, live.ask().step, "still"))
    live.close()
    (file,) = folder.glob("trail-*")
    lines = [json.loads(line) for line in file.read_bytes().splitlines()]
    lines[0]["format"] = 99
    lines.append({"kind": "weighed", "at": AT, "grams": "12.5", "n": len(lines) + 1})
    out, tip = b"", START
    for line in lines:
        line.pop("~", None)
        data, tip = seal(tip, line)
        out += data
    file.write_bytes(out)
    before = {path.name: path.read_bytes() for path in folder.iterdir() if path.is_file()}
    live = LiveVisit.take_up(folder)
    assert live.visit.history[-1].answer == "still"
    with pytest.raises(ReadOnlyError, match="newer version"):
        live.send(Note(AT, "a"))
    live.close()
    said = to_text(story_of(folder))
    assert "newer version of the program" in " ".join(said.split())
    assert "12.5" in said and "Weighed" in said
    assert {path.name: path.read_bytes() for path in folder.iterdir() if path.is_file()} == before


def test_a_tree_edited_between_two_days_changes_no_visit_that_was_begun(tmp_path):
    """Begun where 108 V and more is a supply; meanwhile somebody asks for 117 V. 110 V stays a supply."""
    made = library()
    tree = "complaint/cold_house.yaml"
    assert b"0.90 * supply_volts" in made.texts[tree]
    edited = from_texts({**made.texts, tree: made.texts[tree].replace(b"0.90 *", b"0.975 *")})
    assert not edited.problems

    def to_volts(live):
        live.send(Saw(AT, live.ask().step, "still"))
        live.send(PlateRead(AT, "supply_volts", "120"))
        return live

    old = to_volts(LiveVisit.start(tmp_path / "old", made, (("no_heat", "cold"),), at=AT))
    old.send(Paused(AT, "to the wholesaler"))
    old.close()
    new = to_volts(LiveVisit.start(tmp_path / "new", edited, (("no_heat", "cold"),), at=AT))
    again = LiveVisit.take_up(tmp_path / "old")
    again.send(Resumed(AT, "somebody else"))
    for live in (again, new):
        live.send(Read(AT, live.ask().step, {"volts": Typed("110")}))
    assert again.visit.readings[-1].verdict.words == "supplied"
    assert new.visit.readings[-1].verdict.words == "low supply"
    again.close()
    new.close()
    recorder, _, remarks = Recorder.open(tmp_path / "old")
    recorder.close()
    assert remarks == []
    assert "none altered" in verify(tmp_path / "old").sentences[0]
