"""Long steps of a calm house come to the same as second after second."""

import math

import pytest

from assistant.rig.house import Rig
from assistant.rig.stride import LONGEST, SHORTEST, Stride

WAITS = (("stat_on", 300.0), ("stat_off", 240.0), ("stat_on", 900.0), ("stat_off", 600.0))
KELVIN = 0.5


def by_seconds(rig: Rig, seconds: float) -> None:
    """What a wait is, without any stride."""
    for _ in range(math.ceil(seconds)):
        rig.machine.tick()


@pytest.mark.parametrize(("act", "seconds"), WAITS)
def test_a_wait_ends_where_seconds_end(act, seconds):
    strides, single = Rig(), Rig()
    for rig in (strides, single):
        rig.act(act)
    strides.wait(seconds)
    by_seconds(single, seconds)
    a, b = strides.machine, single.machine
    assert a.time == pytest.approx(b.time)
    assert a.board.phase == b.board.phase
    assert dict(a.e.s) == pytest.approx(dict(b.e.s), abs=1.0)
    assert a.heat.limit == pytest.approx(b.heat.limit, abs=KELVIN)
    assert a.heat.discharge == pytest.approx(b.heat.discharge, abs=KELVIN)
    assert a.fan.winding == pytest.approx(b.fan.winding, abs=KELVIN)


def test_events_keep_their_seconds():
    strides, single = Rig(), Rig()
    for rig in (strides, single):
        rig.act("stat_off")
        rig.wait(200)
        rig.act("stat_on")
    heard = strides.wait(120)
    by_seconds(single, 120)
    assert {"inducer.runs", "ignitor.glows", "flame.holds", "blower.runs"} <= {name for name, _ in heard}
    assert strides.machine.events == single.machine.events


def test_an_act_is_followed_in_single_seconds():
    rig = Rig()
    rig.wait(600)
    stride = Stride(rig.machine)
    assert stride.next(100.0) == SHORTEST
    taken = []
    for _ in range(12):
        seconds = stride.next(100.0)
        rig.machine.tick(seconds)
        stride.took(seconds)
        taken.append(seconds)
    assert max(taken) == LONGEST
    rig.machine.hands["stat"] = "off"
    rig.machine.tick(stride.next(100.0))
    stride.took(LONGEST)
    assert stride.next(100.0) == SHORTEST


def test_a_stride_never_oversteps_what_is_left():
    rig = Rig()
    begun = rig.time
    rig.wait(601.5)
    assert rig.time - begun == pytest.approx(602.0)
