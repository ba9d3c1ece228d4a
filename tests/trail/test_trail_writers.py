"""Several writers of one visit, one after the other or on two computers; clocks; newer versions; damage."""

import json
import shutil

import pytest
from visits import LIBRARY, answers, at, finished, load_events, opened

from assistant.trail.chain import START, seal
from assistant.trail.error import ReadOnlyError
from assistant.trail.fork import FORKED, sides_of
from assistant.trail.read import read_trail
from assistant.trail.record import Recorder
from assistant.trail.verify import COULD_NOT, DEFECT, FINE, verify
from assistant.walk.event import Exported, Note, Opened, Signed, Unknown


def begin(folder, events=()):
    with Recorder.create(folder, LIBRARY, opened()) as recorder:
        for event in events:
            recorder.append(event)
    return folder


def go_on(folder, events):
    recorder, _, remarks = Recorder.open(folder)
    with recorder:
        for event in events:
            recorder.append(event)
    return remarks


def test_each_writer_has_a_file_that_names_the_tip_it_continues(tmp_path):
    folder = begin(tmp_path / "visit", answers(2))
    for start in range(3, 23, 4):
        tip = read_trail(folder).tip
        go_on(folder, answers(4, start))
        newest = max(folder.glob("trail-*.jsonl"))
        head = json.loads(newest.read_bytes().splitlines()[0])
        assert head["continues"] == tip
        assert head["format"] == 1
        assert head["visit"] == read_trail(folder).visit
    assert len(list(folder.glob("trail-*.jsonl"))) == 6
    assert load_events(folder) == ([opened(), *answers(22)], [])
    numbers = [entry.line.n for entry in read_trail(folder).entries]
    assert numbers == sorted(set(numbers))


def test_looking_leaves_nothing_behind(tmp_path):
    folder = begin(tmp_path / "visit", answers(2))
    before = sorted(path.name for path in folder.iterdir())
    go_on(folder, [])
    assert sorted(path.name for path in folder.iterdir()) == before


def test_file_names_do_not_decide_the_order(tmp_path):
    folder = begin(tmp_path / "visit", answers(2))
    go_on(folder, answers(2, 3))
    go_on(folder, answers(2, 5))
    files = sorted(folder.glob("trail-*.jsonl"))
    for number, file in enumerate(files):
        file.rename(folder / f"trail-{9 - number}.jsonl")
    assert load_events(folder) == ([opened(), *answers(6)], [])


def test_copies_are_on_disk_and_are_never_read_back(tmp_path):
    folder = tmp_path / "visit"
    with Recorder.create(folder, LIBRARY, opened()) as recorder:
        recorder.append(answers(1)[0], {"verdict": "supplied", "next": "no_heat.call"})
    (file,) = folder.glob("trail-*.jsonl")
    assert json.loads(file.read_bytes().splitlines()[-1])["copy"] == {
        "verdict": "supplied",
        "next": "no_heat.call",
    }
    assert load_events(folder)[0] == [opened(), answers(1)[0]]
    assert read_trail(folder).entries[-1].copies["next"] == "no_heat.call"


def test_two_computers_that_went_on_from_the_same_line_are_both_kept(tmp_path):
    here = begin(tmp_path / "here", answers(3))
    there = tmp_path / "there"
    shutil.copytree(here, there)
    go_on(here, answers(5, 4))
    go_on(there, [Note(at(30), "written in the van")])
    for file in there.glob("trail-002*"):
        shutil.copy(file, here)
    events, remarks = load_events(here)
    assert events == [opened(), *answers(8)]
    assert len(remarks) == 1
    assert "another computer" in remarks[0]
    checked = verify(here)
    assert checked.code == DEFECT
    assert any("at the same time" in words for words in checked.sentences)
    # it opens for reading only until somebody says that they have read both; then nothing is open any more
    recorder, events, remarks = Recorder.open(here)
    assert recorder.read_only == FORKED
    with pytest.raises(ReadOnlyError, match="on two computers"):
        recorder.append(Signed(at(39), "A. Technician"))
    recorder.close()
    assert [(side.number, side.events) for side in sides_of(read_trail(here))] == [
        (2, (Note(at(30), "written in the van"),))
    ]
    recorder, _, _ = Recorder.open(here, join="A. Technician", clock=lambda: at(39))
    recorder.append(Signed(at(40), "A. Technician"))
    recorder.close()
    assert sides_of(read_trail(here)) == []
    assert verify(here).code == FINE
    *before, note, signed = load_events(here)[0]
    assert before == [opened(), *answers(8)]
    assert note.text.startswith("Joined: 1 line of trail-002")
    assert note.text.endswith("A. Technician has read them.")
    assert signed == Signed(at(40), "A. Technician")
    assert "another computer" in load_events(here)[1][0]
    # taking the other way's file away then shows
    for file in here.glob("trail-002*"):
        data = file.read_bytes()
        file.unlink()
        assert verify(here).code == DEFECT
        file.write_bytes(data)
    assert verify(here).code == FINE


