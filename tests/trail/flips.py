"""Single-bit flips of a trail file, all of them, and whether reading finds each.

A flip in a line leaves the lines before it as they are. So the state of the reader before that line is
kept, and only the flipped line and what follows it is read again, until damage shows.
"""

from __future__ import annotations

import copy
from collections.abc import Iterator

from assistant.trail import segment
from assistant.trail.segment import Segment, read_segment


def all_flips(name: str, data: bytes) -> Iterator[tuple[int, int, bool]]:
    """(byte, bit, was it found) for each of the 8 x len(data) flips."""
    lines = data.splitlines(keepends=True)
    state, known, start = Segment(name), [], 0
    for number, line in enumerate(lines, start=1):
        rest = b"".join(lines[number:])
        for place in range(len(line)):
            for bit in range(8):
                flipped = bytearray(line)
                flipped[place] ^= 1 << bit
                yield start + place, bit, _found(state, known, number, bytes(flipped), rest, len(lines))
        known = segment._take(state, number, line.rstrip(b"\n"), known)
        assert not state.damage
        start += len(line)


def found_in_whole(name: str, data: bytes, place: int, bit: int) -> bool:
    """The same question asked of the whole file, as verify asks it."""
    flipped = bytearray(data)
    flipped[place] ^= 1 << bit
    found = read_segment(name, bytes(flipped))
    return bool(found.damage) or found.torn is not None or len(found.lines) != data.count(b"\n")


def _found(state: Segment, known, number: int, line: bytes, rest: bytes, count: int) -> bool:
    state = copy.copy(state)
    state.lines, state.damage, state.hashes = list(state.lines), [], set()
    if not line.endswith(b"\n"):  # the line end itself was hit: the next line runs into this one
        after, end, rest = rest.partition(b"\n")
        line += after + end
    for piece in line.split(b"\n")[:-1]:
        known = segment._take(state, number, piece, known)
        if state.damage:
            return True
        number += 1
    if not line.endswith(b"\n"):
        return True  # a torn end
    for piece in rest.split(b"\n")[:-1]:
        known = segment._take(state, number, piece, known)
        if state.damage:
            return True
        number += 1
    return len(state.lines) != count
