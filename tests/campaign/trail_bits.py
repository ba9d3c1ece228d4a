"""Every bit of a finished trail of 400 answers flipped, one after the other: a flip must be found.

A sample of the flips is read as whole files besides, and both ways must agree.
"""

from __future__ import annotations

import random
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parents[1] / "trail"))

from flips import all_flips, found_in_whole
from visits import LIBRARY, finished, opened

from assistant.trail.record import Recorder
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


def main() -> int:
    with tempfile.TemporaryDirectory() as root:
        file = written(Path(root) / "visit")
        data = file.read_bytes()
    chosen = set(random.Random(SEED).sample(range(len(data) * 8), SAMPLE))
    flips, missed, disagree = 0, [], 0
    begun = time.perf_counter()
    for place, bit, found in all_flips(file.name, data):
        flips += 1
        if not found:
            missed.append((place, bit))
        if place * 8 + bit in chosen:
            disagree += found_in_whole(file.name, data, place, bit) != found
    print(f"{ANSWERS} answers, {len(data)} bytes in {data.count(10)} lines")
    print(f"{flips} single-bit flips, {len(missed)} missed, in {time.perf_counter() - begun:.0f} s")
    print(f"{SAMPLE} of them (seed {SEED}) read as whole files besides, {disagree} with another answer")
    for each in missed[:20]:
        print("missed: byte {}, bit {}".format(*each))
    return 1 if missed or disagree or flips != len(data) * 8 else 0


if __name__ == "__main__":
    sys.exit(main())
