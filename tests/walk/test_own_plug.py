"""A circuit whose own plug was pulled stays off while power comes back to what feeds it."""

from pathlib import Path

from assistant.resources import trees_folder
from assistant.tree.library import read_folder
from assistant.walk.house import acted, already, as_met

HOUSE = read_folder(Path(trees_folder())).vocabulary
AT = "2026-01-14T09:00:00-05:00"


def test_the_panels_plug_is_not_put_back_by_the_furnaces_switch():
    """Found on the simulated house: the walk took the zone panel for live, its plug still in the hand."""
    house = as_met(HOUSE)
    for act in ("panel_off", "breaker_off", "breaker_on"):
        house = acted(house, HOUSE, act, "x.y", AT)

    assert house.circuits["line"] == "live" and house.circuits["zone"] == "off"
    assert not already(house, HOUSE, "panel_on")
    house = acted(house, HOUSE, "panel_on", "x.y", AT)
    assert house.circuits["zone"] == "live"
