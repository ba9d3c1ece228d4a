"""Zone panel, zone thermostats, dampers, bypass, and what calls for the fan behind the panel."""

from assistant.rig.part import Component, change, graded

ZONES = (1, 2, 3)
DAMAGED = {"cable.look": "damaged"}
"""What staple, nail and mouse leave to be seen on a cable."""
SMALL_ZONE = {"story.narrow": 1}
"""A bypass is fitted for a zone that cannot take the unit's air alone (common practice), so a house in which
its failure is felt has such a zone.
"""

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
        "fan_locked": 0,
        "type_wrong": 0,
        "crossed": 0,
        "rest": "open",
        "purge": 120.0,
        "source_ohm": 2.9,
        "fan_all": 0,
        "hot_limit": 344.0,
        "output_on": 0,
        "output_dead": 0,
        "unfed": 0,
        "added_ohm": 1e10,
        "relief": 0,
        "purge_to": "zone",
        "stats_crossed": 0,
        "stats_paired": 0,
        "output_held": 0,
        "data": 0,
    },
    {
        "relay dead": change("it does not pass the heat call", nominal={"relay_dead": 1, "fitted": 1}),
        "fuse blown": change("its own fuse has blown", nominal={"fuse": 1, "fitted": 1}),
        "wrong setting": change("its menu holds heat back", nominal={"heat_locked": 1, "fitted": 1}),
        "fan not allowed": change("its menu lets no zone call the fan", nominal={"fan_locked": 1}),
        "fan relay dead": change("it does not pass the fan call", nominal={"g_dead": 1}),
        "damper type wrong": change("it is set for the other kind of damper", nominal={"type_wrong": 1}),
        "zones crossed": change(
            "the dampers of zones 2 and 3 are on each other's terminals", nominal={"crossed": 1}
        ),
        "rest shut": change("its dampers rest shut", nominal={"rest": "shut"}),
        "long purge": graded("it keeps dampers open long after a call", "purge", 420.0, 900.0, 1800.0),
        "transformer weak": graded(
            "its transformer sags with a load that it should carry", "source_ohm", 14.5, 16.0, 18.0
        ),
        "overloaded": graded(
            "a solenoid that is not the panel's hangs on its transformer", "added_ohm", 12.0, 10.0, 8.0
        ),
        "not fed": change("its transformer is unplugged", nominal={"unfed": 1}),
        "opens a relief": change(
            "its menu opens zone 2 whenever one zone calls alone", nominal={"relief": 2}
        ),
        "purges into all": change("it purges into every zone", nominal={"purge_to": "all"}),
        "purges long into all": change(
            "it purges into every zone for long",
            *({"purge": seconds, "purge_to": "all"} for seconds in (420.0, 600.0, 1200.0)),
        ),
        "thermostats crossed": change(
            "zone 2's thermostat is on zone 3's terminals", nominal={"stats_crossed": 1}
        ),
        "thermostats paired": change(
            "zone 3's call is on zone 2's terminals too", nominal={"stats_paired": 1}
        ),
        "output held": change("zone 2's open output never goes off", nominal={"output_held": 2}),
        "on data wires": change("it talks over two data wires", nominal={"data": 1}),
        "fan opens all": change("a fan call opens every zone by its menu", nominal={"fan_all": 1}),
        "output stuck": change("zone 2's close output never comes on", nominal={"output_dead": 2}),
        "fan output stuck": change("its fan output is on without a call", nominal={"output_on": 1}),
        "cut-out low": change("its hot-air cut-out is set too low", nominal={"hot_limit": 311.0}),
    },
    {"zone_panel": "yes"},
)


def _zone(number: int) -> Component:
    return Component(
        f"zone{number}",
        f"thermostat and cable of zone {number}",
        {
            "heat": 0,
            "fan": "auto",
            "humidity_fan": 0,
            "ghost_ohm": 1e10,
            "r_g_ohm": 1e10,
            "r_w_ohm": 1e10,
            "stuck": "none",
            "strand_ohm": 1e10,
            "input_ohm": 1e10,
            "g_ghost_ohm": 1e10,
        },
        {
            "calls": change("it is cold there and its thermostat calls for heat", nominal={"heat": 1}),
            "humidity runs fan": change("its humidity setting runs the fan", nominal={"humidity_fan": 1}),
            "fan on": change("its fan is on ON", nominal={"fan": "on"}),
            "fan circulates": change("its fan circulates on a timer", nominal={"fan": "circulate"}),
            "R-G short": change(
                "a staple joins R and G", *({"r_g_ohm": ohm, **DAMAGED} for ohm in (900.0, 100.0, 0.2))
            ),
            "ghost on W": graded("a leaking cable lifts W", "ghost_ohm", 1400.0, 900.0, 700.0),
            "ghost on G": graded("a leaking cable lifts G", "g_ghost_ohm", 1400.0, 900.0, 700.0),
            "R-W short": change(
                "a staple joins R and W", *({"r_w_ohm": ohm, **DAMAGED} for ohm in (60.0, 10.0, 0.2))
            ),
            "sticks on G": change("its fan relay sticks", nominal={"stuck": "g"}),
            "sticks on W": change("its heat relay sticks", nominal={"stuck": "w"}),
            "stray strand": change("a strand joins R and G on the panel", nominal={"strand_ohm": 0.1}),
            "input leaks": change(
                "water joins R and G inside the panel",
                *({"input_ohm": ohm, "water.from": "from roof or outside"} for ohm in (60.0, 10.0, 0.5)),
            ),
        },
        {"zone_panel": "yes"},
    )


