"""One writer at a time; a dead one does not block for ever."""

import signal
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest
from visits import LIBRARY, answers, load_events, opened

from assistant.trail.error import LockedError
from assistant.trail.record import Recorder

HOLD = textwrap.dedent(
    """
    import sys
    from pathlib import Path
    from assistant.trail.record import Recorder
    recorder, events, remarks = Recorder.open(Path(sys.argv[1]))
    print("held", flush=True)
    sys.stdin.read()
    """
)


@pytest.fixture
def folder(tmp_path):
    with Recorder.create(tmp_path / "visit", LIBRARY, opened()) as recorder:
        recorder.append(answers(1)[0])
    return tmp_path / "visit"


@pytest.fixture
def holder(folder):
    started = subprocess.Popen(
        [sys.executable, "-c", HOLD, str(folder)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )
    assert started.stdout.readline() == "held\n"
    yield started
    started.kill()
    started.communicate()


def test_a_second_window_gets_a_sentence(folder):
    first, _, _ = Recorder.open(folder)
    with first:
        with pytest.raises(LockedError, match="open in another window"):
            Recorder.open(folder)
        assert load_events(folder)[0]  # looking is always possible
    second, _, _ = Recorder.open(folder)
    second.close()


def test_a_second_program_gets_a_sentence_with_where_it_is_open(folder, holder):
    with pytest.raises(LockedError) as caught:
        Recorder.open(folder)
    assert f"number {holder.pid}" in str(caught.value)
    assert "Close it there" in str(caught.value)


def test_the_lock_of_a_killed_program_is_taken_over_by_itself(folder, holder):
    holder.send_signal(signal.SIGKILL)
    holder.wait()
    recorder, _, _ = Recorder.open(folder)
    recorder.append(answers(2)[1])
    recorder.close()
    assert len(load_events(folder)[0]) == 3


def test_a_lock_from_another_computer_holds_until_a_person_breaks_it(folder):
    """The three lines that Qt writes into a lock file: process, program, computer."""
    first, _, _ = Recorder.open(folder)
    lock = folder / "open.lock"
    lines = lock.read_text().splitlines()
    first.close()
    lines[0], lines[2] = "4242", "the-van-laptop"
    lines[3:] = ["0" * len(line) for line in lines[3:]]
    lock.write_text("\n".join(lines) + "\n")
    with pytest.raises(LockedError, match="the-van-laptop"):
        Recorder.open(folder)
    recorder, _, _ = Recorder.open(folder, take_over=True)
    recorder.append(answers(2)[1])
    recorder.close()
    assert not Path(lock).exists()
    assert len(load_events(folder)[0]) == 3
