"""Replay files without end: python tests/campaign/replay_fuzz.py [N] [SEED], N = 100,000.

Half are walks of the tests changed gently (words, numbers, lines), half roughly (bits, cuts, signs). Each
must end in a walk, or in sentences with places in the file. Prints how many got past each stage and every
complaint. Ends with 1 when there was one.
"""

# ruff: noqa: E402  run as a script, from a checkout

import random
import sys
import time
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "past")]

from shelved import LIBRARY, TREES, WALKS

from assistant.house.reader import Unreadable, read
from assistant.walk.entries import complaints_of, events_of, read_entries
from assistant.walk.event import Opened
from assistant.walk.state import BadAnswer, OutOfOrder
from assistant.walk.visit import asked, begin, fold
from tests.tree.mutation import changed, gently_changed

AT = "2026-01-14T09:00:00-05:00"
MOST_SECONDS = 5.0
EXTRA = tuple(
    f"- {line}\n".encode()
    for line in (
        "hazard: gas_smell",
        "pause: lunch",
        "resume: A",
        "back: no_heat.room",
        "sign: A",
        "note: <script>",
        "plate.supply_volts: OL",
        "cannot: no_heat.room",
        "instrument: none",
        'reading: {quantity: ac_voltage, at: [r, c], text: "24", ago: 20 min}',
        "still_true: no_heat.room",
        "finish: now",
    )
)


def stages(data: bytes, file: str):
    """The stages that a file gets past, in order; the last one is an entry's sentence."""
    yield "written"
    try:
        node = read(data, file)
    except Unreadable as unreadable:
        _said(unreadable.problems)
        return
    yield "read as YAML"
    entries, problems = read_entries(node)
    if problems:
        _said(problems)
        return
    yield "form right"
    said = complaints_of(entries, TREES)
    if any(name not in LIBRARY.vocabulary.complaints for name in said):
        return
    visit = fold(begin(LIBRARY), Opened(AT, tuple((name, "as it was") for name in said)))
    for entry in entries:
        try:
            for make in events_of(entry, AT):
                event = make(visit)
                if event is not None:
                    visit = fold(visit, event)
        except (BadAnswer, OutOfOrder) as problem:
            _said([problem])
            yield "walked to a sentence"
            return
        asked(visit)
    yield "walked to its end"


def _said(problems) -> None:
    """Each way out has a sentence for a person."""
    if not problems or not all(str(problem).strip() for problem in problems):
        raise ValueError("refused without a sentence")


def main() -> int:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 100_000
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    rng = random.Random(seed)
    bases = [file.read_bytes() for file in sorted(WALKS.glob("*/*.yaml"))]
    past, complaints, slowest = Counter(), [], 0.0
    begun = time.perf_counter()
    for number in range(count):
        data = rng.choice(bases)
        lines = data.splitlines(keepends=True)
        for _ in range(rng.randrange(3)):
            lines.insert(rng.randrange(len(lines) + 1), rng.choice(EXTRA))
        change = changed if number % 2 else gently_changed
        data = change(b"".join(lines), rng.randrange(2**32))
        started = time.perf_counter()
        try:
            past.update(stages(data, "entries.yaml"))
        except Exception as problem:  # noqa: BLE001 - any other way out is what is looked for
            complaints.append(f"{number}: {type(problem).__name__}: {problem}")
            if len(complaints) <= 5:
                import traceback

                traceback.print_exc()
        slowest = max(slowest, time.perf_counter() - started)
        if (number + 1) % 10_000 == 0:
            print(f"{number + 1:,} files, {len(complaints)} complaints", flush=True)
    if slowest > MOST_SECONDS:
        complaints.append(f"one file took {slowest:.1f} s")
    print(
        f"{count:,} replay files in {time.perf_counter() - begun:.0f} s, the slowest {slowest * 1000:.0f} ms"
    )
    for stage, passed in past.items():
        print(f"  {stage}: {passed:,}")
    print(f"  complaints: {len(complaints)}")
    print("\n".join(complaints[:20]))
    return bool(complaints)


if __name__ == "__main__":
    sys.exit(main())
