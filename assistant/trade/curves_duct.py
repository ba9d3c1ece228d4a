"""Duct friction on one sheet: a line for each size, the usable window across it, and the duct's own place."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.trade.constants import CUBIC_FOOT, KELVIN_AT_70F
from assistant.trade.duct_friction import ROUGHNESS
from assistant.trade.friction import drop_per_metre
from assistant.trade.plotted import Axis, Band, Curve, Mark, Plot, cfm, plotted, steps
from assistant.trade.unit import from_si, to_si

CFM = CUBIC_FOOT / 60
SIZES = (4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 24, 30, 36)
WINDOW = Band(0.06, 0.18, "usable in a house")
"""In. w.c. for 100 ft (from memory)."""
NEAR = 3
"""Sizes drawn to each side of the duct's own."""


@plotted("duct_friction", "friction_rate", "duct_flow", "duct_size")
def friction(values: Mapping, outcome: Mapping) -> Plot | None:
    """Friction rate against flow, both by equal factors."""
    material = values.get("material", "galvanized")
    air = (values.get("altitude", 0.0), values.get("temperature", KELVIN_AT_70F))
    rough = ROUGHNESS[material]
    diameter = outcome["result"] if "diameter" not in values else values["diameter"]
    flow = outcome["result"] if "airflow" not in values else values["airflow"]
    if flow <= 0 or diameter <= 0:
        return None
    own = from_si(drop_per_metre(flow, diameter, rough, *air), "inwc100ft")
    inches = from_si(diameter, "in")
    nearest = min(range(len(SIZES)), key=lambda i: abs(SIZES[i] - inches))
    sizes = SIZES[max(0, nearest - NEAR) : nearest + NEAR + 1]
    low, high = cfm(flow) / 6, cfm(flow) * 6
    bottom, top = min(0.02, own / 2), max(0.5, own * 2)
    curves = []
    for size in sizes:
        points = [
            (q, from_si(drop_per_metre(q * CFM, to_si(size, "in"), rough, *air), "inwc100ft"))
            for q in steps(low, high, 40, log=True)
        ]
        curves.append(Curve(tuple(points), f"{size} in", faint=abs(size - inches) > 0.01))
    mark = Mark(cfm(flow), own, f"{inches:.3g} in, {cfm(flow):.0f} cfm")
    where = "within" if WINDOW.low <= own <= WINDOW.high else "above" if own > WINDOW.high else "below"
    return Plot(
        f"Friction of round duct, {material.replace('-', ' ')}",
        Axis("airflow", "cfm", low, high, log=True),
        Axis("friction", "inwc100ft", bottom, top, log=True),
        tuple(curves),
        (mark,),
        (WINDOW,),
        f"Duct friction. {mark.words} loses {own:.3g} in. w.c. in 100 ft, {where} what is usable in a house.",
    )
