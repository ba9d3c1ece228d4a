"""A zone survey while it is being filled in: names, cells in any order, and what it says so far.

Nothing here judges a step; it is the paper that a person writes on while walking the house. Texts are kept as
they were typed, so that nothing is lost, and become one line of the trail when the survey is saved.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field

from assistant.trade.entry import ArgumentError
from assistant.trade.zone.reason import Answer, reason
from assistant.trade.zone.survey import NOBODY, WORDS
from assistant.trade.zone_sheet import (
    DRAWN,
    MODES,
    UNREAD,
    BadSheet,
    arguments_in,
    arguments_of,
    line_of,
    plain,
)
from assistant.trade.zone_survey import survey_of

MODE_WORDS = {"fan": "Fan", "heat": "Heat", "cool": "Cool", "humidity": "Humidity", "purge": "Purge over"}
SHORT = {word[0]: word for word in WORDS}
"""n, s and f for none, some and full."""
MOST_THERMOSTATS, MOST_REGISTERS = 16, 60


@dataclass
class Sheet:
    """`cells`: (mode, caller, register) -> text; `drawn`: register -> the thermostat it should be of."""

    thermostats: list[str] = field(default_factory=list)
    registers: list[str] = field(default_factory=list)
    cells: dict[tuple[str, str, str], str] = field(default_factory=dict)
    drawn: dict[str, str] = field(default_factory=dict)

    @property
    def callers(self) -> list[str]:
        """Who may call, and nobody last."""
        return [*self.thermostats, NOBODY]

    def name(self, thermostats: str, registers: str) -> str:
        """Take names with commas between them; a sentence where that can't be, and nothing has changed.

        Cells of names that stay are kept, of others too: a name that comes back finds them again.
        """
        found = []
        for typed, what, most in (
            (thermostats, "thermostat", MOST_THERMOSTATS),
            (registers, "register", MOST_REGISTERS),
        ):
            names = [said(name) for name in typed.replace(";", ",").split(",") if said(name)]
            if not names:
                return f"Write at least one {what}, a comma between two."
            if len(names) > most:
                return f"{len(names)} {what}s are more than the {most} that a sheet has room for."
            twice = next((name for number, name in enumerate(names) if name in names[:number]), None)
            if twice:
                return f"Two {what}s are called {twice}. Give each its own name."
            found.append(names)
        if NOBODY in found[0]:
            return f"No thermostat can be called {NOBODY}: that is the row in which none calls."
        self.thermostats, self.registers = found
        return ""

    def write(self, mode: str, caller: str, register: str, text: str) -> None:
        """One cell, as typed; n, s and f stand for none, some and full. Blank takes it away."""
        text = SHORT.get(text.strip().lower(), text.strip())
        if text in UNREAD:
            self.cells.pop((mode, caller, register), None)
        else:
            self.cells[mode, caller, register] = text

    def draw(self, register: str, thermostat: str) -> str:
        """Whose a register should be, by name, by the beginning of one, or by number; a sentence where no
        thermostat is meant.
        """
        typed = said(thermostat)
        if not typed or typed in UNREAD:
            self.drawn.pop(register, None)
            return ""
        if typed.isdigit() and 1 <= int(typed) <= len(self.thermostats) and typed not in self.thermostats:
            meant = [self.thermostats[int(typed) - 1]]
        else:
            meant = [name for name in self.thermostats if name == typed] or [
                name for name in self.thermostats if name.lower().startswith(typed.lower())
            ]
        if len(meant) != 1:
            return f"'{typed}' is none of the thermostats: {', '.join(self.thermostats)}."
        self.drawn[register] = meant[0]
        return ""

    def filled(self, mode: str) -> int:
        """How many cells of a mode are filled in."""
        return sum(
            m == mode and caller in self.callers and register in self.registers
            for m, caller, register in self.cells
        )

    def _called(self, mode: str, caller: str) -> bool:
        """Whether anything was read while this one called."""
        return any((mode, caller, register) in self.cells for register in self.registers)

    def line(self) -> str:
        """The sheet as one line of a trail: every thermostat has a row, read or not. Raises BadSheet with a
        sentence.
        """
        modes = [mode for mode in MODES if self.filled(mode)]
        cells = {
            f"{mode}/{caller}/{register}": self.cells.get((mode, caller, register), "-")
            for mode in modes
            for caller in self.callers
            if (mode == modes[0] and caller != NOBODY) or self._called(mode, caller)
            for register in self.registers
        }
        drawn = {
            f"{DRAWN}/{register}": whose
            for register, whose in self.drawn.items()
            if register in self.registers
        }
        return line_of(arguments_of({**cells, **drawn}))

    def answer(self, accuracy: float | None = None) -> tuple[Answer | None, str]:
        """What the survey says so far; None and a sentence where it says nothing yet or a cell is wrong."""
        more = {} if accuracy is None else {"accuracy": accuracy}
        try:
            return reason(survey_of(**arguments_in(self.line()), **more)), ""
        except (BadSheet, ArgumentError) as problem:
            words = str(problem).removeprefix("zone_survey: ")
            return None, words[:1].upper() + words[1:]

    def as_text(self) -> str:
        """Everything on the sheet, for a draft on disk."""
        return json.dumps(
            {
                "thermostats": self.thermostats,
                "registers": self.registers,
                "cells": [[*where, text] for where, text in self.cells.items()],
                "drawn": self.drawn,
            }
        )


def said(name: str) -> str:
    """A name as it is shown: without the marks that part cells, and without doubled blanks."""
    return plain(name.replace("_", " ")).replace("_", " ")


def from_text(text: str) -> Sheet:
    """A draft taken up again; an empty sheet where it can't be read."""
    try:
        found = json.loads(text)
        return Sheet(
            [str(name) for name in found["thermostats"]],
            [str(name) for name in found["registers"]],
            {(str(m), str(c), str(r)): str(t) for m, c, r, t in found["cells"]},
            {str(register): str(whose) for register, whose in found["drawn"].items()},
        )
    except (ValueError, TypeError, KeyError, AttributeError):
        return Sheet()


def from_line(line: str) -> Sheet:
    """The sheet that gave such a line of a trail. Raises BadSheet."""
    arguments = arguments_in(line)
    out = Sheet()
    rows = {
        mode: [row.rpartition(":") for row in arguments[mode].split("/")]
        for mode in MODES
        if mode in arguments
    }
    widest = max(len(cells.split(",")) for each in rows.values() for _, _, cells in each)
    names = arguments.get("registers", "")
    out.registers = (
        [said(name) for name in names.split(",")] if names else [str(n) for n in range(1, widest + 1)]
    )
    for mode, each in rows.items():
        for number, (caller, _, cells) in enumerate(each, 1):
            caller = said(caller) or str(number)
            if caller != NOBODY and caller not in out.thermostats:
                out.thermostats.append(caller)
            for register, text in zip(out.registers, cells.split(","), strict=False):
                out.write(mode, caller, register, text)
    for register, whose in zip(out.registers, arguments.get(DRAWN, "").split(","), strict=False):
        if whose not in UNREAD:
            out.drawn[register] = said(whose)
    return out


def from_cells(cells: Mapping[str, str]) -> Sheet:
    """The sheet of cells by name, mode/caller/register and drawn/register. Raises BadSheet."""
    return from_line(line_of(arguments_of({name: text.removesuffix(" cfm") for name, text in cells.items()})))
