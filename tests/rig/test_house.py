"""The rig's door: it knows the house's words, time goes by, nothing is random but by seed."""

import re
from dataclasses import replace
from pathlib import Path

import pytest
import yaml

from assistant.quantity.entry import Doubt, NotUnderstood, understand
from assistant.quantity.instrument import Instrument
from assistant.rig.fan.trials import TRIALS
from assistant.rig.fault import ComesAndGoes
from assistant.rig.fault_file import shipped
from assistant.rig.house import CannotMeasure, NotDone, Rig, built
from assistant.rig.meter import KIT
from assistant.rig.points import AIR, PRESSURES
from assistant.rig.points_zone import DAMPER_POINTS
from assistant.rig.see import LOOKS
from assistant.rig.unit import CONDENSING, FEATURES, REFERENCE, Unit, varied, with_features

ROOT = Path(__file__).parents[2]


def read(text):
    """YAML with every scalar as text, as the program reads it."""
    return yaml.load(text, Loader=yaml.BaseLoader)  # noqa: S506  (it makes nothing but text)


HOUSE = read((ROOT / "trees" / "house.yaml").read_text(encoding="utf-8"))
TAKES_TIME = {"five_starts", "cycles", "starts.twenty", *TRIALS}


PROVED = ("no_heat", "tripped_breaker", "blower_silent")
"""Complaint trees that the house is complete for: everything that they and what they call ask of it."""


def parts(node):
    """A node of a file and everything in it."""
    yield node
    inside = node.values() if isinstance(node, dict) else node if isinstance(node, list) else ()
    for part in inside:
        yield from parts(part)


def closure():
    """The texts of the proved trees, of what they call, and of their causes and proofs."""
    files = {path.stem: read(path.read_text(encoding="utf-8")) for path in (ROOT / "trees").rglob("*.yaml")}
    circuits = [HOUSE["circuits"][name] for name in ("line", "control", "feed", "run_capacitor")]
    procedures = [circuit[key] for circuit in circuits for key in ("make_dead", "restore")]
    wanted, found = [*PROVED, *procedures], {}
    while wanted:
        name = wanted.pop()
        if name in found or name not in files:
            continue
        found[name] = files[name]
        for node in parts(files[name]):
            if isinstance(node, dict):
                named = [node.get("call"), node.get("proof"), *(node.get("causes") or [])]
                wanted += [one for one in named if isinstance(one, str)]
    return found


NODES = [node for text in closure().values() for node in parts(text) if isinstance(node, dict)]
SEEN = sorted({node["sees"] for node in NODES if "sees" in node})
ACTS = sorted({act for node in NODES for act in [node.get("act"), *(node.get("repair") or [])] if act})
ASKED = sorted(
    {(node["quantity"], tuple(node["at"])) for node in NODES if "quantity" in node and "at" in node}
)
POINTS = sorted({point for _, points in ASKED for point in points})


def values(thing):
    given = HOUSE["seen"][thing]
    return given if isinstance(given, list) else given["values"]


@pytest.fixture(scope="module")
def houses():
    return [
        Rig(unit, arrives_after=100)
        for unit in (
            REFERENCE,
            CONDENSING,
            with_features(REFERENCE, {"zone_panel": "yes", "float": "yes", "plug_fuse": "yes"}),
            with_features(REFERENCE, {"blower": "electronic"}),
        )
    ]


@pytest.mark.parametrize("thing", SEEN)
def test_every_thing_can_be_looked_at(houses, thing):
    """Each thing that a proved tree looks at is answered with one of its own words."""
    assert thing in LOOKS or thing in TAKES_TIME
    if thing in LOOKS:
        assert {rig.see(thing) for rig in houses} <= set(values(thing))


