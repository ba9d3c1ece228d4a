"""The few physical constants the trade's formulas share, in SI, each with its source.

Conversions of what a person types belong to assistant/quantity; these are only the factors inside formulas.
"""

ATMOSPHERE = 101_325.0
"""Standard atmospheric pressure at sea level, Pa (14.696 psia)."""

KELVIN_AT_70F = 294.2611111111111
"""70 °F, the temperature of standard air, K (529.67 °R)."""

LB_FT3 = 16.018463373960142
"""One lb/ft³ in kg/m³ (exact by definition of pound and foot)."""

STANDARD_DENSITY = 0.075 * LB_FT3
"""Standard air, kg/m³: 0.075 lb/ft³ at sea level and 70 °F (2008 Residential Appendices RA3.3.3.1, read)."""

AIR_HEAT = 0.24 * 4186.8
"""Heat capacity of air, J/(kg·K): 0.24 Btu/(lb·°F), the trade's figure behind 1.08 (read)."""

FOOT = 0.3048
INCH = 0.0254
CUBIC_FOOT = FOOT**3
INCH_WATER = 249.08891
"""One inch of water column at 4 °C, Pa."""
BTU = 1055.05585262
"""International-table Btu, J."""
