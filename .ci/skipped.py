"""Fails on each skipped test of a JUnit file that is not on the list of those that may be skipped.

A line of the list is `test name: reason`, both as pytest gives them; five lines at most.
"""

import sys
from pathlib import Path
from xml.etree import ElementTree as ET

MOST = 5


def main(report, allowed):
    """Prints each test that was skipped without leave; gives the exit code."""
    lines = [line.strip() for line in Path(allowed).read_text(encoding="utf-8").splitlines() if line.strip()]
    if len(lines) > MOST:
        print(f"{allowed}: {len(lines)} lines; at most {MOST} tests may be skipped")
        return 1
    if not Path(report).is_file():
        print("The tests left no report: they did not run.")
        return 1
    cases = list(ET.parse(report).iter("testcase"))
    found = [
        f"{case.get('classname')}.{case.get('name')}: {skipped.get('message')}"
        for case in cases
        for skipped in case.findall("skipped")
        if skipped.get("type") != "pytest.xfail"  # that one did run, and failed as it was expected to
    ]
    without_leave = [line for line in found if line not in lines]
    for line in without_leave:
        print(f"skipped without leave: {line}")
    for line in lines:
        if line not in found:
            print(f"{allowed}: not skipped any more, take it off the list: {line}")
    print(f"{len(cases)} tests, {len(found)} skipped, {len(without_leave)} of them without leave")
    return 1 if without_leave or not cases else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
