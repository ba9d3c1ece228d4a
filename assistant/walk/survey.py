"""A zone survey in a walk: its cells as one record, and its conclusions, each a record of its own.

Cells are answered by the name `mode/caller/register` (`drawn/register` says whose a register should be), or
all at once as the line that a person types by hand. What was typed stays as it was typed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from assistant.quantity.entry import Blank, Doubt, Understood, understand
from assistant.quantity.interval import Interval
from assistant.quantity.kind import to_si
from assistant.trade.entry import ArgumentError
from assistant.trade.registry import call, entry_of, shown_result
from assistant.trade.zone.survey import Survey
from assistant.trade.zone_sheet import BadSheet, arguments_in, arguments_of, cell_of, line_of
from assistant.trade.zone_survey import span, survey_of
from assistant.tree.model import Compute, Measure, Reading
from assistant.tree.named_results import SURVEY
from assistant.walk.ask import Record
from assistant.walk.env import env_of
from assistant.walk.event import Typed
from assistant.walk.judge import judge
from assistant.walk.state import BadAnswer, Frame, Visit


def surveyed(visit: Visit, step: Measure, typed: Mapping[str, Typed], at: str) -> Record:
    """The survey as one record. Raises BadAnswer with a sentence."""
    reading = step.readings[0]
    name = reading.name or step.common.name
    try:
        if set(typed) == {name}:
            line = typed[name].text
        else:
            line = line_of(arguments_of({cell: _text(reading, one) for cell, one in typed.items()}))
        survey = survey_of(**arguments_in(line))
    except (BadSheet, ArgumentError) as problem:
        raise BadAnswer(sentence(problem)) from None
    instrument = next((one.instrument for one in typed.values() if one.instrument), visit.instrument)
    numbers = [flow for flow in survey.flows.values() if not isinstance(flow, str)]
    value = Interval(min(numbers), max(numbers)) if numbers else Interval.exact(0.0)
    verdict = judge(value, (), {}, reading.unit)
    return Record(
        name, reading.kind, reading.unit, (), (), Typed(line, instrument), value, echo(survey), verdict, at
    )


def _text(reading: Reading, one: Typed) -> str:
    """A cell's text, refused where it is implausible and nobody confirmed it."""
    text = one.chosen or one.text
    try:
        flow = cell_of(text)
    except BadSheet:
        return text  # a zone's name, or what the sheet refuses with its own sentence
    if isinstance(flow, float) and not one.sure and (doubt := doubted(reading, flow, text)):
        raise BadAnswer(doubt)
    return text


def doubted(reading: Reading, flow: float, text: str) -> str | None:
    """A sentence where a cell's flow (m³/s) is outside what a register can pass."""
    if reading.plausible is None:
        return None
    low, high = (to_si(end, reading.unit) for end in reading.plausible)
    if low <= flow <= high:
        return None
    return f"{text} is outside what a register passes. Is it a slip of the key?"


def echo(survey: Survey) -> str:
    """How much was read: "12 of 15 cells: 3 thermostats, 5 registers"."""
    calls = {(cell.mode, cell.caller) for cell in survey.flows}
    whole = max(len(calls), 1) * len(survey.registers)
    read = len(survey.flows)
    return f"{read} of {whole} cells: {len(survey.zones)} thermostats, {len(survey.registers)} registers"


@dataclass(frozen=True)
class Cell:
    """What a cell's text means: `flow` in m³/s, a word, or None where it is blank; `problem` a sentence."""

    flow: float | str | None
    problem: str = ""
    choices: tuple[str, ...] = ()


def weigh_cell(reading: Reading, text: str) -> Cell:
    """What would be understood, before it is committed. Never raises."""
    got = understand(text, "airflow", reading.unit)
    if isinstance(got, Doubt):
        return Cell(None, got.message, got.choices)
    try:
        flow = cell_of(text)
    except BadSheet as problem:
        return Cell(None, sentence(problem))
    if isinstance(flow, float) and (doubt := doubted(reading, flow, text)):
        return Cell(flow, doubt)
    return Cell(flow)


def weigh_line(text: str) -> tuple[Understood | Blank | None, str]:
    """A whole survey typed on one line: what was understood, or a sentence."""
    if not text.strip():
        return Blank(), ""
    try:
        survey = survey_of(**arguments_in(text))
    except (BadSheet, ArgumentError) as problem:
        return None, sentence(problem)
    return Understood(Interval.exact(0.0), "cfm", echo(survey), None, False), ""


def sentence(problem: Exception) -> str:
    """What a person is told: without the computation's name in front, with a capital and a full stop."""
    words = str(problem).removeprefix("zone_survey: ")
    return words[:1].upper() + words[1:] + ("" if words.endswith((".", "?")) else ".")


def concluded(visit: Visit, frame: Frame, step: Compute, at: str) -> tuple[Record, ...] | str:
    """A record for each named result, or a sentence that says why it can't be worked out."""
    name = step.arguments[SURVEY]
    if name not in frame.names:
        return f"{name.replace('_', ' ')} was not read"
    survey = visit.readings[frame.names[name]]
    try:
        arguments: dict[str, object] = dict(arguments_in(survey.typed.text))
        instrument = visit.shop.instrument("airflow", survey.typed.instrument)
        if instrument is not None and instrument.percent.get("airflow"):
            arguments["accuracy"] = instrument.percent["airflow"] / 100
        answer = call(step.function, arguments)
    except (BadSheet, ArgumentError) as problem:
        return sentence(problem)
    env = env_of(visit, frame)
    entry = entry_of(step.function)
    records = []
    for one in step.results:
        result = entry.results[one.name or ""]
        sure = answer[one.name or ""]
        value = Interval(*span(sure))
        verdict = judge(value, one.bands, env, one.unit)
        shown = shown_result(result, sure)
        said = f"{result.words}: {shown}{'' if sure is None else ' sure'}, from {survey.echo}"
        typed = Typed(shown)
        records.append(
            Record(one.name or "", one.kind, one.unit, (), (), typed, value, shown, verdict, at, said)
        )
    return tuple(records)
