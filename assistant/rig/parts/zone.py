"""Zone panel and dampers."""

from assistant.rig.part import Component, change

COMPONENTS = (
    Component(
        "zone_panel",
        "zone panel",
        {"fitted": 0, "relay_dead": 0, "fuse": 0, "delay": 60.0, "heat_locked": 0, "g_relay_dead": 0},
        {
            "relay dead": change("it does not pass the heat call", nominal={"relay_dead": 1, "fitted": 1}),
            "fuse blown": change("its own fuse has blown", nominal={"fuse": 1, "fitted": 1}),
            "wrong setting": change("its menu holds heat back", nominal={"heat_locked": 1, "fitted": 1}),
        },
    ),
    Component(
        "panel_wire",
        "wire from the zone panel to the furnace",
        {"w_open": 0},
        {"open": change("it is broken", nominal={"w_open": 1, "zone_panel.fitted": 1})},
    ),
)
