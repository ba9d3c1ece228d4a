"""The zone survey's conclusions on simulated houses of known zoning, at three qualities of anemometer.

Every kind of tests/rig/survey_houses.py on three plates each (at least 40 houses), each read REPEATS times by
each anemometer. Prints right, wrong and undecided for the conclusions and for each register's zone, and every
kind that went wrong more than once in twenty. Exit code 1 where a careful anemometer is wrong in over 1 %.
"""

import sys
import time
from collections import Counter
from pathlib import Path
from random import Random

sys.path.insert(0, str(Path(__file__).parents[1] / "rig"))
from survey_houses import KINDS, OPEN, QUALITIES, RIGHT, WRONG, house, judged, typed

PLATES, REPEATS = 3, 10


def main() -> int:
    """Runs all and prints the table."""
    begun = time.time()
    houses = [(built, house(built, plate)) for built in KINDS for plate in range(PLATES)]
    print(f"{len(houses)} houses, each read {REPEATS} times; read in {time.time() - begun:.0f} s")
    failed = False
    for quality, (share, floor) in QUALITIES.items():
        told, placed, bad = Counter(), Counter(), Counter()
        for number, (built, read) in enumerate(houses):
            for repeat in range(REPEATS):
                chance = Random(f"{quality}/{number}/{repeat}")
                for what, result in judged(read, typed(read, share, floor, chance)):
                    (placed if what == "zone" else told)[result] += 1
                    if result != RIGHT:
                        bad[built.name, what, result] += 1
        for name, count in (("conclusions", told), ("registers", placed)):
            total = sum(count.values())
            each = (f"{count[r]} {r} ({100 * count[r] / total:.2f} %)" for r in (RIGHT, WRONG, OPEN))
            parts = ", ".join(each)
            print(f"{quality:11} ±{100 * share:.0f} %, from {floor:.0f} cfm: {name}: {parts}")
            failed = failed or (quality == "hot wire" and count[WRONG] > 0.01 * total)
        for (kind, what, result), times in bad.most_common():
            if times > PLATES * REPEATS / 20:
                print(f"    {kind}: {what} {result} {times} of {PLATES * REPEATS}")
    print(f"{time.time() - begun:.0f} s")
    return int(failed)


if __name__ == "__main__":
    sys.exit(main())
