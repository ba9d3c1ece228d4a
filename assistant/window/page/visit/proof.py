"""Proof of repair: each reading of the proof with the one before the repair, against the plate."""

from __future__ import annotations

from PySide6.QtWidgets import QGridLayout, QWidget

from assistant.report.beside import before_of
from assistant.report.measured import measured
from assistant.tree.model import Finding
from assistant.walk.ask import Found, Record
from assistant.window import look, words
from assistant.window.page.aside.base import AsidePage
from assistant.window.session import Driver
from assistant.window.text import label

HEADS = ("Measured", "Before", "After", "Should be")
NONE_YET = "No repair is proved yet. Its readings stand here once the proof is walked."


class ProofPage(AsidePage):
    """Only read; the report has the same table."""

    title = "Before and after"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        proved = [f for f in {f.step: f for f in driver.visit.found}.values() if f.proof_records]
        if not proved:
            self.column.addWidget(label(NONE_YET))
        for found in proved:
            self._show(found)
        self.column.addStretch(1)

    def _show(self, found: Found) -> None:
        title = found.finding.title if isinstance(found.finding, Finding) else found.finding.finding or ""
        self.column.addWidget(label(title, look.LEAD, bold=True))
        grid = QGridLayout()
        for column, (head, share) in enumerate(zip(HEADS, (4, 3, 3, 4), strict=True)):
            grid.addWidget(label(head, bold=True), 0, column)
            grid.setColumnStretch(column, share)
        for row, record in enumerate(found.proof_records, 1):
            before = before_of(self.driver.visit, record)
            grid.addWidget(label(self._asked(record)), row, 0)
            grid.addWidget(label(_said(before) if before else "–"), row, 1)
            grid.addWidget(label(_said(record)), row, 2)
            grid.addWidget(label(self._should(record), look.SMALL), row, 3)
        self.column.addLayout(grid)

    def _should(self, record: Record) -> str:
        """Where it has to lie, and the plate beside it."""
        visit = self.driver.visit
        step = self._step(record)
        body = self.driver.library.step(step)[1] if step else None
        plate = {name: held if isinstance(held, str) else held.echo for name, held in visit.plate.items()}
        told = measured(record, body, visit.vocabulary, plate)
        against = f"rating plate: {told.plate}" if told.plate else ""
        return "\n".join(part for part in (told.should or told.limit, against) if part) or "–"

    def _step(self, record: Record) -> str | None:
        history = self.driver.visit.history
        return next((t.step for t in reversed(history) if any(r is record for r in t.records)), None)

    def _asked(self, record: Record) -> str:
        step = self._step(record)
        if step is None:
            return words.plain(record.name)
        _, body = self.driver.library.step(step)
        own = next((r.ask for r in getattr(body, "readings", ()) if r.name == record.name and r.ask), "")
        return own or words.question_at(self.driver.library, step)


def _said(record: Record) -> str:
    verdict = f"\n{record.verdict.words}" if record.verdict and record.verdict.bands else ""
    return f"{words.plain_answer(record.echo)}{verdict}"
