"""How a fault has left the house when somebody comes: what its file says has opened, and nothing else."""

import pytest

from assistant.rig.fault_file import load_faults
from assistant.rig.house import Rig
from assistant.rig.unit import REFERENCE

HEAD = "format: 1\nfaults:\n  a:\n    title: t\n    complaint: c\n    finding: f\n    "


def house(rest: str) -> Rig:
    """The house of a fault with these further fields, as somebody finds it."""
    faults, problems = load_faults((HEAD + rest).encode(), "a.yaml")
    assert not problems
    return Rig(REFERENCE, faults["a"])


def test_of_plug_fuse_and_breaker_only_the_one_that_is_named_has_opened():
    """Either may open first on a dead short (reasoned); the file says which."""
    shorted = "change: [{part: inducer, change: shorted}]\n    house: {plug_fuse: yes}\n    found: "
    values = house(shorted + "[{part: plug_fuse, change: open}]").machine.v
    assert (values["plug_fuse.blown"], values["breaker.handle"]) == (1, "on")
    rig = house(shorted + "[{part: plug_fuse, change: open}]")
    for act in ("stat_off", "mend_line_load", "fit_plug_fuse", "stat_back"):
        rig.act(act)
    rig.wait(120)
    assert rig.cured and not rig.machine.v["plug_fuse.blown"]
    values = house(shorted + "[{part: breaker, change: tripped}]").machine.v
    assert values["breaker.handle"] == "tripped"


@pytest.mark.parametrize(("kind", "handle"), [("breaker", "tripped"), ("receptacle", "on")])
def test_a_breaker_with_a_test_button_that_opened_shows_it_at_its_handle(kind: str, handle: str):
    """A receptacle upstream opens and leaves the breaker alone (UL 943 devices, from memory)."""
    rig = house(
        f"change: [{{part: ground_fault, change: {kind}}}, {{part: blower_motor, change: leakage}}]\n"
        "    found: [{part: ground_fault, change: opened}]"
    )
    assert (rig.machine.v["ground_fault.in"], rig.machine.v["breaker.handle"]) == (0, handle)


def test_a_fuse_that_was_found_blown_is_told_as_blown():
    rig = house(
        "change: [{part: cable, change: Y-C short}]\n    found: [{part: control_fuse, change: open}]"
    )
    assert rig.see("fuse.blown") == "a fuse blew"


def test_a_room_that_is_warm_enough_is_nothing_to_put_right():
    rig = house("change: [{part: fan_switch, change: runs always}, {part: thermostat, change: satisfied}]")
    assert not rig.cured
    rig.act("set_board_fan")
    assert rig.cured


def test_a_new_zone_panel_keeps_the_settings_and_wires_of_the_old():
    """The same type, set and wired alike: what hangs on its transformer stays too."""
    for change, cured in (("relay dead", True), ("overloaded", False), ("cut-out low", False)):
        rig = house(f'house: {{zone_panel: "yes"}}\n    change: [{{part: zone_panel, change: {change}}}]')
        rig.act("fit_zone_panel")
        assert rig.cured is cured, change
