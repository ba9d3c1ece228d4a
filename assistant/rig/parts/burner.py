"""Gas supply, valve, burners, igniter and flame rod."""

from assistant.rig.part import Component, change, graded
from assistant.rig.parts.branch import HEAT, leads

COMPONENTS = (
    Component(
        "gas_supply",
        "gas supply up to the furnace",
        {"static": 1793.0, "cock": 1.0, "meter": 1, "pipe": 1.0, "trap": "dry and clean", "others": 1},
        {
            "cock shut": change("the furnace's gas cock is shut", nominal={"cock": 0.0}),
            "meter off": change("the meter is off or the tank empty", nominal={"meter": 0}),
            "low pressure": graded(
                "the supplier's regulator gives too little", "static", 1100.0, 700.0, 280.0
            ),
            "high pressure": graded(
                "the supplier's regulator gives too much", "static", 3300.0, 3700.0, 4500.0
            ),
            "pipe too small": graded("the pipe drops too much while it fires", "pipe", 9.0, 30.0, 80.0),
        },
    ),
    Component(
        "gas_valve",
        "gas valve",
        {
            "knob": "on",
            "coil_open": 0,
            "coil_ohm": 38.0,
            "stuck_shut": 0,
            "leaks": 0.0,
            "regulator": 1.0,
            "drop": 1.0,
            "holds": 1e9,
        },
        {
            "knob off": change("its knob is on OFF", nominal={"knob": "off"}),
            "coil open": change("its coil is open", nominal={"coil_open": 1}),
            "coil shorted": graded("its coil is shorted", "coil_ohm", 5.0, 1.0, 0.3),
            "lets go": graded("it drops shut seconds after it opened, still fed", "holds", 9.0, 8.0, 7.0),
            "stuck shut": change("it does not open", nominal={"stuck_shut": 1}),
            "leaks": graded("it lets gas through when off", "leaks", 0.06, 0.12, 0.25),
            "hangs open": graded("it hangs open with no call", "leaks", 0.5, 0.7, 0.9),
            "regulator low": graded("its regulator is set low", "regulator", 0.62, 0.45, 0.2),
            "regulator high": graded("its regulator is set high", "regulator", 1.2, 1.35, 1.6),
        },
    ),
    Component(
        "valve_harness",
        "wiring of the gas valve",
        {"hot_open": 0, "common_open": 0, "look": "tight and bright"},
        {
            "hot open": change("its lead is off", nominal={"hot_open": 1, "look": "pin backed out or burnt"}),
            "common open": change(
                "its common is off", nominal={"common_open": 1, "look": "pin backed out or burnt"}
            ),
        },
    ),
    Component(
        "gas_parts",
        "orifices and regulator spring",
        {"area": 1.0, "spring": 1.0, "fuel": "natural", "history": "nothing to be learned"},
        {
            "propane orifices": change(
                "orifices for LP on natural gas", nominal={"area": 0.62, "history": "converted by halves"}
            ),
            "natural orifices": change(
                "orifices for natural gas on LP",
                nominal={"area": 1.62, "history": "never converted for this gas"},
            ),
            "wrong spring": change(
                "a spring for LP on natural gas", nominal={"spring": 2.6, "history": "converted by halves"}
            ),
        },
    ),
    Component(
        "burners",
        "burners",
        {"gap": 0.0, "dirt": 0.0, "look": "clean and in line"},
        {
            "no carry-over": change(
                "flame does not cross from the first burner",
                {"gap": 0.5, "look": "out of line or loose"},
                {"gap": 1.0, "look": "out of line or loose"},
            ),
            "choked": change(
                "rust and webs shut part of their ports and orifices",
                {"dirt": 1.1, "look": "rust or dirt"},
                {"dirt": 1.2, "look": "rust or dirt"},
                {"dirt": 1.3, "look": "rust or dirt"},
            ),
            "dirty": change(
                "rust and lint in them",
                {"dirt": 0.2, "look": "rust or dirt"},
                {"dirt": 0.35, "look": "rust or dirt"},
                {"dirt": 0.5, "look": "rust or dirt"},
            ),
        },
    ),
    Component(
        "igniter",
        "hot surface igniter",
        {
            "cold_ohm": 60.0,
            "open": 0,
            "place": 0.0,
            "leak_ohm": 1e10,
            "short_ohm": 1e10,
            "touches_hot": 0,
            "leaks_hot_ohm": 1e10,
            "look": "nothing unusual",
        },
        {
            "touches its bracket": change(
                "cracked, it leans on its bracket",
                {"leak_ohm": 2.0, "look": "loose or out of place"},
                {"leak_ohm": 0.3, "look": "loose or out of place"},
                {"leak_ohm": 0.1, "look": "loose or out of place"},
            ),
            "shorted": change(
                "it is shorted from lead to lead",
                {"short_ohm": 0.6, "look": "oily or touched"},
                {"short_ohm": 0.3, "look": "oily or touched"},
                {"short_ohm": 0.1, "look": "oily or touched"},
            ),
            "touches when hot": change("it bends onto its bracket as it glows", nominal={"touches_hot": 1}),
            "leaks when hot": graded(
                "its body passes current to ground as it glows", "leaks_hot_ohm", 11000.0, 10400.0, 9800.0
            ),
            "open": change("it is broken", nominal={"open": 1}),
            "resistance": graded("it has aged and stays too cold", "cold_ohm", 185.0, 220.0, 400.0),
            "out of place": change(
                "it does not sit at the gas", nominal={"place": 1.0, "look": "loose or out of place"}
            ),
            "leakage": graded("its lead touches the chassis", "leak_ohm", 2e4, 0.3, 0.1),
            "water drip": change(
                "water drips on it and it has cracked", nominal={"open": 1, "look": "water drip above"}
            ),
        },
    ),
    Component(
        "igniter_harness",
        "wiring of the igniter",
        {
            "hot_open": 0,
            "neutral_open": 0,
            "plug_open": 0,
            "look": "tight and bright",
            "to_ground_ohm": 1e10,
            "way": "clear of everything",
        },
        {
            **leads("its lead lies on the burner box", HEAT),
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
        "flame_rod",
        "flame rod",
        {"coat_ohm": 0.0, "leak_ohm": 1e10, "reach": 1.0, "wire_open": 0, "film_ohm": 0.0, "look": "clean"},
        {
            "coated": change(
                "silica or soot coats it",
                {"coat_ohm": 6e7, "look": "sooted or coated"},
                {"coat_ohm": 8e7, "look": "sooted or coated"},
                {"coat_ohm": 2e8, "look": "sooted or coated"},
            ),
            "leakage": change(
                "its porcelain is cracked",
                {"leak_ohm": 2.5e5, "look": "porcelain cracked"},
                {"leak_ohm": 1.5e5, "look": "porcelain cracked"},
                {"leak_ohm": 1e4, "look": "porcelain cracked"},
            ),
            "short": change(
                "it touches the burner", nominal={"leak_ohm": 0.5, "look": "bent or out of the flame"}
            ),
            "out of flame": change(
                "it is bent out of the flame",
                {"reach": 0.2, "look": "bent or out of the flame"},
                {"reach": 0.1, "look": "bent or out of the flame"},
                {"reach": 0.0, "look": "bent or out of the flame"},
            ),
            "wire open": change("its wire is off", nominal={"wire_open": 1}),
            "wet": change(
                "acid water between rod and burner passes current one way",
                {"film_ohm": 2e7, "leak_ohm": 9e5, "look": "porcelain cracked"},
                {"film_ohm": 8e6, "leak_ohm": 7e5, "look": "porcelain cracked"},
                {"film_ohm": 4e6, "leak_ohm": 5e5, "look": "porcelain cracked"},
            ),
        },
    ),
)
