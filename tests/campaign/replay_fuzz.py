"""Replay files without end: python tests/campaign/replay_fuzz.py [N] [SEED], N = 100,000.

Half are walks of the tests changed gently (words, numbers, lines), half roughly (bits, cuts, signs). Each
must end in a walk, or in sentences with places in the file.
"""

# ruff: noqa: E402  run as a script, from a checkout

import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "past")]

from _fuzz import Complaint, asked_for, fuzz
from shelved import LIBRARY, TREES, WALKS

from assistant.house.reader import Unreadable, read
from assistant.walk.entries import complaints_of, events_of, read_entries
from assistant.walk.event import Opened
from assistant.walk.state import BadAnswer, OutOfOrder
from assistant.walk.visit import asked, begin, fold
from tests.tree.mutation import changed, gently_changed

AT = "2026-01-14T09:00:00-05:00"
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
        raise Complaint("refused without a sentence")


def main(count: int, seed: int) -> int:
    bases = [file.read_bytes() for file in sorted(WALKS.glob("*/*.yaml"))]

    def one(chance, number):
        lines = chance.choice(bases).splitlines(keepends=True)
        for _ in range(chance.randrange(3)):
            lines.insert(chance.randrange(len(lines) + 1), chance.choice(EXTRA))
        rough = number % 2
        data = (changed if rough else gently_changed)(b"".join(lines), chance.randrange(2**32))
        return "roughly" if rough else "gently", "entries.yaml", stages(data, "entries.yaml")

    return fuzz("replay files", one, count, seed)


if __name__ == "__main__":
    sys.exit(main(*asked_for()))
