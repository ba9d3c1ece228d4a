"""A compute step: the registry's function on this walk's readings, judged like a reading."""

from __future__ import annotations

from assistant.quantity.kind import show
from assistant.trade.registry import explain
from assistant.tree.limits import parse_quantity
from assistant.tree.model import Compute
from assistant.walk.ask import Record
from assistant.walk.env import argument, env_of
from assistant.walk.event import Typed
from assistant.walk.judge import judge
from assistant.walk.state import Frame, Visit
from assistant.walk.uncertain import Uncertain, carried


def worked_out(visit: Visit, frame: Frame, step: Compute, at: str) -> Record | str:
    """The result as a record, or a sentence that says why it can't be worked out."""
    env = env_of(visit, frame)
    values: dict[str, Uncertain] = {}
    for name, text in step.arguments.items():
        value = argument(text, frame, visit, env)
        if value is None:
            return f"{text.replace('_', ' ')} was not read"
        if not value.finite:
            return f"{text.replace('_', ' ')} was over the meter's range, so it can't be worked out"
        values[name] = Uncertain(value, _parts(text, frame, visit))
    try:
        result = carried(step.function, values)
        middle = {name: value.value.middle for name, value in values.items()}
        units = {name: _unit(text, frame, visit) for name, text in step.arguments.items()}
        formula = explain(step.function, middle, units, step.unit)
    except (ValueError, ArithmeticError) as problem:
        return str(problem)
    verdict = judge(result.value, step.bands, env, step.unit)
    echo = _echo(result, step.unit)
    return Record(
        step.result,
        step.kind,
        step.unit,
        (),
        (),
        Typed(echo),
        verdict.value,
        echo,
        verdict,
        at,
        formula,
        tuple(result.parts.items()),
        not result.parts,
    )


def _echo(result: Uncertain, unit: str) -> str:
    """The result in words: the value alone, or with what it may be off by."""
    value = show(result.value.middle, unit)
    if not result.value.width:
        return value
    return f"{value} ({show(result.value.lo, unit)} to {show(result.value.hi, unit)})"


def _parts(text: str, frame: Frame, visit: Visit) -> dict[int, float]:
    return dict(visit.readings[frame.names[text]].parts) if text in frame.names else {}


def _unit(text: str, frame: Frame, visit: Visit) -> str:
    """The unit that an argument is shown in: its reading's, its plate value's, or as written."""
    if text in frame.names:
        return visit.readings[frame.names[text]].unit
    if text in visit.vocabulary.plate:
        return visit.vocabulary.plate[text].unit
    parsed = parse_quantity(text)
    return parsed[1] if parsed else ""
