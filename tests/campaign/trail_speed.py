"""What the trail costs: an answer acknowledged over a bare write and fsync of as many bytes, and reading
back."""

from __future__ import annotations

import os
import statistics
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parents[1] / "trail"))

from visits import LIBRARY, answers, finished, opened

from assistant.trail.files import Files
from assistant.trail.read import read_trail
from assistant.trail.record import Recorder
from assistant.trail.shelf import visits
from assistant.trail.verify import verify

COUNT, TURN, ROUNDS, VISITS = 400, 40, 5, 200


class Nowhere(Files):
    """A disk that takes no time: what is left is the recorder's own work."""

    def write(self, handle: int, data: bytes) -> None:
        pass

    def sync(self, handle: int) -> None:
        pass


def own_work(folder: Path) -> float:
    """Milliseconds for an answer without the disk."""
    with Recorder.create(folder, LIBRARY, opened()) as recorder:
        recorder._file.files = Nowhere()
        return statistics.median(
            milliseconds(lambda event=event: recorder.append(event)) for event in answers(COUNT)
        )


def milliseconds(act) -> float:
    begun = time.perf_counter()
    act()
    return (time.perf_counter() - begun) * 1000


def one_round(root: Path, number: int) -> tuple[list[float], list[float], int]:
    """Milliseconds for each answer through the recorder, and for as many bytes written and synced without
    anything else; in turns of TURN, as a disk that is asked to sync two files in turn is slow with both.
    And the trail's size."""
    handle = os.open(root / f"bare-{number}", os.O_WRONLY | os.O_CREAT | os.O_APPEND)

    def write(data: bytes) -> None:
        os.write(handle, data)
        os.fsync(handle)

    with_hash, without = [], []
    with Recorder.create(root / f"visit-{number}", LIBRARY, opened()) as recorder:
        (file,) = (root / f"visit-{number}").glob("trail-*.jsonl")
        events = answers(COUNT)
        for start in range(0, COUNT, TURN):
            before = file.stat().st_size
            turn = events[start : start + TURN]
            with_hash += [milliseconds(lambda event=event: recorder.append(event)) for event in turn]
            data = b"x" * ((file.stat().st_size - before) // len(turn))
            without += [milliseconds(lambda data=data: write(data)) for _ in turn]
    os.close(handle)
    return with_hash, without, file.stat().st_size


def main() -> int:
    ratios = []
    with tempfile.TemporaryDirectory(dir=os.environ.get("TRAIL_DISK")) as name:
        root = Path(name)
        for number in range(ROUNDS):
            with_hash, without, size = one_round(root, number)
            ratios.append(statistics.median(with_hash) / statistics.median(without))
            print(
                f"round {number + 1}: answer acknowledged {statistics.median(with_hash):.3f} ms "
                f"(95th percentile {statistics.quantiles(with_hash, n=20)[-1]:.3f}), "
                f"bare write and fsync {statistics.median(without):.3f} ms, ratio {ratios[-1]:.2f}"
            )
        print(
            f"ratio over {ROUNDS} rounds of {COUNT} answers: median {statistics.median(ratios):.2f}, "
            f"{min(ratios):.2f} to {max(ratios):.2f}; {size} bytes for {COUNT} answers"
        )
        print(f"the recorder's own work, without the disk: {own_work(root / 'nowhere'):.3f} ms an answer")
        folder = root / "visit-0"
        reading = statistics.median(milliseconds(lambda: read_trail(folder)) for _ in range(20))
        checking = statistics.median(milliseconds(lambda: verify(folder)) for _ in range(20))
        print(f"{COUNT} answers read and verified in {reading:.1f} ms, with the kept files {checking:.1f} ms")
        shelf = root / "shelf"
        shelf.mkdir()
        for number in range(VISITS):
            with Recorder.create(shelf / f"{number:03d}", LIBRARY, opened()) as recorder:
                for event in finished(60):
                    recorder.append(event)
        print(
            f"a shelf of {VISITS} visits of 60 answers listed in {milliseconds(lambda: visits(shelf)):.0f} ms"
        )
    return 0


if __name__ == "__main__":
    sys.exit(main())
