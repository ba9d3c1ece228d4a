"""The disk says no: a sentence, nothing that was saved is lost, nothing that was not is shown as saved."""

import contextlib
import errno
import os
from pathlib import Path

import pytest
from recording_disk import RecordingDisk, no_lock
from visits import LIBRARY, answers, at, opened

from assistant.trail.error import ReadOnlyError, TrailError
from assistant.trail.read import read_trail
from assistant.trail.record import Recorder
from assistant.trail.verify import verify
from assistant.walk.event import Note, Recovered, Signed

FOLDER = Path("/visits/one")
EVENTS = answers(6)
WRITING = ("create", "write", "sync", "sync_folder", "cut", "rename", "make_folder", "remove", "reopen")


def writing_calls():
    disk = RecordingDisk()
    walk(disk)
    return len(disk.calls)


def walk(disk):
    """A visit that is opened twice; every failed answer is tried once more. What was acknowledged."""
    disk.folders.add(FOLDER.parent)
    acknowledged, sentences = [], []

    def insist(act):
        for _ in range(3):
            try:
                return act()
            except TrailError as problem:
                sentences.append(str(problem))
        return None

    def begin():
        for path in [path for path in disk.names_now if FOLDER in path.parents]:
            del disk.names_now[path]
        disk.folders.discard(FOLDER / "kept")
        return Recorder.create(FOLDER, LIBRARY, opened(), files=disk, lock=no_lock)

    recorder = insist(begin)
    acknowledged.append(opened())
    for number, event in enumerate(EVENTS):
        if number == 3:
            recorder.close()
            recorder = insist(lambda: Recorder.open(FOLDER, files=disk, lock=no_lock)[0])
        insist(lambda event=event, recorder=recorder: recorder.append(event))
        acknowledged.append(event)
    recorder.close()
    return acknowledged, sentences


@pytest.mark.parametrize("code", [errno.ENOSPC, errno.EROFS, errno.EACCES, errno.EIO])
@pytest.mark.parametrize("part", [0, 40, 10_000])
def test_a_failure_at_any_call_loses_nothing_and_can_be_tried_again(code, part):
    """Every writing call of the visit fails once, with nothing, some or all of its bytes written."""
    for call in range(writing_calls()):
        disk = RecordingDisk(fail_at={call: OSError(code, os.strerror(code))}, part_written=part)
        acknowledged, sentences = walk(disk)
        trail = read_trail(FOLDER, disk)
        assert not trail.damage, call
        assert [e for e in trail.events if not isinstance(e, Recovered)] == acknowledged, call
        assert not trail.torn or disk.calls[call][0] == "cut"
        if disk.calls[call][0] != "remove":
            assert len(sentences) == 1, (call, disk.calls[call])
            assert "not saved yet" in sentences[0] or "could not" in sentences[0]


def test_a_disk_that_stays_full_takes_no_answer_and_spoils_none():
    """From some call on nothing succeeds any more, cutting back included. At the next opening every saved
    answer is there; the one whose sync failed may be there whole, if the disk took it after all."""
    whole = RecordingDisk()
    walk(whole)
    lines = [i for i, call in enumerate(whole.calls) if call[0] == "write" and "trail-" in call[1].name]
    for first in range(lines[1] + 2, lines[1] + 12):
        full = {call: OSError(errno.ENOSPC, "full") for call in range(first, first + 50)}
        disk = RecordingDisk(fail_at=full, part_written=25)
        acknowledged, sentences = [opened()], []
        disk.folders.add(FOLDER.parent)
        recorder = Recorder.create(FOLDER, LIBRARY, opened(), files=disk, lock=no_lock)
        for event in EVENTS:
            try:
                recorder.append(event)
                acknowledged.append(event)
            except TrailError as problem:
                sentences.append(str(problem))
        assert sentences
        assert all("disk is full" in words and "what you typed stays" in words for words in sentences)
        disk.fail_at = {}
        again, events, _ = Recorder.open(FOLDER, files=disk, lock=no_lock)
        there = [e for e in events if not isinstance(e, Recovered)]
        in_flight = EVENTS[len(acknowledged) - 1]
        assert there == acknowledged or (
            disk.calls[first][0] == "sync" and there == [*acknowledged, in_flight]
        )
        again.append(EVENTS[0])
        assert not read_trail(FOLDER, disk).damage


