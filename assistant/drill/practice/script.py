"""A drill from a file of entries: what an apprentice does, one after the other, free or along the tree."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from assistant.drill.hand import Stuck
from assistant.drill.practice import answers
from assistant.drill.practice.along import Along, Loose
from assistant.drill.practice.drill import Drill
from assistant.drill.practice.meter import FUNCTIONS
from assistant.drill.practice.sitting import CantDo, Sitting
from assistant.drill.trial import opened
from assistant.house.fields import Form, Problems
from assistant.house.place import Place, Problem
from assistant.house.reader import Fields, Items, Text, Unreadable, read
from assistant.quantity.entry import Understood, understand
from assistant.tree.library import Library
from assistant.walk.event import Concluded, GoOn, Hazard
from assistant.walk.state import BadAnswer

FREE, TREE = "free", "tree"
FREE_WORDS = ("look", "read", "do", "wait", "leads", "expect", "finding", "cause", "say")
TREE_WORDS = ("take", "walk", "hazard", "expect", "finding", "cause", "say")
MOST_STEPS = 400
ENDS = ("finding", "stop", "handed_over", "choose", "leave", "notes")


@dataclass(frozen=True)
class Step:
    """One entry of the file: its word, its value, and where it stands."""

    word: str
    value: str
    fields: Mapping[str, str]
    place: Place


@dataclass(frozen=True)
class Script:
    """Which drill, which way, and the entries."""

    drill: str
    way: str
    steps: tuple[Step, ...]
    place: Place


class CantFinish(Exception):
    """The script can't be gone through: the place, and why."""


def load_script(data: bytes, file: str) -> tuple[Script | None, list[Problem]]:
    """The script that a file writes, and what is wrong in it. Never raises."""
    problems = Problems()
    try:
        node = read(data, file)
    except Unreadable as unreadable:
        return None, unreadable.problems
    if not isinstance(node, Fields):
        problems.add(node.place, "type", f"{file} is a set of fields: drill, way and entries")
        return None, problems.sorted()
    form = Form(node, file, problems)
    form.text("format")
    drill, way, listed = form.text("drill", need=True), form.text("way"), form.get("entries", need=True)
    form.close()
    if way and way.value not in (FREE, TREE):
        problems.unknown(way, "way to work", (FREE, TREE))
    if listed is not None and not isinstance(listed, Items):
        problems.add(listed.place, "type", "'entries' is a list such as [look: code_light, wait: 1 min]")
    words = TREE_WORDS if way and way.value == TREE else FREE_WORDS
    steps = [
        step
        for item in (listed.items if isinstance(listed, Items) else ())
        if (step := _step(item, words, problems))
    ]
    if problems.found or drill is None:
        return None, problems.sorted()
    return Script(drill.value, way.value if way else FREE, tuple(steps), form.node.place), []


def _step(item, words: tuple[str, ...], problems: Problems) -> Step | None:
    if isinstance(item, Text):
        if item.value in ("take", "leads") and item.value in words:
            return Step(item.value, "", {}, item.place)
        problems.unknown(item, "entry", words)
        return None
    if not isinstance(item, Fields) or len(item.entries) != 1:
        problems.add(item.place, "type", f"an entry is one of {', '.join(words)} with its value")
        return None
    (word, value), place = next(iter(item.entries.items())), item.place
    if word not in words:
        problems.unknown(Text(word, item.keys[word], False), "entry", words)
        return None
    if isinstance(value, Text):
        return Step(word, value.value, {}, value.place)
    if word == "read" and isinstance(value, Fields):
        inside = {name: one.value for name, one in value.entries.items() if isinstance(one, Text)}
        for name in value.entries:
            if name not in ("with", "red", "black", "expect"):
                key = Text(name, value.keys[name], False)
                problems.unknown(key, "field of a reading", ("with", "red", "black", "expect"))
        return Step(word, "", inside, place)
    problems.add(
        place, "type", f"'{word}' has one text" + (" or with, red and black" if word == "read" else "")
    )
    return None


def play(script: Script, drill: Drill, library: Library, clock: Callable[[], float]):
    """The sitting after all entries. Raises CantFinish."""
    if script.way == TREE:
        return _along(script, drill, library, clock)
    sitting = Sitting(drill, library, clock)
    expected, said = "", {"finding": "", "cause": "", "say": ""}
    for step in script.steps:
        try:
            if step.word == "expect":
                expected = step.value
                continue
            if step.word in said:
                said[step.word] = _answer(step, library, drill)
                continue
            _free(step, sitting, expected)
        except CantDo as problem:
            raise CantFinish(f"{_at(step.place)}: {step.word}: {problem}") from None
        expected = ""
    return _ended(script, sitting, said)


