"""The furnace board, its plugs, and water that reaches the controls."""

from assistant.rig.part import Component, change, graded

COMPONENTS = (
    Component(
        "board",
        "furnace board",
        {
            "dead": 0,
            "inducer_dead": 0,
            "igniter_dead": 0,
            "valve_dead": 0,
            "blower_dead": 0,
            "string_dead": 0,
            "sense_dead": 0,
            "false_flame": 0,
            "valve_stuck": 0,
            "blower_stuck": 0,
            "w_deaf": 0,
            "g_deaf": 0,
            "relay_ohm": 0.01,
            "surge_ohm": 1e10,
            "rod_dead": 0,
            "drop_out": 0.8e-6,
            "leak_ohm": 1e10,
            "lets_go": 1e9,
            "look": "whole",
        },
        {
            "dead": change("it does nothing although it is fed", nominal={"dead": 1}),
            "no inducer output": change("its inducer relay does not close", nominal={"inducer_dead": 1}),
            "no igniter output": change("its igniter relay does not close", nominal={"igniter_dead": 1}),
            "no valve output": change("its gas valve relay does not close", nominal={"valve_dead": 1}),
            "no blower output": change("its blower relay does not close", nominal={"blower_dead": 1}),
            "no string feed": change("it does not feed the safety string", nominal={"string_dead": 1}),
            "flame sense dead": change("it does not see the flame current", nominal={"sense_dead": 1}),
            "asks for much flame": change(
                "it is of a kind that lets go of a flame below 1.9 uA", nominal={"drop_out": 1.9e-6}
            ),
            "no rod voltage": change("it gives no voltage to the rod", nominal={"rod_dead": 1}),
            "false flame": change("it reports a flame that is not there", nominal={"false_flame": 1}),
            "valve relay welded": change("its gas valve relay is welded", nominal={"valve_stuck": 1}),
            "blower relay welded": change("its blower relay is welded", nominal={"blower_stuck": 1}),
            "blower relay burnt": graded(
                "its blower relay's contacts are burnt", "relay_ohm", 2.0, 8.0, 40.0
            ),
            "surge device shorted": graded("its surge disc is shorted", "surge_ohm", 5.0, 0.3, 0.1),
            "surge part burnt": change(
                "its surge part has burnt to a short, and shows it",
                {"surge_ohm": 5.0, "look": "burnt"},
                {"surge_ohm": 0.3, "look": "burnt"},
                {"surge_ohm": 0.1, "look": "burnt"},
            ),
            "surge part to ground": graded("its surge part is shorted to ground", "leak_ohm", 2.0, 0.3, 0.1),
            "ruined by water": graded("water has eaten its insulation", "leak_ohm", 2.0, 0.4, 0.1),
            "weak insulation": change(
                "its insulation breaks down at line voltage", nominal={"lets_go": 60.0}
            ),
            "wet": graded("a wet track from hot to ground on it", "leak_ohm", 3e4, 60.0, 8.0),
        },
    ),
    Component(
        "board_plugs",
        "plugs and pins of the board",
        {
            "primary_open": 0,
            "neutral_open": 0,
            "common_open": 0,
            "inducer_loose": 0,
            "igniter_loose": 0,
            "look": "tight and bright",
        },
        {
            "primary pin open": change(
                "the pin that feeds the transformer has backed out",
                nominal={"primary_open": 1, "look": "pin backed out or burnt"},
            ),
            "inducer pin loose": change(
                "the inducer's pin makes contact only now and then",
                nominal={"inducer_loose": 1, "look": "pin backed out or burnt"},
            ),
            "common open": change(
                "the C pin has backed out", nominal={"common_open": 1, "look": "pin backed out or burnt"}
            ),
        },
    ),
    Component(
        "water",
        "water where it should not be",
        {"from": "dry", "on_board": 0, "on_motor": 0, "on_run": 0, "depth": 0.0, "always": 0},
        {
            "drips on the board from the cooling coil": change(
                "the coil's pan drips onto the board",
                nominal={"from": "from cooling coil or pan", "on_board": 1, "drain.blocked": 1},
            ),
            "drips on the board from the humidifier": change(
                "the humidifier drips onto the board", nominal={"from": "from humidifier", "on_board": 1}
            ),
            "drips on the board from the vent": change(
                "condensate drips onto the board", nominal={"from": "from vent or condensate", "on_board": 1}
            ),
            "seeps onto the board": change(
                "a full pan seeps onto the board all day",
                nominal={"from": "from cooling coil or pan", "on_board": 1, "always": 1, "drain.blocked": 1},
            ),
            "runs into a box of the branch": change(
                "rain runs into a box of the branch", nominal={"from": "from roof or outside", "on_run": 1}
            ),
            "flood": change(
                "the controls stand in water", nominal={"from": "from roof or outside", "depth": 0.2}
            ),
            "from cooling coil": change(
                "the coil's pan runs over onto the controls", nominal={"from": "from cooling coil or pan"}
            ),
            "from humidifier": change(
                "the humidifier drips onto the controls", nominal={"from": "from humidifier"}
            ),
            "from vent": change(
                "condensate runs back from the vent", nominal={"from": "from vent or condensate"}
            ),
            "from outside": change(
                "water comes in along the flashing", nominal={"from": "from roof or outside"}
            ),
        },
    ),
)
