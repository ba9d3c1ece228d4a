"""The healthy reference unit against an invented but self-consistent unit of its kind, as a sanity check.

Source: 80,000 Btu/h natural gas, 80 percent, single stage, plate rise 35 to 65 F, written down by hand before
this program had a rig (common practice, reasoned); tolerances say how far a furnace of the same plate may be.
Where physics says otherwise, a test says so.
"""

import pytest

from assistant.quantity.entry import understand
from assistant.quantity.units import from_si
from assistant.rig.house import Rig
from assistant.rig.meter import KIT

MINUTES = 25

# reading, points, unit, instrument, expected, tolerance
RUNNING = [
    ("ac_voltage", ("box.line", "box.neutral"), "V", "low", 120, 3),
    ("ac_voltage", ("r", "c"), "V", "low", 25, 1),
    ("ac_voltage", ("w", "c"), "V", "low", 25, 1),
    ("ac_voltage", ("limit.feed", "limit.load"), "V", "high", 0, 0.2),
    ("ac_voltage", ("pressure.feed", "pressure.load"), "V", "high", 0, 0.2),
    ("ac_voltage", ("inducer.line", "inducer.neutral"), "V", "low", 120, 4),
    ("ac_current", ("inducer.line",), "A", "high", 1.2, 0.25),
    ("pressure", ("hose.inducer",), "inwc", "other", 0.95, 0.10),
    ("pressure", ("port.inlet",), "inwc", "other", 6.8, 0.1),
    ("pressure", ("port.manifold",), "inwc", "other", 3.5, 0.1),
    ("ac_voltage", ("valve.hot", "valve.common"), "V", "low", 25, 1),
    ("dc_current", ("board.rod", "rod"), "uA", "high", 3.5, 0.5),
    ("duration", ("meter.dial",), "s", "other", 92.7, 1.0),
    ("percent", ("flue.sample",), "percent", "other", 7.5, 0.5),
    ("concentration", ("flue.sample",), "ppm", "other", 25, 15),
    ("temperature", ("flue.sample",), "F", "other", 380, 20),
    ("pressure", ("flue.sample",), "inwc", "other", -0.03, 0.015),
    ("concentration", ("room.air",), "ppm", "other", 0, 1),
]


def number(text, kind, unit):
    meaning = understand(text, kind, unit)
    return from_si(meaning.interval.middle, unit)


@pytest.fixture(scope="module")
def running():
    rig = Rig(arrives_after=60 * MINUTES)
    rig.act("hold_door_switch")
    return rig


@pytest.mark.parametrize(("kind", "points", "unit", "kit", "expected", "tolerance"), RUNNING)
def test_running(running, kind, points, unit, kit, expected, tolerance):
    """One reading of the running unit."""
    shown = running.measure(kind, points, KIT[kit])
    assert number(shown, kind, unit) == pytest.approx(expected, abs=tolerance + 1e-9)


def test_rise_and_airflow(running):
    """Rise 50 F and 1,185 cfm, within 5 %."""
    supply = number(running.measure("temperature", ("supply.air",)), "temperature", "F")
    back = number(running.measure("temperature", ("return.air",)), "temperature", "F")
    assert supply - back == pytest.approx(50, abs=2.5)
    assert running.machine.air.flow * 2118.88 == pytest.approx(1185, rel=0.05)


def test_at_rest():
    """R to C 26 V idle, 0 V at W, the open pressure switch shows it all, the igniter 60 ohm cold, inlet
    7.2.
    """
    rig = Rig(changes={"thermostat.mode": "off"}, arrives_after=60)
    assert number(rig.measure("ac_voltage", ("r", "c"), KIT["low"]), "ac_voltage", "V") == pytest.approx(
        26, abs=1
    )
    assert number(rig.measure("ac_voltage", ("w", "c"), KIT["low"]), "ac_voltage", "V") < 0.5
    across = number(
        rig.measure("ac_voltage", ("pressure.feed", "pressure.load"), KIT["high"]), "ac_voltage", "V"
    )
    assert across == pytest.approx(26, abs=1)
    assert number(rig.measure("pressure", ("port.inlet",)), "pressure", "inwc") == pytest.approx(
        7.2, abs=0.05
    )
    rig.act("breaker_off")
    cold = number(rig.measure("resistance", ("igniter.line", "igniter.neutral")), "resistance", "ohm")
    assert cold == pytest.approx(60, abs=1)


def test_igniter_draws_four_amps():
    """Hot, the igniter takes about 4 A."""
    rig = Rig(arrives_after=0)
    rig.wait(30)
    amps = number(rig.measure("ac_current", ("igniter.line",)), "ac_current", "A")
    assert amps == pytest.approx(4.0, abs=0.4)


