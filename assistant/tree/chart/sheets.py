"""Lays the rows of a tree on sheets: down a column, then the next, then the next sheet."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.house.model import Vocabulary
from assistant.tree.chart import wording
from assistant.tree.chart.connect import Branch, connect, crossings
from assistant.tree.chart.lanes import Lane, lanes_of
from assistant.tree.chart.lettering import wrap
from assistant.tree.chart.marks import Box, Chart, Line, Mark, Sheet, Words
from assistant.tree.chart.rows import (
    ANSWER,
    ARROW,
    COLUMN,
    EXIT,
    LEAD,
    PAD,
    SMALL,
    TRUNK,
    Exit,
    Row,
    Rows,
)
from assistant.tree.check.graph import Graph
from assistant.tree.model import Do, Finding, Measure, Stop, Tree, Watch

GUTTER, MARGIN, HEAD, FOOT = 26.0, 30.0, 34.0, 26.0
PAPERS = {"a3": (3, 297 / 420), "tabloid": (3, 11 / 17), "a4": (2, 210 / 297), "letter": (2, 8.5 / 11)}
"""Columns on a sheet that lies on its side, and its height over its width."""
HEAVY, PLAIN, FINE = 2.8, 0.8, 0.5
BAR = 13.0
"""Height of the bar over a lane that says where it comes from."""
DEFER = ("Local codes, the equipment's instructions and licensed practice come first. Prove it dead before "
         "you touch it.")


@dataclass(frozen=True)
class Walked:
    """A walk to be drawn into the diagram: the ways gone, and where it stands now."""

    ways: frozenset[tuple[str, str]] = frozenset()
    steps: frozenset[str] = frozenset()
    here: str | None = None


def draw(tree: Tree, vocabulary: Vocabulary, titles: dict[str, str], paper: str = "a3",
         walked: Walked = Walked(), errors: dict[str, list[str]] | None = None,
         unfolded: frozenset[str] | None = None) -> Chart:
    """The diagram of a tree. `titles` gives the titles of trees by name; `errors` what is wrong at a step;
    `unfolded` the steps whose lanes are drawn in full, None for all of them."""
    graph = Graph(tree)
    lanes = lanes_of(graph, unfolded)
    rows = Rows(graph, vocabulary, titles, lanes, errors or {}, walked.steps, walked.here)
    return _Layout(tree, paper, rows, walked).of(lanes)


class _Layout:
    def __init__(self, tree: Tree, paper: str, rows: Rows, walked: Walked) -> None:
        self.tree, self.rows, self.walked = tree, rows, walked
        self.columns, ratio = PAPERS[paper]
        self.width = self.columns * COLUMN + (self.columns - 1) * GUTTER + 2 * MARGIN
        self.height = self.width * ratio
        self.bottom = self.height - MARGIN - FOOT
        self.top = MARGIN + HEAD
        self.sheets: list[Sheet] = []
        self.column, self.y = 0, self.top
        self.refers: list[tuple[Sheet, Words, str]] = []
        self.branches: list[tuple[Sheet, Branch]] = []
        self.heads: dict[str, tuple[Sheet, int, float]] = {}
        self._new_sheet()

    def of(self, lanes: list[Lane]) -> Chart:
        for lane in lanes:
            self._lane(lane)
        self._mention_ends()
        self._index()
        for sheet, words, step in self.refers:
            there = next((one.number for one in self.sheets if step in one.places), None)
            note = "   folded away" if there is None else "" if there == sheet.number else f"   sheet {there}"
            sheet.marks.append(Words(words.x, words.y, words.text + note, words.size, words.bold, words.ink))
        for sheet in self.sheets:
            here = [branch for at, branch in self.branches if at is sheet]
            heads = {step: (column, y) for step, (at, column, y) in self.heads.items() if at is sheet}
            sheet.marks += connect(here, heads, self._x, GUTTER, HEAVY, FINE)
            self._frame(sheet)
        crossed = sum(crossings(sheet.marks) for sheet in self.sheets)
        return Chart(self.tree.title, self.width, self.height, tuple(self.sheets), crossed, self.rows.numbers)

    def _mention_ends(self) -> None:
        """An end that only "can't be taken" leads to has no box; its place is the box that names it."""
        for name, edges in self.rows.graph.out.items():
            sheet = next((one for one in self.sheets if name in one.places), None)
            for edge in edges if sheet else ():
                if not any(edge.to in one.places for one in self.sheets):
                    sheet.places[edge.to] = sheet.places[name]

    def _index(self) -> None:
        """The findings with their numbers and sheets, after the last lane."""
        found = [name for name in self.rows.numbers if isinstance(self.tree.steps[name], Finding)
                 and any(name in sheet.places for sheet in self.sheets)]
        self.y += 8
        for place, name in enumerate(found):
            title = wrap(self.tree.steps[name].title, COLUMN - 90, SMALL)
            if place == 0 or self.y + len(title) * SMALL * LEAD + 3 > self.bottom:
                if self.y + 40 > self.bottom:
                    self._next_column()
                x = self._x(self.column)
                self.sheet.marks.append(Box(x, self.y, COLUMN, BAR, 0, "soft"))
                self.sheet.marks.append(Words(x + 6, self.y + 9.5, "What can be found", ANSWER, True))
                self.y += BAR + 4
            there = next((sheet.number for sheet in self.sheets if name in sheet.places), None)
            self.sheet.marks += [
                Words(x + 6, self.y + SMALL * LEAD, self.rows.numbers[name], SMALL, True),
                Words(x + COLUMN - 6, self.y + SMALL * LEAD, f"sheet {there}" if there else "", SMALL,
                      anchor="end"),
            ]
            for line in title:
                self.y += SMALL * LEAD
                self.sheet.marks.append(Words(x + 30, self.y, line, SMALL))

    @property
    def sheet(self) -> Sheet:
        return self.sheets[-1]

    def _new_sheet(self) -> None:
        self.sheets.append(Sheet(len(self.sheets) + 1))
        self.column, self.y = 0, self.top

    def _x(self, column: int) -> float:
        return MARGIN + column * (COLUMN + GUTTER)

    def _next_column(self) -> None:
        self.column, self.y = self.column + 1, self.top
        if self.column == self.columns:
            self._new_sheet()

    def _lane(self, lane: Lane) -> None:
        rows = self.rows.of(lane)
        bar = self._bar_lines(lane)
        bar_height = len(bar) * ANSWER * LEAD + 5
        if self.y + bar_height + 6 + rows[0].height > self.bottom and self.y > self.top:
            self._next_column()
        self._bar(lane, bar, bar_height)
        for place, row in enumerate(rows):
            if place and self.y + row.height > self.bottom:
                self._break(rows[place - 1], row)
            self._row(row, rows[place + 1] if place + 1 < len(rows) else None)
        self.y += 8

    def _bar_lines(self, lane: Lane) -> list[str]:
        if lane.came is None:
            start = lane.steps[0] == self.tree.start
            return ["Start here" if start else "Nothing leads here"]
        step, way = lane.came
        said = wording.answer(self.tree.steps[step], way.answers, self.rows.vocabulary)
        there = next((sheet.number for sheet in self.sheets if step in sheet.places), self.sheet.number)
        where = "" if there == self.sheet.number else f" on sheet {there}"
        text = f"from {self.rows.short(step)}{where}" + (f": {said}" if said else "")
        return wrap(text, COLUMN - 12, ANSWER, True, 2)

    def _bar(self, lane: Lane, lines: list[str], height: float) -> None:
        x = self._x(self.column)
        gone = lane.came is None or (lane.came[0], lane.steps[0]) in self.walked.ways
        self.sheet.marks.append(Box(x, self.y, COLUMN, height, 0, "soft"))
        for number, text in enumerate(lines, 1):
            y = self.y + number * ANSWER * LEAD
            self.sheet.marks.append(Words(x + 6, y, text, ANSWER, True))
        self.heads[lane.steps[0]] = (self.sheet, self.column, self.y + height / 2)
        weight = HEAVY if gone and lane.steps[0] in self.walked.steps else PLAIN
        self.y += height
        self.sheet.marks.append(Line(((x + 16, self.y), (x + 16, self.y + 8)), weight, True))
        self.y += 8

    def _break(self, before: Row, row: Row) -> None:
        """A lane that goes on in the next column."""
        x = self._x(self.column)
        text = f"on to {self.rows.short(row.step)}, top of the next {{}}"
        words = Words(x + 24, min(self.y + 3, self.bottom + 9), "", SMALL, True)
        sheet = self.sheet
        weight = HEAVY if (before.step, row.step) in self.walked.ways else PLAIN
        self._next_column()
        kind = "column" if sheet is self.sheet else "sheet"
        sheet.marks.append(Words(words.x, words.y, text.format(kind), SMALL, True))
        x = self._x(self.column)
        note = f"from {self.rows.short(before.step)}"
        self.sheet.marks.append(Words(x + 24, self.y + 7, note, SMALL, True))
        self.sheet.marks.append(Line(((x + 16, self.y), (x + 16, self.y + 14)), weight, True))
        self.y += 14

    def _row(self, row: Row, following: Row | None) -> None:
        x, top, marks = self._x(self.column), self.y, self.sheet.marks
        here, walked = row.step == self.walked.here, row.step in self.walked.steps
        self._step_box(row, x, top, here, walked)
        self._exits(row, x, top)
        self.y += row.height
        if row.onward is not None:
            weight = HEAVY if (row.step, row.onward.to) in self.walked.ways else PLAIN
            foot = top + row.box_height
            goes_on = following is not None and self.y + following.height <= self.bottom
            end = self.y - (1 if goes_on else 5)
            marks.append(Line(((x + 16, foot), (x + 16, end)), weight, True))
            for number, (text, size, bold, ink) in enumerate(row.down, 1):
                marks.append(Words(x + 24, foot + 2 + number * size * LEAD, text, size, bold, ink))

    def _step_box(self, row: Row, x: float, y: float, here: bool, walked: bool) -> None:
        step, marks, height = self.tree.steps[row.step], self.sheet.marks, row.box_height
        self.sheet.places[row.step] = (x, y, TRUNK, height)
        if here:
            marks.append(Box(x - 4, y - 4, TRUNK + 8, height + 8, 1.6, None, True))
        corner = 6 if isinstance(step, Do) else 0
        marks.append(Box(x, y, TRUNK, height, HEAVY if walked else PLAIN, round=corner))
        if isinstance(step, (Measure, Watch)):  # what is read or timed has a second line at its left
            marks.append(Line(((x + 2.6, y), (x + 2.6, y + height)), PLAIN))
        word = f"{self.rows.numbers[row.step]}  {wording.verb(step)}"
        marks.append(Words(x + TRUNK - PAD, y + PAD + 4.5, row.step, 5.5, False, "quiet", "end"))
        self._text(row.lines, x + PAD, y + PAD - 2, word)

    def _exits(self, row: Row, x: float, top: float) -> None:
        y, spine = top, x + TRUNK + 7
        arrows = []
        for one in row.exits:
            arrows.append((y + one.arrow, one))
            self._target(row, one, x + TRUNK + ARROW, y + one.arrow - one.box_height / 2)
            answer_top = y + one.arrow - 3 - sum(size * LEAD for _, size, _, _ in one.answer)
            self._text(one.answer, x + TRUNK + 11, answer_top, None)
            y += one.height
        if not arrows:
            return
        leave = min(max(arrows[0][0], top + 8), top + row.box_height - 4)
        gone = [at for at, one in arrows if (row.step, one.way.to) in self.walked.ways]
        marks = self.sheet.marks
        marks.append(Line(((x + TRUNK, leave), (spine, leave)), HEAVY if gone else PLAIN))
        ends = [leave, *(at for at, _ in arrows)]
        if max(ends) - min(ends) > 0.1:
            marks.append(Line(((spine, min(ends)), (spine, max(ends))), PLAIN))
        for at, one in arrows:
            walked = (row.step, one.way.to) in self.walked.ways
            weight = HEAVY if walked else PLAIN
            if walked:
                marks.append(Line(((spine, leave), (spine, at)), HEAVY))
            marks.append(Line(((spine, at), (x + TRUNK + ARROW, at)), weight, True))

    def _target(self, row: Row, one: Exit, x: float, y: float) -> None:
        step, marks = self.tree.steps[one.way.to], self.sheet.marks
        walked = (row.step, one.way.to) in self.walked.ways
        height, stop = one.box_height, isinstance(step, Stop)
        if one.kind == "end":
            strong = isinstance(step, Finding)
            here = walked and self.walked.here == one.way.to
            if here:
                marks.append(Box(x - 3, y - 3, EXIT + 6, height + 6, 1.6, None, True))
            weight = HEAVY if walked else 1.5 if strong else PLAIN
            marks.append(Box(x, y, EXIT, height, weight, "ink" if stop else None))
            self.sheet.places.setdefault(one.way.to, (x, y, EXIT, height))
            self._text(one.lines, x + PAD, y + PAD - 2, one.first)
            return
        marks.append(Box(x, y, EXIT, height, HEAVY if walked else FINE, None, False, height / 2.4))
        self._text([("", *one.lines[0][1:]), *one.lines[1:]], x + PAD + 3, y + PAD - 2, None)
        size = one.lines[0][1]
        at = Words(x + PAD + 3, y + PAD - 2 + size * 1.06, one.first, size, True)
        self.refers.append((self.sheet, at, one.way.to))
        if one.kind == "branch":
            branch = Branch(one.way.to, self.column, x + EXIT, y + height / 2, walked)
            self.branches.append((self.sheet, branch))

    def _text(self, lines: list[tuple[str, float, bool, str]], x: float, y: float, first: str | None) -> None:
        for number, (text, size, bold, ink) in enumerate(lines):
            said = first if number == 0 and first is not None else text
            if said:
                self.sheet.marks.append(Words(x, y + size * 1.06, said, size, bold, ink))
            y += size * LEAD

    def _frame(self, sheet: Sheet) -> None:
        right, foot = self.width - MARGIN, self.height - MARGIN
        numbers = [int(self.rows.numbers[one]) for one in sheet.places
                   if self.rows.numbers.get(one, "F").isdigit()]
        span = f"{min(numbers)} to {max(numbers)}" if len(numbers) > 1 else "".join(map(str, numbers))
        number = f"steps {span} · " if len(numbers) > 1 else f"step {span} · " if numbers else ""
        number += f"sheet {sheet.number} of {len(self.sheets)}"
        extra: list[Mark] = [
            Words(MARGIN, MARGIN + 13, self.tree.title, 16, True),
            Words(right, MARGIN + 13, number, 11, True, anchor="end"),
            Line(((MARGIN, MARGIN + 20), (right, MARGIN + 20)), 1.2),
            Words(MARGIN, foot, DEFER, SMALL),
            Words(right, foot, f"{self.tree.name} · {len(self.tree.steps)} steps · Fault Trail", SMALL,
                  anchor="end"),
        ]
        sheet.marks[:0] = extra
