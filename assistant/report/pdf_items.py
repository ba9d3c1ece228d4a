"""The report's blocks as things of a known height that can be put on a page one below the other."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPen

from assistant.report.blocks import (
    Block,
    Cell,
    Heading,
    Pairs,
    Picture,
    Pictures,
    Points,
    Table,
    ToSign,
    Words,
)
from assistant.report.pdf_text import Set, Style, Typesetter
from assistant.report.photo import picture

Draw = Callable[[QPainter, float], None]
RULE, BAR = QColor("#8a8a8a"), QColor("#222222")
BODY, SMALL = Style(9.5), Style(8)
FAINT = Style(7, grey=True)
CELL, CELL_SMALL, HEAD = Style(8.5), Style(7), Style(7.5, bold=True)
WEIGHTS = {"plain": BODY, "strong": Style(10, bold=True), "small": SMALL, "notice": Style(9), "faint": FAINT}
HEADINGS = {1: Style(17, bold=True), 2: Style(11.5, bold=True), 3: Style(9.5, bold=True)}
LONGEST_CAPTION = 300
MARKS = {"dot": "\u2022", "done": "\u2713", "open": "\u2610"}


@dataclass
class Item:
    """`gap` is left above it unless it begins a page; `keep`: the next item stays on the same page."""

    height: float
    draw: Draw
    gap: float = 0.0
    keep: bool = False
    new_page: bool = False
    head: Item | None = None
    """Drawn once more where this item begins a page: the head of its table."""


class Blocks:
    """Turns blocks into items for a body of `width` x `height` device units."""

    def __init__(self, setter: Typesetter, width: float, height: float) -> None:
        self.set, self.width, self.height = setter, width, height
        self.u = setter.unit

    def items(self, block: Block, first: bool) -> Iterator[Item]:
        if isinstance(block, Heading):
            yield from self._heading(block, first)
        elif isinstance(block, Words):
            yield from self._words(block)
        elif isinstance(block, Points):
            points = [self._point(text, block.mark, number == 0) for number, text in enumerate(block.items)]
            yield from _together(points)
        elif isinstance(block, Pairs):
            widths = (block.share, 100 - block.share)
            rows = [
                self._row((Cell(name), Cell(value)), widths, 1.5 if number else 5, None, ruled=False)
                for number, (name, value) in enumerate(block.items)
            ]
            yield from _together(rows)
        elif isinstance(block, Table):
            yield from self._table(block)
        elif isinstance(block, Picture):
            yield from self._picture(block)
        elif isinstance(block, Pictures):
            yield self._side_by_side(block)
        elif isinstance(block, ToSign):
            yield self._to_sign(block)

    def _to_sign(self, block: ToSign) -> Item:
        """Room to write, a rule, and the words below; the first has twice the width of the others."""
        share = self.width / (len(block.names) + 1)
        room, gap = 30 * self.u, 16 * self.u
        texts = [self.set.column([(name, SMALL)], share) for name in block.names]

        def draw(painter: QPainter, y: float) -> None:
            left = 0.0
            for number, text in enumerate(texts):
                wide = share * (1 if number else 2)
                painter.setPen(QPen(BAR, 0.6 * self.u))
                painter.drawLine(QPointF(left, y + room), QPointF(left + wide - gap, y + room))
                text.draw(painter, left, y + room + 2 * self.u)
                left += wide

        return Item(room + 2 * self.u + max(text.height for text in texts), draw, 8 * self.u)

    def _heading(self, block: Heading, first: bool) -> Iterator[Item]:
        """A heading of somebody's own words may be longer than a page."""
        text = self.set.column([(block.text, HEADINGS[block.level])], self.width)
        gap = {1: 0, 2: 15, 3: 8}[block.level] * self.u
        after = {1: 8, 2: 3, 3: 1}[block.level] * self.u
        for start, end in text.cut(self.height - gap - after):

            def draw(painter: QPainter, y: float, start: float = start, end: float = end) -> None:
                text.draw(painter, 0, y, start, end)

            last = end == text.height
            new_page = block.level == 1 and not first and start == 0
            yield Item(
                end - start + after * last, draw, gap * (start == 0), keep=last, new_page=new_page
            )

    def _words(self, block: Words) -> Iterator[Item]:
        notice = block.weight == "notice"
        inset = 9 * self.u if notice else 0.0
        text = self.set.column([(block.text, WEIGHTS[block.weight])], self.width - 2 * inset)
        pad = 5 * self.u if notice else 0.0
        for start, end in text.cut(self.height - 4 * pad):
            item = self._paragraph(text, start, end, inset, pad)
            item.keep = block.weight in ("strong", "faint")  # these stand over what they speak of
            yield item

    def _paragraph(self, text: Set, start: float, end: float, inset: float, pad: float) -> Item:
        height = end - start + 2 * pad

        def draw(painter: QPainter, y: float) -> None:
            if pad:
                painter.setPen(QPen(RULE, 0.6 * self.u))
                painter.drawRect(QRectF(0, y, self.width, height))
                painter.fillRect(QRectF(0, y, 3 * self.u, height), QBrush(BAR))
            painter.setPen(Qt.GlobalColor.black)
            text.draw(painter, inset, y + pad, start, end)

        return Item(height, draw, (8 if pad else 4) * self.u)

    def _point(self, words: str, mark: str, first: bool) -> Iterator[Item]:
        inset = 13 * self.u
        sign = self.set.column([(MARKS[mark], BODY)], inset)
        text = self.set.column([(words, BODY)], self.width - inset)
        for start, end in text.cut(self.height):

            def draw(painter: QPainter, y: float, start: float = start, end: float = end) -> None:
                if start == 0:
                    sign.draw(painter, 0, y)
                text.draw(painter, inset, y, start, end)

            yield Item(end - start, draw, (4 if first else 1.5) * self.u)

    def _table(self, table: Table) -> Iterator[Item]:
        heads = tuple(Cell(head) for head in table.heads)
        (head,) = self._row(heads, table.widths, 7, None, style=HEAD)
        head.keep = True
        yield head
        for row, after in zip(table.rows, (*table.rows[1:], None), strict=True):
            belongs = after is not None and row[0].text and not after[0].text
            for item in self._row(row, table.widths, 0, head):
                item.keep = bool(belongs)
                yield item

    def _row(
        self,
        cells: tuple[Cell, ...],
        widths: tuple[int, ...],
        gap: float,
        head: Item | None,
        ruled: bool = True,
        style: Style = CELL,
    ) -> Iterator[Item]:
        """A row, cut where it is higher than most of a page."""
        pad = 2.6 * self.u if ruled else 0.0
        if len(cells) > 1 and cells[-1].empty:
            cells, widths = cells[:-1], (*widths[:-2], widths[-2] + widths[-1])
        lefts = [self.width * sum(widths[:place]) / 100 for place in range(len(widths))]
        columns = [
            self.set.column(_paragraphs(cell, style), self.width * width / 100 - 6 * self.u)
            for cell, width in zip(cells, widths, strict=True)
        ]
        most = self.height * 0.6
        pieces = [column.cut(most) for column in columns]
        for part in range(max(len(piece) for piece in pieces)):
            spans = [piece[part] if part < len(piece) else (0.0, 0.0) for piece in pieces]
            height = max(end - start for start, end in spans) + 2 * pad

            def draw(painter: QPainter, y: float, spans: list = spans, height: float = height) -> None:
                painter.setPen(Qt.GlobalColor.black)
                for column, left, (start, end) in zip(columns, lefts, spans, strict=True):
                    column.draw(painter, left, y + pad, start, end)
                if ruled:
                    painter.setPen(QPen(RULE, (0.9 if style is HEAD else 0.4) * self.u))
                    painter.drawLine(
                        QRectF(0, y + height, self.width, 0).topLeft(),
                        QRectF(self.width, y + height, 0, 0).topLeft(),
                    )

            yield Item(height, draw, gap * self.u if part == 0 else 0, head=head)

    def _picture(self, block: Picture) -> Iterator[Item]:
        image = picture(block.photo)
        text = self.set.column([(_below(block, image), SMALL)], self.width)
        if image is None:
            yield Item(text.height, lambda painter, y: text.draw(painter, 0, y), 6 * self.u)
            return
        scale = min(self.width * 0.62 / image.width(), self.height * 0.4 / image.height(), 72 * self.u / 150)
        width, height = image.width() * scale, image.height() * scale

        def draw(painter: QPainter, y: float) -> None:
            painter.drawImage(QRectF(0, y, width, height), image)
            painter.setPen(Qt.GlobalColor.black)
            text.draw(painter, 0, y + height + 3 * self.u)

        yield Item(height + 3 * self.u + text.height, draw, 8 * self.u)

    def _side_by_side(self, block: Pictures) -> Item:
        """Two photos in one row, each with its words below."""
        half = self.width / 2
        drawn = []
        for place, each in enumerate(block.items):
            image = picture(each.photo) if each is not None else None
            text = self.set.column([(_below(each, image) if each else "", SMALL)], half - 8 * self.u)
            wide = tall = 0.0
            if image is not None:
                scale = min((half - 8 * self.u) / image.width(), self.height * 0.3 / image.height())
                wide, tall = image.width() * scale, image.height() * scale
            drawn.append((place * half, image, wide, tall, text))
        top = max(tall for _, _, _, tall, _ in drawn)

        def draw(painter: QPainter, y: float) -> None:
            for left, image, wide, tall, text in drawn:
                if image is not None:
                    painter.drawImage(QRectF(left, y, wide, tall), image)
                painter.setPen(Qt.GlobalColor.black)
                text.draw(painter, left, y + top + 3 * self.u)

        return Item(top + 3 * self.u + max(text.height for *_, text in drawn), draw, 8 * self.u)


def _below(block: Picture, image: object) -> str:
    """The words below a picture, and why there is none. Who writes a page about it finds it in the trail."""
    words = block.caption
    if len(words) > LONGEST_CAPTION:
        words = f"{words[:LONGEST_CAPTION]} \u2026 (the rest stands in the trail)"
    lost = image is None and block.photo.data is not None
    return f"{words} (this file is no picture that can be shown)" if lost else words


def _paragraphs(cell: Cell, style: Style) -> list[tuple[str, Style]]:
    said = [(cell.text, Style(style.size, style.bold, cell.struck))] if cell.text else []
    return said + [(line, CELL_SMALL) for line in cell.small] + [(line, FAINT) for line in cell.faint]


def _together(groups: list[Iterator[Item]]) -> Iterator[Item]:
    """The items of a list; its first stays on a page with the second, so that no heading stands over one
    line."""
    for number, group in enumerate(groups):
        for item in group:
            item.keep = number == 0 and len(groups) > 1
            yield item
