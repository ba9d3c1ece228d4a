"""From the air intake through burner box, exchanger and inducer to the vent terminal, with hoses and drain.

Blockages are the share of the free area that is shut, 0 to 1.
"""

from assistant.rig.part import Component, change, graded
from assistant.rig.parts.branch import leads

COMPONENTS = (
    Component(
        "inducer",
        "inducer",
        {
            "main_open": 0,
            "start_open": 0,
            "capacitor": 1.0,
            "drag": 0.0,
            "seized": 0,
            "wheel": 1.0,
            "leak_ohm": 1e10,
            "lets_go": 1e9,
        },
        {
            "weak insulation": graded(
                "its insulation breaks down at line voltage", "lets_go", 140.0, 90.0, 40.0
            ),
            "open": change("its winding is burnt through", nominal={"main_open": 1, "start_open": 1}),
            "stuck": change("its bearing has seized", nominal={"seized": 1}),
            "drag": graded("a worn bearing drags", "drag", 0.14, 0.18, 0.22),
            "wheel worn": graded(
                "its wheel is corroded or slips: less vacuum at full speed", "wheel", 0.8, 0.6, 0.45
            ),
            "leakage": graded("its winding leaks to ground", "leak_ohm", 3e5, 0.5, 0.1),
            "shorted": change("its winding is shorted", nominal={"main_open": 2}),
        },
    ),
    Component(
        "inducer_harness",
        "wiring of the inducer",
        {
            "hot_open": 0,
            "neutral_open": 0,
            "plug_open": 0,
            "ohm": 0.02,
            "look": "tight and bright",
            "to_ground_ohm": 1e10,
            "way": "clear of everything",
        },
        {
            **leads("its hot lead is pinched under a clamp"),
            "resistance": change(
                "a burnt pin in its hot wire",
                {"ohm": 20.0, "look": "pin backed out or burnt"},
                {"ohm": 30.0, "look": "pin backed out or burnt"},
                {"ohm": 45.0, "look": "pin backed out or burnt"},
            ),
            "hot open": change(
                "its hot wire is broken", nominal={"hot_open": 1, "look": "pin backed out or burnt"}
            ),
            "neutral open": change(
                "its neutral wire is broken", nominal={"neutral_open": 1, "look": "pin backed out or burnt"}
            ),
            "plug open": change(
                "its plug makes no contact", nominal={"plug_open": 1, "look": "pin backed out or burnt"}
            ),
        },
    ),
    Component(
        "pressure_switch",
        "pressure switch",
        {"stuck_open": 0, "welded": 0, "shift": 1.0, "ohm": 0.03},
        {
            "stuck open": change("its contacts do not close", nominal={"stuck_open": 1}),
            "stuck closed": change("its contacts are welded", nominal={"welded": 1}),
            "drifted": graded("it asks for more vacuum than its stamp", "shift", 1.7, 2.0, 3.0),
            "wrong part": change("it is stamped for another furnace", nominal={"shift": 2.2}),
        },
    ),
    Component(
        "hose",
        "vacuum hose and its ports",
        {"leak": 0.0, "blocked": 0, "water": 0, "off": 0, "swapped": 0, "look": "whole and clear"},
        {
            "leakage": change(
                "it is cracked",
                {"leak": 0.55, "look": "cracked or loose"},
                {"leak": 0.8, "look": "cracked or loose"},
                {"leak": 0.95, "look": "cracked or loose"},
            ),
            "clogged": change(
                "its port is blocked by rust or a spider", nominal={"blocked": 1, "look": "blocked or wet"}
            ),
            "off": change("it has slipped off", nominal={"leak": 1.0, "look": "cracked or loose"}),
            "wet": change(
                "water stands in it and holds the switch closed",
                nominal={"water": 1, "look": "blocked or wet"},
            ),
        },
    ),
    Component(
        "vent",
        "exhaust pipe",
        {"blocked": 0.0, "sag": 0, "apart": 0, "look": "slopes back to the furnace", "terminal": "clear"},
        {
            "clogged": change(
                "a nest or leaves block it",
                {"blocked": 0.7, "terminal": "blocked"},
                {"blocked": 0.8, "terminal": "blocked"},
                {"blocked": 0.97, "terminal": "blocked"},
            ),
            "iced": change(
                "its terminal is iced over",
                {"blocked": 0.7, "terminal": "iced or snowed in"},
                {"blocked": 0.82, "terminal": "iced or snowed in"},
                {"blocked": 1.0, "terminal": "iced or snowed in"},
            ),
            "sags": change(
                "it sags and holds water",
                {"blocked": 0.7, "look": "sags or holds water"},
                {"blocked": 0.8, "look": "sags or holds water"},
                {"blocked": 0.92, "look": "sags or holds water"},
            ),
            "begins to clog": graded("leaves begin to clog it", "blocked", 0.3, 0.4, 0.5),
            "apart": change(
                "a joint has come apart in the room", nominal={"apart": 1, "look": "joint apart"}
            ),
        },
    ),
    Component(
        "intake",
        "intake pipe",
        {"blocked": 0.0},
        {"clogged": graded("a screen or a nest blocks it", "blocked", 0.75, 0.85, 0.97)},
        {"kind": "condensing"},
    ),
    Component(
        "exchanger",
        "heat exchanger",
        {"plugged": 0.0, "breach": 0.0, "soot": 0, "seen": 1},
        {
            "clogged": change(
                "soot or rust plugs it",
                {"plugged": 0.6, "soot": 1},
                {"plugged": 0.72, "soot": 1},
                {"plugged": 0.85, "soot": 1},
            ),
            "begins to plug": graded("rust begins to plug it", "plugged", 0.2, 0.25, 0.27),
            "breach": graded("it is cracked", "breach", 0.10, 0.25, 0.5),
        },
    ),
    Component(
        "drain",
        "condensate drain",
        {
            "blocked": 0,
            "frozen": 0,
            "pump_dead": 0,
            "level": 0.0,
            "trap_dry": 0,
            "trap": "whole and seated",
            "pump": 0,
        },
        {
            "clogged": change("it is blocked", nominal={"blocked": 1}),
            "frozen": change("it is frozen outside", nominal={"frozen": 1}),
            "standing full": change("water stands in its pan", nominal={"level": 0.05}),
            "pump dead": change("the condensate pump does not pump", nominal={"pump_dead": 1, "pump": 1}),
            "trap dry": change("its trap is dry and draws room air", nominal={"trap_dry": 1}),
        },
        {"kind": "condensing"},
    ),
    Component(
        "room",
        "room round the furnace",
        {
            "co": 0.0,
            "gas": 0.0,
            "dust": "clean",
            "pull": 0.0,
            "opening": "open and free",
            "outdoors": 266.5,
            "temperature": 293.0,
        },
        {
            "carbon monoxide": graded("carbon monoxide stands in it", "co", 2e-5, 4e-5, 1.5e-4),
            "gas": graded("gas stands in it", "gas", 0.12, 0.25, 0.5),
            "trace of gas": graded("a little gas stands in it", "gas", 0.02, 0.05, 0.08),
            "openings shut": change(
                "its air openings are covered and fans pull it down",
                nominal={"opening": "shut or covered", "pull": 12.0},
                severe={"opening": "shut or covered", "pull": 40.0},
            ),
            # a dryer's 80 l/s through some 85 cm2 of cracks round a tight door: 150 Pa (reasoned)
            "dryer in its closet": change(
                "a dryer in the same tight closet pulls it down, its air openings covered",
                nominal={"opening": "shut or covered", "pull": 150.0},
            ),
            "lint": change("lint and pet hair reach the burners", nominal={"dust": "dust or lint"}),
            "plaster dust": change(
                "plaster, silicone or spray is in the air",
                nominal={"dust": "plaster or silicone or spray in the air"},
            ),
        },
    ),
)
