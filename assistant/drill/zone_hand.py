"""The hand in a house with zones: sets thermostats, waits for dampers, and touches one zone after the other.

What it is to do it reads from the page (zone_words); what it finds it gets from the house like any reading.
The quiet zone is the one that the customer complains of, the other one the smallest of the rest.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import replace

from assistant.drill import zone_words as words
from assistant.drill.taking import Taking, Wanted, held
from assistant.rig.house import CannotMeasure
from assistant.tree.model import Do, Look, Measure, Reading, Watch

QUIET, OTHER, ZONES = 2, 3, (1, 2, 3)
STROKE, DRIVEN, EACH, SETTLE, HEATS, SMALLEST_HEATS = 120, 90, 120, 300, 300, 900
"""Seconds: a damper opened before a stroke, the stroke, each zone's fan, a short wait, each zone's heat."""
CALL_RUNS = 360
LOOKS = 6
ABOUT = {"zone", "panel", "damper", "actuator", "register", "return", "room"}
LEGS = {"damper.open": "open", "actuator.open": "open", "damper.close": "close", "actuator.close": "close"}


class ZoneHand:
    """Works in one zoned house through the readings of `taking`."""

    def __init__(self, taking: Taking) -> None:
        self.taking = taking
        self.rig = taking.rig
        self.people = taking.rig.people()

    # -- before an answer

    def before(self, step: Look | Measure | Do | Watch) -> None:
        """Everything as the page asks for, before the answer is given."""
        page = page_of(step)
        who = words.situation(page)
        if who == words.STROKE and isinstance(step, Look):
            self._hands(page)  # a wire that the last page lifted would drive nothing
            self.stroke()
            self.rig.wait(DRIVEN)
            return
        if who is not None and who != words.SMALL_HEAT:
            self._bring(who)
        self._hands(page)

    def wires(self, step: Look | Measure | Do | Watch) -> None:
        """The damper's wires as the page asks for, whatever the walk is for."""
        self._lifts(page_of(step))

    def _hands(self, page: tuple[str, ...]) -> None:
        self._lifts(page)
        if words.off_base(page):
            self.people.set(self.people.at, {"on_base": False})
        self.people.arm_pushed = words.arm_pushed(page)
        self.rig.wait(2.0)

    def _lifts(self, page: tuple[str, ...]) -> None:
        wires = words.lifts(page)
        if wires is not None:
            self.people.lifted -= {"damper open", "damper close", "actuator"}
            for wire in wires:
                self.people.lift(wire)
        elif self.people.lifted & {"damper open", "damper close", "actuator"}:
            self.people.lifted -= {"damper open", "damper close", "actuator"}

    def _bring(self, who: str) -> None:
        """Set the thermostats so; a stroke and what goes from zone to zone is done while it is read."""
        if who == self.people.brought and who not in (words.STROKE, words.SMALL_HEAT):
            return
        act = BRING.get(who)
        if act is not None:
            act(self)
            self.people.brought = who

    def _all(self, **changes: str) -> None:
        for zone in ZONES:
            self.people.set(zone, changes)

    def _found(self) -> None:
        self.people.rest()
        if self.rig.see("zone.stat") == "fan on or circulating":
            self.people.set(QUIET, {"fan": "on"})
        self.rig.wait(5)

    def _off(self) -> None:
        self._all(call="off", fan="auto", moisture="not asked")
        self.rig.wait(10)

    def _moist(self) -> None:
        for zone in ZONES:
            changes = {"call": "off", "moisture": "asked"}
            if self.people.stats[zone].fan == "on":
                changes["fan"] = "found"
            self.people.set(zone, changes)
        self.rig.wait(60)

    def _dry(self) -> None:
        self._all(moisture="not asked", call="off")
        self.rig.wait(60)

    def _auto(self) -> None:
        self._all(call="off")
        self.people.set(self.people.at, {"fan": "auto"})
        self.rig.wait(10)

    def alone(self, zone: int, call: str = "off", seconds: float = EACH) -> None:
        """That zone alone: its fan, or its call."""
        self._all(call="off", fan="auto", moisture="not asked")
        self.people.set(zone, {"call": call, "fan": "on" if call == "off" else "auto"})
        self.rig.wait(seconds)

    def _every(self) -> None:
        self._all(call="off", fan="on", moisture="not asked")
        self.rig.wait(EACH)

    def stroke(self) -> None:
        """The quiet zone open, then shut, from this moment on."""
        self.alone(QUIET, seconds=STROKE)
        self.alone(OTHER, seconds=0)
        self.people.brought = words.OTHER

    def small_heats(self) -> None:
        """The smallest zone heats alone for a quarter of an hour, no hotter than a person lets it get."""
        self.alone(OTHER, "heat", 0)
        self.rig.wait(SMALLEST_HEATS)

    def _all_heat(self) -> None:
        self._all(call="heat", fan="auto", moisture="not asked")
        self.rig.wait(SMALLEST_HEATS)

    # -- readings

    def works(self, step: Measure) -> bool:
        """Whether the page is about zones at all: one of its points, or a call that it asks for."""
        points = {point.partition(".")[0] for reading in step.readings for point in reading.at}
        if points & ABOUT:
            return True
        return any(words.asked_for(reading.ask, page_of(step)).who for reading in step.readings)

    def page(self, step: Measure, wanted: list[Wanted]) -> dict[str, str]:
        """What the display showed for each reading of a page, each in its own situation."""
        page = page_of(step)
        shown: dict[str, str] = {}
        each: dict[str, list[Wanted]] = {}
        for one in wanted:
            asked = words.asked_for(one.reading.ask if one.reading.ask != step.ask else "", page)
            if asked.who in EACH_ALONE:
                each.setdefault(asked.who, []).append(one)
            else:
                shown[one.name] = self._reading(one, asked, page)
        for who, ones in each.items():
            shown |= self.each(ones, *EACH_ALONE[who])
        self.people.lifted.discard("panel out")  # a wire lifted for a reading goes back after it
        return shown

    def _reading(self, one: Wanted, asked: words.Asked, page: tuple[str, ...]) -> str:
        self._there(one.reading)
        way = ACROSS.get(asked.who or "")
        if way is not None:
            return way(self, one, asked)
        if asked.who == words.SMALL_HEAT and self.people.brought != words.SMALL_HEAT:
            self.small_heats()
            self.people.brought = words.SMALL_HEAT
        elif asked.who is not None and asked.who != words.SMALL_HEAT:
            self._bring(asked.who)
        said = " ".join((one.reading.ask, *page)).lower()
        if asked.who == words.SMALL_HEAT and re.search(r"lamp lights|highest", said):
            return self._in_the_call(one, "lamp lights" in said)
        if one.moment.hold and asked.zone != "every":
            return self._held(one, asked, DRIVEN if asked.who == words.STROKE else 60)
        return self._show(one, asked)

    def _in_the_call(self, one: Wanted, at_lamp: bool) -> str:
        """While the smallest zone heats alone: the highest, all of it or until the cut-out's lamp lights."""
        self._off()
        self.rig.wait(SETTLE)
        self.alone(OTHER, "heat", 0)
        shown = []
        for _ in range(SMALLEST_HEATS // 10):
            self.rig.wait(10)
            shown.append(self.taking.show(one.reading))
            if at_lamp and self.rig.see("panel.cut_out") == "lit":
                break
        return max(shown, key=number)

    def _there(self, reading: Reading) -> None:
        """Refuse a leg that this damper has not got."""
        kind = self.rig.see("damper.kind")
        leg = next((LEGS[point] for point in reading.at if point in LEGS), None)
        lacks = {"two wires, springs open": "open", "two wires, springs shut": "close"}.get(kind)
        if leg is not None and leg == lacks and any(point.startswith("actuator") for point in reading.at):
            raise CannotMeasure("this damper has no such wire")

    def _zones(self, asked: words.Asked) -> tuple[int, ...]:
        return {"every": ZONES, "quiet": (QUIET,), "other": (OTHER,)}.get(asked.zone, (self.people.at,))

    def _show(self, one: Wanted, asked: words.Asked) -> str:
        """One look; the highest of the zones that are touched, and whose it was."""
        best: tuple[float, str, int] | None = None
        for zone in self._zones(asked):
            text = self.taking.show(at_zone(one.reading, zone))
            value = number(text)
            if best is None or value > best[0]:
                best = (value, text, zone)
        assert best is not None
        if asked.zone == "every" and best[0] > 2:
            self.people.at = best[2]
        return best[1]

    def _held(self, one: Wanted, asked: words.Asked, seconds: float) -> str:
        shown = self._show(one, asked)
        for _ in range(LOOKS):
            self.rig.wait(seconds / LOOKS)
            shown = held(one, shown, self._show(one, asked))
        return shown

    def _through_stroke(self, one: Wanted, asked: words.Asked) -> str:
        self.stroke()
        if one.reading.kind == "percent":
            self.rig.wait(DRIVEN)
            return self.taking.show(one.reading)
        return self._held(one, asked, 60)

    def _in_turn(self, one: Wanted, asked: words.Asked) -> str:
        """The fan from zone to zone, each damper driven meanwhile; then back."""
        shown: str | None = None
        for zone in (1, QUIET, OTHER):
            self.alone(zone, seconds=4)
            for _ in range(LOOKS):
                text = self._show(one, asked)
                shown = text if shown is None else held(one, shown, text)
                self.rig.wait(DRIVEN / LOOKS)
        self.people.brought = words.OTHER
        assert shown is not None
        if one.reading.kind == "percent":
            self.stroke()
            self.rig.wait(DRIVEN)
            return self.taking.show(one.reading)
        return shown

    def each(self, wanted: list[Wanted], call: str, seconds: float) -> dict[str, str]:
        """One zone after the other alone: the highest, or the lowest, of what the page asks for."""
        texts: dict[str, list[str]] = {one.name: [] for one in wanted}
        for zone in ZONES:
            self.alone(zone, call, seconds)
            for one in wanted:
                texts[one.name].append(self.taking.show(still_at(one.reading)))
        self.people.brought = words.OTHER if call == "off" else None
        lowest = {one.name for one in wanted if "lowest" in one.reading.ask.lower()}
        return {name: (min if name in lowest else max)(all_, key=number) for name, all_ in texts.items()}

    def after(self, one: Wanted, _asked: words.Asked) -> str:
        """The call ends; then as long as the page asks for."""
        if self.people.stats[OTHER].call != "off":
            self._off()
        self.people.brought = words.OFF
        return self.taking.show(still_at(one.reading))

    # -- a call that is watched

    def call(self, step: Watch) -> dict[str, float]:
        """One short call of the other zone, until the blower stops."""
        self._off()
        self.rig.wait(SETTLE)
        self.alone(OTHER, "heat", 0)
        self.rig.wait(0)
        events: dict[str, float] = {}
        begun = self.rig.time
        while self.rig.time - begun < step.within and len(events) < len(step.events):
            if "blower.runs" in events and self.rig.time - begun - events["blower.runs"] > CALL_RUNS:
                self._all(call="off", fan="auto")
            looked = self.rig.time
            for name, at in self.rig.wait(5):
                if name in step.events and (name != "blower.stops" or "blower.runs" in events):
                    events.setdefault(name, round(max(looked - begun, 0) + min(at, 5), 1))
        self._all(call="off", fan="auto")
        self.rig.wait(SETTLE)
        self.people.brought = words.OFF
        return events

    # -- the survey

    def survey(self, step: Measure) -> Mapping[str, str]:
        """Every register in each zone's call alone."""
        reading = step.readings[0]
        cells: dict[str, str] = {}
        registers = self.rig.registers()
        for zone in ZONES:
            self.alone(zone, seconds=EACH)
            for register in registers:
                at = replace(reading, at=(f"register.{register}",))
                cells[f"fan/{zone}/{register}"] = self.taking.show(at)
        for register, zone in registers.items():
            cells[f"drawn/{register}"] = str(zone)
        self.people.brought = words.OTHER
        self.alone(OTHER, seconds=60)
        return cells


BRING: dict[str, Callable[[ZoneHand], None]] = {
    words.FOUND: ZoneHand._found,
    words.OFF: ZoneHand._off,
    words.MOIST: ZoneHand._moist,
    words.DRY: ZoneHand._dry,
    words.AUTO: ZoneHand._auto,
    words.OTHER: lambda hand: hand.alone(OTHER),
    words.OWN: lambda hand: hand.alone(QUIET),
    words.EVERY: ZoneHand._every,
    words.SMALL_HEAT: ZoneHand.small_heats,
    words.ALL_HEAT: ZoneHand._all_heat,
}
EACH_ALONE = {
    words.EACH_FAN: ("off", EACH),
    words.EACH_COOL: ("cool", EACH),
    words.EACH_HEAT: ("heat", HEATS),
}
"""Who calls alone, one zone after the other, and how long."""
ACROSS: dict[str, Callable[[ZoneHand, Wanted, words.Asked], str]] = {
    words.STROKE: ZoneHand._through_stroke,
    words.TURNS: ZoneHand._in_turn,
    words.AFTER: ZoneHand.after,
}


def page_of(step: Look | Measure | Do | Watch) -> tuple[str, ...]:
    """The words of a page: its question, then how to take it."""
    return (step.ask, *step.common.how)


def at_zone(reading: Reading, zone: int) -> Reading:
    """The reading at that zone's own terminals."""
    if zone == 1:
        return reading
    own = f"zone{zone}."
    return replace(reading, at=tuple(re.sub(r"^zone\.", own, point) for point in reading.at))


def still_at(reading: Reading) -> Reading:
    """What should be still is looked for at every register, where the page says 'highest'."""
    if reading.at == ("register.quiet",) and "highest" in reading.ask.lower():
        return replace(reading, at=("registers.still",))
    return reading


def number(text: str) -> float:
    """The number that a display shows; nothing counts as nought."""
    found = re.search(r"-?\d+(\.\d+)?", text)
    return float(found.group()) if found else 0.0
