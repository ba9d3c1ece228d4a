"""Every bit of a finished trail flipped, one after the other, and every tail torn: nothing slips through."""

import pytest
from flips import all_flips, found_in_whole
from hypothesis import given
from hypothesis import strategies as st
from visits import LIBRARY, finished, load_events, opened

from assistant.trail.chain import START, seal
from assistant.trail.keep import FOLDER
from assistant.trail.order import put_in_order
from assistant.trail.read import read_trail
from assistant.trail.record import Recorder
from assistant.trail.segment import read_segment
from assistant.trail.verify import DEFECT, FINE, verify
from assistant.walk.event import Exported, Recovered


def _lines():
    """A small good file, line by line."""
    tip = START
    for number, fields in enumerate(
        [{"kind": "trail", "format": 1, "visit": "v"}, *[{"kind": "note", "at": ""}] * 4], 1
    ):
        line, tip = seal(tip, {"n": number, **fields})
        yield line


GOOD = list(_lines())


@pytest.fixture
def visit(tmp_path):
    """A signed visit of 30 answers; its folder, its one trail file, and what was recorded."""
    return record(tmp_path / "visit", 30)


def record(folder, answers):
    events = finished(answers)
    with Recorder.create(folder, LIBRARY, opened()) as recorder:
        for event in events:
            recorder.append(event)
        last = Exported("2026-01-14T10:00:00-05:00", "report.pdf", recorder.tip)
        recorder.append(last)
    (file,) = folder.glob("trail-*.jsonl")
    return folder, file, [opened(), *events, last]


def test_a_finished_visit_is_fine(visit):
    folder, _, events = visit
    assert verify(folder).code == FINE
    assert load_events(folder) == (events, [])


def test_every_single_bit_flip_is_found(visit):
    """All 8 x size flips; every hundredth is read as a whole file besides, and both ways must agree."""
    _, file, events = visit
    data = file.read_bytes()
    whole = read_segment(file.name, data)
    assert not whole.damage
    assert len(whole.lines) == len(events) + 1
    flips = list(all_flips(file.name, data))
    assert len({(place, bit) for place, bit, _ in flips}) == 8 * len(data)
    assert [(place, bit) for place, bit, found in flips if not found] == []
    assert all(found_in_whole(file.name, data, place, bit) for place, bit, _ in flips[::97])


@given(st.data())
def test_any_bytes_are_read_without_a_crash(data):
    """Noise, and a good file with pieces cut out, repeated or overwritten."""
    good = b"".join(GOOD)
    start = data.draw(st.integers(0, len(good)))
    end = data.draw(st.integers(start, len(good)))
    noise = data.draw(st.binary(max_size=60) | st.sampled_from([good[start:end], *GOOD]))
    found = read_segment("trail-1.jsonl", good[:start] + noise + good[end:])
    order = put_in_order([found, read_segment("trail-2.jsonl", noise)])
    assert order.lines == tuple(found.lines[: len(order.lines)]) or found.damage or order.damage


def test_verify_names_the_line_of_each_flip(visit):
    """One flip in each line, through the whole of verify: the file and the line are named."""
    folder, file, _ = visit
    data = file.read_bytes()
    start = 0
    for number, line in enumerate(data.splitlines(keepends=True), start=1):
        flipped = bytearray(data)
        flipped[start + len(line) // 2] ^= 4
        file.write_bytes(flipped)
        checked = verify(folder)
        assert checked.code == DEFECT
        assert f"{file.name}, line {number}:" in checked.sentences[0]
        assert sum("line" in words and "altered" in words for words in checked.sentences) == 1
        start += len(line)


def test_every_bit_of_a_kept_text_counts(visit):
    folder, _, _ = visit
    for file in sorted((folder / FOLDER).iterdir()):
        data = file.read_bytes()
        for place in range(len(data)):
            for bit in range(8):
                flipped = bytearray(data)
                flipped[place] ^= 1 << bit
                file.write_bytes(flipped)
                assert verify(folder).code == DEFECT
        file.write_bytes(data)
    assert verify(folder).code == FINE


def test_every_line_taken_out_is_found(visit):
    folder, file, _events = visit
    lines = file.read_bytes().splitlines(keepends=True)
    for gone in range(len(lines) - 1):  # the last line is an export after the signature: nothing can show it
        file.write_bytes(b"".join(lines[:gone] + lines[gone + 1 :]))
        assert verify(folder).code == DEFECT, gone
    file.write_bytes(b"".join(lines))
    assert verify(folder).code == FINE


def test_two_lines_swapped_are_found(visit):
    folder, file, _ = visit
    lines = file.read_bytes().splitlines(keepends=True)
    for first in range(len(lines) - 1):
        swapped = [*lines]
        swapped[first], swapped[first + 1] = swapped[first + 1], swapped[first]
        file.write_bytes(b"".join(swapped))
        assert verify(folder).code == DEFECT, first


def test_lines_taken_off_the_end_are_told_as_not_signed_and_not_as_altered(visit):
    folder, file, _events = visit
    lines = file.read_bytes().splitlines(keepends=True)
    for left in range(2, len(lines) - 2):
        file.write_bytes(b"".join(lines[:left]))
        checked = verify(folder)
        assert checked.code == DEFECT
        summary, why = checked.sentences
        assert "none altered" in summary
        assert why.startswith("not signed yet")
        assert "altered" not in why


def test_a_torn_end_at_every_byte_is_set_aside_and_recorded(tmp_path):
    """Cut after every byte of the whole file; opened again, all whole lines are there and nothing is lost."""
    folder, file, events = record(tmp_path / "visit", 12)
    data = file.read_bytes()
    ends = [place + 1 for place, byte in enumerate(data) if byte == 10]
    at_least_opened = ends[1]
    for size in range(at_least_opened, len(data)):
        for extra in folder.glob("t*"):
            extra.unlink()
        file.write_bytes(data[:size])
        whole = sum(end <= size for end in ends)
        seen = read_trail(folder)
        assert seen.events == events[: whole - 1]
        # the lock and the whole opening on one cut in nine, and round every line's end
        if size % 9 and not any(abs(size - end) < 2 for end in ends):
            continue
        recorder, read, _ = Recorder.open(folder)
        recorder.close()
        tail = data[ends[whole - 1] : size]
        plain = [event for event in read if not isinstance(event, Recovered)]
        assert plain == events[: whole - 1]
        parts = list(folder.glob("torn-*.part"))
        assert [part.read_bytes() for part in parts] == ([tail] if tail else [])
        recovered = [event for event in read if isinstance(event, Recovered)]
        assert [(event.bytes, event.aside) for event in recovered] == [
            (len(tail), part.name) for part in parts
        ]
        assert file.read_bytes() == data[: ends[whole - 1]]
        assert not read_trail(folder).torn


def test_a_visit_written_anew_shows_only_against_the_paper(visit, tmp_path):
    """The chain can't show it, the printed fingerprint can."""
    from assistant.trail.fingerprint import short

    folder, _, events = visit
    paper = short(events[-1].fingerprint)
    assert verify(folder, paper).code == FINE
    assert verify(folder, paper.upper().replace(" ", "-")).code == FINE
    anew = tmp_path / "anew"
    with Recorder.create(anew, LIBRARY, opened()) as recorder:
        for event in events[1:-1]:
            recorder.append(event)
    assert verify(anew).code == FINE
    assert verify(anew, paper).code == DEFECT
    assert verify(folder, paper[:9]).code == DEFECT
