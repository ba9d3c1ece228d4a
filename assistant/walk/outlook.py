"""Facts for "repair or replace?": age, warranty, parts so far, duct pressure, safety. No price, no advice."""

from __future__ import annotations

import re

from assistant.quantity.kind import show
from assistant.tree.model import Finding, Stop
from assistant.walk.ask import Record
from assistant.walk.state import Visit

_YEAR = re.compile(r"(?<!\d)(19[5-9]\d|20[0-9]\d)(?!\d)")


def facts(visit: Visit) -> tuple[tuple[str, str], ...]:
    """(what, how it is) for each fact that this visit and the earlier ones know."""
    unit = visit.sheets.get("unit", {})
    said = [
        ("Age", _age(unit.get("made", ""), visit.events[0].at if visit.events else "")),
        ("Warranty ends", unit.get("warranty", "")),
        ("Parts fitted", _parts(visit)),
        ("Found today", "; ".join(_titles(visit))),
        ("Safety", "; ".join(_safety(visit))),
        *_ducts(visit),
    ]
    return tuple((name, words) for name, words in said if words)


def _age(made: str, today: str) -> str:
    years = _YEAR.findall(made)
    if len(years) != 1 or not today[:4].isdigit():
        return f"made {made}" if made else ""
    age = int(today[:4]) - int(years[0])
    return f"about {age} years (made {made})" if age >= 0 else f"made {made}"


def _parts(visit: Visit) -> str:
    parts = visit.vocabulary.parts
    today = [name for name, _ in visit.house.fitted]
    before = [(name, at) for past in visit.past for name, at in past.fitted]
    said = [f"{parts[name].title if name in parts else name} (today)" for name in today]
    said += [f"{parts[name].title if name in parts else name} ({at[:10]})" for name, at in before]
    if not said:
        return ""
    return f"{len(said)} by us: {', '.join(said)}"


def _titles(visit: Visit) -> list[str]:
    found = {f.step: f for f in visit.found}.values()
    return [f.finding.title for f in found if isinstance(f.finding, Finding) and f.finding.fault]


def _safety(visit: Visit) -> list[str]:
    found = {f.step: f for f in visit.found}.values()
    return [f.finding.finding or "" for f in found if isinstance(f.finding, Stop) and f.finding.finding]


def _ducts(visit: Visit) -> list[tuple[str, str]]:
    """Static readings, and what the plate allows between filter and furnace outlet."""
    latest: dict[str, Record] = {}
    for record in visit.readings:
        if record.kind == "pressure" and len(record.points) == 1 and record.points[0].startswith("static."):
            latest[record.points[0]] = record
    if not latest:
        return []
    labels = visit.vocabulary.points
    said = [(f"Static, {labels[p].label if p in labels else p}", r.echo) for p, r in latest.items()]
    filter_, outlet = latest.get("static.filter"), latest.get("static.furnace")
    rated = visit.plate.get("static_rated")
    if filter_ is not None and outlet is not None:
        whole = outlet.value.middle - filter_.value.middle
        allowed = f", the plate allows {rated.echo}" if isinstance(rated, Record) else ""
        said.append(("External static", f"{show(whole, outlet.unit)}{allowed}"))
    return said
