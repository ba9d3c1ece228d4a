"""Trail files without end: python tests/campaign/trail_fuzz.py [N] [SEED], N = 100,000.

Half are whole files changed in bits, cuts and signs; half are changed in what their lines say (kinds,
fields, types, lengths) and then sealed anew, so that the chain holds and the reader believes them. Each must
end in events, remarks or a sentence, be followed as far as it goes, and be told as rows.
"""

# ruff: noqa: E402  run as a script, from a checkout

import copy
import json
import random
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "past")]

from _fuzz import asked_for, fuzz
from shelved import LIBRARY, put

from assistant.report.rows import told
from assistant.trail.chain import START, seal
from assistant.trail.error import TrailError
from assistant.trail.files import Files
from assistant.trail.read import read_trail
from assistant.trail.verify import verify
from tests.tree.mutation import changed

FOLDER = Path("/visit")
WALKS = (
    "no_heat/igniter_open",
    "no_heat/fuse_blown",
    "zone_spillover/leaky_blade",
    "tripped_breaker/blower_ground",
)
ODD = [
    None, True, 0, -1, 1e308, "", "x" * 10_000, "=cmd()", "<script>", "\u202e", "\U0001f525", [], {}, [[]],
    {"a": {"b": []}}, "2026-02-30T99:99:99", "no_heat.nowhere", "nowhere", 10**30, ["a", 1], {"text": 5},
]  # fmt: skip


class Memory(Files):
    """A disk of one folder, in memory."""

    def __init__(self, data: dict[str, bytes]) -> None:
        self.data = data

    def names(self, _folder):
        return list(self.data)

    def read(self, path):
        try:
            return self.data[path.name]
        except KeyError:
            raise FileNotFoundError(path) from None

    def is_folder(self, _path):
        return True


def resealed(lines: list[dict], rng: random.Random) -> bytes:
    """A file whose lines say something else and whose chain holds."""
    lines = copy.deepcopy(lines)
    for _ in range(rng.randint(1, 3)):
        line = lines[rng.randrange(len(lines))]
        act = rng.randrange(6)
        key = rng.choice(list(line)) if line else "at"
        if act == 0:
            line[key] = rng.choice(ODD)
        elif act == 1 and len(line) > 1:
            line.pop(key)
        elif act == 2:
            line[rng.choice(["extra", "readings", "step", "kind", "photos", "events"])] = rng.choice(ODD)
        elif act == 3:
            line["kind"] = rng.choice([other.get("kind") for other in lines])
        elif act == 4 and isinstance(line[key], dict) and line[key]:
            inside = rng.choice(list(line[key]))
            line[key][inside] = rng.choice(ODD)
        else:
            lines.insert(rng.randrange(1, len(lines)), copy.deepcopy(rng.choice(lines)))
    out, tip = [], START
    for number, line in enumerate(lines, 1):
        if rng.random() < 0.995:
            line["n"] = number
        try:
            data, tip = seal(tip, line)
        except (ValueError, TypeError):
            continue
        out.append(data)
    return b"".join(out)


def stages(data: bytes):
    """The stages that a file gets past, in order."""
    yield "written"
    files = Memory({"trail-001-aaaaaa.jsonl": data})
    try:
        trail = read_trail(FOLDER, files)
    except TrailError:
        return
    verify(FOLDER, files=files)
    yield "read"
    events = trail.events
    [str(remark) for remark in trail.remarks]
    if not trail.damage:
        yield "unaltered"
    found = told(LIBRARY, events)
    if events:
        yield "told"
    if not found.remarks:
        yield "followed to its end"


def main(count: int, seed: int) -> int:
    with tempfile.TemporaryDirectory() as folder:
        bases = []
        for number, walk in enumerate(WALKS):
            put(Path(folder), str(number), walk, sign=False)
            bases.append(next((Path(folder) / str(number)).glob("trail-*")).read_bytes())
    spoken = [[_fields(line) for line in base.splitlines()] for base in bases]

    def one(chance, number):
        which = chance.randrange(len(bases))
        if number % 2:
            return "bytes changed", WALKS[which], stages(changed(bases[which], chance.randrange(2**32)))
        return "sealed anew", WALKS[which], stages(resealed(spoken[which], chance))

    return fuzz("trail files", one, count, seed)


def _fields(line: bytes) -> dict:
    found = json.loads(line)
    found.pop("~")
    return found


if __name__ == "__main__":
    sys.exit(main(*asked_for()))
