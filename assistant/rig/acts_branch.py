"""What a person does to the branch, and what repairs of it put back as built.

Names that are no act of house.yaml are what the words of a page ask for beside its act: switching the other
loads, moving a wire while it is read, drying, sliding a wheel off.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from assistant.rig import branch

if TYPE_CHECKING:
    from assistant.rig.machine import Machine

RENEWS: dict[str, tuple[str, ...]] = {
    "right_breaker": ("breaker", "branch_hot.carries"),
    "fit_breaker": ("breaker", "arc_fault"),
    "mend_lug": ("breaker.lug_ohm", "breaker.joint"),
    "renew_cable": ("branch_hot", "branch_neutral", "line_wire"),
    "remake_joints": ("branch_hot.ohm", "branch_hot.open", "branch_hot.joint", "branch_hot.arcs"),
    "lead_clear": (
        "furnace_wire.way",
        "transformer_leads.way",
        "blower_harness.way",
        "inducer_harness.way",
        "igniter_harness.way",
        "line_wire.way",
        "branch_hot.way",
        "branch_neutral.way",
    ),
    "close_air_side": ("ducts.apart",),
    "own_circuit": ("branch_load",),
    "part_added": ("added_load",),
    "fit_ground_fault": ("ground_fault.dead", "ground_fault.trips_at", "ground_fault.in"),
}
NOTHING = ("fit_surge_guard", "label_breaker", "note_data", "watch_breaker")
"""Acts that change nothing in the machine: words, labels, a recorder."""


PUT_BACK = {"warm_air": False, "board_off": False, "apart": False, "white_off": False, "moved": False}
"""What is put back before anything is switched on."""


def _hands(**given: object) -> Callable[[Machine], None]:
    def deed(m: Machine) -> None:
        m.hands.update(given)

    return deed


def _closed(**given: object) -> Callable[[Machine], None]:
    """Tag and lock off, handle and device in."""

    def deed(m: Machine) -> None:
        m.hands.update(tagged=False, locked=False, **PUT_BACK, **given)
        branch.shut(m)
        m.e.touched()

    return deed


def _reset(m: Machine) -> None:
    """Everything unplugged; handle pushed to OFF and to ON, the device's button pressed in."""
    m.v["breaker.handle"] = "on"
    m.v["ground_fault.in"] = 1
    _closed(plugged=0)(m)


def _add(m: Machine) -> None:
    """The next of what was unplugged comes back: board and transformer, other loads, motors and igniter."""
    _closed(plugged=min(m.hands["plugged"] + 1, 3))(m)


def _mode(name: str, **given: object) -> Callable[[Machine], None]:
    def deed(m: Machine) -> None:
        m.hands.update(mode=name, **given)

    return deed


def _again(m: Machine) -> None:
    """Whatever brought the water is done once more."""
    if m.hands["mode"] in MODES:
        MODES[m.hands["mode"]](m)


def _dried(m: Machine) -> None:
    """Wiped and blown dry, too."""
    m.branch.wet_board = m.branch.wet_run = 0.0


def _shut_air_side(m: Machine) -> None:
    m.v["ducts.apart"] = 0.0
    m.e.touched()


MODES: dict[str, Callable[[Machine], None]] = {
    "pour_coil": _mode("pour_coil", water="cooling"),
    "pour_pad": _mode("pour_pad", water="humidifier"),
    "hose_outside": _mode("hose_outside", water="rain"),
}
DEEDS: dict[str, Callable[[Machine], None]] = {
    **MODES,
    "reset_breaker": _reset,
    "add_load": _add,
    "breaker_on": _closed(plugged=3, wheel_off=False),
    "open_panel": _hands(),
    "close_panel": _hands(),
    "others_on": _hands(others=True),
    "others_off": _hands(others=False),
    "move_wires": _hands(moved=True),
    "leave_wires": _hands(moved=False),
    "warm_air": _hands(warm_air=True),
    "hold_anew": branch.shut,
    "board_off": _hands(board_off=True),
    "splices_apart": _hands(apart=True),
    "white_off": _hands(white_off=True),
    "shut_air_side": _shut_air_side,
    "water_over": _hands(water=""),
    "wheel_off": _hands(wheel_off=True),
    "mode_again": _again,
    **dict.fromkeys(NOTHING, _hands()),
    "dry_and_lead_away": _dried,
}
