"""Does every fault make the complaint that it says it makes, at every degree that it lists?

Each fault is put into the reference house (with the features it needs) and the house is asked for heat for a
quarter of an hour before the visit and half an hour after; nobody touches anything. The complaints:

- no_heat: over the half hour the house gets less than four fifths of its rated heat;
- tripped_breaker: the breaker trips, or has tripped;
- blower_silent: no air to speak of while heat or fan is asked for;
- zone_spillover: zone 2 gets more than a tenth of its open share without calling for heat, or calls.

Prints each fault that does not, and how long all of them took.
"""

import sys
import time

from assistant.rig.fault_file import shipped
from assistant.rig.house import Rig
from assistant.rig.unit import REFERENCE

SECONDS = 1800
SPILLS = 0.1 * 0.33 * 0.559
"""A tenth of zone 2's open flow, m3/s."""


def watched(rig):
    """Share of rated heat, whether the breaker tripped, share of the time with air, most air of zone 2."""
    heat = air = most = 0.0
    machine = rig.machine
    tripped = machine.v["breaker.handle"] == "tripped"
    for _ in range(SECONDS):
        rig.wait(1)
        if machine.lit_for > 0 and machine.air.flow > 0.05:
            heat += machine.gas.flow * min(1.0, machine.fire.air if machine.fire else 1.0)
        air += machine.air.flow > 0.1
        most = max(most, machine.air.ducts.runs.get("2", 0.0))
        tripped = tripped or machine.v["breaker.handle"] == "tripped"
    return heat / SECONDS, tripped, air / SECONDS, most


def makes(complaint, heat, tripped, air, most):
    """Whether what was watched is that complaint."""
    return {
        "no_heat": heat < 0.8,
        "tripped_breaker": tripped,
        "blower_silent": air < 0.1,
        "zone_spillover": most > SPILLS,
    }[complaint]


def main():
    """Go through all of them; the exit code tells whether each makes its complaint."""
    faults, problems = shipped()
    for problem in problems:
        print(problem)
    begun = time.monotonic()
    tried = wrong = 0
    for name, fault in faults.items():
        for degree in fault.degrees:
            tried += 1
            seen = watched(Rig(REFERENCE, fault, degree))
            if fault.comes_and_goes is None and not makes(fault.complaint, *seen):
                wrong += 1
                print(
                    f"{name} ({degree}) is no {fault.complaint}: heat {seen[0]:.2f}, tripped {seen[1]}, "
                    f"air {seen[2]:.2f}, zone 2 {seen[3] * 2118.88:.0f} cfm"
                )
    seconds = time.monotonic() - begun
    print(
        f"{len(faults)} faults, {tried} with their degrees, {wrong} without their complaint; "
        f"{seconds:.0f} s, {tried * (SECONDS + 910) / seconds:,.0f} simulated seconds a second"
    )
    return 1 if wrong or problems else 0


if __name__ == "__main__":
    sys.exit(main())
