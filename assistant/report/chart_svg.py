"""A diagram as SVG 1.1, its sheets one under the other; plain text, no Qt."""

from __future__ import annotations

from xml.sax.saxutils import escape

from assistant.plain import one_line
from assistant.tree.chart.marks import Box, Chart, Line, Mark, Words

INKS = {"ink": "#111111", "quiet": "#555555", "paper": "#ffffff", "soft": "#e4e4e4"}
ARROW = 5.0
"""Length of an arrow's head, in points."""


def to_svg(chart: Chart) -> str:
    """The text of the SVG file. Letters are as wide as in DejaVu Sans, which is asked for first."""
    height = chart.height * len(chart.sheets)
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="{chart.width:.1f}pt" '
        f'height="{height:.1f}pt" viewBox="0 0 {chart.width:.1f} {height:.1f}" '
        f'font-family="DejaVu Sans, Verdana, sans-serif">',
        f"<title>{escape(one_line(chart.title))}</title>",
        f'<rect width="100%" height="100%" fill="{INKS["paper"]}"/>',
    ]
    for number, sheet in enumerate(chart.sheets):
        lines.append(f'<g transform="translate(0 {number * chart.height:.1f})">')
        lines += map(_mark, sheet.marks)
        lines.append("</g>")
    return "\n".join([*lines, "</svg>", ""])


def _mark(mark: Mark) -> str:
    if isinstance(mark, Words):
        bold = ' font-weight="bold"' if mark.bold else ""
        anchor = "" if mark.anchor == "start" else f' text-anchor="{mark.anchor}"'
        return (f'<text x="{mark.x:.1f}" y="{mark.y:.1f}" font-size="{mark.size:g}" '
                f'fill="{INKS[mark.ink]}"{bold}{anchor}>{escape(one_line(mark.text))}</text>')
    if isinstance(mark, Box):
        fill = INKS[mark.fill] if mark.fill else "none"
        stroke = f' stroke="{INKS["ink"]}" stroke-width="{mark.weight:g}"' if mark.weight else ""
        dash = ' stroke-dasharray="4 3"' if mark.dashed else ""
        return (f'<rect x="{mark.x:.1f}" y="{mark.y:.1f}" width="{mark.width:.1f}" '
                f'height="{mark.height:.1f}" rx="{mark.round:g}" fill="{fill}"{stroke}{dash}/>')
    assert isinstance(mark, Line)
    points = " ".join(f"{x:.1f},{y:.1f}" for x, y in mark.points)
    drawn = (f'<polyline points="{points}" fill="none" stroke="{INKS[mark.ink]}" '
             f'stroke-width="{mark.weight:g}"/>')
    if not mark.arrow:
        return drawn
    head = " ".join(f"{x:.1f},{y:.1f}" for x, y in arrow_head(mark))
    return f'{drawn}<polygon points="{head}" fill="{INKS[mark.ink]}"/>'


def arrow_head(line: Line) -> list[tuple[float, float]]:
    """The three corners of the head at the end of a line that comes flat or upright."""
    (x1, y1), (x, y) = line.points[-2:]
    size = ARROW + line.weight
    if abs(x1 - x) > abs(y1 - y):
        back = -size if x > x1 else size
        return [(x, y), (x + back, y - size / 2), (x + back, y + size / 2)]
    back = -size if y > y1 else size
    return [(x, y), (x - size / 2, y + back), (x + size / 2, y + back)]
