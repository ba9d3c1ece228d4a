"""What only a running furnace shows is never asked of one that was switched off.

After a repair or a reading on dead parts the furnace stands still. A vacuum, a rise or a manifold pressure
read then is near zero and would condemn the vent, the duct or the gas. So each such step says that the line
is live, and the walker switches it on first (reasoned).
"""

from __future__ import annotations

import pytest
from sound_furnace import shipped

from assistant.tree.model import Measure, readings_of

RUNNING = ("gas", "vent", "air")
AT_REST = {
    "no_heat.rest_vacuum": "reads what pulls while the inducer stands still",
    "no_heat.limit_face": "a limit keeps its heat",
    "no_heat.limit_face_cool": "a limit keeps its heat",
    "gas_dirt.pressure": "inlet at rest",
    "motor_autopsy.told": "sizes by a rule, and the table inside the door",
    "gas_supply.pressure": "inlet at rest",
}
POINTS = shipped().vocabulary.points
WANTED = [pytest.param(step, id=f"{tree.name}.{name}")
          for tree in shipped().trees.values() for name, step in tree.steps.items()
          if isinstance(step, Measure) and f"{tree.name}.{name}" not in AT_REST
          and any(POINTS[point].of in RUNNING for reading in readings_of(step) for point in reading.at)]


@pytest.mark.parametrize("step", WANTED)
def test_what_a_running_furnace_shows_wants_it_switched_on(step: Measure):
    assert "live" in step.common.needs.values()


@pytest.mark.parametrize("address", AT_REST)
def test_what_is_read_at_rest_is_there(address: str):
    _, step = shipped().step(address)
    assert "live" not in step.common.needs.values()
