"""Blower, filter, coil and ducts."""

from assistant.rig.part import Component, change, graded
from assistant.rig.parts.branch import leads

COMPONENTS = (
    Component(
        "blower_motor",
        "blower motor",
        {
            "main_open": 0,
            "start_open": 0,
            "seized": 0,
            "drag": 0.0,
            "binds": 0.0,
            "size": 1.0,
            "leak_ohm": 1e10,
            "module_dead": 0,
            "module_short": 0,
            "overload": 0,
            "reversed": 0,
            "short_ohm": 1e10,
            "lets_go": 1e9,
            "module_leak_ohm": 1e10,
            "half_leak_ohm": 1e10,
            "filter_farad": 0.0,
        },
        {
            "open": change("its main winding is open", nominal={"main_open": 1}),
            "start winding open": change("its auxiliary winding is open", nominal={"start_open": 1}),
            "stuck": change("its bearing has seized", nominal={"seized": 1}),
            "drag": graded("a worn bearing drags", "drag", 1.2, 2.0, 3.0),
            "ground": graded("its winding is shorted to the case", "leak_ohm", 30.0, 0.4, 0.1),
            "leakage": graded("damp winding", "leak_ohm", 2e6, 5e5, 1e5),
            "module dead": change("its electronics are dead", nominal={"module_dead": 1}),
            "module shorted": change("its electronics are shorted at the line", nominal={"module_short": 1}),
            "reversed": change("it turns the wrong way", nominal={"reversed": 1}),
            "too small": change(
                "a smaller one was fitted than the wheel asks for",
                {"size": 0.66, "history.work": "motor or wheel or speed changed"},
                {"size": 0.6, "history.work": "motor or wheel or speed changed"},
                {"size": 0.55, "history.work": "motor or wheel or speed changed"},
            ),
            "just big enough": change(
                "one was fitted that is just big enough for closed ducts",
                nominal={"size": 0.86, "history.work": "door or filter or duct left so"},
            ),
            "binds": graded("its bearings are dry and bind as it turns", "binds", 1.2, 1.6, 2.0),
            "shorted": graded("its winding is shorted from wire to wire", "short_ohm", 0.6, 0.3, 0.1),
            "weak insulation": graded(
                "its insulation breaks down at line voltage", "lets_go", 140.0, 90.0, 40.0
            ),
            "module to ground": graded(
                "its electronics are shorted to the case", "module_leak_ohm", 2.0, 0.3, 0.1
            ),
            "half to ground": graded(
                "the windings behind its electronics are grounded", "half_leak_ohm", 2.0, 0.3, 0.1
            ),
            "module leaks": graded(
                "the filter of its electronics passes current to ground",
                "filter_farad",
                1.02e-7,
                1.1e-7,
                1.18e-7,
            ),
        },
    ),
    Component(
        "capacitor",
        "run capacitor",
        {"share": 1.0, "open": 0, "short": 0, "mark": "the motor's"},
        {
            "open": change("it is open", nominal={"open": 1}),
            "weak": graded("it has lost capacitance", "share", 0.7, 0.45, 0.05),
            "shorted": change("it is shorted", nominal={"short": 1}),
            "wrong value": change(
                "one of another value was fitted",
                {"share": 0.18, "mark": "another"},
                {"share": 0.15, "mark": "another"},
                {"share": 0.1, "mark": "another"},
            ),
            "too large": change(
                "one of a larger value was fitted",
                {"share": 3.5, "mark": "another"},
                {"share": 4.0, "mark": "another"},
                {"share": 5.0, "mark": "another"},
            ),
        },
        {"blower": "psc"},
    ),
    Component(
        "blower_harness",
        "wiring of the blower",
        {
            "hot_open": 0,
            "neutral_open": 0,
            "command_open": 0,
            "parked": 0,
            "look": "tight and bright",
            "to_ground_ohm": 1e10,
            "way": "clear of everything",
            "joined_ohm": 1e10,
        },
        {
            "hot open": change(
                "its heat tap's lead is off", nominal={"hot_open": 1, "look": "pin backed out or burnt"}
            ),
            "neutral open": change(
                "its plug is burnt on the neutral",
                nominal={"neutral_open": 1, "look": "pin backed out or burnt"},
            ),
            "command open": change(
                "its command wire is off", nominal={"command_open": 1, "look": "pin backed out or burnt"}
            ),
            "wrong tap": change("its heat lead is on a parked tap", nominal={"parked": 1}),
            **leads("its hot lead is pinched under the blower's bracket"),
            "two taps fed": change(
                "two speed leads are fed at once, the turns between them short each other",
                {"joined_ohm": 38.0, "history.work": "motor or wheel or speed changed"},
                {"joined_ohm": 30.0, "history.work": "motor or wheel or speed changed"},
                {"joined_ohm": 24.0, "history.work": "motor or wheel or speed changed"},
            ),
        },
    ),
    Component(
        "wheel",
        "blower wheel",
        {"caked": 0.0, "slips": 0.0, "jammed": 0, "rubs": 0.0, "look": "clean and tight"},
        {
            "caked": change(
                "its blades are caked",
                {"caked": 0.2, "look": "caked"},
                {"caked": 0.35, "look": "caked"},
                {"caked": 0.5, "look": "caked"},
            ),
            "slips": change(
                "its set screw is loose", nominal={"slips": 1.0, "look": "slipping on the shaft"}
            ),
            "jammed": change("something holds it", nominal={"jammed": 1}),
            "bracket left": change(
                "the shipping bracket was left on",
                nominal={"jammed": 2, "history.work": "motor or wheel or speed changed"},
            ),
            "rubs": change(
                "it has walked on its shaft and rubs on its housing",
                {"rubs": 1.2, "history.work": "motor or wheel or speed changed"},
                {"rubs": 1.6, "history.work": "motor or wheel or speed changed"},
                {"rubs": 2.0, "history.work": "motor or wheel or speed changed"},
            ),
            "against its housing": change(
                "it has walked on its shaft and is wedged against its housing",
                nominal={"jammed": 3, "history.work": "motor or wheel or speed changed"},
            ),
        },
    ),
    Component(
        "filter",
        "filter",
        {"clog": 0.0},
        {"clogged": graded("it is full of dust", "clog", 0.68, 0.76, 0.88)},
    ),
    Component(
        "registers",
        "registers and returns",
        {"shut": 0.0, "others": 0.0},
        {
            "shut": graded("they are shut or covered", "shut", 0.64, 0.74, 0.88),
            "shut in the other zones": graded("those of zones 1 and 3 are shut", "others", 0.6, 0.74, 0.85),
        },
    ),
    Component(
        "coil",
        "cooling coil",
        {"fitted": 1, "matted": 0.0},
        {"matted": graded("it is matted with lint", "matted", 0.66, 0.74, 0.88)},
    ),
    Component(
        "ducts",
        "ducts",
        {"small": 0.0, "apart": 0.0},
        {
            "apart": change(
                "the supply duct is off and the filter slot stands open",
                {"apart": 0.9, "history.work": "door or filter or duct left so"},
                {"apart": 0.95, "history.work": "door or filter or duct left so"},
                {"apart": 0.98, "history.work": "door or filter or duct left so"},
            ),
            "small": graded("they are too small for this blower", "small", 0.3, 0.45, 0.6),
        },
    ),
)
