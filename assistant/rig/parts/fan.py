"""What can be wrong with a blower beside windings and plug: taps, rotor, electronics, settings."""

from assistant.rig.part import Component, change, graded

BURNT = "pin backed out or burnt"

COMPONENTS = (
    Component(
        "board_fan",
        "what the board sends the blower",
        {"fan_dead": 0, "heat_dead": 0, "line_open": 0},
        {
            "no fan output": change("its relay or command for the fan is dead", nominal={"fan_dead": 1}),
            "no heat output": change("its relay or command for heat is dead", nominal={"heat_dead": 1}),
            "line pin open": change(
                "its line pin is burnt off; the transformer is fed before it",
                nominal={"line_open": 1, "board_plugs.look": BURNT},
            ),
        },
    ),
    Component(
        "inhibit",
        "terminal with which another control holds the blower",
        {"kind": "none"},
        {
            "twin link left": change("a second furnace's link was left on", nominal={"kind": "twin link"}),
            "float wired to it": change("a float switch is wired to it", nominal={"kind": "float"}),
        },
    ),
    Component(
        "blower_leads",
        "speed leads and small plug of the blower",
        {
            "fan_open": 0,
            "fan_parked": 0,
            "heat_open": 0,
            "pin_open": 0,
            "hot_ohm": 0.02,
            "neutral_ohm": 0.02,
            "common_open": 0,
            "heat_command_open": 0,
            "two_taps": 0,
        },
        {
            "fan lead open": change(
                "the fan's speed lead is broken", nominal={"fan_open": 1, "blower_harness.look": BURNT}
            ),
            "fan lead parked": change("the fan's lead sits on a park terminal", nominal={"fan_parked": 1}),
            "heat lead open": change(
                "the heat's speed lead is broken", nominal={"heat_open": 1, "blower_harness.look": BURNT}
            ),
            "plug makes no contact": change(
                "the motor's half of the plug touches nothing",
                nominal={"pin_open": 1, "blower_harness.look": BURNT},
            ),
            "hot pin burnt": change(
                "a burnt pin in the hot lead",
                {"hot_ohm": 8.0, "blower_harness.look": BURNT},
                {"hot_ohm": 16.0, "blower_harness.look": BURNT},
                {"hot_ohm": 40.0, "blower_harness.look": BURNT},
            ),
            "neutral pin burnt": change(
                "a burnt pin in the white lead",
                {"neutral_ohm": 8.0, "blower_harness.look": BURNT},
                {"neutral_ohm": 16.0, "blower_harness.look": BURNT},
                {"neutral_ohm": 40.0, "blower_harness.look": BURNT},
            ),
            "common open": change(
                "the 24 V common has backed out of its plug",
                nominal={"common_open": 1, "blower_harness.look": BURNT},
            ),
            "heat command open": change(
                "the command wire for heat is off",
                nominal={"heat_command_open": 1, "blower_harness.look": BURNT},
            ),
            "two taps fed": change("two speed taps are fed at once", nominal={"two_taps": 1}),
        },
    ),
    Component(
        "choke",
        "choke in the blower's hot lead",
        {"fitted": 0, "open": 0},
        {"open": change("it is burnt through", nominal={"open": 1, "fitted": 1})},
        {"blower": "electronic"},
    ),
    Component(
        "line_jumper",
        "voltage jumper in the motor's power plug",
        {"wrong": 0},
        {"missing": change("it is missing: half of the voltage arrives inside", nominal={"wrong": 1})},
        {"blower": "electronic"},
    ),
    Component(
        "blower_settings",
        "switches and jumpers for the blower's air",
        {"fan": 1.0, "heat": 1.0},
        {
            "hardly any air": graded("they ask for hardly any air", "fan", 0.36, 0.3, 0.22),
            "none on heat": change("they ask for no air on heat", nominal={"heat": 0.0}),
        },
    ),
    Component(
        "blower_rotor",
        "rotor and windings inside the blower motor",
        {"bars": 1.0, "turns_shorted": 0.0, "heat_tap_open": 0, "track_ohm": 1e10},
        {
            "bars broken": graded("bars of its rotor are broken", "bars", 30.0, 40.0, 55.0),
            "turns shorted": graded(
                "turns of its auxiliary winding touch each other", "turns_shorted", 0.85, 0.92, 0.97
            ),
            "heat tap open": change("the tap of its heat speed has burnt off", nominal={"heat_tap_open": 1}),
            "track to shell": graded(
                "a burnt track leads from its winding to the shell", "track_ohm", 6e5, 1.5e5, 3e4
            ),
        },
        {"blower": "psc"},
    ),
    Component(
        "blower_cooling",
        "what cools the blower motor",
        {"vents": 0.0, "loose": 0, "found": 293.0},
        {
            "vents caked": graded("its vents are packed with lint", "vents", 0.8, 0.83, 0.86),
            "vents packed shut": graded("its vents are packed shut", "vents", 0.92, 0.95, 0.98),
            "overload open": change("it got so hot that its overload opened", nominal={"found": 430.0}),
            "mount loose": change("its mount is loose", nominal={"loose": 1}),
        },
    ),
    Component(
        "blower_module",
        "electronics of the blower motor",
        {"output_short": 0, "locked": 0, "limited": 1.0, "program": 1.0, "heat_tap_dead": 0},
        {
            "output shorted": change("its output is shorted and brakes", nominal={"output_short": 1}),
            "locked out": change("it stalled and has locked itself out", nominal={"locked": 1}),
            "limits itself": graded("it has grown hot and limits itself", "limited", 0.4, 0.35, 0.25),
            "wrong program": graded("it is programmed for a smaller machine", "program", 0.4, 0.33, 0.25),
            "heat tap dead": change("its heat tap does nothing", nominal={"heat_tap_dead": 1}),
        },
        {"blower": "electronic"},
    ),
    Component(
        "blower_half",
        "motor half behind the electronics",
        {"second_ohm": 1.5, "leak_ohm": 1e10, "stiff": 0},
        {
            "windings unequal": graded("one of its windings is burnt", "second_ohm", 2.3, 2.6, 1e10),
            "damp": graded("a wet track leads from it to the shell", "leak_ohm", 8e4, 4e4, 1e4),
            "stiff": change("its bearings have seized", nominal={"stiff": 1}),
        },
        {"blower": "electronic"},
    ),
    Component(
        "wheel_fit",
        "how the wheel sits",
        {"backwards": 0},
        {
            "wrong way round": change(
                "it was put in the wrong way round", nominal={"backwards": 1, "wheel.look": "wrong way round"}
            ),
            "packed with dirt": change(
                "its blades are packed with dirt",
                {"wheel.caked": 0.62, "wheel.look": "caked"},
                {"wheel.caked": 0.7, "wheel.look": "caked"},
                {"wheel.caked": 0.8, "wheel.look": "caked"},
            ),
        },
    ),
    Component(
        "air_way",
        "what shuts the way of the air",
        {"lost": 0.0},
        {
            "filter plastered": graded("the filter is plastered shut", "filter.clog", 0.9, 0.93, 0.96),
            "coil iced over": graded("the cooling coil is iced over", "coil.matted", 0.89, 0.93, 0.97),
            "dampers shut": graded("a damper in the trunk has shut", "registers.shut", 0.89, 0.92, 0.96),
            "trunk apart": graded("the supply trunk has come apart", "lost", 0.7, 0.85, 0.95),
        },
    ),
    Component(
        "last_visit",
        "who worked on it last, and how the filter is kept",
        {"by": "nobody", "filter": "changed in time"},
        {
            "our shop": change("our own shop left it so", nominal={"by": "our shop"}),
            "another shop": change("another shop left it so", nominal={"by": "another shop"}),
            "owner": change("somebody in the house changed it", nominal={"by": "owner or somebody else"}),
            "filter forgotten": change("nobody changed the filter", nominal={"filter": "forgotten"}),
            "filter too dense": change("a dense filter", nominal={"filter": "too dense or too small"}),
        },
    ),
    Component(
        "truck",
        "what was brought along",
        {"tester": 1},
        {"no tester": change("the motor tester is not on the truck", nominal={"tester": 0})},
    ),
)
