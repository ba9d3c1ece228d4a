"""Blower and ducts on one sheet: static against airflow, and a motor's watts against static."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from assistant.trade.blower import at_static
from assistant.trade.constants import CUBIC_FOOT, INCH_WATER
from assistant.trade.duct_house import House, run, with_zones
from assistant.trade.duct_link import Constant, Table
from assistant.trade.duct_system import house_of
from assistant.trade.entry import ALL
from assistant.trade.plotted import Axis, Band, Curve, Mark, Plot, cfm, inwc, nice, plotted, steps

CFM = CUBIC_FOOT / 60
NAMES = {"statics", "airflows"}


def _static_over_air(
    curves: Sequence[Curve], marks: Sequence[Mark], title: str, bands: Sequence[Band] = ()
) -> Plot:
    top = nice(1.15 * max(mark.y for mark in marks))
    wide = nice(1.25 * max(mark.x for mark in marks))
    said = "; ".join(f"{m.words}: {m.x:.0f} cfm at {m.y:.2f} in. w.c." for m in marks)
    return Plot(
        title,
        Axis("airflow", "cfm", 0.0, wide),
        Axis("static", "inwc", 0.0, top),
        tuple(curves),
        tuple(marks),
        tuple(bands),
        f"{title}. {said}.",
    )


def _square(static: float, airflow: float, exponent: float, wide: float, words: str) -> Curve:
    """The system's curve through one point; inwc and cfm."""
    return Curve(tuple((q, static * (q / airflow) ** exponent) for q in steps(0.0, wide)), words)


def _fan(statics: Sequence[float], airflows: Sequence[float]) -> Curve:
    table = list(zip(statics, airflows, strict=True))
    low, high = statics[0], statics[-1]
    points = [(cfm(at_static(table, s)), inwc(s)) for s in steps(max(0.0, 0.6 * low), 1.3 * high)]
    return Curve(tuple(points), "blower", dashed=False)


@plotted("system_static", "system_flow")
def system(values: Mapping, outcome: Mapping) -> Plot:
    """The ducts' curve through what was read, with the place that was asked for."""
    exponent = values.get("exponent", 2.0)
    static, airflow = inwc(values["static"]), cfm(values["airflow"])
    if "new_airflow" in values:
        there = Mark(cfm(values["new_airflow"]), inwc(outcome["result"]), "asked for")
    else:
        there = Mark(cfm(outcome["result"]), inwc(values["new_static"]), "asked for")
    here = Mark(airflow, static, "as read", own=False)
    wide = nice(1.25 * max(airflow, there.x))
    curve = _square(static, airflow, exponent, wide, "these ducts")
    return _static_over_air([curve], [here, there], "System curve")


@plotted("operating_point")
def meeting(values: Mapping, outcome: Mapping) -> Plot:
    """Where the blower's own table and the ducts' curve cross."""
    here = Mark(cfm(outcome["airflow"]), inwc(outcome["static"]), "they meet")
    wide = nice(1.25 * max(here.x, cfm(max(values["airflows"]))))
    ducts = _square(inwc(values["system_static"]), cfm(values["system_airflow"]), 2.0, wide, "these ducts")
    return _static_over_air([_fan(values["statics"], values["airflows"]), ducts], [here], "Blower and ducts")


@plotted("duct_system")
def whole(values: Mapping, outcome: Mapping) -> Plot:
    """The blower, the ducts with all zones open, and with the one zone alone."""
    defaults = {a.name: a.default for e in ALL if e.name == "duct_system" for a in e.arguments}
    given = {**defaults, **values}
    house = house_of(given)
    zone = int(given["open_zone"])
    here = Mark(
        cfm(outcome["airflow"]), inwc(outcome["static"]), f"zone {zone} alone" if zone else "all zones open"
    )
    wide = nice(1.3 * max(cfm(outcome["airflow"]), cfm(given["wanted"])))
    top = 1.3 * max(inwc(given["rated"]), here.y)
    curves = [_ducts(house, wide, top, "all zones open")]
    if zone:
        curves.append(_ducts(with_zones(house, [f"zone {zone}"]), wide, top, f"zone {zone} alone"))
    curves.append(_blower(house, top))
    curves.append(
        Curve(((0.0, inwc(given["rated"])), (wide, inwc(given["rated"]))), "rated static", dashed=True)
    )
    marks = [here, Mark(cfm(outcome["carries"]), inwc(given["rated"]), "what they carry", own=False)]
    return _static_over_air(curves, marks, "Blower and ducts")


def _ducts(house: House, wide: float, top: float, words: str) -> Curve:
    """What the ducts ask at each airflow, solved by holding the fan there."""
    points: list[tuple[float, float]] = [(0.0, 0.0)]
    for q in steps(wide / 18, wide, 18):
        asked = inwc(run(replace(house, fan=Constant(q * CFM))).fan_rise)
        points.append((q, asked))
        if asked > top:
            break
    return Curve(tuple(points), words)


def _blower(house: House, top: float) -> Curve:
    if isinstance(house.fan, Table):
        statics, airflows = zip(*house.fan.points, strict=True)
        return _fan(statics, airflows)
    held, limit = house.fan.flow, house.fan.limit
    knee = limit / held
    points = [(cfm(held), 0.0), (cfm(held), inwc(knee))]
    points += [(cfm(limit / s), inwc(s)) for s in steps(knee, max(1.01 * knee, top * INCH_WATER), 30)]
    return Curve(tuple(points), "blower")


@plotted("static_left", "constant_airflow_watts")
def margin(values: Mapping, outcome: Mapping) -> Plot:
    """A constant-airflow motor's watts rise with static until its plate stops them."""
    static, watts = inwc(values["static"]), values["watts"]
    limit = values.get("limit")
    marks = [Mark(static, watts, "now")]
    if limit is not None:
        marks.append(Mark(static * limit / watts, limit, "at its limit", own=False))
    else:
        marks.append(Mark(inwc(values["new_static"]), outcome["result"], "asked for", own=False))
    wide = nice(1.2 * max(0.1, *(m.x for m in marks)))
    top = nice(1.2 * max(m.y for m in marks))
    curves = [Curve(((0.0, 0.0), (wide, watts / static * wide)), "holding its air")] if static > 0 else []
    if limit is not None:
        curves.append(Curve(((0.0, limit), (wide, limit)), "plate", dashed=True))
    said = "; ".join(f"{m.words}: {m.y:.0f} W at {m.x:.2f} in. w.c." for m in marks)
    return Plot(
        "Motor against static",
        Axis("total external static", "inwc", 0.0, wide),
        Axis("watts", "W", 0.0, top),
        tuple(curves),
        tuple(marks),
        (),
        f"Motor against static. {said}.",
    )
