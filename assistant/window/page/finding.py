"""What failed, the facts that prove it, the causes to rule out before a new part, what to do, and the
proof.
"""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QWidget

from assistant.tree.model import Finding
from assistant.walk.ask import Ask, Record
from assistant.walk.astray import against_the_words, for_technician, of_visit
from assistant.walk.event import GoOn
from assistant.window import look, words
from assistant.window.page.step import StepPage
from assistant.window.page.visit.earlier import again
from assistant.window.session import Driver
from assistant.window.text import banner, label, rule


def fact_words(record: Record, driver: Driver) -> str:
    """A fact in one line: what was asked, what was read, what that means, when."""
    step = next((taken.step for taken in reversed(driver.visit.history) if record in taken.records), None)
    asked = words.question_at(driver.library, step) if step else words.plain(record.name)
    read = record.computed or f"{asked}: {words.plain_answer(record.echo)}"
    verdict = f" – {record.verdict.words}" if record.verdict and record.verdict.bands else ""
    return f"{read}{verdict} ({words.clock(record.at)})"


class FindingPage(StepPage):
    """Nothing to answer: Enter goes on to the first cause, or to what follows."""

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, ask, parent)
        found = ask.finding
        finding = found.finding
        assert isinstance(finding, Finding)
        self.question.setText(finding.title)
        self.column.insertWidget(
            self.column.indexOf(self.question),
            label("What failed" if finding.fault else "Nothing failed", bold=True),
        )
        if said := again(driver.visit, finding.condemns):
            self.words.addWidget(banner(said))
        if finding.reason:
            self.words.addWidget(label(finding.reason))
        trees, acts = driver.library.trees, driver.vocabulary.acts
        spill = of_visit(driver.visit, ask.step.partition(".")[0])
        if spill is not None:
            state = driver.visit.state_of(found.complaint)
            odd = against_the_words(spill, state.words if state else "")
            self._list("Where the air goes, by the survey", for_technician(spill))
            if odd:
                self.words.addWidget(banner(odd))
        self._list("The facts that show it", [fact_words(record, driver) for record in found.facts])
        self._list(
            "Rule out before a new part goes in",
            [trees[name].title for name in finding.causes if name in trees],
            numbered=True,
        )
        self._list("Then do", [acts[name].say for name in finding.repair if name in acts])
        if finding.proof in trees:
            self._list("Proved repaired by", [trees[finding.proof].title])
        if finding.advice:
            self._list("Advice", [finding.advice])
        self._list("For the customer", [finding.customer])
        self.close_words()
        self.say(self._next_words(finding))
        self.set_next("&Next")

    def _list(self, heading: str, lines: Sequence[str], numbered: bool = False) -> None:
        if not lines:
            return
        self.words.addWidget(rule())
        self.words.addWidget(label(heading, look.BODY, bold=True))
        for number, line in enumerate(lines, 1):
            self.words.addWidget(label(f"{number}. {line}" if numbered else line))

    @staticmethod
    def _next_words(finding: Finding) -> str:
        if not finding.fault:
            return "Nothing to mend here"
        return "Next: why did it fail?" if finding.causes else "Next: mend it, then prove it"

    def enter(self) -> None:
        if self.record(GoOn(self.driver.now(), self.ask.step)):
            self.left.emit()
