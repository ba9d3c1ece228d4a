"""A compute step: the registry's function on this walk's readings, judged like a reading."""

from __future__ import annotations

from dataclasses import replace

from assistant.quantity.interval import Interval
from assistant.quantity.kind import show
from assistant.trade.entry import TEXT
from assistant.trade.registry import entry_of, explain
from assistant.tree.limits import parse_quantity
from assistant.tree.model import Compute
from assistant.walk.ask import Record
from assistant.walk.env import argument, env_of
from assistant.walk.event import Typed
from assistant.walk.judge import judge
from assistant.walk.settling import settled_by
from assistant.walk.state import Frame, Visit
from assistant.walk.uncertain import Given, Uncertain, carried, middles


def worked_out(visit: Visit, frame: Frame, step: Compute, at: str) -> Record | str:
    """The result as a record, or a sentence that says why it can't be worked out."""
    env = env_of(visit, frame)
    try:
        values = given(visit, frame, step, env)
        result = carried(step.function, values, step.gives)
        formula = explain(step.function, middles(values), units_of(visit, frame, step), step.unit)
    except (ValueError, ArithmeticError) as problem:
        return str(problem)
    verdict = judge(result.value, step.bands, env, step.unit)
    echo = _echo(result, step.unit)
    record = Record(
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
    return replace(record, settles=settled_by(visit, record, frame=frame))


def given(visit: Visit, frame: Frame, step: Compute, env: dict[str, Interval]) -> dict[str, Given]:
    """What each argument is worked out from. Raises ValueError with a sentence where one is not known."""
    words = {a.name for a in entry_of(step.function).arguments if a.choices or a.kind == TEXT}

    def one(text: str) -> Uncertain:
        value = argument(text, frame, visit, env)
        if value is None:
            raise ValueError(f"{text.replace('_', ' ')} was not read")
        if not value.finite:
            over = "was over the meter's range, so it can't be worked out"
            raise ValueError(f"{text.replace('_', ' ')} {over}")
        return Uncertain(value, _parts(text, frame, visit))

    return {
        name: text
        if name in words
        else tuple(one(item) for item in text)
        if isinstance(text, tuple)
        else one(text)
        for name, text in step.arguments.items()
    }


def units_of(visit: Visit, frame: Frame, step: Compute) -> dict[str, str]:
    """The unit that each argument is shown in; that of the first where it is a list."""
    return {
        name: _unit(text[0] if isinstance(text, tuple) else text, frame, visit)
        for name, text in step.arguments.items()
    }


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
