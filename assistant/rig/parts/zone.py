"""Zone panel, zone thermostats, dampers, bypass, and what calls for the fan behind the panel."""

from assistant.rig.part import Component, change, graded

ZONES = (1, 2, 3)

PANEL = Component(
    "zone_panel",
    "zone panel",
    {
        "fitted": 0,
        "relay_dead": 0,
        "fuse": 0,
        "delay": 60.0,
        "heat_locked": 0,
        "g_dead": 0,
        "type_wrong": 0,
        "crossed": 0,
        "rest": "open",
        "purge": 120.0,
        "source_ohm": 1.4,
        "fan_all": 0,
        "hot_limit": 344.0,
        "output_on": 0,
        "output_dead": 0,
    },
    {
        "relay dead": change("it does not pass the heat call", nominal={"relay_dead": 1, "fitted": 1}),
        "fuse blown": change("its own fuse has blown", nominal={"fuse": 1, "fitted": 1}),
        "wrong setting": change("its menu holds heat back", nominal={"heat_locked": 1, "fitted": 1}),
        "fan relay dead": change("it does not pass the fan call", nominal={"g_dead": 1}),
        "damper type wrong": change("it is set for the other kind of damper", nominal={"type_wrong": 1}),
        "zones crossed": change(
            "the dampers of zones 2 and 3 are on each other's terminals", nominal={"crossed": 1}
        ),
        "rest shut": change("its dampers rest shut", nominal={"rest": "shut"}),
        "long purge": graded("it keeps dampers open long after a call", "purge", 420.0, 900.0, 1800.0),
        "overloaded": graded(
            "its transformer sags with every damper driving", "source_ohm", 14.5, 16.0, 18.0
        ),
        "fan opens all": change("a fan call opens every zone by its menu", nominal={"fan_all": 1}),
        "output stuck": change("zone 2's close output never comes on", nominal={"output_dead": 2}),
        "fan output stuck": change("its fan output is on without a call", nominal={"output_on": 1}),
        "cut-out low": change("its hot-air cut-out is set too low", nominal={"hot_limit": 322.0}),
    },
)


def _zone(number: int) -> Component:
    return Component(
        f"zone{number}",
        f"thermostat and cable of zone {number}",
        {"heat": 0, "fan": "auto", "humidity_fan": 0, "ghost_ohm": 1e10, "r_g_ohm": 1e10},
        {
            "calls": change("it is cold there and its thermostat calls for heat", nominal={"heat": 1}),
            "humidity runs fan": change("its humidity setting runs the fan", nominal={"humidity_fan": 1}),
            "fan on": change("its fan is on ON", nominal={"fan": "on"}),
            "fan circulates": change("its fan circulates on a timer", nominal={"fan": "circulate"}),
            "R-G short": graded("a staple joins R and G", "r_g_ohm", 900.0, 100.0, 0.2),
            "ghost on W": graded("a leaking cable lifts W", "ghost_ohm", 1400.0, 900.0, 300.0),
        },
    )


def _damper(number: int) -> Component:
    return Component(
        f"damper{number}",
        f"damper of zone {number}",
        {
            "kind": "spring open",
            "dead": 0,
            "slips": 0,
            "jam": -1.0,
            "stop": 0.0,
            "closed": 2e4,
            "before": 0.0,
            "wire_open": 0,
            "swapped": 0,
            "lever": 0,
        },
        {
            "actuator dead": change("its motor is burnt", nominal={"dead": 1}),
            "wire open": change("its wire is broken", nominal={"wire_open": 1}),
            "slips": change("its set screw does not grip the shaft", nominal={"slips": 1}),
            "jammed": change("a duct screw holds the blade", {"jam": 0.25}, {"jam": 0.5}, {"jam": 1.0}),
            "end stop": graded("its end stop keeps it from shutting", "stop", 0.15, 0.25, 0.4),
            "leaks": graded("its seal is missing", "closed", 400.0, 150.0, 60.0),
            "legs swapped": change("open and close are swapped", nominal={"swapped": 1, "kind": "two way"}),
            "lever left": change("its hand lever was left engaged", nominal={"lever": 1}),
            "branch before": graded("its duct is tapped ahead of the damper", "before", 0.15, 0.4, 0.8),
        },
    )


COMPONENTS = (
    PANEL,
    Component(
        "panel_wire",
        "wire from the zone panel to the furnace",
        {"w_open": 0, "g_open": 0},
        {
            "open": change("it is broken", nominal={"w_open": 1, "zone_panel.fitted": 1}),
            "G open": change("its G is broken", nominal={"g_open": 1}),
        },
    ),
    *(_zone(number) for number in ZONES),
    *(_damper(number) for number in ZONES),
    Component(
        "bypass",
        "bypass damper",
        {"fitted": 1, "stuck": -1.0},
        {
            "stuck open": change("it hangs open", nominal={"stuck": 1.0}),
            "stuck shut": change("it does not open", nominal={"stuck": 0.0}),
            "missing": change("there is none", nominal={"fitted": 0}),
        },
    ),
    Component(
        "humidifier",
        "humidifier",
        {"fitted": 1, "demand": 0, "interlock": 0},
        {
            "calls fan": change(
                "it calls for the fan at the furnace, behind the panel", nominal={"interlock": 1, "demand": 1}
            ),
            "dry house": change("the air is dry, so humidity is asked for", nominal={"demand": 1}),
        },
    ),
)
