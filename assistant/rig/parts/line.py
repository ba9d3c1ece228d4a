"""Line voltage: from the transformer on the pole to the furnace's terminals."""

from assistant.rig.part import Component, change, graded

OPEN = {"nominal": {"open": 1}}
LOOSE = "push-in or never tight"
EDGE = "over an edge or under a screw"
HURT = "gnawed or drilled or stapled"

COMPONENTS = (
    Component(
        "service",
        "power company's supply",
        {"volts": 120.0, "neutral_open": 0, "neutral_ohm": 0.03, "leg_open": 0, "floats": 0},
        {
            "low voltage": graded("every leg is low", "volts", 105.0, 96.0, 76.0),
            "brown-out": change("every leg is low", nominal={"volts": 101.8}),
            "high voltage": graded("every leg is high", "volts", 128.5, 132.0, 136.0),
            "neutral open": change(
                "the house's neutral is lost; its legs see-saw", nominal={"neutral_open": 1}
            ),
            "floats": change("a generator with a neutral tied to no ground feeds it", nominal={"floats": 1}),
            "leg open": change("the leg that feeds the furnace is lost", nominal={"leg_open": 1}),
        },
    ),
    Component(
        "breaker",
        "branch breaker",
        {
            "rating": 15.0,
            "open": 0,
            "ohm": 0.01,
            "trips_at": 1.0,
            "handle": "on",
            "hides": 0,
            "lug_ohm": 0.002,
            "joint": "nothing unusual",
        },
        {
            "open": change("its contacts do not close although the handle is on", nominal={"open": 1}),
            "tripped": change("it has tripped", nominal={"handle": "tripped"}),
            "off": change("its handle is off", nominal={"handle": "off"}),
            "switched off by mistake": change(
                "somebody switched it off",
                nominal={"handle": "off", "service_switch.by": "somebody by mistake"},
            ),
            "weak": graded("it trips at a share of its rating", "trips_at", 0.28, 0.24, 0.15),
            "loose lug": change(
                "a loose or burnt terminal at the breaker",
                {"lug_ohm": 0.15, "joint": LOOSE},
                {"lug_ohm": 0.5, "joint": LOOSE},
                {"lug_ohm": 2.0, "joint": LOOSE},
            ),
            "warm lug": change(
                "its terminal was never tight",
                {"lug_ohm": 0.16, "joint": LOOSE},
                {"lug_ohm": 0.2, "joint": LOOSE},
                {"lug_ohm": 0.25, "joint": LOOSE},
            ),
            "beaten": change(
                "it was closed many times onto faults", nominal={"joint": "closed many times onto faults"}
            ),
            "hides its trips": change("its handle looks on when it has tripped", nominal={"hides": 1}),
            "wrong size": change(
                "smaller than the plate asks",
                nominal={"rating": 5.0, "history.work": "breaker or wire or device changed"},
            ),
            "too big for its wire": change(
                "bigger than its wire carries",
                nominal={"rating": 20.0, "history.work": "breaker or wire or device changed"},
            ),
            "too big": change(
                "bigger than the plate allows",
                nominal={"rating": 30.0, "history.work": "breaker or wire or device changed"},
            ),
        },
    ),
    Component(
        "branch_hot",
        "hot wire from the panel to the service switch",
        {
            "ohm": 0.08,
            "open": 0,
            "to_ground_ohm": 1e10,
            "across_ohm": 1e10,
            "lets_go": 1e9,
            "arcs": 0,
            "carries": 15.0,
            "joint": "nothing unusual",
            "way": "clear of everything",
        },
        {
            "open": change("it is broken", nominal={"open": 1}),
            "resistance": graded("a bad splice in it", "ohm", 2.0, 4.0, 8.0),
            "bad joint": change(
                "a push-in joint in it has burnt",
                {"ohm": 1.2, "joint": LOOSE},
                {"ohm": 2.0, "joint": LOOSE},
                {"ohm": 3.0, "joint": LOOSE},
            ),
            "came apart": change("a splice in it burnt open", nominal={"open": 1, "joint": LOOSE}),
            "to ground": change(
                "a staple or nail took it to ground",
                {"to_ground_ohm": 3.0, "way": HURT},
                {"to_ground_ohm": 0.3, "way": HURT},
                {"to_ground_ohm": 0.05, "way": HURT},
            ),
            "across": change(
                "a nail joins it to the neutral",
                {"across_ohm": 2.0, "way": HURT},
                {"across_ohm": 0.3, "way": HURT},
                {"across_ohm": 0.05, "way": HURT},
            ),
            "weak insulation": change(
                "its insulation breaks down at line voltage", nominal={"lets_go": 60.0}
            ),
            "arcs": change("a joint in it arcs", nominal={"arcs": 1}),
            "never tight": change("a joint in it was never tight", nominal={"joint": LOOSE}),
        },
    ),
    Component(
        "branch_neutral",
        "neutral wire from the panel to the furnace",
        {"ohm": 0.08, "open": 0, "to_ground_ohm": 1e10, "shared_ohm": 1e10, "way": "clear of everything"},
        {
            "open": change("it is broken", nominal={"open": 1}),
            "resistance": graded("a bad splice in it", "ohm", 2.0, 4.0, 8.0),
            "to ground": change("it touches ground beyond the panel", nominal={"to_ground_ohm": 0.1}),
            "pinched": change(
                "a staple or edge took it to ground",
                {"to_ground_ohm": 2.0, "way": HURT},
                {"to_ground_ohm": 0.3, "way": HURT},
                {"to_ground_ohm": 0.05, "way": HURT},
            ),
            "shared": graded("another circuit uses it too", "shared_ohm", 120.0, 60.0, 40.0),
        },
    ),
    Component(
        "plug_fuse",
        "plug fuse in the switch box",
        {"fitted": 0, "blown": 0, "rating": 15.0, "right": 1},
        {
            "open": change("it has blown", nominal={"blown": 1, "fitted": 1}),
            "wrong size": change(
                "too small a fuse has blown", nominal={"blown": 1, "fitted": 1, "rating": 3.0, "right": 0}
            ),
        },
        {"plug_fuse": "yes"},
    ),
    Component(
        "service_switch",
        "service switch",
        {"position": "on", "open": 0, "ohm": 0.01, "by": "nobody knows"},
        {
            "off": change(
                "somebody switched it off", nominal={"position": "off", "by": "somebody by mistake"}
            ),
            "off for work": change(
                "it was switched off for work on the house",
                nominal={"position": "off", "by": "somebody for work on the house"},
            ),
            "open": change("it is on and passes nothing", nominal={"open": 1}),
            "resistance": graded("its contacts are burnt", "ohm", 3.0, 6.0, 12.0),
        },
    ),
    Component(
        "receptacle",
        "receptacle that the furnace's cord is plugged into",
        {"open": 0},
        {"lost its grip": change("it has power and does not pass it to the plug", nominal={"open": 1})},
        {"feed": "cord"},
    ),
    Component(
        "cord",
        "cord from the receptacle to the furnace",
        {"open": 0},
        {"open": change("its hot is broken inside", nominal={"open": 1})},
        {"feed": "cord"},
    ),
    Component(
        "line_wire",
        "hot wire from the service switch to the furnace",
        {
            "ohm": 0.02,
            "open": 0,
            "to_ground_ohm": 1e10,
            "across_ohm": 1e10,
            "way": "clear of everything",
        },
        {
            "open": change("it has come apart", nominal={"open": 1}),
            "resistance": graded("a bad splice in it", "ohm", 2.0, 4.0, 8.0),
            "to ground": change(
                "pinched at the knockout of its box",
                {"to_ground_ohm": 3.0, "way": EDGE},
                {"to_ground_ohm": 0.2, "way": EDGE},
                {"to_ground_ohm": 0.05, "way": EDGE},
            ),
            "across": change(
                "a screw joins it to the neutral",
                {"across_ohm": 2.0, "way": HURT},
                {"across_ohm": 0.3, "way": HURT},
                {"across_ohm": 0.05, "way": HURT},
            ),
        },
    ),
    Component(
        "polarity",
        "which of the two supply wires is which",
        {"swapped": 0},
        {"swapped": change("hot and neutral are swapped in the junction box", nominal={"swapped": 1})},
    ),
    Component(
        "ground_wire",
        "ground from the furnace to the panel",
        {"ohm": 0.1, "open": 0},
        {
            "open": change("it is not connected", nominal={"open": 1}),
            "resistance": graded("a rusted joint", "ohm", 5e5, 2e6, 1e7),
        },
    ),
    Component(
        "burner_bond",
        "bond between the burner and the cabinet's ground screw",
        {"ohm": 0.05, "open": 0},
        {
            "open": change("the burner is not bonded", nominal={"open": 1}),
            "resistance": graded("rust or paint in the joint", "ohm", 4e6, 1.2e7, 3e7),
        },
    ),
    Component(
        "door_switch",
        "door switch",
        {"open": 0, "ohm": 0.01},
        {
            "open": change("it does not close with its lever pressed", nominal={"open": 1}),
            "resistance": graded("burnt contacts", "ohm", 3.0, 8.0, 20.0),
        },
    ),
    Component(
        "door",
        "furnace door",
        {"seated": 1},
        {"not seated": change("it does not press the door switch", nominal={"seated": 0})},
    ),
)
