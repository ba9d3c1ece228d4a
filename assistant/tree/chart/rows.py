"""The rows of a diagram with their heights: a step's box, and what leaves it to the right."""

from __future__ import annotations

from dataclasses import dataclass, field

from assistant.house.model import Vocabulary
from assistant.tree.chart import wording
from assistant.tree.chart.lanes import Lane, Way, ends_here, lanes_of, ways, weak_ways
from assistant.tree.chart.lettering import wrap
from assistant.tree.check.graph import Graph
from assistant.tree.model import Finding, Step

TRUNK, ARROW, EXIT = 172.0, 78.0, 118.0
"""Widths in points: a step's box, the arrow to its right with the answer over it, and what it leads to."""
COLUMN = TRUNK + ARROW + EXIT
PAD, LEAD = 6.0, 1.24
ASKED, SMALL, ANSWER, TITLE = 9.0, 7.0, 7.5, 8.0
"""Sizes of letters in points; a wall chart is read at arm's length."""

ERROR = 12
"""Lines that an error may take at its step."""
HERE = "▸ you are here"
"""A line of its own at the foot of the box: beside the verb it ran into the step's name."""

Line = tuple[str, float, bool, str]
"""A line of text: the words, their size, whether bold, and the ink."""


@dataclass
class Exit:
    """What leaves a row to the right. `kind`: end (its box is here), again (an end whose box is elsewhere),
    branch (a lane that begins here), jump (a step that stands elsewhere)."""

    kind: str
    way: Way
    answer: list[Line]
    lines: list[Line]
    first: str = ""
    """The word or number that the box begins with."""

    @property
    def box_height(self) -> float:
        return height(self.lines) + 2 * PAD - 2

    @property
    def arrow(self) -> float:
        """Where the arrow runs, from the top of the exit; the answer stands over it."""
        return max(height(self.answer) + 3, self.box_height / 2)

    @property
    def height(self) -> float:
        return self.arrow + self.box_height / 2 + 5


@dataclass
class Row:
    """One step in its lane. `down` is the answer that leads to the next row."""

    step: str
    lines: list[Line]
    exits: list[Exit] = field(default_factory=list)
    down: list[Line] = field(default_factory=list)
    onward: Way | None = None

    @property
    def box_height(self) -> float:
        return height(self.lines) + 2 * PAD - 1

    @property
    def gap(self) -> float:
        """Room under the box for the arrow down and its answer."""
        return max(15.0, height(self.down) + 8) if self.onward else 9.0

    @property
    def height(self) -> float:
        return max(self.box_height + self.gap, sum(one.height for one in self.exits) + 3)


def height(lines: list[Line]) -> float:
    """The height of lines of text."""
    return sum(size * LEAD for _, size, _, _ in lines)


