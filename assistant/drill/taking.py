"""Taking the readings of a page on the simulated house, each at the moment that its words ask for.

Several readings of one moment are taken in turn, a second each, as one person with one meter does.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from assistant.drill import moment
from assistant.drill.kit import named_for
from assistant.drill.moment import Moment
from assistant.quantity.entry import Understood, understand
from assistant.quantity.instrument import Instrument
from assistant.quantity.kind import KINDS
from assistant.rig.house import CannotMeasure, Rig
from assistant.tree.model import Reading

ONE_START, UNTIL_FIRE, FIRE_SHOWN, INDUCER_UP, AFTER_BLOWER, AFTER_CALL = 120, 300, 20, 10, 60, 10
"""Seconds: a start watched, patience for a flame, a flame looked at, an inducer up to speed, and after."""
SLOW, STEADY = ("temperature", "percent", "concentration"), 300.0
"""What takes minutes of fire to stand still, and how long that is waited for."""
A_BLINK = 4
"""Seconds in which a relay that chatters has opened and closed."""
LONG_STEP = 5.0
"""Seconds between looks at a display that holds its extreme for minutes."""
FEW = 5
"""Looks at a display that should stand still."""
UNREADABLE = ("Err",)
PLAIN = r"\bsuction\b|plain number"
"""What is asked for like this is typed without its sign."""
CALLS = ("stat_on", "stat_call")


@dataclass(frozen=True)
class Wanted:
    """One reading to take: its place on the page, and when."""

    name: str
    reading: Reading
    moment: Moment


class Taking:
    """Readings on one rig with one set of instruments. `called_at`: when the hand last called for heat.
    `w_off`: whether it has taken W off the board.
    """

    def __init__(self, rig: Rig, instruments: Mapping[str, Instrument]) -> None:
        self.rig = rig
        self.instruments = instruments
        self.called_at: float | None = None
        self.calling = True
        self.w_off = False

    # -- the page

    def page(self, wanted: Sequence[Wanted], seconds: float) -> dict[str, str]:
        """What the display showed for each reading. Raises CannotMeasure where there is nothing to read."""
        shown: dict[str, str] = {}
        off = self.w_off and not self.calling
        for when in ORDER:
            now = [one for one in wanted if one.moment.when == when]
            if now:
                MOMENTS[when](self, now, seconds, shown)
        if off and self.calling:  # called for this page alone: with W off only the fan call is to stand
            self.act("stat_off")
            self.act("fan_again")
        return shown

    def show(self, reading: Reading) -> str:
        """One look at the display. Raises CannotMeasure."""
        instrument = self.instruments[named_for(reading.kind, reading.meter)]
        text = self.rig.measure(reading.kind, reading.at, instrument)
        if text in UNREADABLE:
            raise CannotMeasure(f"the meter shows {text}")
        return text.removeprefix("-") if re.search(PLAIN, reading.ask.lower()) else text

    def round(self, wanted: Sequence[Wanted], shown: dict[str, str]) -> None:
        """Each of them once, the extreme kept where it is held."""
        for one in wanted:
            shown[one.name] = held(one, shown.get(one.name), self.show(one.reading))

    def new_call(self) -> None:
        """Thermostat off until all stands still, and on again."""
        self.act("stat_off")
        self.rig.wait(AFTER_CALL)
        self.act("stat_on")

    def act(self, name: str) -> None:
        """Do something, and know whether a call was begun by it. Raises NotDone."""
        self.rig.act(name)
        self.w_off = name == "w_off" or (self.w_off and name != "w_back")
        if name in CALLS:
            self.called_at = None if self.calling else self.rig.time
            self.calling = True
        elif name == "stat_off":
            self.calling = False
        else:
            self.called_at = None

    def fresh_call(self) -> bool:
        """Whether the call was made a moment ago, so that a start can be watched from its beginning."""
        return self.called_at is not None and self.rig.time - self.called_at <= 2.0

    def lit(self) -> bool:
        """Whether a flame is seen."""
        return self.rig.see("flame.look") != "no flame"

    def turning(self) -> bool:
        """Whether the inducer is heard."""
        return self.rig.see("inducer.turning") == "runs"

    def blowing(self) -> bool:
        """Whether the blower is heard."""
        return self.rig.see("blower.forced") == "runs"

    def opened(self) -> bool:
        """Whether breaker or device has opened."""
        return self.rig.see("breaker.closed") == "opens"

    def until(self, condition: Callable[[], bool], patience: float) -> bool:
        """Wait for something, second by second. False when it did not come."""
        left = patience
        while not condition():
            if left <= 0:
                return False
            self.rig.wait(1.0)
            left -= 1.0
        return True

    # -- the moments

    def _now(self, wanted: Sequence[Wanted], seconds: float, shown: dict[str, str]) -> None:
        self._over(wanted, seconds, shown)

    def _over(self, wanted: Sequence[Wanted], seconds: float, shown: dict[str, str]) -> None:
        """Once for what is read as it stands; over the page's time for what is held."""
        begun = self.rig.time
        self.round(wanted, shown)
        watched = [one for one in wanted if one.moment.hold]
        for one in watched:
            shown[one.name] = self._kept(one, shown[one.name])
        end = max(begun + seconds, self.rig.time) if watched else self.rig.time
        while self.rig.time < end:
            self.rig.wait(LONG_STEP)
            lit = self.lit()
            self.round([one for one in watched if lit or one.reading.kind != "dc_current"], shown)

    def _kept(self, one: Wanted, text: str) -> str:
        """With what the instrument keeps of a few seconds that nobody could read off its display."""
        reading = one.reading
        if reading.kind != "ac_voltage":
            return text
        instrument = self.instruments[named_for(reading.kind, reading.meter)]
        return held(one, text, self.rig.kept(reading.at, instrument, A_BLINK, one.moment.hold == "lowest"))

    def _held(self, wanted: Sequence[Wanted], _seconds: float, shown: dict[str, str]) -> None:
        for one in wanted:
            instrument = self.instruments[named_for(one.reading.kind, one.reading.meter)]
            last = one.moment.when == moment.LAST
            shown[one.name] = self.rig.held(one.reading.at, instrument, last)

    def _rest(self, wanted: Sequence[Wanted], _seconds: float, shown: dict[str, str]) -> None:
        moving = self.turning() or self.lit()
        if moving:
            self.act("stat_off")
            self.rig.wait(AFTER_CALL)
        self.round(wanted, shown)
        if moving:
            self.act("stat_on")

    def _start(self, wanted: Sequence[Wanted], _seconds: float, shown: dict[str, str]) -> None:
        if not self.fresh_call():
            self.new_call()
        end = self.rig.time + ONE_START
        while self.rig.time < end:
            self.round(wanted, shown)
            if any(name == "flame.holds" for name, _ in self.rig.wait(0.0)):
                break

    def _running(self, wanted: Sequence[Wanted], seconds: float, shown: dict[str, str]) -> None:
        if not self.turning():
            self.new_call()
            self.until(self.turning, ONE_START)
            self.rig.wait(INDUCER_UP)
        self._over(wanted, seconds, shown)

    def _fire(self, wanted: Sequence[Wanted], seconds: float, shown: dict[str, str]) -> None:
        self._while(self.lit, wanted, seconds, shown)

    def _heating(self, wanted: Sequence[Wanted], seconds: float, shown: dict[str, str]) -> None:
        self._while(lambda: self.lit() and self.blowing(), wanted, seconds, shown)

    def _while(
        self, so: Callable[[], bool], wanted: Sequence[Wanted], seconds: float, shown: dict[str, str]
    ) -> None:
        """While it burns, from a new call where it does not. A flame that goes out meanwhile is awaited once
        more, a few times.
        """
        try:
            self._light(so)
        except CannotMeasure:
            if not self.opened():
                raise
            self.round(wanted, shown)  # nothing runs any more, and that is what the display shows
            return
        again = FEW
        slow = any(one.reading.kind in SLOW for one in wanted)
        shown_for = seconds if any(one.moment.hold for one in wanted) else STEADY if slow else FIRE_SHOWN
        begun, end = self.rig.time, self.rig.time + shown_for
        step = 0.0
        while self.rig.time < end:
            taken = dict(shown)
            self.round(wanted, taken)
            if not so():
                if shown.keys() & taken.keys():
                    break
                if again:
                    again -= 1
                    self._light(so)
                    begun, end = self.rig.time, self.rig.time + shown_for
                    continue
            shown.update(taken)
            if step:
                self.rig.wait(step)
            step = LONG_STEP if self.rig.time > begun + FIRE_SHOWN else 0.0

    def _light(self, so: Callable[[], bool]) -> None:
        """Have it burn. Raises CannotMeasure where it does not."""
        if not self.lit():
            self.new_call()
        if not self.until(so, UNTIL_FIRE):
            raise CannotMeasure("nothing burns")

    def _loss(self, wanted: Sequence[Wanted], seconds: float, shown: dict[str, str]) -> None:
        """Up to the moment at which it goes out. Each reading of several has its turn at that very moment: a
        second later the board has shut what it held open.
        """
        for turn in wanted:
            for _ in range(FEW):
                if not self.lit():
                    self.new_call()
                if self.until(self.lit, UNTIL_FIRE):
                    break
            end = self.rig.time + seconds
            taken = {one.name: self.show(one.reading) for one in wanted}
            while self.rig.time < end and self.lit():
                taken[turn.name] = self.show(turn.reading)
            if self.lit():  # it stayed this time: nothing of an earlier time is mixed with that
                shown.update(taken)
                return
            for one in wanted:
                shown[one.name] = held(one, shown.get(one.name), taken[one.name])

    def _before_blower(self, wanted: Sequence[Wanted], _seconds: float, shown: dict[str, str]) -> None:
        self.new_call()
        self.until(self.lit, UNTIL_FIRE)
        end = self.rig.time + UNTIL_FIRE
        while self.rig.time < end:
            taken = dict(shown)
            self.round(wanted, taken)
            if any(name == "blower.runs" for name, _ in self.rig.wait(0.0)):
                break
            shown.update(taken)
        for name, text in taken.items():
            shown.setdefault(name, text)

    def _after_blower(self, wanted: Sequence[Wanted], _seconds: float, shown: dict[str, str]) -> None:
        """While the blower runs: a minute after it started, or at once where it has run for long."""
        if not self.blowing():
            if not self.lit():
                self.new_call()
            self.until(self.blowing, UNTIL_FIRE)
            self.rig.wait(AFTER_BLOWER)
        for _ in range(FEW):
            taken = dict(shown)
            self.round(wanted, taken)
            if not self.blowing() and shown.keys() & taken.keys():
                break
            shown.update(taken)

    def _after_call(self, wanted: Sequence[Wanted], _seconds: float, shown: dict[str, str]) -> None:
        self.act("stat_off")
        self.rig.wait(AFTER_CALL)
        self.round(wanted, shown)
        self.act("stat_on")


