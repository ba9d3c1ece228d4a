"""The customer's picture of their zones, where a visit made a survey of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from assistant.report.blocks import Block, Cell, Heading, Picture, Table
from assistant.report.story import Photo, Story
from assistant.walk.ask import Found
from assistant.walk.astray import against_the_words, for_customer, for_technician, of_visit
from assistant.walk.state import Visit
from assistant.walk.survey_plan import last_survey, plan_in_words, plan_of

CAPTION = (
    "Each box is a thermostat with the registers that blow when it calls. A heavy edge: it should be another "
    "thermostat's. A broken edge: not sure yet."
)


@dataclass(frozen=True)
class Zones:
    """`rows`: thermostat and its registers in words; `plan` is for the picture. What the survey concludes
    stands in the trail, in the trade's words.
    """

    rows: tuple[tuple[str, str], ...]
    plan: tuple = ()


def zones_of(visit: Visit) -> Zones | None:
    """The last survey of the visit, as it stood with the accuracy of the shop's instrument; None without
    one.
    """
    sheet = last_survey(visit)
    if sheet is None:
        return None
    instrument = visit.shop.instrument("airflow", visit.instrument)
    share = instrument.percent.get("airflow") if instrument is not None else None
    answer, _ = sheet.answer(share / 100 if share else None)
    if answer is None:
        return None
    plan = plan_of(answer, sheet)
    return Zones(tuple(plan_in_words(plan)), tuple(plan))


def places_for_customer(visit: Visit, found: Found) -> str:
    """Which grilles a finding concerns, by the survey of the walk that found it; empty without one."""
    spill = of_visit(visit, found.step.partition(".")[0])
    return for_customer(spill) if spill else ""


def places_for_technician(visit: Visit, found: Found) -> tuple[str, ...]:
    """The same in the trade's words, and what does not fit to the customer's."""
    spill = of_visit(visit, found.step.partition(".")[0])
    if spill is None:
        return ()
    state = visit.state_of(found.complaint)
    odd = against_the_words(spill, state.words if state else "")
    return (*for_technician(spill), *([odd] if odd else []))


def zone_blocks(story: Story) -> Iterator[Block]:
    """Heading, the picture where it could be drawn, and the same in words."""
    zones = story.zones
    if zones is None:
        return
    yield Heading("Which thermostat blows which register", 2)
    if story.zone_picture is not None:
        yield Picture(
            Photo("zones", "Which thermostat blows which register", "", story.zone_picture), CAPTION
        )
    rows = tuple((Cell(zone), Cell(registers)) for zone, registers in zones.rows)
    yield Table(("When this one calls", "these registers blow (how sure)"), rows, (30, 70))
