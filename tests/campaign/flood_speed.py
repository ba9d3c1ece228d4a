"""How soon a file made to cost time is refused: python tests/campaign/flood_speed.py

Each flood of tests/house/test_reader_floods.py against a SHA-256 of the same bytes, which looks at each of
them once. One that takes many times as long as that is a mistake: the command then ends with exit code 1.
"""

from __future__ import annotations

import hashlib
import runpy
import sys
import time
from pathlib import Path

from assistant.house.reader import Unreadable, read

FLOODS = runpy.run_path(str(Path(__file__).parent.parent / "house" / "test_reader_floods.py"))["FLOODS"]
MOST = 25.0
"""Times the hash that a refusal may take."""


def seconds(work) -> float:
    """Processor seconds of one piece of work."""
    begun = time.process_time()
    work()
    return time.process_time() - begun


def refused(data: bytes) -> None:
    """Read it to its refusal."""
    try:
        read(data, "f")
    except Unreadable:
        return
    raise SystemExit("a flood was read as a file")


def main() -> int:
    """Prints seconds and ratio of each; 1 where one takes too long."""
    worst = 0.0
    for text, words in FLOODS:
        data = eval(text)
        hashed = seconds(lambda held=data: hashlib.sha256(held).digest())
        took = seconds(lambda held=data: refused(held))
        worst = max(worst, took / hashed)
        print(f"{text:60} {len(data) / 1e6:5.1f} MB {took:7.3f} s {took / hashed:6.1f} hashes  {words}")
    print(f"worst {worst:.1f} hashes of the same bytes; {MOST:.0f} are allowed")
    return int(worst > MOST)


if __name__ == "__main__":
    sys.exit(main())
