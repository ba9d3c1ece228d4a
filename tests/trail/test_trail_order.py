"""Write, sync, acknowledge, in that order; and what a power cut at any moment leaves."""

import contextlib
from pathlib import Path

import pytest
from recording_disk import PowerCut, RecordingDisk, no_lock
from visits import LIBRARY, answers, opened

from assistant.trail.read import read_trail
from assistant.trail.record import Recorder
from assistant.walk.event import Recovered

FOLDER = Path("/visits/one")


def walk(disk, events, acknowledged):
    """Records a visit on the disk; what was acknowledged is in the list when the power fails."""
    disk.folders.add(FOLDER.parent)
    recorder = Recorder.create(FOLDER, LIBRARY, opened(), files=disk, lock=no_lock)
    acknowledged.append(opened())
    for event in events:
        recorder.append(event)
        acknowledged.append(event)
        disk.acknowledge(event)
    return recorder


def test_each_answer_is_written_then_synced_then_acknowledged():
    disk = RecordingDisk()
    walk(disk, answers(12), [])
    acks = [place for place, call in enumerate(disk.calls) if call[0] == "acknowledged"]
    assert len(acks) == 12
    before = max(place for place, call in enumerate(disk.calls[: acks[0]]) if call[0] == "sync_folder")
    for start, end in zip([before + 2, *acks], acks, strict=False):
        words = [call[0] for call in disk.calls[start + 1 : end + 1]]
        assert words == ["write", "sync", "acknowledged"]


def test_a_new_file_is_synced_in_its_folder_before_the_first_answer_counts():
    disk = RecordingDisk()
    recorder = walk(disk, [], [])
    recorder.close()
    again, _, _ = Recorder.open(FOLDER, files=disk, lock=no_lock)
    disk.calls.clear()
    again.append(answers(1)[0])
    assert [call[0] for call in disk.calls] == ["create", "write", "sync", "sync_folder", "write", "sync"]


def test_tree_texts_are_on_the_medium_before_the_line_that_names_them():
    disk = RecordingDisk()
    walk(disk, [], [])
    first_line = next(
        i for i, call in enumerate(disk.calls) if call[0] == "write" and "trail-" in call[1].name
    )
    renames = [i for i, call in enumerate(disk.calls) if call[0] == "rename"]
    assert len(renames) == len(LIBRARY.texts)
    assert max(renames) < first_line
    assert ("sync_folder", FOLDER / "kept") in disk.calls[max(renames) : first_line]


def calls_of(events):
    disk = RecordingDisk()
    walk(disk, events, [])
    return sum(call[0] != "acknowledged" for call in disk.calls)


EVENTS = answers(5)


@pytest.mark.parametrize("moment", range(calls_of(EVENTS) + 1))
def test_a_power_cut_at_any_call_loses_nothing_that_was_acknowledged(moment):
    disk = RecordingDisk(cut_before=moment)
    acknowledged = []
    with contextlib.suppress(PowerCut):
        walk(disk, EVENTS, acknowledged)
    for words, left in disk.after_power_cut():
        if not acknowledged and not left.is_folder(FOLDER):
            continue
        trail = read_trail(FOLDER, left)
        assert not trail.damage, words
        expected = [opened(), *EVENTS]
        seen = trail.events
        # at most the line in flight is there besides, and only whole
        assert seen in (acknowledged, expected[: len(acknowledged) + 1]), words
        if not seen:
            continue
        recorder, events, _ = Recorder.open(FOLDER, files=left, lock=no_lock)
        assert not recorder.read_only
        assert [event for event in events if not isinstance(event, Recovered)] == seen, words
        recorder.append(EVENTS[0])
        once_more = read_trail(FOLDER, left)
        assert not once_more.damage
        assert not once_more.torn
        assert [e for e in once_more.events if not isinstance(e, Recovered)] == [*seen, EVENTS[0]]
        aside = [e.aside for e in once_more.events if isinstance(e, Recovered)]
        assert sorted(aside) == [name for name in left.names(FOLDER) if name.startswith("torn-")]


def test_a_long_answer_across_sectors_survives_any_choice_of_lost_sectors():
    from assistant.walk.event import Note

    long = Note("2026-01-14T09:30:00-05:00", "seen in the plenum " * 90)
    whole = calls_of([EVENTS[0], long])
    disk = RecordingDisk(cut_before=whole - 1)  # written, not synced
    acknowledged = []
    with pytest.raises(PowerCut):
        walk(disk, [EVENTS[0], long], acknowledged)
    states = list(disk.after_power_cut(torn_step=37))
    assert len(states) > 40
    for words, left in states:
        recorder, events, _ = Recorder.open(FOLDER, files=left, lock=no_lock)
        assert not recorder.read_only, words
        plain = [event for event in events if not isinstance(event, Recovered)]
        assert plain in (acknowledged, [*acknowledged, long]), words


def test_a_power_cut_during_recovery_can_be_recovered_again():
    disk = RecordingDisk()
    acknowledged = []
    walk(disk, EVENTS, acknowledged).close()
    name = next(path for path in disk.names_now if path.name.startswith("trail-"))
    torn = disk.names_now[name].now + b'{"at":"2026-01-14T09:3'
    for moment in range(14):
        start = disk._state(disk.names_now, lambda content: content.now)
        start.names_now[name].now = start.names_now[name].safe = torn
        start.cut_before = moment
        with contextlib.suppress(PowerCut):
            Recorder.open(FOLDER, files=start, lock=no_lock)
        for words, left in start.after_power_cut():
            recorder, events, _ = Recorder.open(FOLDER, files=left, lock=no_lock)
            assert not recorder.read_only, words
            assert [event for event in events if not isinstance(event, Recovered)] == acknowledged, words
            parts = [left.read(FOLDER / n) for n in left.names(FOLDER) if n.endswith(".part")]
            assert torn[len(disk.names_now[name].now) :] in parts, words
