"""Whether text can be read on its ground: contrast by Web Content Accessibility Guidelines 2.1 (2018), 1.4.3.

The guideline asks 4.5 : 1 for text and (1.4.11) 3 : 1 for the outline of something that can be pressed.
"""

from __future__ import annotations

from PySide6.QtGui import QColor

TEXT = 4.5
OUTLINE = 3.0


def luminance(colour: QColor) -> float:
    """Relative luminance, 0 (black) to 1 (white)."""

    def linear(part: float) -> float:
        return part / 12.92 if part <= 0.03928 else ((part + 0.055) / 1.055) ** 2.4

    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) + 0.0722 * linear(colour.blueF())


def ratio(one: QColor, other: QColor) -> float:
    """Contrast ratio, 1 to 21; the order of the two does not matter."""
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def mix(one: QColor, other: QColor, share: float) -> QColor:
    """`share` of `one`, the rest of `other`; share from 0 to 1."""
    return QColor.fromRgbF(
        *(
            min(1.0, max(0.0, a * share + b * (1 - share)))
            for a, b in (
                (one.redF(), other.redF()),
                (one.greenF(), other.greenF()),
                (one.blueF(), other.blueF()),
            )
        )
    )


def readable(wish: QColor, ground: QColor, ink: QColor, least: float = TEXT) -> QColor:
    """`wish`, moved toward `ink` only as far as it takes to reach `least` on `ground`."""
    for step in range(21):
        tried = mix(ink, wish, step / 20)
        if ratio(tried, ground) >= least:
            return tried
    return ink