def _damper(number: int) -> Component:
    return Component(
        f"damper{number}",
        f"damper of zone {number}",
        {
            "kind": "spring open",
            "dead": 0,
            "stripped": 0,
            "motor_ohm": 115.0,
            "cable_ohm": 1e10,
            "slips": 0,
            "jam": -1.0,
            "stop": 0.0,
            "closed": 2e4,
            "unsealed": 0,
            "before": 0.0,
            "wire_open": 0,
            "swapped": 0,
            "lever": 0,
            "crossed_leg": 0,
            "feed_ohm": 1e10,
            "offset": 0.0,
            "mounted": 0.0,
            "harm": "nothing unusual",
            "rises": 0.0,
        },
        {
            "actuator dead": change("its motor is burnt", nominal={"dead": 1}),
            "gears stripped": change("its motor turns and its gears do not", nominal={"stripped": 1}),
            "motor shorted": change("its motor is shorted", nominal={"motor_ohm": 1.5}),
            "cable shorted": change("a staple joins its two wires", nominal={"cable_ohm": 0.5, **DAMAGED}),
            "wire open": change("its wire is broken", nominal={"wire_open": 1, **DAMAGED}),
            "slips": change("its set screw does not grip the shaft", nominal={"slips": 1}),
            "jammed": change(
                "a duct screw holds the blade",
                *({"jam": jam, "harm": "liner or screw in the way"} for jam in (0.25, 0.5, 1.0)),
            ),
            "end stop": graded("its end stop keeps it from shutting", "stop", 0.15, 0.25, 0.4),
            "leaks": graded("its seal is missing", "closed", 400.0, 150.0, 60.0),
            "unsealed": change("its blade has no seal, as many have none", nominal={"unsealed": 1}),
            "leaks a little": change("its seal is worn a little", nominal={"closed": 3500.0}),
            "legs swapped": change("open and close are swapped", nominal={"swapped": 1, "kind": "two way"}),
            "on the wrong leg": change("its two wires sit on common and open", nominal={"crossed_leg": 1}),
            "fed back": change(
                "another wire drives its opening leg", nominal={"feed_ohm": 0.5, "kind": "two way"}
            ),
            "fed open": change(
                "another wire holds it open", nominal={"feed_ohm": 0.5, "kind": "spring close"}
            ),
            "springs shut": change("it springs shut, 24 V opens it", nominal={"kind": "spring close"}),
            "three wires": change("it has three wires", nominal={"kind": "two way"}),
            "blade short": graded(
                "its blade stops short while its shaft is at shut", "offset", 0.12, 0.2, 0.35
            ),
            "mounted out of place": graded("its actuator was clamped out of place", "mounted", 0.2, 0.3, 0.5),
            "liner in the way": change(
                "liner stands in the blade's way", nominal={"harm": "liner or screw in the way", "jam": 0.5}
            ),
            "sagged": change("its duct sags", nominal={"harm": "duct sagged or bent"}),
            "wet": change("water runs onto it", nominal={"harm": "water or rust"}),
            "warm air rises": change("warm air rises through its duct", nominal={"rises": 1.0}),
            "lever left": change("its hand lever was left engaged", nominal={"lever": 1}),
            "branch before": graded("its duct is tapped ahead of the damper", "before", 0.15, 0.4, 0.8),
        },
        {"zone_panel": "yes"},
        frozenset({"kind", "unsealed"}),
    )