def test_room_made_again_the_same_answer_is_saved():
    disk = RecordingDisk()
    disk.folders.add(FOLDER.parent)
    recorder = Recorder.create(FOLDER, LIBRARY, opened(), files=disk, lock=no_lock)
    now = len(disk.calls)
    disk.fail_at = {call: OSError(errno.ENOSPC, "full") for call in range(now, now + 2)}
    disk.part_written = 30
    with pytest.raises(TrailError, match="disk is full"):
        recorder.append(EVENTS[0])
    assert read_trail(FOLDER, disk).events == [opened()]
    recorder.append(EVENTS[0])
    trail = read_trail(FOLDER, disk)
    assert trail.events == [opened(), EVENTS[0]]
    assert not trail.torn


@contextlib.contextmanager
def as_somebody_else():
    """Root may write everywhere: where the tests run as root, another user asks."""
    if os.geteuid() != 0:
        yield
        return
    import PySide6.QtCore  # noqa: F401 - while root can still read it

    os.seteuid(65534)
    try:
        yield
    finally:
        os.seteuid(0)


def test_a_folder_that_may_not_be_written_to_opens_for_reading(tmp_path):
    folder = tmp_path / "visit"
    with Recorder.create(folder, LIBRARY, opened()) as recorder:
        recorder.append(EVENTS[0])
    before = sorted(path.name for path in folder.iterdir())
    for place in folder.parents:
        if place.stat().st_uid == os.geteuid() and place.stat().st_mode & 0o005 != 0o005:
            place.chmod(0o755)
    folder.chmod(0o555)
    with as_somebody_else():
        recorder, events, remarks = Recorder.open(folder)
        assert events == [opened(), EVENTS[0]]
        assert "can't be written to" in remarks[-1]
        with pytest.raises(ReadOnlyError, match="can't be written to"):
            recorder.append(EVENTS[1])
        with pytest.raises(ReadOnlyError, match="can't be written to"):
            recorder.keep(b"photo")
        with pytest.raises(TrailError, match="can't be written to"):
            Recorder.create(folder / "inside", LIBRARY, opened())
    folder.chmod(0o755)
    assert sorted(path.name for path in folder.iterdir()) == before


def test_a_signed_visit_takes_no_further_answer(tmp_path):
    folder = tmp_path / "visit"
    with Recorder.create(folder, LIBRARY, opened()) as recorder:
        recorder.append(Signed(at(1), "A. Technician"))
        with pytest.raises(ReadOnlyError, match="signed and closed"):
            recorder.append(EVENTS[0])
        recorder.append(Note(at(2), "the customer called back"))
    again, events, _ = Recorder.open(folder)
    with again, pytest.raises(ReadOnlyError, match="signed and closed"):
        again.append(EVENTS[0])
    assert len(events) == 3
    assert verify(folder).code == 0


def test_a_closed_recorder_says_so(tmp_path):
    recorder = Recorder.create(tmp_path / "visit", LIBRARY, opened())
    recorder.close()
    with pytest.raises(TrailError, match="closed"):
        recorder.append(EVENTS[0])


def test_a_new_visit_does_not_go_into_a_folder_with_something_in_it(tmp_path):
    (tmp_path / "letter.txt").write_text("mine")
    with pytest.raises(TrailError, match="not empty"):
        Recorder.create(tmp_path, LIBRARY, opened())
    assert [path.name for path in tmp_path.iterdir()] == ["letter.txt"]


def test_a_visit_that_was_never_begun_says_so(tmp_path):
    with pytest.raises(TrailError, match="never begun"):
        Recorder.open(tmp_path)
    with pytest.raises(TrailError, match="is not there"):
        Recorder.open(tmp_path / "nowhere")
