"""Reads back what Qt writes into a PDF: pages, their size, the text on each and where it stands.

Just enough of ISO 32000-1 (PDF 1.7) for this: objects, flate streams, pages (7.7.3), text operators (9.4)
and the ToUnicode maps of fonts (9.10.3).
"""

from __future__ import annotations

import re
import zlib
from dataclasses import dataclass, field


@dataclass
class Page:
    width: float
    height: float
    text: str = ""
    fonts: set = field(default_factory=set)
    images: int = 0
    spots: list = field(default_factory=list)
    """(x, y) in points from the top left, for each piece of text."""


def pages(data: bytes) -> list[Page]:
    objects = {int(m[1]): m[2] for m in re.finditer(rb"(\d+) 0 obj(.*?)endobj", data, re.DOTALL)}
    tree = next(body for body in objects.values() if b"/Type /Pages" in body)
    return [_page(objects, int(n)) for n in re.findall(rb"(\d+) 0 R", tree.partition(b"]")[0])]


def title(data: bytes) -> str:
    raw = re.search(rb"/Title \(\xfe\xff(.*?)\)\n", data, re.DOTALL)[1]
    return raw.decode("utf-16-be")


def images(data: bytes) -> list[bytes]:
    """The bytes of every picture."""
    return [m[1] for m in re.finditer(rb"/DCTDecode\n>>\nstream\r?\n(.*?)\r?\nendstream", data, re.DOTALL)]


def _page(objects, number) -> Page:
    body = objects[number]
    box = [float(v) for v in re.search(rb"/MediaBox \[([^\]]*)\]", body)[1].split()]
    content = _stream(objects, int(re.search(rb"/Contents (\d+) 0 R", body)[1])).decode("latin-1")
    resources = objects[int(re.search(rb"/Resources (\d+) 0 R", body)[1])]
    maps = {
        name.decode(): _unicode(objects, int(n)) for name, n in re.findall(rb"/(F\d+) (\d+) 0 R", resources)
    }
    page = Page(box[2], box[3], images=len(re.findall(rb"/Im\d+ \d+ 0 R", resources)))
    _run(page, content, maps)
    return page


def _run(page: Page, content: str, maps) -> None:
    """Follows the transforms that Qt writes (scale and shift) and collects the text."""
    stack, matrix, font, at = [], (1.0, 1.0, 0.0, 0.0), "", (0.0, 0.0)
    flip, out = 1.0, []
    pattern = re.compile(
        r"(?P<cm>(?:[-\d.]+ ){6}cm)|(?P<save>\bq\b)|(?P<back>\bQ\b)"
        r"|/(?P<font>F\d+) [\d.]+ Tf|(?P<tm>(?:[-\d.]+ ){6}Tm)"
        r"|(?P<td>[-\d.]+ [-\d.]+ Td)|<(?P<hex>[0-9A-Fa-f]+)> Tj"
    )
    for found in pattern.finditer(content):
        kind, text = found.lastgroup, found[found.lastgroup]
        if kind == "save":
            stack.append(matrix)
        elif kind == "back":
            matrix = stack.pop() if stack else matrix
        elif kind == "cm":
            a, _, _, d, e, f = (float(v) for v in text.split()[:6])
            sx, sy, x, y = matrix
            matrix = (sx * a, sy * d, x + sx * e, y + sy * f)
        elif kind == "font":
            font = text
            page.fonts.add(text)
        elif kind == "tm":
            values = [float(v) for v in text.split()[:6]]
            flip, at = values[3], (values[4], values[5])
        elif kind == "td":
            x, y = (float(v) for v in text.split()[:2])
            at = (at[0] + x, at[1] + flip * y)
        else:
            sx, sy, x, y = matrix
            page.spots.append((x + sx * at[0], page.height - (y + sy * at[1])))
            codes = [text[i : i + 4] for i in range(0, len(text), 4)]
            out.append("".join(maps[font].get(int(code, 16), "\ufffd") for code in codes))
    page.text = "".join(out)


def _stream(objects, number) -> bytes:
    head, _, rest = objects[number].partition(b"stream")
    raw = rest.rpartition(b"endstream")[0].lstrip(b"\r").removeprefix(b"\n")
    return zlib.decompressobj().decompress(raw) if b"/FlateDecode" in head else raw


def _unicode(objects, number) -> dict[int, str]:
    to_unicode = re.search(rb"/ToUnicode (\d+) 0 R", objects[number])
    text = _stream(objects, int(to_unicode[1])).decode("latin-1")
    out = {}
    for block in re.findall(r"beginbfchar(.*?)endbfchar", text, re.DOTALL):
        for code, to in re.findall(r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>", block):
            out[int(code, 16)] = bytes.fromhex(to).decode("utf-16-be")
    for block in re.findall(r"beginbfrange(.*?)endbfrange", text, re.DOTALL):
        for first, last, to in re.findall(
            r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*(\[.*?\]|<[0-9A-Fa-f]+>)", block
        ):
            many = re.findall(r"<([0-9A-Fa-f]+)>", to)
            for place, code in enumerate(range(int(first, 16), int(last, 16) + 1)):
                if to.startswith("["):
                    out[code] = bytes.fromhex(many[place]).decode("utf-16-be")
                else:
                    start = bytes.fromhex(many[0])
                    out[code] = (
                        (int.from_bytes(start, "big") + place).to_bytes(len(start), "big").decode("utf-16-be")
                    )
    return out


def squeezed(text: str) -> str:
    """Without spaces: how a line is broken is not what these tests are about."""
    return "".join(text.split())