COMPONENTS = (
    PANEL,
    Component(
        "panel_wire",
        "wire from the zone panel to the furnace",
        {"w_open": 0, "g_open": 0, "r_g_ohm": 1e10},
        {
            "open": change("it is broken", nominal={"w_open": 1, "zone_panel.fitted": 1}),
            "G open": change("its G is broken", nominal={"g_open": 1}),
            "R-G short": change(
                "a nail joins R and G", *({"r_g_ohm": ohm, **DAMAGED} for ohm in (60.0, 10.0, 0.2))
            ),
        },
        {"zone_panel": "yes"},
    ),
    *(_zone(number) for number in ZONES),
    *(_damper(number) for number in ZONES),
    Component(
        "bypass",
        "bypass damper",
        {"fitted": 1, "stuck": -1.0, "hand": 1.0, "size": 1.0},
        {
            "stuck open": change("it hangs open", nominal={"stuck": 1.0, **SMALL_ZONE}),
            "stuck shut": change("it does not open", nominal={"stuck": 0.0, **SMALL_ZONE}),
            "missing": change("there is none", nominal={"fitted": 0, **SMALL_ZONE}),
            "hand damper shut": change("its hand damper is shut", nominal={"hand": 0.0, **SMALL_ZONE}),
            "too small": change(
                "it is too small",
                *({"size": size, **SMALL_ZONE} for size in (0.12, 0.05, 0.02)),
            ),
        },
        {"zone_panel": "yes"},
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
    Component(
        "ducts2",
        "zone 2's ducts behind its damper",
        {"hangs_on": "own", "also_on": 0, "leak": 0.0, "leak_from": 3, "return_share": 0.0},
        {
            "on another zone": change("the den's register hangs on zone 3's duct", nominal={"hangs_on": "3"}),
            "on two zones": change("the den's register hangs on zone 3's duct too", nominal={"also_on": 3}),
            "chase leaks": graded("zone 3's duct leaks into the den's chase", "leak", 0.15, 0.3, 0.5),
            "all small": change(
                "every duct of the house is too small",
                {"ducts.small": 0.77},
                {"ducts.small": 0.82},
                {"ducts.small": 0.85},
            ),
            "return breathes": graded(
                "the den's return takes the other zones' air", "return_share", 0.12, 0.25, 0.4
            ),
        },
        {"zone_panel": "yes"},
    ),
    Component(
        "draught",
        "the house's own air",
        {"den": 0},
        {"in the den": change("a stack of air comes down the stairs", nominal={"den": 1})},
    ),
    Component(
        "fan_switch",
        "the furnace board's fan switch",
        {"always": 0, "over": 1.0},
        {
            "runs always": change("it is set to run all the time", nominal={"always": 1}),
            "speed too high": graded("its speed lead is on a faster tap", "over", 1.15, 1.25, 1.35),
        },
    ),
    Component(
        "story",
        "what people here know",
        {
            "when": "while another zone runs",
            "set_by": "nobody knows",
            "work": "none known",
            "air": "as built",
            "device": "nothing found",
            "narrow": 0,
            "no_bypass": 0,
        },
        {
            "blows always": change(
                "the customer says all day and night", nominal={"when": "all day and night"}
            ),
            "blows after": change(
                "the customer says after another zone stops",
                nominal={"when": "a few minutes after another zone stops"},
            ),
            "set by mistake": change("it was set by mistake", nominal={"set_by": "set by mistake"}),
            "set on purpose": change(
                "it was set on purpose", nominal={"set_by": "set on purpose for a reason"}
            ),
            "never set": change("it was never set", nominal={"set_by": "never set after fitting"}),
            "new panel": change("panel or thermostat is new", nominal={"work": "new thermostat or panel"}),
            "new duct": change("a damper or duct is new", nominal={"work": "new damper or duct"}),
            "zone added": change(
                "a zone was added", nominal={"air": "zone or room added", "work": "new damper or duct"}
            ),
            "built without bypass": change("the house was built without one", nominal={"no_bypass": 1}),
            "narrow zone": change("zone 3's ducts are narrow", nominal={"narrow": 1}),
            "larger unit": change("a larger unit was fitted", nominal={"air": "larger unit fitted"}),
            "family shut registers": change(
                "the family shut registers", nominal={"air": "registers shut by the family"}
            ),
            "cable damaged": change("a staple sits in the cable", nominal={"cable.look": "damaged"}),
            "stat in a draught": change(
                "air comes out of the wall behind the thermostat",
                nominal={"thermostat.place": "air out of the wall behind it"},
            ),
            "unplugged": change(
                "somebody pulled the plug", nominal={"service_switch.by": "somebody by mistake"}
            ),
            "humidifier": change("the humidifier is wired to the fan", nominal={"device": "humidifier"}),
            "air cleaner": change("the air cleaner is wired to the fan", nominal={"device": "air cleaner"}),
        },
        sort=frozenset({"narrow", "no_bypass"}),
    ),
)
