"""How far the simulated house agrees with what others say: ngspice, an invented furnace, published sums.

Prints one line for each network (how many voltages and currents, the largest difference as a share of the
network's largest), then the healthy reference furnace beside the one that was written down by hand before it,
then the trade functions that the house shares and how many published rows check each.
"""

import ast
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "rig"))
sys.path.insert(0, str(Path(__file__).parents[2]))

import networks
import spice
import yaml
from test_against_ngspice import kept, ours, theirs
from test_reference_unit import MINUTES, RUNNING, number

from assistant.rig.house import Rig
from assistant.rig.meter import KIT

ROOT = Path(__file__).parents[2]
CHECKED_BY = {"blade_loss": "damper_loss", "CLOSED": "damper_loss"}
"""Shared name -> the computation of the registry that is nothing but it."""


def with_ngspice():
    """A line for each network; the worst share of all."""
    answers = kept()["networks"]
    worst = 0.0
    print(f"{len(networks.CASES)} networks against ngspice ({'live' if spice.NGSPICE else 'kept answers'})")
    for name, make in networks.CASES.items():
        case = make()
        mine = ours(case)
        known = {key: complex(*value) for key, value in answers[name]["answers"].items()}
        other = theirs(case) if spice.NGSPICE else known
        off = 0.0
        for letter in "vi":
            keys = [key for key in mine if key.startswith(letter)]
            most = max((abs(other[key]) for key in keys), default=0) or 1.0
            off = max([off, *(abs(mine[key] - other[key]) / most for key in keys)])
        worst = max(worst, off)
        nodes = len(case.network.nodes)
        print(f"  {name}: {len(mine)} quantities, {nodes} nodes, largest difference {off:.1e}")
    return worst


def with_the_invented_furnace():
    """Each of its readings, ours beside it."""
    rig = Rig(arrives_after=60 * MINUTES)
    rig.act("hold_door_switch")
    print("the invented furnace, running: reading, written down, ours, allowed")
    outside = 0
    for kind, points, unit, kit, expected, tolerance in RUNNING:
        mine = number(rig.measure(kind, points, KIT[kit]), kind, unit)
        outside += abs(mine - expected) > tolerance + 1e-9
        print(f"  {kind} at {' and '.join(points)}: {expected:g}, {mine:.3g} {unit}, within {tolerance:g}")
    return outside


def shared():
    """Names that rig/ takes from trade/, with the published rows that check them."""
    rows = [
        row
        for path in sorted((ROOT / "tests" / "outside" / "data").glob("trade_*.yaml"))
        for row in yaml.safe_load(path.read_text()).get("cases", ())
    ]
    unchecked = 0
    print("trade functions that the house shares")
    for path in sorted((ROOT / "assistant" / "rig").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text())):
            if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("assistant.trade"):
                for name in (alias.name for alias in node.names):
                    of = [row for row in rows if row.get("call") == CHECKED_BY.get(name, name)]
                    unchecked += not of
                    sources = "; ".join(sorted({row.get("source", "") for row in of}))
                    print(f"  {node.module}.{name} in {path.name}: {len(of)} published rows ({sources})")
    return unchecked


def main():
    """Print all three; the exit code tells whether anything is outside what is allowed."""
    worst = with_ngspice()
    outside = with_the_invented_furnace()
    unchecked = shared()
    print(f"largest difference {worst:.1e}; {outside} readings outside; {unchecked} shared names unchecked")
    return int(worst > 1e-5 or outside or unchecked)


if __name__ == "__main__":
    sys.exit(main())
