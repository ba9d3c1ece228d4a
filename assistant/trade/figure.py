"""How a number stands in a formula or sentence: enough digits to follow the arithmetic, none to brag."""

from __future__ import annotations

import math

from assistant.trade.unit import from_si, symbol


def plain(value: float) -> str:
    """A number in four significant figures, whole above a thousand: 120 -> "120", 84272.7 -> "84273"."""
    if math.isinf(value):
        return "infinity" if value > 0 else "-infinity"
    if value and abs(value) < 1e-4:
        return f"{value:.3e}"
    text = f"{value:.0f}" if abs(value) >= 1000 else f"{value:.4g}"
    return "0" if text == "-0" else text


def figure(value: float, unit: str) -> str:
    """An SI value as a bare number in `unit` (none: as it is)."""
    return plain(from_si(value, unit))


def with_unit(value: float, unit: str) -> str:
    """An SI value as text with its unit: 325.9278 K in F -> "127 °F"."""
    return f"{figure(value, unit)} {symbol(unit)}".strip()
