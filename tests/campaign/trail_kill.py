"""300 programs that record a walk, each killed (SIGKILL) at some moment: no acknowledged line may be lost.

A kill proves nothing about a power cut: what a killed program wrote is still in the system's memory. That a
line is synced before it is acknowledged is shown by the recording disk of the tests. This shows that a
killed program leaves a trail that opens again, by itself, with every answer that it had acknowledged.
"""

from __future__ import annotations

import random
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parents[1] / "trail"))

from assistant.trail.read import read_trail
from assistant.trail.record import Recorder
from assistant.trail.verify import verify
from assistant.walk.event import Note, Recovered, Signed

KILLS, PER_VISIT, SEED = 300, 30, 20261125
WRITER = """
import sys
from pathlib import Path
from assistant.trail.record import Recorder
from assistant.walk.event import Note
recorder, events, _ = Recorder.open(Path(sys.argv[1]))
number = int(sys.argv[2])
print("ready", flush=True)
while True:
    number += 1
    recorder.append(Note("2026-01-14T09:00:00-05:00", f"{number} " + "x" * (number * 7919 % 20000)))
    sys.stdout.write(f"{number}\\n")
    sys.stdout.flush()
"""


def killed(folder: Path, last: int, wait: float) -> int:
    """Runs a writer and kills it after `wait` seconds of writing; the last number that it acknowledged."""
    writer = subprocess.Popen(
        [sys.executable, "-c", WRITER, str(folder), str(last)], stdout=subprocess.PIPE, text=True,
        cwd=Path(__file__).parents[2],
    )  # fmt: skip
    assert writer.stdout is not None
    assert writer.stdout.readline() == "ready\n"
    time.sleep(wait)
    writer.kill()
    told, _ = writer.communicate()
    numbers = [int(line) for line in told.splitlines(keepends=True) if line.endswith("\n")]
    return numbers[-1] if numbers else last


def numbers(folder: Path) -> list[int]:
    return [int(event.text.split()[0]) for event in read_trail(folder).events if isinstance(event, Note)]


def main() -> int:
    from visits import LIBRARY, opened

    chance = random.Random(SEED)
    lost = torn = acknowledged = altered = 0
    with tempfile.TemporaryDirectory() as root:
        for kill in range(KILLS):
            folder = Path(root) / f"visit-{kill // PER_VISIT}"
            if kill % PER_VISIT == 0:
                Recorder.create(folder, LIBRARY, opened()).close()
                last = 0
            told = killed(folder, last, chance.uniform(0, 0.05))
            kept = numbers(folder)
            torn += bool(read_trail(folder).torn)
            if kept != list(range(1, len(kept) + 1)) or len(kept) < told:
                lost += 1
            acknowledged += told - last
            last = len(kept)
            if kill % PER_VISIT == PER_VISIT - 1:
                with Recorder.open(folder)[0] as recorder:
                    recorder.append(Signed("2026-01-14T10:00:00-05:00", "A. Technician"))
                altered += verify(folder).code
                recovered = sum(isinstance(event, Recovered) for event in read_trail(folder).events)
                assert recovered == len(list(folder.glob("torn-*.part")))
    print(f"{KILLS} kills over {KILLS // PER_VISIT} visits, {acknowledged} answers acknowledged")
    print(
        f"{lost} kills after which an acknowledged answer was missing, {torn} torn last lines, all set aside"
    )
    print(f"{altered} of {KILLS // PER_VISIT} visits that verify found anything wrong with in the end")
    return 1 if lost or altered else 0


if __name__ == "__main__":
    sys.exit(main())
