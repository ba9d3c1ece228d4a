"""What a diagram writes: a step in a few words, an answer with its limit, an end."""

from __future__ import annotations

import re

from assistant.house.model import Vocabulary
from assistant.quantity.kind import UNITS
from assistant.trade.registry import REGISTRY
from assistant.tree.check.graph import Edge
from assistant.tree.model import (
    Band,
    Call,
    Compute,
    Do,
    Finding,
    HandOver,
    Look,
    Measure,
    Return,
    Step,
    Stop,
    Watch,
    question_of,
    readings_of,
)

_UNIT = re.compile(r"(\d) ([a-zA-Z]\w*)")
"""A number with its unit in a limit."""
VERBS = {Look: "look", Measure: "measure", Watch: "watch", Compute: "work out", Do: "do", Call: "go through",
         Finding: "found", Stop: "stop", HandOver: "goes on with", Return: "back"}
STATES = {"live": "on", "off": "off", "dead": "off, proved dead"}


def verb(step: Step) -> str:
    """The first word of a box."""
    return VERBS[type(step)]


def asked(step: Step, titles: dict[str, str]) -> str:
    """What is asked or done; `titles` gives the titles of trees by name."""
    if isinstance(step, Call):
        return titles.get(step.tree, step.tree.replace("_", " "))
    if isinstance(step, Compute):
        entry = REGISTRY.get(step.function)
        inputs = ", ".join(name.replace("_", " ") for name in step.texts)
        return f"{entry.title if entry else step.function.replace('_', ' ')}: {inputs}"
    return question_of(step)


def details(step: Step, vocabulary: Vocabulary) -> list[str]:
    """The small lines of a box: what is read, the power it needs, the cautions."""
    lines = []
    if isinstance(step, Watch) and step.events:
        lines.append(" · ".join(vocabulary.happens.get(event, event) for event in step.events))
    several = len(readings_of(step)) > 1 or isinstance(step, Watch)
    if several:
        lines += [f"{number}. {reading.ask}" for number, reading in enumerate(readings_of(step), 1)]
    needs = [f"{name.replace('_', ' ')} {STATES[state]}" for name, state in step.common.needs.items()]
    if needs:
        lines.append("Power: " + ", ".join(needs))
    if step.common.caution:
        lines.append("Caution: " + ", ".join(name.replace("_", " ") for name in step.common.caution))
    if isinstance(step, Do) and step.wait:
        lines.append(f"Wait {_time(step.wait)}")
    return lines


OTHERWISE = "otherwise"
"""The way of a step that has others, where no answer of its own leads there."""


def answer(step: Step, edges: tuple[Edge, ...], vocabulary: Vocabulary, alone: bool = False) -> str:
    """What is answered to go a way, with the limits of its bands; `alone`: the step has no other way."""
    said: dict[str, None] = {}
    for edge in edges:
        own = [one for one in edge.decides
               if any(band.then and band.then.to == edge.to for band in one.bands)]
        if own:
            what, readings = own[-1].what, readings_of(step)
            number = f"{readings.index(what) + 1}. " if what in readings and len(readings) > 1 else ""
            said.update(dict.fromkeys(number + _band(band, what.unit) for band in own[-1].bands))
        elif edge.words not in ("then", "done"):
            said[_plain(edge, step, vocabulary)] = None
        elif not alone:
            said[OTHERWISE] = None
    return " or ".join(sorted(said, key=lambda words: words == OTHERWISE))


def _plain(edge: Edge, step: Step, vocabulary: Vocabulary) -> str:
    words = edge.words
    if words.endswith(" missing"):
        event = words.removesuffix(" missing")
        return f"not seen: {vocabulary.happens.get(event, event)}"
    for reading in readings_of(step):
        words = words.removeprefix(f"{reading.name or step.common.name}: ")
    if isinstance(step, Compute):
        words = words.removeprefix(f"{step.result}: ")
    return words.replace("_", " ")


def _band(band: Band, unit: str) -> str:
    if band.under is None:
        return band.label
    text = band.under.text
    try:
        float(text)
        text = f"{text} {unit}"
    except ValueError:
        pass
    text = _UNIT.sub(lambda one: f"{one.group(1)}\u00a0{_symbol(one.group(2))}", text)
    text = text.replace("_", " ").replace(" * ", " × ")
    return f"{band.label}, under\u00a0{text}"


def _symbol(unit: str) -> str:
    return UNITS[unit].symbol if unit in UNITS else unit


def end(step: Step, vocabulary: Vocabulary) -> tuple[str, str, str]:
    """The first word, the text and the small line of an end."""
    if isinstance(step, Finding):
        part = vocabulary.parts.get(step.condemns or "")
        small = f"part: {part.title}" if part else "" if step.fault else "nothing is broken"
        return verb(step), step.title, small
    if isinstance(step, Stop):
        page = vocabulary.stops.get(step.page)
        title = page.title if page else step.page.replace("_", " ")
        return "stop", step.finding or title, title if step.finding else ""
    if isinstance(step, HandOver):
        complaint = vocabulary.complaints.get(step.complaint)
        return verb(step), complaint.title if complaint else step.complaint.replace("_", " "), ""
    assert isinstance(step, Return)
    outcome = step.outcome.replace("_", " ")
    return verb(step), step.says or outcome, outcome if step.says else ""


def _time(seconds: float) -> str:
    return f"{seconds / 60:g} min" if seconds >= 60 else f"{seconds:g} s"
