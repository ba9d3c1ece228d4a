"""The 24 V side: transformer, fuse, float switch, cable, thermostat."""

from assistant.rig.part import Component, change, graded

COMPONENTS = (
    Component(
        "transformer",
        "24 V transformer",
        {
            "va": 40.0,
            "ratio": 0.221,
            "primary_open": 0,
            "secondary_open": 0,
            "secondary_ohm": 0.75,
            "primary_ohm": 12.0,
            "core_ohm": 5700.0,
            "leak_ohm": 1e10,
        },
        {
            "primary open": change("its primary winding is burnt through", nominal={"primary_open": 1}),
            "secondary open": change("its secondary winding is burnt through", nominal={"secondary_open": 1}),
            "weak": graded("burnt turns: its voltage falls under load", "secondary_ohm", 9.0, 15.0, 22.0),
            "nearly burnt through": graded("little comes through it", "secondary_ohm", 95.0, 110.0, 140.0),
            "shorted": change(
                "shorted turns in its primary",
                {"primary_ohm": 5.0, "core_ohm": 2.0},
                {"primary_ohm": 0.8, "core_ohm": 0.6},
                {"primary_ohm": 0.2, "core_ohm": 0.2},
            ),
            "grounded": graded("its primary is grounded to its core", "leak_ohm", 2.0, 0.3, 0.1),
            "wrong tap": change("its primary is on the 240 V tap", nominal={"ratio": 0.11}),
        },
    ),
    Component(
        "control_fuse",
        "24 V fuse on the board",
        {"blown": 0, "rating": 3.0, "right": 1, "ohm": 0.03},
        {
            "open": change("it has blown", nominal={"blown": 1}),
            "bridged": change("somebody put metal in its place", nominal={"rating": 1e4, "right": 0}),
            "wrong size": change(
                "somebody fitted a 1 A fuse and it blew", nominal={"blown": 1, "rating": 1.0, "right": 0}
            ),
        },
    ),
    Component(
        "float_switch",
        "float switch in the 24 V wiring",
        {"fitted": 0, "open": 0, "ohm": 0.02},
        {"open": change("it is open in a dry pan", nominal={"open": 1, "fitted": 1})},
        {"float": "yes"},
    ),
    Component(
        "cable",
        "thermostat cable",
        {
            "r_open": 0,
            "w_open": 0,
            "c_open": 0,
            "g_open": 0,
            "y_open": 0,
            "r_ohm": 0.32,
            "w_ohm": 0.32,
            "r_c_ohm": 1e10,
            "w_c_ohm": 1e10,
            "r_w_ohm": 1e10,
            "r_g_ohm": 1e10,
            "y_c_ohm": 1e10,
            "g_c_ohm": 1e10,
            "look": "whole",
            "feet": 50.0,
        },
        {
            "R open": change("its R wire is broken", nominal={"r_open": 1, "look": "damaged"}),
            "W open": change("its W wire is broken", nominal={"w_open": 1, "look": "damaged"}),
            "C open": change("its C wire is broken", nominal={"c_open": 1, "look": "damaged"}),
            "G open": change("its G wire is broken", nominal={"g_open": 1, "look": "damaged"}),
            "R splice": change(
                "a loose splice in R",
                {"r_ohm": 60.0, "look": "bad splice or loose screw"},
                {"r_ohm": 2000.0, "look": "bad splice or loose screw"},
                {"r_ohm": 1e10, "look": "bad splice or loose screw"},
            ),
            "W splice": change(
                "a corroded splice in W",
                {"w_ohm": 3000.0, "look": "bad splice or loose screw"},
                {"w_ohm": 20000.0, "look": "bad splice or loose screw"},
                {"w_ohm": 1e10, "look": "bad splice or loose screw"},
            ),
            "R-C short": change("a staple through R and C", nominal={"r_c_ohm": 0.1, "look": "damaged"}),
            "W-C short": change("a nail through W and C", nominal={"w_c_ohm": 0.1, "look": "damaged"}),
            "Y-C short": change(
                "the outdoor unit's cable is cut by the mower", nominal={"y_c_ohm": 0.1, "look": "damaged"}
            ),
            "G-C short": change("a nail through G and C", nominal={"g_c_ohm": 0.1, "look": "damaged"}),
            "R-G short": change(
                "a staple joins R and G",
                {"r_g_ohm": 300.0, "look": "damaged"},
                {"r_g_ohm": 0.2, "look": "damaged"},
            ),
            "R-W short": change("a staple joins R and W", nominal={"r_w_ohm": 0.2, "look": "damaged"}),
        },
    ),
    Component(
        "thermostat",
        "thermostat",
        {
            "mode": "heat",
            "set": "calling",
            "batteries": 1,
            "needs_c": 1,
            "contact_open": 0,
            "contact_ohm": 0.1,
            "fan_contact_open": 0,
            "seated": 1,
            "locked": 0,
            "humidity_fan": 0,
            "fan": "auto",
            "place": "inside wall, nothing on it",
            "habit": "neither",
            "rate": "suits this furnace",
            "lag": 0.3,
        },
        {
            "mode off": change(
                "it stands on OFF or COOL", nominal={"mode": "off", "habit": "set by mistake"}
            ),
            "satisfied": change("its room is warm enough", nominal={"set": "below the room"}),
            "set low": change(
                "a schedule or hold keeps it low",
                nominal={"set": "low", "locked": 1, "habit": "set by mistake"},
            ),
            "batteries flat": change(
                "its batteries are flat",
                nominal={"batteries": 0, "needs_c": 0, "habit": "batteries never changed"},
            ),
            "loose on base": change("its pins do not reach the base", nominal={"seated": 0}),
            "waits too long": change(
                "it lets the room fall far before it calls",
                {"lag": 1.7, "rate": "wrong"},
                {"lag": 2.2, "rate": "wrong"},
                {"lag": 3.3, "rate": "wrong"},
            ),
            "W contact open": change("its heat contact does not close", nominal={"contact_open": 1}),
            "G contact open": change("its fan contact does not close", nominal={"fan_contact_open": 1}),
            "W contact resistance": graded("its heat contact is burnt", "contact_ohm", 3000.0, 2e4, 1e6),
            "humidity runs fan": change("its humidity setting may run the fan", nominal={"humidity_fan": 1}),
            "fan on": change("its fan switch is on ON", nominal={"fan": "on"}),
            "fan circulates": change("its fan circulates on a timer", nominal={"fan": "circulate"}),
        },
    ),
    Component(
        "accessories",
        "24 V loads that somebody added",
        {"ohm": 1e10, "coils": 1},
        {
            "coil shorted": change("the coil of one of them is shorted", nominal={"ohm": 0.4}),
            "overload": change(
                "they ask for more than the transformer has",
                {"ohm": 5.0, "coils": 5, "control_fuse.rating": 5.0},
                {"ohm": 3.0, "coils": 5, "control_fuse.rating": 5.0},
                {"ohm": 2.8, "coils": 5, "control_fuse.rating": 5.0},
            ),
            "far too many": change(
                "they pull the transformer down until nothing starts",
                {"ohm": 2.0, "coils": 5, "control_fuse.rating": 20.0},
                {"ohm": 1.7, "coils": 5, "control_fuse.rating": 20.0},
                {"ohm": 1.4, "coils": 5, "control_fuse.rating": 20.0},
            ),
        },
    ),
    Component(
        "outdoor_unit",
        "outdoor unit's contactor coil",
        {"open": 0, "ohm": 20.0},
        {"short": change("its coil is shorted", nominal={"ohm": 0.2})},
    ),
    Component(
        "string",
        "wiring of the safety string",
        {"feed_open": 0, "middle_open": 0, "end_open": 0, "bridge": "none", "leak_ohm": 1e10},
        {
            "feed open": change(
                "the wire from the board to the limit has slipped off", nominal={"feed_open": 1}
            ),
            "middle open": change(
                "the wire from limit to rollout switch has slipped off", nominal={"middle_open": 1}
            ),
            "end open": change("the wire to the pressure switch has slipped off", nominal={"end_open": 1}),
            "limit bridged": change("somebody bridged the limit", nominal={"bridge": "limit"}),
            "rollout bridged": change("somebody bridged the rollout switch", nominal={"bridge": "rollout"}),
            "pressure switch bridged": change(
                "somebody bridged the pressure switch", nominal={"bridge": "pressure"}
            ),
        },
    ),
    Component(
        "limit",
        "limit",
        {"open": 0, "welded": 0, "opens": 349.8, "differential": 16.7},
        {
            "open": change("it stays open when cold", nominal={"open": 1}),
            "weak": graded("it opens too early", "opens", 332.0, 326.0, 318.0),
            "stuck closed": change("its contacts are welded", nominal={"welded": 1}),
        },
    ),
    Component(
        "rollout",
        "rollout switch",
        {"open": 0, "tripped": 0, "opens": 420.0},
        {"tripped": change("it has tripped and waits for a hand", nominal={"tripped": 1})},
    ),
    Component(
        "aux_limit",
        "auxiliary limit",
        {"fitted": 1, "kind": "blower compartment", "tripped": 0, "opens": 340.0},
        {
            "tripped": change("it has tripped", nominal={"tripped": 1}),
            "open": change("it is open and cannot be reset", nominal={"tripped": 1}),
        },
    ),
)
