"""A zone survey as it is typed: one row for each call, one cell for each register.

A row is its caller, a colon and its cells, a comma between them: `den:120,0,5`. A slash stands between rows,
and `nobody` is the row in which no thermostat asks for anything. A row without a name is the next zone: 1, 2,
3. A cell is an air flow (cfm unless it has a unit), `none`, `some` or `full` where there was no meter, or a
dash where nothing was read. In names an underscore stands for a space.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from assistant.quantity.entry import Blank, Doubt, Understood, understand
from assistant.trade.zone.survey import NOBODY, WORDS, Cell

MODES = ("fan", "heat", "cool", "humidity", "purge")
DRAWN = "drawn"
UNREAD = ("", "-")


class BadSheet(ValueError):
    """A sentence that says what of a survey can't be understood, and what to write instead."""


Row = tuple[str, tuple[float | str | None, ...]]


def rows_of(text: str) -> list[Row]:
    """The rows of one mode: caller and cells, None where nothing was read, m³/s. Raises BadSheet."""
    rows: list[Row] = []
    for number, part in enumerate(text.split("/"), 1):
        caller, colon, cells = part.rpartition(":")
        if colon and not caller.strip():
            raise BadSheet(f"'{part}' has no caller before its colon; write for example den:120,0,5")
        caller = caller.strip() or str(number)
        if caller in (c for c, _ in rows):
            raise BadSheet(f"'{caller}' calls in two rows; a call has one row")
        rows.append((caller, tuple(cell_of(cell) for cell in cells.split(","))))
    return rows


def cell_of(text: str) -> float | str | None:
    """One cell: m³/s, one of the words, or None where nothing was read. Raises BadSheet."""
    text = text.strip()
    if text in UNREAD:
        return None
    if text.lower() in WORDS:
        return text.lower()
    got = understand(text, "airflow", "cfm")
    if isinstance(got, Blank):
        return None
    if isinstance(got, Doubt):
        raise BadSheet(f"{got.message} Write one of: {', '.join(got.choices)}.")
    if not isinstance(got, Understood) or not got.interval.finite or got.interval.middle < 0:
        raise BadSheet(f"'{text}' is no air at a register; write cfm, {', '.join(WORDS)}, or - for not read")
    return max(got.interval.middle, 0.0)


def names_of(text: str) -> tuple[str, ...]:
    """Names with commas between them; an empty text gives none."""
    return tuple(name.strip() for name in text.split(",")) if text.strip() else ()


def arguments_of(cells: Mapping[str, str]) -> dict[str, str]:
    """Cells by `mode/caller/register` (and `drawn/register` with the zone it is drawn under) as the arguments
    of the computation. Callers and registers in the order of their first cell, nobody last. Raises BadSheet.
    """
    read: dict[str, dict[tuple[str, str], str]] = {}
    drawn: dict[str, str] = {}
    callers: dict[str, None] = {}
    registers: dict[str, None] = {}
    for name, text in cells.items():
        parts = [plain(part) for part in name.split("/")]
        if len(parts) == 2 and parts[0] == DRAWN:
            drawn[parts[1]] = plain(text) if text.strip() not in UNREAD else ""
            registers.setdefault(parts[1])
            continue
        if len(parts) != 3 or parts[0] not in MODES or not all(parts):
            raise BadSheet(f"'{name}' is no cell; write mode/caller/register, mode: {', '.join(MODES)}")
        mode, caller, register = parts
        cell_of(text)
        read.setdefault(mode, {})[caller, register] = "".join(text.split()).replace(",", ".") or "-"
        if caller != NOBODY:
            callers.setdefault(caller)
        registers.setdefault(register)
    if not read:
        raise BadSheet("The survey has no cell yet; write the air of at least one register in one call.")
    found = {"registers": ",".join(registers)}
    if any(drawn.values()):
        found[DRAWN] = ",".join(drawn.get(register, "") or "-" for register in registers)
    for mode, flows in read.items():
        rows = [caller for caller in (*callers, NOBODY) if any(c == caller for c, _ in flows)]
        found[mode] = "/".join(
            f"{caller}:" + ",".join(flows.get((caller, register), "-") for register in registers)
            for caller in rows
        )
    return found


def plain(name: str) -> str:
    """A name without the marks that part cells, rows and arguments."""
    kept = "".join(" " if mark in ",/:=" else mark for mark in name)
    return "_".join(kept.split())


def line_of(arguments: Mapping[str, str]) -> str:
    """The arguments as one line, as a person types them behind the computation's name."""
    return " ".join(f"{key}={text}" for key, text in arguments.items())


def arguments_in(line: str) -> dict[str, str]:
    """The arguments of such a line. Raises BadSheet where it is none."""
    found: dict[str, str] = {}
    for word in line.split():
        key, equals, text = word.partition("=")
        if not equals or key not in (*MODES, DRAWN, "registers") or key in found:
            raise BadSheet(
                f"'{word}' is no column of a survey; write for example fan=den:120,0/bed:0,110 drawn=den,bed"
            )
        found[key] = text
    if not set(found) & set(MODES):
        raise BadSheet("The survey has no cell yet; write for example fan=den:120,0/bed:0,110")
    return found


def cells_of(
    columns: Mapping[str, Sequence[Row]], registers: tuple[str, ...]
) -> tuple[tuple[str, ...], tuple[str, ...], dict[Cell, float | str]]:
    """Zones, registers and flows of a survey's columns by mode. Raises BadSheet where rows don't fit."""
    widest = max((len(cells) for rows in columns.values() for _, cells in rows), default=0)
    registers = registers or tuple(str(number) for number in range(1, widest + 1))
    if len(set(registers)) != len(registers):
        raise BadSheet("two registers have one name; give each its own")
    zones: dict[str, None] = {}
    flows: dict[Cell, float | str] = {}
    for mode, rows in columns.items():
        for caller, cells in rows:
            if len(cells) > len(registers):
                raise BadSheet(f"{caller} has {len(cells)} cells for {len(registers)} registers")
            if caller != NOBODY:
                zones.setdefault(caller)
            flows |= {
                Cell(mode, caller, register): flow
                for register, flow in zip(registers, cells, strict=False)
                if flow is not None
            }
    return tuple(zones), registers, flows
