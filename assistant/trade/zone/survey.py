"""What a zone survey is: air read at registers in stated calls, some of it missing, by an anemometer with its
limits.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

NOBODY = "nobody"
"""The call in which no thermostat asks for anything."""
NONE_SEEN, SOME, FULL = WORDS = ("none", "some", "full")
"""What a hand or a tissue says where there is no meter."""
SHARES = {SOME: (0.22, 0.06), FULL: (1.0, 0.15)}
"""Each as a share of the register's full air and its standard uncertainty (reasoned)."""
FULL_AIR = 0.0472
"""A register's full air where no number of it was read: 100 cfm, m³/s."""


@dataclass(frozen=True)
class Flow:
    """A reading as the reasoning takes it: best value and standard uncertainty, m³/s."""

    value: float
    u: float


@dataclass(frozen=True)
class Anemometer:
    """`share`: half-width of its accuracy as a share of the reading.

    `floor`: flow (m³/s) under which it shows nothing.

    A vane stands still below about 40 fpm: 10 cfm at a register of a third of a square foot (read).
    """

    share: float = 0.10
    floor: float = 0.00472

    def flow(self, read: float) -> Flow:
        """A reading with its standard uncertainty (rectangular).

        A vane that stands still: anything to its floor.
        """
        if read < self.floor:
            return Flow(self.floor / 2, self.floor / math.sqrt(12))
        return Flow(read, math.hypot(self.share * read, self.floor / 2) / math.sqrt(3))

    def word(self, word: str, full: float) -> Flow:
        """One of WORDS, where the register's full air is `full`."""
        if word == NONE_SEEN:
            return Flow(self.floor / 2, self.floor / math.sqrt(12))
        share, u = SHARES[word]
        return Flow(share * full, u * full)


@dataclass(frozen=True)
class Cell:
    """One place to read: a register, in a mode, with one thermostat calling alone (or nobody)."""

    mode: str
    caller: str
    register: str


@dataclass(frozen=True)
class Survey:
    """`flows`: what was read, m³/s or one of WORDS; a cell that is not in it was not read.

    `claimed`: register -> zone as it is drawn.

    `static`: plenum static (Pa) by (mode, caller) where it was read. Raises ValueError for a flow of a
    register, zone or mode that the survey does not have, below zero or no number.
    """

    zones: tuple[str, ...]
    registers: tuple[str, ...]
    flows: Mapping[Cell, float | str]
    modes: tuple[str, ...] = ("heat",)
    claimed: Mapping[str, str] = field(default_factory=dict)
    static: Mapping[tuple[str, str], float] = field(default_factory=dict)
    meter: Anemometer = Anemometer()

    def __post_init__(self) -> None:
        callers = {*self.zones, NOBODY}
        for cell, flow in self.flows.items():
            if (
                cell.register not in self.registers
                or cell.caller not in callers
                or cell.mode not in self.modes
            ):
                raise ValueError(
                    f"{cell.register} with {cell.caller} calling for {cell.mode} is not in this survey"
                )
            if isinstance(flow, str):
                if flow not in WORDS:
                    raise ValueError(f"the air of {cell.register} is a number or one of {', '.join(WORDS)}")
            elif not (math.isfinite(flow) and flow >= 0):
                raise ValueError(f"the flow of {cell.register} must be a number from zero up (got {flow})")
        if strange := set(self.claimed.values()) - set(self.zones):
            raise ValueError(f"'{min(strange)}' is no zone of this survey")

    @cached_property
    def _read(self) -> dict[tuple[str, str, str], Flow]:
        full: dict[str, float] = {}
        for c, read in self.flows.items():
            if not isinstance(read, str):
                full[c.register] = max(read, full.get(c.register, 0.0))
        return {
            (c.mode, c.caller, c.register): (
                self.meter.word(read, max(full.get(c.register, 0.0), FULL_AIR))
                if isinstance(read, str)
                else self.meter.flow(read)
            )
            for c, read in self.flows.items()
        }

    def flow(self, mode: str, caller: str, register: str) -> Flow | None:
        """The reading with its uncertainty, None where it was not taken."""
        return self._read.get((mode, caller, register))


@dataclass(frozen=True)
class Finding:
    """One thing the survey says: its kind, whom it concerns, in words, and how sure it is given the
    anemometer.
    """

    kind: str
    about: tuple[str, ...]
    words: str
    confidence: float
    cells: tuple[Cell, ...] = ()
    mode: str = ""
