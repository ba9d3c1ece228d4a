"""The board: what it wants running, step by step in time, from what its inputs show it.

Order and times are the usual ones of an induced-draught furnace with a hot surface igniter (common practice:
prove within a minute, purge 15 s, warm-up 20 s, trial 6 s, blower 30 s after flame, three tries, five
recycles).
"""

from __future__ import annotations

from dataclasses import dataclass, field

PROVE, REST, PURGE, WARM_UP, TRIAL, IGNITER_OFF, BLOWER_ON = 60.0, 120.0, 15.0, 20.0, 6.0, 3.0, 30.0
BLOWER_OFF, POST_PURGE, FORGETS, SOFT_RESET = 90.0, 10.0, 3.0, 3600.0
TRIES, RECYCLES, LIMIT_TRIPS = 3, 5, 4


@dataclass(frozen=True)
class Inputs:
    """What the board sees: power, calls, the string after its last limit, the pressure switch, a flame, and
    whether there is voltage on its own output for the valve.
    """

    power: bool
    heat: bool
    fan: bool
    string: bool
    pressure: bool
    flame: bool
    valve: bool = False


@dataclass
class Board:
    """`phase` is what it does; `since` how long, s. `code` is what its light flashes: "" for steady."""

    phase: str = "standby"
    since: float = 0.0
    tries: int = 0
    recycles: int = 0
    trips: int = 0
    code: str = ""
    quiet: float = 0.0
    heat_run_on: float = 0.0
    hot_for: float = 0.0
    wants: dict[str, float] = field(
        default_factory=lambda: {"inducer": 0.0, "igniter": 0.0, "valve": 0.0, "blower": 0.0, "fan": 0.0}
    )

    def go(self, phase: str, code: str | None = None) -> None:
        self.phase, self.since = phase, 0.0
        if code is not None:
            self.code = code

    def step(self, seconds: float, seen: Inputs) -> None:
        """Let time pass. `wants` then has what the board drives."""
        if not seen.power:
            self.__init__()
            return
        self.since += seconds
        self.quiet = 0.0 if seen.heat else self.quiet + seconds
        if self.quiet >= FORGETS and self.phase in ("lockout", "rest", "held"):
            self.tries = self.recycles = self.trips = 0
            self.go("standby", "")
        getattr(self, f"_{self.phase}")(seen)
        self._drive(seconds, seen)

    def _standby(self, seen: Inputs) -> None:
        if not seen.string:
            self.go("open", "limit or rollout open")
        elif seen.flame:
            self.go("flame_at_rest", "flame with the valve off")
        elif not seen.heat:
            self.tries = self.recycles = self.trips = 0
            self.code = ""
        elif seen.pressure:
            self.code = "pressure switch closed with the inducer off"
        else:
            self.go("prove")

    def _prove(self, seen: Inputs) -> None:
        if not self._still_called(seen) or self._flame_too_soon(seen) or self._valve_too_soon(seen):
            return
        if not seen.string:
            self.go("open", "limit or rollout open")
        elif seen.pressure:
            self.go("purge", "")
        elif self.since >= PROVE:
            self.go("rest", "pressure switch did not close")

    def _rest(self, _seen: Inputs) -> None:
        if self.since >= REST:
            self.go("standby")

    def _purge(self, seen: Inputs) -> None:
        if not self._fine(seen) or self._flame_too_soon(seen) or self._valve_too_soon(seen):
            return
        if self.since >= PURGE:
            self.go("warm_up")

    def _warm_up(self, seen: Inputs) -> None:
        if self._fine(seen) and not self._flame_too_soon(seen) and self.since >= WARM_UP:
            self.go("trial")

    def _trial(self, seen: Inputs) -> None:
        if not self._fine(seen):
            return
        if self.since >= TRIAL:
            if seen.flame:
                self.go("run", "")
            else:
                self.tries += 1
                self.go("between", "no flame proved")

    def _between(self, seen: Inputs) -> None:
        if not self._still_called(seen):
            return
        if self.tries >= TRIES or self.recycles >= RECYCLES:
            self.go("lockout", "locked out, no flame proved")
        elif self.since >= PURGE:
            self.go("purge" if seen.pressure else "prove")

    def _run(self, seen: Inputs) -> None:
        self.tries = 0
        if not self._fine(seen):
            return
        if not seen.flame and self.since > 1.0:
            self.recycles += 1
            self.go("between", "flame lost")

    def _post_purge(self, _seen: Inputs) -> None:
        if self.since >= POST_PURGE:
            self.go("standby")

    def _open(self, seen: Inputs) -> None:
        if seen.string:
            self.trips += 1
            self.go("lockout" if self.trips >= LIMIT_TRIPS else "standby")

    def _flame_at_rest(self, seen: Inputs) -> None:
        if not seen.flame and self.since > 5:
            self.go("standby", "")

    def _valve_driven(self, seen: Inputs) -> None:
        if not seen.valve and self.since > 5:
            self.go("standby", "")

    def _lockout(self, _seen: Inputs) -> None:
        if self.since >= SOFT_RESET:
            self.tries = self.recycles = self.trips = 0
            self.go("standby")

    def _flame_too_soon(self, seen: Inputs) -> bool:
        if seen.flame:
            self.go("flame_at_rest", "flame with the valve off")
        return seen.flame

    def _valve_too_soon(self, seen: Inputs) -> bool:
        if seen.valve:
            self.go("valve_driven", "gas valve driven without a trial")
        return seen.valve

    def _still_called(self, seen: Inputs) -> bool:
        if not seen.heat:
            self.go("post_purge")
        return seen.heat

    def _fine(self, seen: Inputs) -> bool:
        if not self._still_called(seen):
            return False
        if not seen.string:
            self.go("open", "limit or rollout open")
            return False
        if not seen.pressure:
            self.go("prove", "pressure switch opened")
            return False
        return True

    def _drive(self, seconds: float, seen: Inputs) -> None:
        phase = self.phase
        inducer = phase in (
            "prove",
            "purge",
            "warm_up",
            "trial",
            "run",
            "post_purge",
            "between",
            "open",
            "flame_at_rest",
            "valve_driven",
        )
        valve = phase in ("trial", "run")
        lit = phase == "run" or (phase == "trial" and seen.flame)
        self.hot_for = self.hot_for + seconds if lit else 0.0
        if (phase == "run" and self.hot_for >= BLOWER_ON) or phase == "open":
            self.heat_run_on = BLOWER_OFF
        elif phase != "run":
            self.heat_run_on = max(0.0, self.heat_run_on - seconds)
        blower = self.heat_run_on > 0 or phase in ("open", "flame_at_rest")
        igniter = phase == "warm_up" or (phase == "trial" and self.since < IGNITER_OFF)
        self.wants.update(
            inducer=float(inducer),
            igniter=float(igniter),
            valve=float(valve),
            blower=float(blower),
            fan=float(seen.fan and not blower),
        )
