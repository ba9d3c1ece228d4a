"""Every bit of a finished trail of 400 answers flipped, one after the other: a flip must be found.

A flip in a line leaves all lines before it as they are, so the state of the reader before that line is kept
and only the line itself and what follows it is read again, until damage shows. A sample of the flips is
read as whole files besides, and both ways must agree.
"""

from __future__ import annotations

import copy
import random
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parents[1] / "trail"))

from visits import LIBRARY, finished, opened

from assistant.trail import segment
from assistant.trail.record import Recorder
from assistant.trail.segment import Segment, read_segment
from assistant.trail.verify import verify

ANSWERS, SAMPLE, SEED = 400, 2000, 20261125


def written(folder: Path) -> Path:
    """A signed visit; its one trail file."""
    with Recorder.create(folder, LIBRARY, opened()) as recorder:
        for event in finished(ANSWERS):
            recorder.append(event)
    assert verify(folder).code == 0
    (file,) = folder.glob("trail-*.jsonl")
    return file


def found_from(state: Segment, known: list[str] | None, number: int, rest: bytes, lines: int) -> bool:
    """Whether reading on with `rest` after the lines in `state` shows that something is wrong."""
    state = copy.copy(state)
    state.lines, state.damage, state.hashes = list(state.lines), [], set()
    end = rest.rfind(b"\n") + 1
    for line in rest[:end].split(b"\n")[:-1]:
        known = segment._take(state, number, line, known)
        if state.damage:
            return True
        number += 1
    return end < len(rest) or len(state.lines) != lines


def main() -> int:
    with tempfile.TemporaryDirectory() as root:
        file = written(Path(root) / "visit")
        data = file.read_bytes()
    lines = data.splitlines(keepends=True)
    chosen = set(random.Random(SEED).sample(range(len(data) * 8), SAMPLE))
    state, known, start = Segment(file.name), [], 0
    flips, missed, disagree = 0, [], 0
    begun = time.perf_counter()
    for number, line in enumerate(lines, start=1):
        after = b"".join(lines[number : number + 2])
        tail = b"" if number + 2 >= len(lines) else None
        for place in range(len(line)):
            for bit in range(8):
                flipped = bytearray(line)
                flipped[place] ^= 1 << bit
                rest = bytes(flipped) + (after if tail is None else b"".join(lines[number:]))
                expected = len(lines) if tail is not None else len(state.lines) + 3
                found = found_from(state, known, number, rest, expected)
                flips += 1
                if not found:
                    missed.append((number, place, bit))
                if (start + place) * 8 + bit in chosen:
                    whole = read_segment(
                        file.name, data[: start + place] + bytes([flipped[place]]) + data[start + place + 1 :]
                    )
                    bad = bool(whole.damage) or whole.torn is not None or len(whole.lines) != len(lines)
                    disagree += bad != found
        known = segment._take(state, number, line.rstrip(b"\n"), known)
        assert not state.damage
        start += len(line)
    print(f"{ANSWERS} answers, {len(data)} bytes in {len(lines)} lines")
    print(f"{flips} single-bit flips, {len(missed)} missed, in {time.perf_counter() - begun:.0f} s")
    print(f"{SAMPLE} of them (seed {SEED}) read as whole files besides, {disagree} with another answer")
    for each in missed[:20]:
        print("missed: line {}, byte {}, bit {}".format(*each))
    return 1 if missed or disagree or flips != len(data) * 8 else 0


if __name__ == "__main__":
    sys.exit(main())
