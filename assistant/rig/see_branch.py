"""What a person sees of panel, branch and blower when a breaker has tripped, from the machine's state."""

from __future__ import annotations

from assistant.rig import branch
from assistant.rig.machine import Machine

HOT_JOINT = 2.0
"""W in a joint of the panel that a hand feels through its cover."""
CLEAR = "clear of everything"
WIRES = (
    "furnace_wire",
    "transformer_leads",
    "blower_harness",
    "inducer_harness",
    "igniter_harness",
    "line_wire",
    "branch_hot",
    "branch_neutral",
)
SEEN_WET = 0.05
SHARED_AMPS = 0.2
LEAKS = 1e-3
"""A to ground that a leakage clamp tells from nothing."""


def panel(m: Machine) -> str:
    """From the door: water or rust, a buzz, a warm cover."""
    amps = abs(m.e.solve().current("leg1"))
    bad = m.v["panel.water"] or amps**2 * m.v["panel.main_ohm"] > HOT_JOINT
    return "wet, rusty, hot or buzzing" if bad else "dry and quiet"


def poles(m: Machine) -> str:
    """Which breaker has tripped."""
    return "two handles tied together" if m.v["outdoor_branch.handle"] == "tripped" else "single handle"


def handle(m: Machine) -> str:
    """Where the handle stands; some look on when they have tripped."""
    v = m.v
    if v["breaker.handle"] == "tripped" and v["breaker.hides"]:
        return "on"
    return str(v["breaker.handle"])


def found(m: Machine) -> str:
    """How it stood when somebody came."""
    stood = m.branch.found.get("handle", "on")
    if m.v["history.closed_again"]:
        return "closed again by somebody"
    if stood == "off":
        return "off"
    if stood == "tripped":
        return "looked on and passed nothing" if m.v["breaker.hides"] else "stood in the middle"
    return "looked on and passed nothing" if m.v["breaker.open"] else "closed again by somebody"


def holds(m: Machine) -> str:
    """Whether breaker and device stay in."""
    v = m.v
    on = v["breaker.handle"] == "on" and (v["ground_fault.kind"] == "none" or v["ground_fault.in"])
    return "holds" if on else "opens"


def device(m: Machine) -> str:
    """Buttons upstream of the furnace."""
    if m.v["ground_fault.kind"] != "receptacle":
        return "none found"
    return "all are in" if m.v["ground_fault.in"] else "one has opened"


def opener(m: Machine) -> str:
    """What kind of device it was that opened."""
    v = m.v
    if v["ground_fault.kind"] == "breaker" or not m.branch.found.get("device", 1):
        return "ground-fault breaker or receptacle"
    return "arc-fault breaker" if v["arc_fault.fitted"] else "plain breaker"


def board(m: Machine) -> str:
    """The board's own surface."""
    if m.v["water.depth"]:
        return "stood in water"
    return "wet from a drip" if m.branch.wet_board > SEEN_WET else "dry"


def inside(m: Machine) -> str:
    """The furnace with its door off."""
    v = m.v
    if v["water.depth"] or m.branch.wet_board > SEEN_WET:
        return "water on board or plugs"
    seen = v["furnace_wire.way"] != CLEAR and not v["furnace_wire.hidden"]
    if seen:
        return "wire pinched or chafed"
    return "surge part burnt" if v["board.look"] == "burnt" else "nothing seen"


def others(m: Machine) -> str:
    """What else hangs on the branch."""
    v = m.v
    fitted = v["branch_load.fitted"] or any(
        v[name] < 1e9
        for name in (
            "branch_load.ohm",
            "branch_load.across_ohm",
            "branch_load.to_ground_ohm",
            "branch_load.lets_go",
            "added_load.ohm",
        )
    )
    fitted = fitted or v["branch_load.filter_farad"]
    return "pump or humidifier or other things" if fitted else "nothing else"


def neutral_current(m: Machine) -> str:
    """A clamp round the white wire."""
    return "some" if abs(m.e.solve().current("device_neutral")) > SHARED_AMPS else "none"


def start(m: Machine) -> str:
    """What the blower does with the fan called."""
    if holds(m) == "opens":
        return "the breaker opens"
    if m.air.turns > 300:
        return "runs up"
    driven = m.e.volts("blower.inner", "blower.neutral") > 60
    hums = driven and m.unit.features["blower"] == "psc" and not m.v["blower_motor.main_open"]
    return "hums and stands still" if hums else "nothing moves"


def open_side(m: Machine) -> str:
    """Doors, filter slot and ducts."""
    return "door or slot or duct open" if m.v["ducts.apart"] else "all shut, filter in"


def trips_when(m: Machine) -> str:
    """What the family has noticed: the water that it comes with."""
    v = m.v
    source = branch.DRIPS_FROM.get(str(v["water.from"]))
    if v["water.always"] or not (v["water.on_board"] or v["water.on_run"]):
        return "no pattern"
    return {
        "cooling": "only with cooling",
        "humidifier": "only with the humidifier",
        "rain": "only in rain or thaw",
    }.get(source or "", "no pattern")


def way(m: Machine) -> str:
    """The first wire that lies badly."""
    ways = (str(m.v[f"{name}.way"]) for name in WIRES)
    return next((one for one in ways if one != CLEAR), CLEAR)


def joint(m: Machine) -> str:
    """The breaker's terminal and the joints of the branch."""
    states = (str(m.v[f"{name}.joint"]) for name in ("breaker", "branch_hot"))
    return next((one for one in states if one != "nothing unusual"), "nothing unusual")


def leak(m: Machine) -> str:
    """Which plug takes the leak with it: each load's current to ground, the whole branch on."""
    solution = m.e.solve()
    glowing = m.v["igniter.leaks_hot_ohm"] < 1e9
    if glowing or abs(solution.current("igniter_hot_ground")) > LEAKS:
        return "igniter"
    for branch_name, words in (
        ("module_filter", "blower"),
        ("accessory_filter", "pump or another load"),
        ("inducer_leak", "inducer"),
    ):
        if abs(solution.current(branch_name)) > LEAKS:
            return words
    return "none of them"


LOOKS = {
    "breaker_panel": panel,
    "breaker.poles": poles,
    "breaker.handle": handle,
    "breaker.history": lambda m: (
        "somebody closed it again" if m.v["history.closed_again"] else "nobody touched it"
    ),
    "breaker.closed": holds,
    "breaker.opener": opener,
    "breaker.found": found,
    "ground_fault.device": device,
    "panel.licence": lambda m: m.unit.features["panel_cover"],
    "furnace.inside": inside,
    "board.water": board,
    "house.half": lambda m: "every second room is dark" if m.v["service.leg_open"] else "all else works",
    "branch.others": others,
    "neutral.current": neutral_current,
    "blower.start": start,
    "blower.open_side": open_side,
    "trip.when": trips_when,
    "wire.way": way,
    "joint.state": joint,
    "work.before": lambda m: m.v["history.work"],
    "power.story": lambda m: m.v["history.power"],
    "branch.added": lambda m: m.v["history.added"],
    "leak.load": leak,
}