MOMENTS: dict[str, Callable[[Taking, Sequence[Wanted], float, dict[str, str]], None]] = {
    moment.HELD: Taking._held,
    moment.LAST: Taking._held,
    moment.REST: Taking._rest,
    moment.NOW: Taking._now,
    moment.START: Taking._start,
    moment.RUNNING: Taking._running,
    moment.BEFORE_BLOWER: Taking._before_blower,
    moment.AFTER_BLOWER: Taking._after_blower,
    moment.HEATING: Taking._heating,
    moment.FIRE: Taking._fire,
    moment.LOSS: Taking._loss,
    moment.AFTER_CALL: Taking._after_call,
}
ORDER = tuple(MOMENTS)


def held(one: Wanted, kept: str | None, text: str) -> str:
    """The display's text after one more look: the extreme where one is held, otherwise the new one."""
    if kept is None or not one.moment.hold:
        return text
    before, now = (_value(one.reading, shown) for shown in (kept, text))
    lower = now < before
    return text if lower == (one.moment.hold == "lowest") and now != before else kept


def _value(reading: Reading, text: str) -> float:
    return _read(reading.kind, text)


@lru_cache(maxsize=4096)
def _read(kind: str, text: str) -> float:
    got = understand(text, kind, KINDS[kind].units[0])
    return got.interval.lo if isinstance(got, Understood) else 0.0
