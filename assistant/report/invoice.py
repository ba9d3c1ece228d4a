"""Parts and minutes of a visit for an invoice program: CSV and JSON, without a price."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import dataclass

from assistant.plain import harmless
from assistant.report.fitted import fitted
from assistant.report.story import NO_NUMBER
from assistant.trail.clock import moment
from assistant.walk.event import Event, Exported, Opened, Paused, Resumed, Signed
from assistant.walk.state import Visit

HEADS = ("kind", "what", "detail", "quantity", "unit", "from", "to", "by", "part number")
NOT_COUNTED = "clock set back"


@dataclass(frozen=True)
class Session:
    """One stretch of work without a pause; `minutes` is None where the clock was set back meanwhile."""

    began: str
    ended: str
    by: str
    minutes: int | None


def sessions(events: list[Event]) -> tuple[Session, ...]:
    """From opening or going on to the pause, the signature or the last entry, in whole minutes."""
    out: list[Session] = []
    began = last = by = ""
    for event in events:
        if isinstance(event, (Opened, Resumed)):
            if began:
                out.append(_session(began, last, by))
            began, by = event.at, event.by if isinstance(event, Resumed) else ""
        if isinstance(event, Exported) or not began:
            continue
        last = event.at or last
        if isinstance(event, (Paused, Signed)):
            out.append(_session(began, last, event.name if isinstance(event, Signed) and not by else by))
            began = ""
    if began:
        out.append(_session(began, last, by))
    return tuple(out)


def _session(began: str, ended: str, by: str) -> Session:
    start, end = moment(began), moment(ended)
    minutes = None
    if start is not None and end is not None and end >= start:
        minutes = round((end - start).total_seconds() / 60)
    return Session(began, ended, by, minutes)


def billed(visit: Visit, events: list[Event], name: str) -> dict:
    """What a JSON reader gets: the visit, its unit, parts fitted, acts of repair and sessions."""
    worked = sessions(events)
    counted = [session.minutes for session in worked if session.minutes is not None]
    acts = visit.vocabulary.acts
    order = visit.sheets.get("order", {})
    return {
        "visit": name,
        "practice": any(isinstance(event, Opened) and event.practice for event in events),
        "unit": dict(visit.sheets.get("unit", {})),
        "order": {key: order[key] for key in ("number", "supplier") if key in order},
        "parts": [
            {"part": each.part, "title": each.title, "fitted": each.at, "quantity": 1, "number": each.number}
            | ({} if each.number or not each.costs else {"remark": NO_NUMBER})
            for each in fitted(visit)
        ],
        "work": list(
            dict.fromkeys(acts[act].say for found in visit.found for act in found.repaired if act in acts)
        ),
        "sessions": [
            {"from": s.began, "to": s.ended, "by": s.by, "minutes": s.minutes}
            | ({} if s.minutes is not None else {"remark": NOT_COUNTED})
            for s in worked
        ],
        "minutes": sum(counted),
    }


def to_json(visit: Visit, events: list[Event], name: str) -> str:
    """The same for a program that reads JSON."""
    return json.dumps(billed(visit, events, name), ensure_ascii=False, indent=1, sort_keys=True) + "\n"


def to_csv(visit: Visit, events: list[Event], name: str) -> str:
    """Comma separated, every field in quotes (RFC 4180); no field runs as a formula."""
    bill = billed(visit, events, name)
    serial = bill["unit"].get("serial", "")
    rows = [("visit", name, serial, "", "", "", "", "practice" if bill["practice"] else "", "")]
    for part in bill["parts"]:
        number = part["number"] or part.get("remark", "")
        rows.append(("part", part["title"], part["part"], "1", "piece", part["fitted"], "", "", number))
    rows += [("work", words, "", "", "", "", "", "", "") for words in bill["work"]]
    for session in bill["sessions"]:
        known = session["minutes"] is not None
        minutes = str(session["minutes"]) if known else ""
        detail = "" if known else NOT_COUNTED
        ends = (session["from"], session["to"], session["by"])
        rows.append(("time", "work", detail, minutes, "min", *ends, ""))
    rows.append(("total", "work", "", str(bill["minutes"]), "min", "", "", "", ""))
    out = io.StringIO()
    writer = csv.writer(out, quoting=csv.QUOTE_ALL, lineterminator="\r\n")
    writer.writerow(HEADS)
    for row in rows:
        writer.writerow([harmless(field) for field in row])
    return out.getvalue()
