"""All components of the simulated house, by name."""

from assistant.rig.part import Component
from assistant.rig.parts import air, board, burner, control, line, vent, zone

COMPONENTS: dict[str, Component] = {
    component.name: component
    for module in (line, control, board, vent, burner, air, zone)
    for component in module.COMPONENTS
}
