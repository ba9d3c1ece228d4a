"""How long a check takes, for 1,000 to 10,000 generated steps: python tests/campaign/check_speed.py

The steps are of every kind, with power needs, calls, limits on plate values and findings, and lead on to
each other in a long chain with short cuts, so that every rule has a path to follow. A time that grows much
faster than the steps is a mistake: the command then ends with exit code 1.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

from assistant.tree.check import RULES, Study
from assistant.tree.library import from_texts

SOUND = Path(__file__).parent.parent / "tree" / "examples" / "sound"
SIZES = (1000, 2000, 5000, 10_000)
MOST_GROWTH = 2.0
"""Seconds per step at the largest size over those at the smallest."""
PAIR = """\
      pair{i}:
        {{ask: Bell, quantity: ac_voltage, unit: V, at: [bell{i}.a, bell{i}.b], meter: low impedance,
         plausible: [0, 60], bands: [{{under: 1, is: dead}}, {{is: live, then: live}}]}}
"""
HEAD = "format: 1\npurpose: complaint\ntitle: Generated\nstart: s0\nsteps:\n"


def measure(number: int, following: str, kind: str, unit: str, at: str, needs: str, limit: str) -> str:
    return f"""\
  s{number}:
    measure: Reading {number}
    quantity: {kind}
    unit: {unit}
    at: {at}
    name: n{number}
    meter: low impedance
    needs: {needs}
    caution: [live]
    plausible: [0, 5000]
    bands:
      - {{under: {limit}, is: "low, write it down", then: {following}}}
      - {{is: high, then: s{number + 1}, normal: yes}}
    close: out
    cannot: out
    source: shop
"""


def finding(number: int, shown: int) -> str:
    return f"""\
  f{number}:
    finding: Finding {number}
    condemns: valve
    shows: [n{shown - 4}, n{shown}]
    causes: [dust]
    repair: [fit_valve]
    proof: lights
    customer: The part that lets the gas in no longer opens.
"""


def tree(size: int) -> bytes:
    """A complaint tree of about `size` steps that no rule refuses."""
    parts, number, findings = [], 0, 0
    while number + findings < size - 8:
        kind = number % 6
        if kind == 0:
            onward = f"s{number + 1}"
            parts.append(measure(number, onward, "ac_voltage", "V", "[valve.a, c]", "{control: live}",
                                 "0.8 * volts_rated"))
        elif kind == 1:
            ways = f"clean: s{number + 3}, clogged: s{number + 1}"
            parts.append(f"  s{number}: {{look: Which?, sees: filter, choices: {{{ways}}}}}\n")
        elif kind == 2:
            parts.append(f"  s{number}: {{do: Thermostat to OFF, act: stat_off, then: s{number + 1}}}\n")
        elif kind == 3:
            leads = f"f{number}" if number > 6 else "out"
            parts.append(measure(number, leads, "resistance", "ohm", "[valve.a, valve.b]", "{control: dead}",
                                 "10"))
            if number > 6:
                parts.append(finding(number, number))
                findings += 1
        elif kind == 4 and number % 12 == 4:
            ways = f"missing: {{burner.lights: w{number}, blower.runs: out}}, then: s{number + 1}"
            parts.append(f"  s{number}: {{watch: Start, within: 60 s, events: [burner.lights, blower.runs], "
                         f"{ways}, needs: {{control: live}}, caution: [live, parts], close: out}}\n"
                         f"  w{number}: {{do: Thermostat to OFF, act: stat_off, then: s{number + 1}}}\n")
            findings += 1
        elif kind == 4:
            ways = f"found: s{number + 1}, ruled_out: s{number + 1}"
            parts.append(f"  s{number}: {{call: dust, then: {{{ways}}}}}\n")
        else:
            parts.append(measure(number, "out", "ac_voltage", "V", "[r, c]", "{line: live, control: live}",
                                 "0.9 * volts_rated"))
        number += 1
    parts += [f"  s{number + more}: {{do: On, then: s{number + more + 1}}}\n" for more in range(4)]
    parts.append(f"  s{number + 4}: {{stop: unsafe}}\n  out: {{stop: unsafe}}\n")
    return (HEAD + "".join(parts)).encode()


def with_more_circuits(texts: dict[str, bytes]) -> dict[str, bytes]:
    """The small library with four circuits more, as each costs a search of its own, and words for the spots
    that are read, as each page is looked through for them."""
    house, procedure = texts["house.yaml"].decode(), texts["procedure/make_dead.yaml"].decode()
    for label in ("R terminal", '"valve coil, one end"', '"valve coil, other end"'):
        house = house.replace(f"label: {label}}}", f'label: {label}, words: ["reading|r|valve"]}}')
    for i in range(4):
        own = f"fed_by: control, make_dead: make_dead, restore: restore, pairs: [[bell{i}.a, bell{i}.b]]"
        house = house.replace("\npoints:\n", f"  bell{i}: {{title: bell, {own}}}\n\npoints:\n", 1)
        for end in "ab":
            point = f"  bell{i}.{end}: {{circuit: bell{i}, drawing: control, label: bell}}\n"
            house = house.replace("\npoints:\n", f"\npoints:\n{point}", 1)
        reading = PAIR.format(i=i)
        procedure = procedure.replace("      live_after:\n", f"{reading}      live_after:\n", 1)
    procedure = procedure.replace("[line, control]", "[line, control, bell0, bell1, bell2, bell3]")
    return {**texts, "house.yaml": house.encode(), "procedure/make_dead.yaml": procedure.encode()}


def main() -> int:
    """Prints the times; 1 where a step costs far more in a large tree than in a small one."""
    texts = {path.relative_to(SOUND).as_posix(): path.read_bytes() for path in sorted(SOUND.rglob("*.yaml"))}
    texts = with_more_circuits(texts)
    per_step = []
    for size in SIZES:
        texts["complaint/no_heat.yaml"] = tree(size)
        begin = time.process_time()
        library = from_texts(texts)
        loaded = time.process_time()
        study = Study(library.vocabulary, library.trees, frozenset())
        took = {}
        for rule in RULES.values():
            start = time.process_time()
            problems = list(rule.problems(study))
            took[rule.name] = time.process_time() - start
            assert not problems, "\n".join(map(str, problems[:5]))
        assert not library.problems, library.problems[:5]
        steps = len(library.trees["no_heat"].steps)
        total = sum(took.values())
        per_step.append(total / steps)
        slow = sorted(took, key=took.get, reverse=True)[:4]
        rules = ", ".join(f"{name} {took[name]:.2f}" for name in slow)
        print(f"{steps:6,} steps, {len(library.vocabulary.circuits)} circuits: "
              f"load {loaded - begin:.2f} s, check {total:.2f} s ({rules})")
    growth = per_step[-1] / per_step[0]
    print(f"per step: {growth:.2f} times as long at {SIZES[-1]:,} steps as at {SIZES[0]:,}")
    return 0 if growth <= MOST_GROWTH else 1


if __name__ == "__main__":
    sys.exit(main())
