"""All components of the simulated house, by name."""

from assistant.rig.part import Component
from assistant.rig.parts import air, board, branch, burner, control, fan, line, vent, zone

COMPONENTS: dict[str, Component] = {
    component.name: component
    for module in (line, branch, control, board, vent, burner, air, fan, zone)
    for component in module.COMPONENTS
}
