"""A visit is one fold over its events.

`begin` gives a visit to which nothing has happened; `fold` adds one event; `asked` says what is asked now. A
person in the window, a simulated house in a drill and a recorded file in a replay drive a visit through these
and nothing else. No clock, no file, no chance: the same events always give the same visit.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from assistant.walk import answer, around
from assistant.walk.advance import settle
from assistant.walk.asked import asked
from assistant.walk.back import back, taken_up_again
from assistant.walk.cleared import cleared
from assistant.walk.event import (
    Advised,
    AsFound,
    AsLeft,
    Back,
    Cannot,
    Concluded,
    Did,
    Event,
    Exported,
    Filled,
    GoOn,
    Hazard,
    InstrumentUsed,
    LeftOpen,
    Note,
    Opened,
    Paused,
    Person,
    PlateRead,
    PutDown,
    Read,
    Recalled,
    Recovered,
    Resumed,
    Saw,
    Settled,
    ShopMay,
    Signed,
    StillTrue,
    TakeUp,
    Unknown,
    Watched,
)
from assistant.walk.follow import CONCLUSIONS, concluded, leave_finding
from assistant.walk.given import plate_read, put_down
from assistant.walk.house import made_safe
from assistant.walk.path import ended, stopped
from assistant.walk.points import open_points
from assistant.walk.shop import read_shop
from assistant.walk.state import (
    BadAnswer,
    ComplaintState,
    Frame,
    OutOfOrder,
    Position,
    Visit,
    WalkRecord,
    begin,
)

__all__ = ["BadAnswer", "OutOfOrder", "Visit", "asked", "begin", "fold"]


def fold(visit: Visit, event: Event) -> Visit:
    """The visit after one more event.

    Raises BadAnswer with a sentence for the person when the answer can't be taken, OutOfOrder when the event
    does not fit what is asked; in both cases the visit given is unchanged.
    """
    if visit.signed is not None and not isinstance(event, (Exported, Note, Recovered, Unknown)):
        raise OutOfOrder("the visit is signed")
    if visit.paused is not None and isinstance(event, ANSWERS):
        raise OutOfOrder("the visit is paused: resume it first")
    handler = HANDLERS.get(type(event))
    moved = handler(visit, event) if handler else visit
    moved = replace(moved, events=visit.events + (event,))
    return settle(moved, event.at) if isinstance(event, MOVES) else moved


def _opened(visit: Visit, event: Opened) -> Visit:
    if visit.events:
        raise OutOfOrder("the visit is open already")
    unknown = [name for name, _ in event.complaints if name not in visit.vocabulary.complaints]
    if unknown:
        known = ", ".join(visit.vocabulary.complaints)
        raise BadAnswer(f"'{unknown[0]}' is not a complaint this program knows; it knows: {known}.")
    visit = replace(
        visit,
        shop=read_shop(event.shop)[0],
        complaints=tuple(ComplaintState(name, words) for name, words in event.complaints),
    )
    return _begin_walk(visit, event.complaints[0][0]) if event.complaints else visit


def _take_up(visit: Visit, event: TakeUp) -> Visit:
    if event.complaint not in visit.vocabulary.complaints:
        raise BadAnswer(f"'{event.complaint}' is not a complaint this program knows.")
    return _begin_walk(visit, event.complaint)


def _begin_walk(visit: Visit, name: str) -> Visit:
    """A new walk of a complaint. What was walked before is kept; the house stays as it is."""
    complaint = visit.vocabulary.complaints[name]
    if visit.state_of(name) is None:
        visit = replace(visit, complaints=visit.complaints + (ComplaintState(name, complaint.words),))
    if visit.path and visit.complaint is not None:
        state = visit.state_of(visit.complaint)
        record = WalkRecord(visit.complaint, visit.path, state.status if state else "")
        visit = replace(visit, walks=visit.walks + (record,))
        if state is not None and state.status == "walking":
            visit = visit.with_status(visit.complaint, "open")
    tree = visit.library.trees.get(complaint.tree or "")
    position = Position((Frame(tree.name, tree.start),)) if tree else Position(stage="notes")
    visit = replace(visit, complaint=name, path=(), marks=(), position=position)
    return visit.with_status(name, "walking", "")


def _go_on(visit: Visit, event: GoOn) -> Visit:
    ask = asked(visit)
    if ask.kind not in ("finding", "stop", "handed_over") or ask.step != event.step:
        raise OutOfOrder(f"{event.step} is no page to leave now")
    if ask.kind == "finding":
        return leave_finding(visit)
    if ask.kind == "handed_over":
        assert ask.complaint is not None
        return _begin_walk(visit, ask.complaint)
    assert visit.position is not None
    visit = replace(visit, house=made_safe(visit.house, visit.vocabulary))
    visit = cleared(visit) if event.cleared else replace(visit, out="")
    return visit.at(replace(visit.position, stage="done"))


def _concluded(visit: Visit, event: Concluded) -> Visit:
    if asked(visit).kind != "conclude":
        raise OutOfOrder("no conclusion is asked now")
    if event.answer not in CONCLUSIONS:
        raise BadAnswer(f"'{event.answer}' is not one of: {', '.join(CONCLUSIONS)}.")
    return concluded(visit, event.answer)


def _hazard(visit: Visit, event: Hazard) -> Visit:
    page = visit.vocabulary.hazards.get(event.name)
    if page is None:
        raise BadAnswer(f"'{event.name}' is not a hazard; there are: {', '.join(visit.vocabulary.hazards)}.")
    return stopped(replace(visit, hazards=visit.hazards + (event,)), page)


def _settled(visit: Visit, event: Settled) -> Visit:
    if visit.state_of(event.complaint) is None:
        raise BadAnswer(f"'{event.complaint}' is not a complaint of this visit.")
    if not event.note.strip():
        raise BadAnswer("Say in a few words how the complaint was settled.")
    if event.complaint == visit.complaint:
        return ended(visit, "settled", event.note)
    return visit.with_status(event.complaint, "settled", event.note)


def _shop_may(visit: Visit, event: ShopMay) -> Visit:
    """What the shop's people may open. Raises BadAnswer where it names nothing of the house, or not yes or
    no."""
    for name, said in event.may.items():
        if name not in visit.vocabulary.openings:
            known = ", ".join(visit.vocabulary.openings) or "nothing"
            raise BadAnswer(f"'{name}' is nothing that a shop may or may not open; there is: {known}.")
        if said not in ("yes", "no"):
            raise BadAnswer(f"Say yes or no to '{name}', not '{said}'.")
    told = {**visit.shop.told, **{name: said == "yes" for name, said in event.may.items()}}
    return replace(visit, shop=replace(visit.shop, told=told))


def _left_open(visit: Visit, event: LeftOpen) -> Visit:
    if not event.why.strip():
        raise BadAnswer("Say why it stays open.")
    return replace(visit, left={**visit.left, event.point: event.why})


def _signed(visit: Visit, event: Signed) -> Visit:
    blocking = [point for point in open_points(visit) if point.kind == "undo" and point.left is None]
    if blocking:
        words = "; ".join(point.words for point in blocking)
        raise BadAnswer(f"Not signed: still to be put back: {words}. Do it, or say why it stays.")
    return replace(visit, signed=event.name)


HANDLERS: dict[type, Callable] = {
    Opened: _opened,
    TakeUp: _take_up,
    GoOn: _go_on,
    Concluded: _concluded,
    PutDown: put_down,
    PlateRead: plate_read,
    Hazard: _hazard,
    Back: back,
    Resumed: taken_up_again,
    Settled: _settled,
    LeftOpen: _left_open,
    Signed: _signed,
    Read: answer.read,
    Saw: answer.saw,
    Watched: answer.watched,
    Did: answer.did,
    Cannot: answer.cannot,
    StillTrue: answer.still_true,
    Paused: lambda visit, event: replace(visit, paused=event.why),
    Note: lambda visit, event: replace(visit, notes=visit.notes + (event,)),
    AsFound: lambda visit, event: replace(visit, as_found=event),
    Person: lambda visit, event: replace(visit, person=event.kept),
    InstrumentUsed: lambda visit, event: replace(visit, instrument=event.name),
    ShopMay: _shop_may,
    Filled: around.filled,
    AsLeft: around.left_so,
    Advised: around.advised,
    Recalled: lambda visit, event: replace(visit, past=event.visits),
}

ANSWERS = (Read, Saw, Watched, Did, Cannot, StillTrue, GoOn, Concluded, TakeUp, Signed)
MOVES = ANSWERS + (Opened, PutDown, PlateRead, Back, Resumed, Settled, Filled, ShopMay)