@pytest.mark.parametrize("name", ACTS)
def test_every_act_can_be_done(name):
    """Each act that a proved tree asks for is known; the healthy house heats after it and what undoes it."""
    rig = Rig(arrives_after=0)
    rig.act(name)
    undo = HOUSE["acts"][name].get("undo")
    while undo:
        rig.act(undo)
        undo = HOUSE["acts"][undo].get("undo")
    if name in ("breaker_off", "branch_off", "gas_off"):
        rig.act("breaker_on")
    if name == "gas_off":
        rig.act("gas_on")
    if name == "reset_breaker":  # it is closed with everything unplugged
        for _ in range(3):
            rig.act("add_load")
    rig.act("stat_on")
    rig.wait(150)
    assert rig.machine.lit_for > 0


def test_an_unknown_act_is_a_sentence():
    with pytest.raises(NotDone, match="nobody knows here how to do"):
        Rig(arrives_after=0).act("dance")


@pytest.mark.parametrize("name", POINTS)
def test_every_point_is_in_the_house(houses, name):
    """Each point that a proved tree reads at can be touched, in one of the houses at least."""
    places = {point for _, point in AIR} | set(PRESSURES) | set(DAMPER_POINTS)
    assert name in places or any(name in rig.machine.e.net.nodes for rig in houses)


def test_every_plate_value_is_on_the_plate(houses):
    """The furnace's plate, or what is printed on breaker and wire."""
    printed = set(houses[0].plate())
    assert set(REFERENCE.plate()) < printed <= set(HOUSE["plate"])
    texts = [text for node in NODES for text in node.values() if isinstance(text, str)]
    named = {name for name in HOUSE["plate"] if any(re.search(rf"\b{name}\b", text) for text in texts)}
    assert named <= printed


def test_every_event_happens_in_a_start():
    """All events of house.yaml, in their order, and none twice in one start."""
    rig = Rig(arrives_after=0)
    seen = [name for name, _ in rig.wait(150)]
    assert seen == [name for name in HOUSE["happens"] if name != "blower.stops"]
    rig.act("stat_off")
    assert "blower.stops" in [name for name, _ in rig.wait(10)]


NONE_ADDED = ("resistance", ("c",))
"""Each added 24 V coil by itself: none in these houses, so it can't be taken."""


def test_every_reading_that_a_tree_asks_for_can_be_taken(houses):
    """What the display shows goes through the entry parser as a person's typing does."""
    assert len(ASKED) > 40
    for kind, points in ASKED:
        shown = []
        for rig in houses:
            try:
                shown.append(rig.measure(kind, points))
            except CannotMeasure:
                continue
        assert shown or (kind, points) == NONE_ADDED, (kind, points)
        for text in shown:
            meaning = (
                understand(text, kind, text.split()[-1] if " " in text else "ohm") if text != "Err" else None
            )
            assert not isinstance(meaning, (NotUnderstood, Doubt)), (kind, points, text)


def test_ohms_on_a_live_circuit_show_no_number():
    """The meter shows an error, and the house remembers."""
    rig = Rig(arrives_after=0)
    assert rig.measure("resistance", ("r", "c")) == "Err"
    assert "live circuit" in rig.mishaps[0]


def test_one_seed_gives_one_house():
    """The same seed reads the same, another one reads otherwise; exact instruments do not err at all."""
    meter = Instrument("m", ("ac_voltage",), {"ac_voltage": 1.0}, {"ac_voltage": 3}, impedance="low")

    def take(seed, exact):
        rig = Rig(seed=seed, exact=exact, arrives_after=10)
        return [rig.measure("ac_voltage", pair, meter) for pair in (("r", "c"), ("box.line", "box.neutral"))]

    assert take(7, False) == take(7, False)
    assert take(7, False) != take(8, False)
    assert take(7, True) == take(8, True)


def test_an_instrument_errs_within_what_its_maker_says():
    """1 % and 3 counts: the error is one draw for the instrument, never more than that."""
    meter = Instrument("m", ("ac_voltage",), {"ac_voltage": 1.0}, {"ac_voltage": 3}, impedance="low")
    true = Rig(arrives_after=10).measure("ac_voltage", ("r", "c"), meter)
    volts = float(true.split()[0])
    read = [
        float(Rig(seed=s, exact=False, arrives_after=10).measure("ac_voltage", ("r", "c"), meter).split()[0])
        for s in range(30)
    ]
    assert max(abs(v - volts) for v in read) <= 0.01 * volts + 0.03 + 0.011
    assert max(read) - min(read) > 0.01 * volts


