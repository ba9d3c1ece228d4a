"""How wide text is, so that it can be broken into lines without a screen.

The widths are those of DejaVu Sans, the font that comes with the program, in thousandths of its size,
computed from the font. Other characters count as a wide letter.
"""

from __future__ import annotations

_PLAIN = (
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636,
    636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752,
    295, 295, 656, 557, 863, 748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390,
    838, 500, 500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411,
    521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838,
)  # fmt: skip
_BOLD = (
    348, 456, 521, 838, 696, 1002, 872, 306, 457, 457, 523, 838, 380, 415, 380, 365, 696, 696, 696, 696,
    696, 696, 696, 696, 696, 696, 400, 400, 838, 838, 838, 580, 1000, 774, 762, 734, 830, 683, 683, 821,
    837, 372, 372, 775, 637, 995, 837, 850, 733, 850, 770, 720, 682, 812, 774, 1103, 771, 724, 725, 457,
    365, 457, 838, 500, 500, 675, 716, 593, 716, 678, 435, 716, 712, 343, 343, 665, 343, 1042, 712, 687,
    716, 716, 493, 595, 478, 712, 652, 924, 645, 652, 582, 712, 365, 712, 838,
)  # fmt: skip
_OTHER = {"\u00a0": 318, "→": 838, "▸": 502, "·": 380, "°": 500, "…": 1000, "×": 838, "–": 500}
_FIRST, _DEFAULT = 32, 700


def width(text: str, size: float, bold: bool = False) -> float:
    """The width of a line in the unit of `size`."""
    table = _BOLD if bold else _PLAIN
    total = 0
    for letter in text:
        place = ord(letter) - _FIRST
        total += table[place] if 0 <= place < len(table) else _OTHER.get(letter, _DEFAULT)
    return total * size / 1000


def wrap(text: str, room: float, size: float, bold: bool = False, most: int = 99) -> list[str]:
    """The text in lines no wider than `room`, at most `most` of them; what is too much ends in "…". A
    number and its unit stay together where a no-break space joins them."""
    lines: list[str] = []
    line = ""
    for word in text.replace("\n", " ").split(" "):
        if not word:
            continue
        longer = f"{line} {word}" if line else word
        if width(longer, size, bold) <= room:
            line = longer
            continue
        if line:
            lines.append(line)
        while width(word, size, bold) > room and len(word) > 1:  # a word wider than the room is cut
            sizes = range(len(word) - 1, 0, -1)
            cut = next(n for n in sizes if n == 1 or width(word[:n], size, bold) <= room)
            lines.append(word[:cut])
            word = word[cut:]
        line = word
    if line:
        lines.append(line)
    if len(lines) <= most:
        return lines
    kept = lines[:most]
    last = kept[-1]
    while last and width(last + " …", size, bold) > room:
        last = last[:-1].rstrip()
    return [*kept[:-1], last + " …"]
