"""A reading in words: where it was taken, what was typed, where it had to lie and how that is known."""

from __future__ import annotations

import math
from dataclasses import replace

from assistant.house.model import Vocabulary
from assistant.quantity.interval import Interval
from assistant.quantity.kind import KINDS, show, show_interval
from assistant.report.story import Measured
from assistant.trade.registry import REGISTRY
from assistant.tree.model import Compute, Reading, Step, readings_of
from assistant.walk.ask import Record, Verdict

TOP_UNKNOWN = "over the meter's range: the top of the range is not known"
"""As the entry says it where it is typed, where it asks for the range's top."""
OVER = "OL (over the meter's range)"


def measured(record: Record, step: Step | None, vocabulary: Vocabulary, plate: dict[str, str]) -> Measured:
    """`step` is the step it was taken on, None for a reading put down by itself; `plate` has the plate
    values in words, by name."""
    verdict = record.verdict
    source, mark = _source(record, step, vocabulary)
    return Measured(
        what=_what(record, step, vocabulary),
        typed="" if record.computed else record.typed.text,
        understood=over_range(record.echo),
        verdict=verdict.words if verdict and verdict.words != "recorded" else "",
        limit=limit_words(verdict, record.unit) if verdict else "",
        source=source,
        mark=mark,
        instrument=record.typed.instrument or "",
        remark=_remark(record),
        settles=record.settles,
        plate=_plate(verdict, vocabulary, plate),
        formula=record.computed or "",
        should=should_words(verdict, record.unit) if verdict else "",
    )


def over_range(words: str) -> str:
    """The words about a meter over its range, short where nobody knows where its range ends."""
    return words.replace(TOP_UNKNOWN, OVER)


def limit_words(verdict: Verdict, unit: str) -> str:
    """Where the value lay between its limits: "from 108 V, under 132 V". Empty where nothing limits it."""
    if verdict.unsafe:
        return _safe_words(verdict, unit)
    below = verdict.edges[verdict.first - 1] if verdict.bands and verdict.first > 0 else None
    above = verdict.edges[verdict.last] if verdict.bands else None
    said = [f"from {_edge(below, unit)}"] if below is not None else []
    said += [f"under {_edge(above, unit)}"] if above is not None else []
    if verdict.bands and not verdict.decided:
        between = [edge for edge in verdict.edges[verdict.first : verdict.last] if edge is not None]
        return "on the limit of " + " and ".join(_edge(edge, unit) for edge in between)
    if verdict.safe_under is not None and above is None:
        said.append(f"under {_edge(verdict.safe_under, unit)}")
    return ", ".join(said)


def should_words(verdict: Verdict, unit: str) -> str:
    """Where normal readings lie: "from 108 V, under 132 V". Empty where no one band is the normal one."""
    normal = [place for place, band in enumerate(verdict.bands) if band.normal]
    if len(normal) != 1:
        return ""
    return limit_words(replace(verdict, first=normal[0], last=normal[0], unsafe=False), unit)


def _safe_words(verdict: Verdict, unit: str) -> str:
    said = []
    if verdict.safe_over is not None:
        said.append(f"not below {_edge(verdict.safe_over, unit)}")
    if verdict.safe_under is not None:
        said.append(f"under {_edge(verdict.safe_under, unit)}")
    return "safe only " + ", ".join(said) if said else ""


def _edge(edge: Interval, unit: str) -> str:
    if math.isinf(edge.lo) or math.isinf(edge.hi):
        return "a limit that nobody could read"
    return show(edge.lo, unit) if edge.lo == edge.hi else f"({show_interval(edge, unit)})"


def reading_of(record: Record, step: Step | None) -> Reading | None:
    """The reading of the step that the record answers."""
    if step is None:
        return None
    name = step.common.name
    return next((reading for reading in readings_of(step) if (reading.name or name) == record.name), None)


def _what(record: Record, step: Step | None, vocabulary: Vocabulary) -> str:
    reading = reading_of(record, step)
    if reading is not None and reading.ask:
        return reading.ask
    if isinstance(step, Compute):
        return plain_name(record.name) if step.results else computed_words(step)
    points = [vocabulary.points[point].label for point in record.points if point in vocabulary.points]
    title = KINDS[record.kind].title
    return f"{title}, {' to '.join(points)}" if points else plain_name(record.name) or title


def computed_words(step: Compute) -> str:
    """What a computation is called: by the registry, or by its name in the tree where the registry's is
    general ("One reading as a percentage of another") or stands for several results."""
    entry = REGISTRY.get(step.function)
    if entry is None or step.gives or any(argument.kind == "any" for argument in entry.arguments):
        return plain_name(step.result or step.function)
    return entry.title


def plain_name(name: str) -> str:
    """A name of a tree file as words: heat_rise becomes "Heat rise"."""
    words = name.replace("_", " ").replace(".", " ").strip()
    return words[:1].upper() + words[1:]


def _source(record: Record, step: Step | None, vocabulary: Vocabulary) -> tuple[str, str]:
    """What the limit that decided cites: the band's own source, else the reading's or the step's."""
    verdict = record.verdict
    if verdict is None or not (verdict.bands or verdict.unsafe):
        return "", ""
    reading = reading_of(record, step)
    names = [verdict.bands[i].source for i in (verdict.first, verdict.first - 1) if verdict.bands and i >= 0]
    if verdict.unsafe and reading is not None and reading.safe is not None:
        names.insert(0, reading.safe.source)
    names.append(reading.source if reading is not None else getattr(step, "source", None))
    found = next((vocabulary.sources[name] for name in names if name and name in vocabulary.sources), None)
    if found is None:
        return "", ""
    number = f" ({', '.join(part for part in (found.number, found.year) if part)})" if found.number else ""
    return f"{found.title}{number}", found.mark


def _remark(record: Record) -> str:
    said = []
    if record.typed.ago is not None:
        said.append(f"taken about {record.typed.ago:g} min before it was typed")
    if record.typed.chosen:
        said.append(f"meant as {record.typed.chosen}")
    return ", ".join(said)


def _plate(verdict: Verdict | None, vocabulary: Vocabulary, plate: dict[str, str]) -> str:
    """The plate values in the limits next to the value."""
    if verdict is None:
        return ""
    used: list[str] = []
    for band in verdict.bands[max(0, verdict.first - 1) : verdict.last + 1]:
        if band.under is not None:
            used += band.under.names
    known = [name for name in dict.fromkeys(used) if name in vocabulary.plate and name in plate]
    return "; ".join(f"{vocabulary.plate[name].title} {plate[name]}" for name in known)