# What one fault moves: changes, reading, expected, tolerance.
SIGNATURES = {
    "W wire open, at the thermostat": ({"cable.w_open": 1}, "ac_voltage", ("stat.w", "stat.c"), "V", 25, 1.5),
    "W wire open, at the board": ({"cable.w_open": 1}, "ac_voltage", ("w", "c"), "V", 0, 0.3),
    "transformer open": ({"transformer.secondary_open": 1}, "ac_voltage", ("r", "c"), "V", 0, 0.3),
    "fuse blown, across": (
        {"control_fuse.blown": 1},
        "ac_voltage",
        ("fuse24.feed", "fuse24.load"),
        "V",
        26,
        1,
    ),
    "rollout open, across": (
        {"rollout.tripped": 1},
        "ac_voltage",
        ("rollout.feed", "rollout.load"),
        "V",
        25,
        1.5,
    ),
    "inducer burnt, amps": (
        {"inducer.main_open": 1, "inducer.start_open": 1},
        "ac_current",
        ("inducer.line",),
        "A",
        0,
        0.01,
    ),
    "inducer burnt, vacuum": ({"inducer.main_open": 1}, "pressure", ("hose.inducer",), "inwc", 0, 0.05),
    "gas off, static": ({"gas_supply.cock": 0.0}, "pressure", ("port.inlet",), "inwc", 0, 0.01),
    "overfire, manifold": ({"gas_valve.regulator": 1.2}, "pressure", ("port.manifold",), "inwc", 4.2, 0.05),
    "overfire, rise 55": ({"gas_valve.regulator": 1.2}, "temperature", ("supply.air",), "F", 68 + 55, 3),
    "overfire, oxygen": ({"gas_valve.regulator": 1.2}, "percent", ("flue.sample",), "percent", 6.0, 0.5),
    "overfire, monoxide": ({"gas_valve.regulator": 1.2}, "concentration", ("flue.sample",), "ppm", 120, 40),
}


@pytest.mark.parametrize("name", SIGNATURES)
def test_signature_of_a_single_fault(name):
    """The reading that a fault moves goes where it should."""
    changes, kind, points, unit, expected, tolerance = SIGNATURES[name]
    rig = Rig(changes=changes, arrives_after=1500)
    kit = KIT["high"] if kind != "ac_voltage" or "across" in name else KIT["low"]
    shown = rig.measure(kind, points, kit if kind in kit.covers else None)
    assert number(shown, kind, unit) == pytest.approx(expected, abs=tolerance)


def test_overfire_clocks_nine_and_a_half_percent_high():
    """Manifold 4.2 on 3.5: the square root, 9.5 % (orifice equation)."""
    plain, over = Rig(arrives_after=300), Rig(changes={"gas_valve.regulator": 1.2}, arrives_after=300)
    first, second = (number(r.measure("duration", ("meter.dial",)), "duration", "s") for r in (plain, over))
    assert first / second == pytest.approx(1.095, abs=0.003)


def test_low_inlet():
    """Static 7.0, firing 3.2, manifold 2.4: the rig's pipe is given the drop and gives the rest."""
    rig = Rig(changes={"gas_supply.static": 1743.6, "gas_supply.pipe": 13.8}, arrives_after=300)
    inlet, manifold = (
        number(rig.measure("pressure", (point,)), "pressure", "inwc")
        for point in ("port.inlet", "port.manifold")
    )
    assert inlet == pytest.approx(3.2, abs=0.15)
    assert manifold == pytest.approx(2.4, abs=0.1)


def test_full_filter_trips_the_limit_within_a_quarter_of_an_hour():
    """Static 0.9, rise 72, limit open at 8 min: the rig has 1.0, about 70 and trips within 15."""
    rig = Rig(changes={"filter.clog": 0.76}, arrives_after=0)
    opened = None
    highest = 0.0
    for second in range(1200):
        rig.wait(1)
        highest = max(highest, rig.machine.air.ducts.lift)
        if not rig.machine.e.s["limit"]:
            opened = second
            break
    assert opened is not None and 240 < opened < 900
    assert highest / 249.089 == pytest.approx(0.95, abs=0.12)


def test_blocked_vent_weakens_and_blocked_intake_strengthens_against_the_room():
    """A two-hose unit chokes on its intake with more vacuum against the room and less across its hoses."""
    from assistant.rig.unit import CONDENSING

    def readings(changes):
        rig = Rig(CONDENSING, changes=changes, arrives_after=20)
        return [
            number(rig.measure("pressure", p), "pressure", "inwc")
            for p in (("hose.inducer",), ("hose.inducer", "hose.burner_box"))
        ]

    room, across = readings({})
    vent_room, vent_across = readings({"vent.blocked": 0.85})
    intake_room, intake_across = readings({"intake.blocked": 0.85})
    assert vent_room < 0.8 * room and vent_across < 0.8 * across
    assert intake_room > room and intake_across < 0.8 * across


def test_ground_reasoned_otherwise():
    """A missing ground alone leaves a flame current in the rig, where the hand-written unit says 0.7 uA.

    The frame then floats on the transformer's stray capacitance at about half the line, as frames without a
    ground do; current is lost where hot and neutral are swapped or the burner is not bonded (both reasoned).
    """
    found = {}
    for name, changes in {
        "none": {},
        "ground": {"ground_wire.open": 1},
        "swapped": {"polarity.swapped": 1},
        "bond": {"burner_bond.open": 1},
    }.items():
        rig = Rig(changes=changes, arrives_after=0)
        rig.wait(42)
        found[name] = number(rig.measure("dc_current", ("board.rod", "rod")), "dc_current", "uA")
        volts = rig.machine.e.volts("cabinet", "bar")
        if name == "ground":
            assert 30 < volts < 90
    assert found["none"] > 3
    assert 1 < found["ground"] < 0.7 * found["none"]
    assert found["swapped"] < 0.1 and found["bond"] < 0.1
