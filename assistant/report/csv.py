"""The trail as a table for a spreadsheet: one line for each reading, or for each event without one."""

from __future__ import annotations

import csv
import io

from assistant.plain import harmless
from assistant.report.story import PRACTICE, Measured, Row, Story

HEADS = (
    "entry",
    "time",
    "kind",
    "where",
    "asked",
    "answer",
    "reading",
    "typed",
    "understood",
    "verdict",
    "limit",
    "plate",
    "source",
    "mark",
    "instrument",
    "remarks",
    "taken back",
    "photos",
    "fingerprint",
)


def to_csv(story: Story) -> str:
    """Comma separated, every field in quotes, lines ended by CR LF (RFC 4180)."""
    out = io.StringIO()
    writer = csv.writer(out, quoting=csv.QUOTE_ALL, lineterminator="\r\n")
    writer.writerow(HEADS)
    for row in story.rows:
        trees = tuple(f"{file} {digest}" for file, digest in story.trees) if row.kind == "opened" else ()
        trees = (PRACTICE, *trees) if story.practice else trees
        for measured in row.measured or (None,):
            writer.writerow([harmless(field) for field in _fields(row, measured, story.fingerprint, trees)])
    return out.getvalue()


def _fields(row: Row, measured: Measured | None, fingerprint: str, more: tuple[str, ...]) -> tuple[str, ...]:
    remarks = "; ".join([*row.remarks, *more, *([measured.remark] if measured and measured.remark else [])])
    reading = (
        (
            measured.what,
            measured.formula or measured.typed,
            measured.understood,
            measured.verdict,
            measured.limit,
            measured.plate,
            measured.source,
            measured.mark,
            measured.instrument,
        )
        if measured
        else ("",) * 9
    )
    return (
        str(row.number),
        row.at,
        row.kind,
        row.where,
        row.asked,
        row.answer,
        *reading,
        remarks,
        row.taken_back,
        " ".join(row.photos),
        fingerprint,
    )
