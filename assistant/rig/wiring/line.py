"""Line voltage: from the transformer on the pole to the furnace's board."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.rig.circuit.network import CLOSED, OPEN, Network
from assistant.rig.part import Settings
from assistant.rig.wiring.branch import BESIDE_HOT, BESIDE_WHITE
from assistant.rig.wiring.common import contact

STRAY_FARAD = 10e-9
"""Of a house's cables and windings to ground, each leg: about a hundred metres of cable (reasoned)."""


def build(n: Network) -> None:
    """The power company's transformer, the panel, and the furnace's branch."""
    _supply(n)
    _branch(n)


def _supply(n: Network) -> None:
    n.branch("leg1", "pole", "l1", 0.03, 3e-5)
    n.branch("leg2", "l2", "pole", 0.03, 3e-5)
    n.branch("service_neutral", "pole", "bar", 0.03)
    n.branch("pole_electrode", "pole", "soil", 10.0)
    n.branch("house_electrode", "earth", "soil", 15.0)
    n.branch("main_bond", "bar", "earth", 0.001)
    for end in ("l1", "bar"):  # what windings and cables have to the ground in any case
        n.branch(f"stray_{end}", end, "earth", 1.0, farad=STRAY_FARAD)
    n.branch("house_load_1", "l1", "bar", 14.0)
    n.branch("house_load_2", "l2", "bar", 25.0)
    n.branch("outlet_line", "l2", "known.line", 0.1)
    n.branch("outlet_neutral", "bar", "known.neutral", 0.1)
    n.branch("outlet_ground", "earth", "known.ground", 0.1)


def _branch(n: Network) -> None:
    n.branch("breaker", "l1", "breaker.lug", 0.01)
    n.branch("branch_hot", "branch.tap", "switch.feed", 0.08)
    n.branch("plug_fuse", "switch.feed", "fuse.load", CLOSED)
    n.branch("service_switch", "fuse.load", "switch.load", CLOSED)
    n.branch("line_wire", "switch.load", "run.line", 0.02)
    n.branch("line_wire_ground", "run.line", "ground", OPEN)
    n.branch("branch_neutral", "run.neutral", "branch.return", 0.08)
    n.branch("neutral_ground", "run.neutral", "ground", OPEN)
    for name, a, b in (
        ("straight_line", "run.line", "box.line"),
        ("cross_line", "run.line", "box.neutral"),
        ("straight_neutral", "run.neutral", "box.neutral"),
        ("cross_neutral", "run.neutral", "box.line"),
    ):
        n.branch(name, a, b, 0.005)
    n.branch("ground_wire", "ground", "earth", 0.1)
    n.branch("burner_bond", "cabinet", "ground", 0.05)
    n.branch("door_switch", "box.line", "door.load", CLOSED)
    n.branch("board_neutral", "box.neutral", "board.neutral", CLOSED)
    n.branch("surge", "board.line", "board.neutral", OPEN)
    n.branch("board_leak", "board.line", "ground", OPEN)


def update(n: Network, v: Settings, s: Mapping[str, float]) -> None:
    """Bring it to the settings and the state."""
    volts = 0.0 if v["service.leg_open"] else v["service.volts"]
    n.set("leg1", volt=volts, ohm=OPEN if v["service.leg_open"] else 0.03 + v["panel.main_ohm"])
    n.set("leg2", volt=v["service.volts"])
    n.set("service_neutral", ohm=OPEN if v["service.neutral_open"] else v["service.neutral_ohm"])
    for name, ohm in (("main_bond", 0.001), ("pole_electrode", 10.0)):
        n.set(name, ohm=OPEN if v["service.floats"] else ohm)
    handle = v["breaker.handle"] == "on" and s["breaker"] and not v["breaker.open"]
    n.set("breaker", ohm=contact(handle, v["breaker.ohm"]))
    n.set("branch_hot", ohm=OPEN if v["branch_hot.open"] else v["branch_hot.ohm"] - BESIDE_HOT)
    n.set("plug_fuse", ohm=contact(not (v["plug_fuse.fitted"] and v["plug_fuse.blown"])))
    on = v["service_switch.position"] == "on" and s["switch"] and not v["service_switch.open"]
    on = on and not v["receptacle.open"]  # with a cord the furnace's plug stands in the switch's place
    n.set("service_switch", ohm=contact(on, v["service_switch.ohm"]))
    n.set("line_wire", ohm=OPEN if v["line_wire.open"] or v["cord.open"] else v["line_wire.ohm"])
    n.set("line_wire_ground", ohm=v["line_wire.to_ground_ohm"])
    white = v["branch_neutral.ohm"] - BESIDE_WHITE
    n.set("branch_neutral", ohm=OPEN if v["branch_neutral.open"] else white)
    n.set("neutral_ground", ohm=v["branch_neutral.to_ground_ohm"])
    for way, closed in (("straight", not v["polarity.swapped"]), ("cross", v["polarity.swapped"])):
        black, white = (s["spliced"], 1.0) if way == "straight" else (1.0, s["spliced"])
        n.set(f"{way}_line", ohm=contact(closed and black, 0.005))
        n.set(f"{way}_neutral", ohm=contact(closed and white, 0.005))
    n.set("ground_wire", ohm=OPEN if v["ground_wire.open"] else v["ground_wire.ohm"])
    n.set("burner_bond", ohm=OPEN if v["burner_bond.open"] else v["burner_bond.ohm"])
    door = s["door"] and s["board_plugged"] and not v["door_switch.open"]
    n.set("door_switch", ohm=contact(door, v["door_switch.ohm"]))
    n.set("board_neutral", ohm=contact(not v["board_plugs.neutral_open"]))
    n.set("surge", ohm=v["board.surge_ohm"])
    n.set("board_leak", ohm=v["board.leak_ohm"])