class Rows:
    """Numbers the steps and findings of a tree and makes its rows."""

    def __init__(self, graph: Graph, vocabulary: Vocabulary, titles: dict[str, str], lanes: list[Lane],
                 errors: dict[str, list[str]], walked: frozenset[str] = frozenset(),
                 here: str | None = None) -> None:
        self.graph, self.vocabulary, self.titles = graph, vocabulary, titles
        self.errors, self.walked, self.here = errors, walked, here
        steps = graph.tree.steps
        in_lanes = [name for lane in lanes_of(graph) for name in lane.steps]  # folded or not, one number
        self.numbers = {name: str(number) for number, name in enumerate(in_lanes, 1)}
        found = (way.to for name in in_lanes for way in (*ways(graph, name), *weak_ways(graph, name))
                 if isinstance(steps[way.to], Finding))
        self._decided = {edge.to for edges in graph.out.values() for edge in edges if edge.sure}
        self.numbers |= {name: f"F{number}" for number, name in enumerate(dict.fromkeys(found), 1)}
        self._heads = {lane.steps[0] for lane in lanes if lane.came is not None}
        self._branched: set[str] = set()
        self._ended: set[str] = set()

    def of(self, lane: Lane) -> list[Row]:
        """The rows of a lane; a folded one has its head alone."""
        rows = []
        for place, name in enumerate(lane.steps):
            following = lane.steps[place + 1] if place + 1 < len(lane.steps) else None
            rows.append(self._row(name, following, lane.folded))
        return rows

    def _row(self, name: str, following: str | None, folded: int) -> Row:
        step = self.graph.tree.steps[name]
        row = Row(name, self._box(name, step, folded))
        if folded:
            return row
        if ends_here(step):  # a tree that begins with its end
            row.exits.append(self._end(name, Way((), name)))
            return row
        weak = [way for way in weak_ways(self.graph, name)
                if isinstance(self.graph.tree.steps[way.to], Finding) and way.to not in self._decided]
        sure = ways(self.graph, name)
        for way in (*sure, *weak):
            text = wording.answer(step, way.answers, self.vocabulary, len(sure) == 1)
            if way.to == following:
                row.down = [(line, ANSWER, False, "ink") for line in wrap(text, TRUNK - 26, ANSWER)]
                row.onward = way
            else:
                said = wrap(text, ARROW - 14, ANSWER)
                row.exits.append(self._exit(way, [(line, ANSWER, False, "ink") for line in said]))
        return row

    def _exit(self, way: Way, said: list[Line]) -> Exit:
        target = self.graph.tree.steps[way.to]
        if ends_here(target):
            made = self._end(way.to, way)
            made.answer = said
            return made
        kind = "branch" if way.to in self._heads and way.to not in self._branched else "jump"
        self._branched.add(way.to)
        lines = [("", TITLE, True, "ink")]
        lines += [(text, SMALL, False, "ink")
                  for text in wrap(wording.asked(target, self.titles), EXIT - 2 * PAD - 3, SMALL, most=3)]
        return Exit(kind, way, said, lines, f"to {self.numbers.get(way.to, '?')}")

    def _end(self, name: str, way: Way) -> Exit:
        step = self.graph.tree.steps[name]
        word, title, small = wording.end(step, self.vocabulary)
        finding = isinstance(step, Finding)
        again = finding and name in self._ended
        self._ended.add(name)
        room = EXIT - 2 * PAD
        ink = "paper" if word == "stop" else "ink"
        first = f"to {self.numbers[name]}" if again else f"{self.numbers[name]}  {word}" if finding else word
        lines = [("", TITLE, True, ink)]
        bold = finding and not again
        most = 3 if again else 9
        size = SMALL if again else TITLE
        lines += [(text, size, bold, ink) for text in wrap(title, room, size, bold, most)]
        if small and not again:
            lines += [(text, SMALL, False, ink) for text in wrap(small, room, SMALL, most=2)]
        for message in () if again else self.errors.get(name, ()):
            lines += [(text, SMALL, True, ink) for text in wrap(f"! {message}", room, SMALL, True, ERROR)]
        if name == self.here and not again:
            lines.append((HERE, TITLE, True, ink))
        return Exit("again" if again else "end", way, [], lines, first)

    def _box(self, name: str, step: Step, folded: int) -> list[Line]:
        room = TRUNK - 2 * PAD
        lines: list[Line] = [("", TITLE, True, "ink")]
        bold, question = name in self.walked, wording.asked(step, self.titles)
        lines += [(text, ASKED, bold, "ink") for text in wrap(question, room, ASKED, bold, 6)]
        if folded:
            several = "step" if folded == 1 else "steps"
            lines.append((f"{folded} {several} folded away", SMALL, True, "ink"))
            return [*lines, (HERE, TITLE, True, "ink")] if name == self.here else lines
        for detail in wording.details(step, self.vocabulary):
            lines += [(text, SMALL, False, "quiet") for text in wrap(detail, room, SMALL, most=4)]
        weak = self._weak(name)
        if weak:
            lines += [(text, SMALL, False, "ink") for text in wrap(weak, room, SMALL, most=6)]
        for message in self.errors.get(name, ()):
            lines += [(text, SMALL, True, "ink") for text in wrap(f"! {message}", room, SMALL, True, ERROR)]
        return [*lines, (HERE, TITLE, True, "ink")] if name == self.here else lines

    def _weak(self, name: str) -> str:
        """Where it goes with nothing decided: "can't be taken: 45"."""
        return "; ".join(f"{' or '.join(edge.words for edge in way.answers)}: {self.short(way.to)}"
                         for way in weak_ways(self.graph, name))

    def short(self, name: str) -> str:
        """A step as others name it: its number, or the stop it is."""
        if name in self.numbers:
            return self.numbers[name]
        word, title, _ = wording.end(self.graph.tree.steps[name], self.vocabulary)
        title = title.partition(".")[0]
        return f"{word}, {title[0].lower()}{title[1:]}" if title else word