def test_a_missing_file_in_the_middle_is_found(tmp_path):
    folder = begin(tmp_path / "visit", answers(2))
    go_on(folder, answers(2, 3))
    go_on(folder, [*answers(2, 5), Signed(at(9), "A. Technician")])
    assert verify(folder).code == FINE
    files = sorted(folder.glob("trail-*.jsonl"))
    for gone in files[:2]:
        data = gone.read_bytes()
        gone.unlink()
        checked = verify(folder)
        assert checked.code == DEFECT
        assert "missing" in checked.sentences[0]
        assert Recorder.open(folder)[0].read_only
        gone.write_bytes(data)
    # lines taken off the end of an earlier writer's file are found too
    lines = files[1].read_bytes().splitlines(keepends=True)
    files[1].write_bytes(b"".join(lines[:-1]))
    assert verify(folder).code == DEFECT


def test_files_of_two_visits_in_one_folder_are_found(tmp_path):
    folder = begin(tmp_path / "visit", finished(3))
    other = begin(tmp_path / "other", finished(3))
    shutil.copy(next(other.glob("trail-*")), folder)
    checked = verify(folder)
    assert checked.code == DEFECT
    assert "a second beginning" in checked.sentences[0]


def test_a_damaged_middle_opens_for_reading_up_to_that_line(tmp_path):
    folder = begin(tmp_path / "visit", answers(10))
    (file,) = folder.glob("trail-*.jsonl")
    lines = file.read_bytes().splitlines(keepends=True)
    lines[6] = lines[6].replace(b'"at":"2026', b'"at":"2025')
    file.write_bytes(b"".join(lines))
    recorder, events, remarks = Recorder.open(folder)
    assert events == [opened(), *answers(4)]
    assert "line 7" in remarks[0]
    assert "reading only" in recorder.read_only
    with pytest.raises(ReadOnlyError):
        recorder.append(answers(1)[0])
    assert file.read_bytes() == b"".join(lines)
    assert verify(folder).sentences[0] == f"{file.name}, line 7: this line was altered after it was written"


def test_a_clock_set_back_is_remarked_and_refuses_nothing(tmp_path):
    folder = begin(tmp_path / "visit", [Note(at(30), "first"), Note(at(10), "second"), Note(at(11), "third")])
    go_on(folder, [Note("2026-01-14T15:12:00+01:00", "the same minute seen from another zone")])
    events, remarks = load_events(folder)
    assert [event.text for event in events[1:]][:3] == ["first", "second", "third"]
    assert len(remarks) == 1
    assert "clock was set back" in remarks[0]
    go_on(folder, [Signed(at(13), "A. Technician")])
    checked = verify(folder)
    assert checked.code == FINE
    assert "clock was set back" in checked.sentences[1]


@pytest.mark.parametrize("odd", ["", "yesterday", "2026-01-14T09:00:00", "9999-99-99T00:00:00Z"])
def test_a_time_that_is_none_troubles_nobody(tmp_path, odd):
    folder = begin(tmp_path / "visit", [Note(at(5), "a"), Note(odd, "b"), Note(at(6), "c")])
    assert load_events(folder)[1] == []


def write_lines(folder, *lines):
    folder.mkdir()
    data, tip = b"", START
    for number, fields in enumerate(lines, 1):
        line, tip = seal(tip, {"n": number, **fields})
        data += line
    (folder / "trail-001-aaaaaa.jsonl").write_bytes(data)
    return folder


HEAD = {"kind": "trail", "format": 1, "visit": "v"}
OPENED = {"kind": "opened", "at": "t", "complaints": [["no_heat", "cold"]]}


def test_an_unknown_kind_is_kept_and_shown(tmp_path):
    folder = write_lines(tmp_path / "visit", HEAD, OPENED, {"kind": "weighed", "at": "t", "grams": 12.5})
    assert load_events(folder) == (
        [Opened("t", (("no_heat", "cold"),)), Unknown("t", "weighed", {"grams": 12.5})],
        [],
    )


def test_a_newer_format_opens_for_reading_only(tmp_path):
    folder = write_lines(tmp_path / "visit", {**HEAD, "format": 2}, OPENED, {"kind": "weighed", "at": "t"})
    recorder, events, remarks = Recorder.open(folder)
    assert len(events) == 2
    assert "newer version" in remarks[0]
    assert "newer version" in recorder.read_only
    assert len(list(folder.iterdir())) == 1
    checked = verify(folder)
    assert checked.code == COULD_NOT
    assert "newer version" in checked.sentences[0]


def test_a_fingerprint_of_another_visit_in_an_export_is_found(tmp_path):
    folder = begin(
        tmp_path / "visit", [*answers(2), Signed(at(3), "A."), Exported(at(4), "report.pdf", "0" * 64)]
    )
    checked = verify(folder)
    assert checked.code == DEFECT
    assert "fingerprint of the export" in checked.sentences[0]
