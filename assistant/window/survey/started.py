"""The sheet that a survey's page begins with."""

from __future__ import annotations

from assistant.trade.zone_sheet import BadSheet
from assistant.walk.ask import Ask
from assistant.walk.survey_sheet import Sheet, from_line, from_text
from assistant.window.session import Driver


def started(driver: Driver, ask: Ask) -> Sheet:
    """What was being filled in; otherwise the names of an earlier survey of this visit; otherwise nothing."""
    name = ask.readings[0].name or (ask.body.common.name if ask.body else "")
    draft = driver.drafted(ask.step, name)
    if draft:
        return from_text(draft)
    for record in reversed(driver.visit.readings):
        if record.name == name and record.computed is None:
            try:
                before = from_line(record.typed.text)
            except BadSheet:
                continue
            return Sheet(before.thermostats, before.registers, {}, before.drawn)
    return Sheet()
