"""How fast the rig solves its circuit, against ngspice's own time for an analysis of the same house.

Both do 1,000 analyses in one batch. The rig stamps and solves the whole house with another motor slip each
time. ngspice is timed in the two ways it can do many analyses in one process, and the faster one counts: a
sweep of 1,000 frequencies (each a matrix of its own), and a loop that alters a resistor before each
analysis. Its time is the wall time of the batch less that of the same process with one analysis (start and
reading of the netlist, reported apart), divided by the analyses between them.
"""

import subprocess
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "rig"))
sys.path.insert(0, str(Path(__file__).parents[2]))

import networks
import spice

from assistant.rig import wiring
from assistant.rig.circuit.network import LEAK

ANALYSES = 1000
ROUNDS = 3


def ours():
    """Seconds for one analysis: stamping and solving the whole house."""
    case = networks.house_running()
    best = float("inf")
    for _ in range(ROUNDS):
        begun = time.perf_counter()
        for i in range(ANALYSES):
            case.network.set_pair("blower", wiring.winding(wiring.BLOWER, 0.05 + 0.9 * i / ANALYSES))
            case.network.solve(60.0)
        best = min(best, time.perf_counter() - begun)
    return best / ANALYSES


def netlist():
    """The house for ngspice."""
    case = networks.house_running()
    written = spice.Netlist(case.network, 60.0, LEAK).branches()
    for name, (four, _) in case.network.pairs.items():
        if name in case.motors:
            written.motor(name, four, *case.motors[name])
        else:
            written.transformer(name, four, case.transformers[name])
    return written


def sweep(analyses):
    """One analysis of so many frequencies."""
    return f"ac lin {analyses} 59 61"


def loop(analyses):
    """So many analyses, a resistor altered before each, the last one's results thrown away."""
    return (
        f"let const.i = 0\nwhile const.i < {analyses}\n  alter Rrfblower = 2 + 0.001 * const.i\n"
        "  ac lin 1 60 60\n  destroy all\n  let const.i = const.i + 1\nend"
    )


def batch(analyses, way):
    """Seconds of wall time for ngspice with that many analyses in one process."""
    text = netlist().text(way(analyses), [])
    best = float("inf")
    for _ in range(ROUNDS):
        begun = time.perf_counter()
        done = subprocess.run(
            [spice.NGSPICE, "-b", "-n", "/dev/stdin"], input=text, capture_output=True, text=True, check=True
        )
        best = min(best, time.perf_counter() - begun)
    rows = [
        int(line.split(":")[1]) for line in done.stdout.splitlines() if line.startswith("No. of Data Rows")
    ]
    assert sum(rows) == analyses, f"ngspice did {sum(rows)} analyses"
    return best


def main():
    """Print both, and their ratio."""
    mine = ours()
    print(f"rig: {1 / mine:,.0f} solves a second, {1e6 * mine:.0f} us each ({ANALYSES} in one batch)")
    if spice.NGSPICE is None:
        print("ngspice is not installed: nothing to compare with")
        return 2
    each = {}
    for way in (sweep, loop):
        start = batch(1, way)
        each[way] = (batch(ANALYSES, way) - start) / (ANALYSES - 1)
        print(
            f"ngspice, {way.__name__}: {1e6 * each[way]:.0f} us an analysis in one batch of {ANALYSES}; "
            f"start of the process {1e3 * start:.0f} ms"
        )
    print(f"ratio: {each[loop] / mine:.1f} rig solves in the time of one analysis of an altered circuit,")
    print(f"       {each[sweep] / mine:.2f} in the time of one point of a sweep")
    return 0


if __name__ == "__main__":
    sys.exit(main())