def _free(step: Step, sitting: Sitting, expected: str) -> None:
    if step.word == "look":
        sitting.look(step.value, expected)
    elif step.word == "do":
        sitting.act(step.value)
    elif step.word == "leads":
        sitting.leads_together()
    elif step.word == "wait":
        sitting.wait(seconds(step.value))
    else:
        _lay(step, sitting)
        sitting.read(step.fields.get("expect", expected))


def _lay(step: Step, sitting: Sitting) -> None:
    wanted, points = step.fields.get("with", sitting.meter.function), sitting.points()
    if wanted not in FUNCTIONS:
        raise CantDo(f"there is no '{wanted}' on this truck; there is {', '.join(FUNCTIONS)}")
    red, black = step.fields.get("red", ""), step.fields.get("black", "")
    for point in (red, black):
        if point and point not in points:
            raise CantDo(f"there is no point '{point}'")
    sitting.meter.function, sitting.meter.red, sitting.meter.black = wanted, red, black


def seconds(text: str) -> float:
    """A time as typed, in s. Raises CantDo."""
    got = understand(text, "duration", "s")
    if not isinstance(got, Understood):
        raise CantDo(f"'{text}' is no time; write one such as 5 min")
    return got.interval.lo


def _along(script: Script, drill: Drill, library: Library, clock: Callable[[], float]) -> Along:
    along = Along(drill, library, Loose(opened(library, drill.complaint, stated=True)), clock)
    expected, said = "", {"finding": "", "cause": "", "say": ""}
    for step in script.steps:
        try:
            if step.word == "expect":
                expected = step.value
            elif step.word in said:
                said[step.word] = _answer(step, library, drill)
            elif step.word == "hazard":
                event = Hazard(now_for(along), step.value)
                along.before(event)
                along.live.send(event)
            else:
                _walk(along, step, expected)
                expected = ""
        except (CantDo, BadAnswer, Stuck) as problem:
            raise CantFinish(f"{_at(step.place)}: {step.word}: {problem}") from None
    finding, cause = along.found()
    return _ended(
        script, along, {**said, "finding": said["finding"] or finding, "cause": said["cause"] or cause}
    )


def _walk(along: Along, step: Step, expected: str) -> None:
    """One answer, so many, or on to the finding ("end") or through causes too ("causes")."""
    if step.word == "take":
        _one(along, expected)
        return
    if step.value.isascii() and step.value.isdigit() and 0 < int(step.value) <= MOST_STEPS:
        for number in range(int(step.value)):
            _one(along, expected if number == 0 else "")
        return
    if step.value not in ("end", "causes"):
        raise CantDo(f"'{step.value}' is no way to walk; write a number of answers, end, or causes")
    for _ in range(MOST_STEPS):
        ask = along.ask()
        if step.value == "causes" and ask.kind == "finding":
            pass
        elif ask.kind in ENDS or (ask.kind == "do" and ask.step.startswith("act.")):
            return
        _one(along, "")
    raise CantDo(f"no end after {MOST_STEPS} answers")


def _one(along: Along, expected: str) -> None:
    ask = along.ask()
    if ask.kind == "conclude":
        found = ask.finding.finding if ask.finding else None
        event = Concluded(
            now_for(along), ask.step, "worn" if getattr(found, "condemns", None) else "not found"
        )
    elif along.can_take():
        event = along.take(expected)
    else:
        event = GoOn(now_for(along), ask.step)
    try:
        along.live.send(event)
    except BadAnswer:
        from assistant.drill.hand import insisted

        along.live.send(insisted(event))


def now_for(along: Along) -> str:
    """A time for events of a walk that is written nowhere."""
    from assistant.drill.hand import AT

    return along.visit.events[-1].at if along.visit.events else AT


def _answer(step: Step, library: Library, drill: Drill) -> str:
    known = {
        "finding": lambda: answers.findings(library, drill.complaint),
        "cause": lambda: answers.causes(library),
    }.get(step.word)
    if known is not None and step.value not in known():
        raise CantDo(f"'{step.value}' is no {step.word} here")
    return step.value


def _ended(script: Script, sitting, said: Mapping[str, str]):
    if not said["finding"]:
        raise CantFinish(f"{_at(script.place)}: the entries end before a finding is said")
    sitting.conclude(said["finding"], said["cause"], said["say"])
    return sitting


def _at(place: Place) -> str:
    return f"{place.file}:{place.line}:{place.column}"


EXAMPLE = """\
drill: cold_since_last_night
way: free
entries:
  - look: code_light
  - expect: 24 V
  - read: {with: low, red: r, black: c}
  - do: breaker_off
  - wait: 1 min
  - finding: igniter_open
  - cause: worn
  - say: The part that lights the gas had broken.
"""
