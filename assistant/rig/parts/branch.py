"""What hangs on the furnace's branch beside it, what protects the branch, and wires that touch metal.

`lets_go` is the peak voltage at which damp or cracked insulation breaks down: an ohmmeter's few volts don't
reach it. `way` is what the place looks like to somebody who follows the wire.
"""

from assistant.rig.part import Component, change, graded

EDGE = "over an edge or under a screw"
HURT = "gnawed or drilled or stapled"
HEAT = "close to heat"
NEVER = 1e9
"""V at which sound insulation breaks down: never."""


def leads(words: str, edge: str = EDGE) -> dict:
    """A lead that touches metal, by how well it touches."""
    return {
        "to ground": change(
            words,
            {"to_ground_ohm": 5.0, "way": edge},
            {"to_ground_ohm": 0.3, "way": edge},
            {"to_ground_ohm": 0.05, "way": edge},
        )
    }


COMPONENTS = (
    Component(
        "panel",
        "electrical panel and meter base",
        {"main_ohm": 0.0, "water": 0},
        {
            "wet": change("water runs down the service cable into it", nominal={"water": 1}),
            "main joint": graded("a joint of its main is burnt", "main_ohm", 0.04, 0.06, 0.09),
        },
    ),
    Component(
        "outdoor_branch",
        "outdoor unit on its own 240 V breaker",
        {"handle": "on", "to_ground_ohm": 1e10},
        {"ground": graded("its compressor is grounded", "to_ground_ohm", 1.0, 0.3, 0.1)},
    ),
    Component(
        "ground_fault",
        "device with a test button ahead of the furnace",
        {"kind": "none", "in": 1, "trips_at": 5e-3, "dead": 0},
        {
            "receptacle": change("a receptacle upstream with a test button", nominal={"kind": "receptacle"}),
            "breaker": change("a breaker with a test button", nominal={"kind": "breaker"}),
            "opened": change("it has opened", nominal={"in": 0}),
            "late": change("it opens at the top of its class", nominal={"trips_at": 6e-3}),
            "does not hold": change("it does not stay in any more", nominal={"dead": 1}),
        },
    ),
    Component(
        "arc_fault",
        "breaker that watches for arcs",
        {"fitted": 0, "nervous": 0},
        {
            "fitted": change("the furnace's breaker watches for arcs", nominal={"fitted": 1}),
            "nervous": change(
                "it takes the start of a motor for an arc", nominal={"fitted": 1, "nervous": 1}
            ),
        },
    ),
    Component(
        "branch_load",
        "something else on the furnace's branch",
        {
            "fitted": 0,
            "ohm": 1e10,
            "across_ohm": 1e10,
            "to_ground_ohm": 1e10,
            "lets_go": NEVER,
            "grows": 0.0,
            "filter_farad": 0.0,
        },
        {
            "short": graded("shorted from hot to neutral", "across_ohm", 0.6, 0.3, 0.1),
            "ground": graded("shorted from hot to ground", "to_ground_ohm", 2.0, 0.3, 0.1),
            "overload": change(
                "a heater, freezer or tool runs on it",
                {"ohm": 12.0, "history.added": "something was plugged in"},
                {"ohm": 8.0, "history.added": "something was plugged in"},
                {"ohm": 6.0, "history.added": "something was plugged in"},
            ),
            "weak insulation": change(
                "its insulation breaks down at line voltage", nominal={"lets_go": 60.0}
            ),
            "leaks": graded("its filter passes current to ground", "filter_farad", 1.02e-7, 1.1e-7, 1.18e-7),
            "climbs": change(
                "a freezer whose compressor draws more the longer it runs",
                {"ohm": 44.0, "grows": 5.0},
                {"ohm": 40.0, "grows": 5.0},
                {"ohm": 38.0, "grows": 6.0},
            ),
        },
    ),
    Component(
        "added_load",
        "something that was wired into the furnace",
        {"ohm": 1e10},
        {
            "steam humidifier": change(
                "a steam humidifier runs with the blower",
                {"ohm": 12.0, "history.added": "something was wired into the furnace"},
                {"ohm": 10.5, "history.added": "something was wired into the furnace"},
                {"ohm": 9.5, "history.added": "something was wired into the furnace"},
            )
        },
    ),
    Component(
        "furnace_wire",
        "wires inside the furnace, from its junction box to the board",
        {
            "to_ground_ohm": 1e10,
            "across_ohm": 1e10,
            "touches_ohm": 1e10,
            "touches_at": 1e4,
            "way": "clear of everything",
            "hidden": 0,
        },
        {
            **leads("pinched where it passes the metal"),
            "hidden to ground": change(
                "pinched where nobody sees it",
                {"to_ground_ohm": 3.0, "way": EDGE, "hidden": 1},
                {"to_ground_ohm": 0.3, "way": EDGE, "hidden": 1},
                {"to_ground_ohm": 0.05, "way": EDGE, "hidden": 1},
            ),
            "touches when moved": change(
                "chafed: it touches only while it is moved",
                nominal={"touches_ohm": 0.2, "way": EDGE, "hidden": 1},
            ),
            "touches when hot": change(
                "it sags onto metal once the casing is hot",
                nominal={"touches_at": 311.0, "way": HEAT, "hidden": 1},
            ),
        },
    ),
    Component(
        "transformer_leads",
        "line leads of the 24 V transformer",
        {"to_ground_ohm": 1e10, "way": "clear of everything"},
        leads("its hot lead is pinched"),
    ),
    Component(
        "history",
        "what people tell or have left",
        {"work": "nothing known", "added": "nothing new", "power": "nothing known", "closed_again": 0},
        {
            "left open": change(
                "somebody left a door off", nominal={"work": "door or filter or duct left so"}
            ),
            "motor changed": change(
                "motor, wheel or speed was changed", nominal={"work": "motor or wheel or speed changed"}
            ),
            "wiring changed": change(
                "breaker, wire or device was changed", nominal={"work": "breaker or wire or device changed"}
            ),
            "plugged in": change("something was plugged in", nominal={"added": "something was plugged in"}),
            "storm": change("a storm passed", nominal={"power": "storm or outage"}),
            "generator": change("a generator ran", nominal={"power": "generator or work on the supply"}),
            "closed again": change("somebody closed it again", nominal={"closed_again": 1}),
        },
    ),
)