@pytest.mark.parametrize("seed", range(12))
def test_other_plates_heat_too(seed):
    """A varied plate is a furnace that heats inside its own rise, holds its limit and proves its vacuum."""
    from random import Random

    base = CONDENSING if seed % 3 == 0 else REFERENCE
    unit = varied(base, Random(seed))
    rig = Rig(unit, arrives_after=1200)
    machine = rig.machine
    rise = machine.heat.supply - machine.returns()
    assert machine.lit_for > 600 and machine.e.s["limit"]
    assert unit.rise[0] < rise < unit.rise[1]
    assert -machine.draught.tap + machine.draught.burner_box > unit.stamp * 1.15


def test_50_hertz():
    """The same house at 50 Hz: more current in the coil, slower motors, and it still heats."""
    rig = Rig(replace(REFERENCE, frequency=50.0), arrives_after=300)
    assert rig.machine.lit_for > 60
    assert rig.machine.air.turns < 1000


def test_a_unit_can_have_only_what_houses_have():
    with pytest.raises(ValueError, match="has no blower"):
        with_features(REFERENCE, {"blower": "steam"})
    assert isinstance(with_features(REFERENCE, {"kind": "condensing"}), Unit)
    assert all(len(choices) >= 2 for choices in FEATURES.values())


def test_only_the_faults_know_findings():
    """No other file of the rig looks at a fault's finding, reads a tree, or names a step by its address."""
    addresses = (
        {
            f"{path.stem}.{step}"
            for path in (ROOT / "trees").rglob("*.yaml")
            for step in read(path.read_text(encoding="utf-8")).get("steps") or ()
        }
        - set(HOUSE["points"])
        - set(HOUSE["seen"])
        - set(HOUSE["happens"])
        - set(built(REFERENCE))
    )
    assert len(addresses) > 300
    for path in (ROOT / "assistant" / "rig").rglob("*.py"):
        text = path.read_text(encoding="utf-8")
        if path.name not in ("fault.py", "fault_file.py"):
            assert not re.search(r"\.(finding|absent|also|cause)\b", text), path.name
        assert "trees_folder" not in text and not re.search(r"complaint/|procedure/", text), path.name
        assert not addresses & set(re.findall(r"[\"']([a-z0-9_]+\.[a-z0-9_]+)[\"']", text)), path.name


def test_other_names_of_findings_change_no_reading():
    """The machine is the same whatever its fault's finding is called."""
    fault = shipped()[0]["rod_coated"]
    other = replace(fault, finding="x1", cause="x2", title="x3", complaint="x4")
    shown = [
        [
            Rig(fault=f, arrives_after=45).measure("dc_current", ("board.rod", "rod")),
            Rig(fault=f).see("code_light"),
        ]
        for f in (fault, other)
    ]
    assert shown[0] == shown[1]


def test_a_meter_of_low_impedance_takes_a_ghost_away():
    """A broken W shows nearly 24 V to a good meter and nothing under load."""
    rig = Rig(changes={"cable.w_open": 1, "thermostat.contact_open": 1}, arrives_after=10)
    ghost, load = (
        float(rig.measure("ac_voltage", ("stat.w", "stat.c"), KIT[k]).split()[0]) for k in ("high", "low")
    )
    assert ghost > 5 and load < 0.1


def test_a_fault_that_comes_and_goes_does_so_while_a_meter_is_held_on():
    """Readings one after the other once stopped its clock: it stayed as long as somebody measured."""
    fault = replace(shipped()[0]["inducer_wire_now_and_then"], comes_and_goes=ComesAndGoes(300.0, 300.0))
    rig = Rig(REFERENCE, fault, seed=1)
    meter = Instrument("m", ("ac_voltage",), {"ac_voltage": 1.0}, {"ac_voltage": 3}, impedance="low")
    seen = set()
    for _ in range(700):
        rig.measure("ac_voltage", ("r", "c"), meter)
        seen.add(rig.present)
    assert seen == {True, False}
