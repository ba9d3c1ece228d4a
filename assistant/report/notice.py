"""The two sentences that stand on every report and on the first start."""

from __future__ import annotations

NOTICE = (
    "This helps a qualified person to find a fault and to show what was found; it does not replace one.",
    "Local codes, the equipment's own instructions and licensed practice come first.",
)
