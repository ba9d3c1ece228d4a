"""What the words of a page of a zoned house ask of the hand. Pure: no house, no tree."""

import pytest

from assistant.drill import zone_words as words


@pytest.mark.parametrize(
    ("text", "who"),
    [
        ("Heat and cooling OFF, fan AUTO, moisture not asked for in every zone, and wait", words.OFF),
        ("G to C at the panel with moisture asked for, heat and cooling OFF", words.MOIST),
        ("The same G, moisture no longer asked for", words.DRY),
        ("G, zone by zone, with that other zone's fan set to AUTO", words.AUTO),
        ("Fan ON at one other zone only, everything else off", words.OTHER),
        ("Its own zone's fan alone", words.OWN),
        ("Supply, all zones open", words.EVERY),
        ("24 V at the actuator's shutting wire, through a fresh stroke", words.STROKE),
        ("R to C with the lowest value held while you switch the fan from zone to zone", words.TURNS),
        ("Fan column - each zone's fan alone, every register of the house", words.EACH_FAN),
        ("Supply air, the highest with the smallest zone alone", words.SMALL_HEAT),
        ("W and Y of the quiet zone at the panel, as found", words.FOUND),
        ("What kind of damper is it, by its plate and its wires?", None),
    ],
)
def test_who_is_to_call(text, who):
    assert words.situation([text]) == who


@pytest.mark.parametrize(
    ("text", "zone"),
    [("G to C, highest of all zones", "every"), ("G of the quiet zone to C", "quiet"),
     ("G at the terminals of the zone that you switched on", "other"), ("The same G", "that")],
)  # fmt: skip
def test_which_zone_is_touched(text, zone):
    assert words.asked_for(text, []).zone == zone


def test_a_readings_own_words_come_before_its_pages():
    page = ["Air at the quiet register - its own zone's fan alone, then the other zone's alone"]

    assert words.asked_for("The other zone's fan alone", page).who == words.OTHER
    assert words.asked_for("", page).who == words.OWN


def test_wires_that_come_off():
    assert words.lifts(["Both legs during a fresh stroke, opening wire lifted"]) == ("damper open",)
    assert words.lifts(["What the panel sends, its wires to the furnace lifted"]) == ("panel out",)
    assert words.lifts(["The panel's G and W wires lifted off the furnace board"]) == ("furnace",)
    assert words.lifts(["The quiet damper's wires lifted off the panel, dead - each leg"]) == (
        "damper open",
        "damper close",
    )
    assert "actuator" in words.lifts(["The same wires still off the panel, and off at the actuator too"])
    assert words.lifts(["Current of the panel's transformer"]) is None
    assert words.off_base(["G at the panel with that thermostat off its base"])
