"""Which page belongs to what is asked, and to each action beside the walk."""

from __future__ import annotations

from assistant.tree.model import Measure
from assistant.walk.ask import Ask
from assistant.walk.bench import just_worked_out
from assistant.window.desk import Desk
from assistant.window.drawing import DrawingView
from assistant.window.page import (
    between,
    conclude,
    do,
    finding,
    group,
    look,
    measure,
    plate,
    read_only,
    stop,
    survey,
    watch,
)
from assistant.window.page.aside import (
    as_found,
    back,
    drawing,
    hazard,
    instrument,
    keys_help,
    leave,
    more,
    notes,
    pause,
    person,
    put_down,
    sign,
    take_along,
    tree,
    unproved,
)
from assistant.window.page.base import Page
from assistant.window.page.bench.find import BenchPage
from assistant.window.page.bench.sheet import SheetPage
from assistant.window.page.calls import CallsPage
from assistant.window.page.visit import (
    advise,
    around,
    as_left,
    baseline,
    cleared,
    earlier,
    proof,
    sheet,
    tonight,
    waiting,
)
from assistant.window.session import Driver

FOR_KIND = {
    "choose": between.ChoosePage,
    "plate": plate.PlatePage,
    "look": look.LookPage,
    "watch": watch.WatchPage,
    "do": do.DoPage,
    "finding": finding.FindingPage,
    "conclude": conclude.ConcludePage,
    "handed_over": between.HandedOverPage,
    "notes": between.SettlePage,
    "paused": between.PausedPage,
    "leave": sign.ReadyToLeavePage,
    "signed": sign.SignedPage,
}

PLAIN_ASIDES = {
    "put_down": put_down.PutDownPage,
    "notes": notes.NotesPage,
    "as_found": as_found.AsFoundPage,
    "take_along": take_along.TakeAlongPage,
    "pause": pause.PausePage,
    "leave": leave.LeavePage,
    "person": person.PersonPage,
    "sign": sign.SignPage,
    "more": more.MorePage,
    "help": keys_help.HelpPage,
    "instrument": instrument.InstrumentPage,
    "around": around.AroundPage,
    "before": sheet.BeforePage,
    "unit": sheet.UnitPage,
    "as_left": as_left.AsLeftPage,
    "leaving": as_left.LeavingPage,
    "advise": advise.AdvisePage,
    "outlook": advise.OutlookPage,
    "waiting": waiting.WaitingPage,
    "baseline": baseline.BaselinePage,
    "tonight": tonight.TonightPage,
    "proof": proof.ProofPage,
    "who": person.WhoPage,
    "cleared": cleared.ClearedPage,
    "triage": sheet.TriagePage,
}

AT_START = {"calls": CallsPage, "workbench": BenchPage, "tree": tree.open_tree}
"""Pages that need no visit: made with the desk, and the open visit where there is one."""


def for_ask(driver: Driver, ask: Ask) -> Page:
    """The page of what is asked."""
    if driver.read_only and ask.kind != "signed":
        return read_only.ReadOnlyPage(driver, ask)
    if ask.kind == "stop":
        return stop.StopPage(driver, ask, driver.vocabulary)
    if isinstance(ask.body, Measure) and ask.body.survey:
        return survey.SurveyPage(driver, ask)
    if ask.kind == "measure":
        several = len(ask.readings) > 1 or (isinstance(ask.body, Measure) and ask.body.group)
        return (group.GroupPage if several else measure.MeasurePage)(driver, ask)
    return FOR_KIND[ask.kind](driver, ask)


def aside(
    name: str, driver: Driver | None, desk: Desk, step: str | None, picture: DrawingView | None
) -> Page:
    """The page of an action. `step` is where to go back to, `picture` the drawing that the step shows."""
    if name == "hazard":
        return hazard.HazardPage(driver, driver.vocabulary if driver is not None else desk.library.vocabulary)
    if name == "back":
        return back.BackPage(driver, step)
    if name == "drawing":
        return drawing.DrawingPage(driver, picture)
    if name == "earlier":
        return earlier.EarlierPage(driver, desk)
    if name == "unproved":
        return unproved.UnprovedPage(driver, desk)
    if name == "workbench:list":
        return BenchPage(desk, driver)
    if name == "workbench" and driver is not None and (known := just_worked_out(driver.visit)):
        return SheetPage(desk, driver, known)
    if name.startswith("sheet:"):
        return SheetPage(desk, driver, name.partition(":")[2])
    if name in AT_START:
        return AT_START[name](desk, driver)
    return PLAIN_ASIDES[name](driver)
