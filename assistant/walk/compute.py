"""A compute step: the registry's function on this walk's readings, judged like a reading."""

from __future__ import annotations

from assistant.quantity.interval import Interval
from assistant.quantity.kind import show_interval
from assistant.trade.registry import explain, on_intervals
from assistant.tree.model import Compute
from assistant.walk.ask import Record
from assistant.walk.env import argument, env_of
from assistant.walk.event import Typed
from assistant.walk.judge import judge
from assistant.walk.state import Frame, Visit


def worked_out(visit: Visit, frame: Frame, step: Compute, at: str) -> Record | str:
    """The result as a record, or a sentence that says why it can't be worked out."""
    env = env_of(visit, frame)
    values: dict[str, Interval] = {}
    for name, text in step.arguments.items():
        value = argument(text, frame, visit, env)
        if value is None:
            return f"{text.replace('_', ' ')} was not read"
        if not value.finite:
            return (
                f"{text.replace('_', ' ')} was over the meter's range, so nothing can be worked out from it"
            )
        values[name] = value
    try:
        result = on_intervals(step.function, values)
        formula = explain(step.function, {name: value.middle for name, value in values.items()})
    except (ValueError, ArithmeticError) as problem:
        return str(problem)
    verdict = judge(result, step.bands, env, step.unit)
    echo = show_interval(result, step.unit)
    return Record(
        step.result, step.kind, step.unit, (), (), Typed(echo), verdict.value, echo, verdict, at, formula
    )
