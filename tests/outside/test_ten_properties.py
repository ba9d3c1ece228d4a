"""Ten things that government maintenance manuals hold about fault finding, held against every path of the
trees.

Sources, all public domain, US government; each property names its own: TM 5-4120-243-14 table 4-2 and para
4-12 b, c; TM 9-4120-381-14 table 4-2, page 4-24; TM 9-2320-273-20 para 5-5; TM 5-683 (NAVFAC MO-116, AFJMAN
32-1083) chapter 5, molded-case breaker field tests; NAVEDTRA 14113 fig. 10-10; TM 55-1905-223-24-17 para 2-13
a; TM 5-4520-240-14 operating sequence; NAVEDTRA 14026 (1998). Properties 1, 2 and 4 were noted from a further
manual whose number is only kept as "361": from memory.

They are read as a furnace technician would (common practice): a reading that verifies dead is taken below the
power-off step; a breaker may be moved once nothing on it runs, so the thermostat goes off before; an
energized reading is never taken on a circuit that was switched off.

Each property is followed through calls, put-in procedures, causes, repairs and proofs (whole_paths.py), apart
from the program's own checker. Beside each stand edits of the shipped trees that it must refuse: a test that
no edit can fail shows nothing.
"""

import re
from pathlib import Path

import pytest

from assistant.tree.library import from_texts
from assistant.tree.model import Do, Finding, HandOver, Look, Stop, Watch, readings_of
from tests.outside.whole_paths import Paths, Property

TREES = Path(__file__).parents[2] / "trees"
FILES = sorted(TREES.rglob("*.yaml"))
SHIPPED = {path.relative_to(TREES).as_posix(): path.read_bytes() for path in FILES}

OHMS = ("resistance", "insulation", "capacitance")
ENERGIZED = ("ac_voltage", "dc_voltage", "ac_current", "dc_current", "power", "frequency")


def circuits(vocabulary, reading):
    return {vocabulary.points[point].circuit for point in reading.at} - {None}


def words(step):
    return " ".join([getattr(step, "ask", ""), *step.common.how])


class SafetyOnlyWithItsConditionNormal(Property):
    """1. An open safety is never concluded defective unless the guarded condition was shown normal before
    (TM 5-4120-243-14 para 4-12)."""

    start = frozenset()

    def leave(self, shown, tree, step, way):
        known = {name for names in self.vocabulary.conditions.values() for name in names}
        return shown | {name for name, (_, bands) in way.decided.items()
                        if name in known and all(band.normal for band in bands)}

    def fails(self, shown, house, tree, step):
        part = self.vocabulary.parts.get(step.condemns) if isinstance(step, Finding) else None
        if part is None or not part.safety:
            return None
        names = set(self.vocabulary.conditions[part.guards])
        return None if shown & names else f"{part.guards} was not shown normal"


class OneResetAtMost(Property):
    """2. After a trip a path allows one reset at most. Closing a tripped breaker, or fitting a fuse as a step
    of the search, counts; a fuse fitted as the repair, after its causes were walked, does not (TM
    9-4120-381-14)."""

    start = 0

    def act(self, resets, act):
        return min(resets + self.counts(act), 2)

    def counts(self, act):
        return act.counts == "reset" or bool(re.search(r"\breset\b.*\bbreaker\b", act.say, re.IGNORECASE))

    def fails(self, resets, house, tree, step):
        if isinstance(step, Look) and "tripped" in step.choices and tree.name != "tripped_breaker":
            end = tree.steps[step.choices["tripped"].to]
            if not isinstance(end, (HandOver, Stop)):
                return "a tripped breaker is another walk"
        again = isinstance(step, Do) and step.act and self.counts(self.vocabulary.acts[step.act])
        return "a second reset" if resets and again else None


class BridgesAreGuarded(Property):
    """3. No step bridges a breaker, a limit or a door switch unless it is itself a guarded test: an act that
    is on the list of what must be undone, with its caution. While a safety is bridged no burner is lit (TM
    9-2320-273-20)."""

    start = frozenset()
    bridging = re.compile(r"\b(jumper|bridge|bypass|hold|tape|wedge|short)\b.*"
                          r"\b(limit|rollout|switch|breaker|fuse|safety|w|r)\b", re.IGNORECASE)
    put_back = re.compile(r"\b(take|remove|release)( the| your)? (jumper|bridge|holder)\b"
                          r"|\b(jumper|bridge|holder)\b[^.]*\b(off|out)\b", re.IGNORECASE)

    def act(self, bridged, act):
        door = "door" in act.say.lower()  # held in for every reading inside, and no safety of the flame
        if self.bridging.search(act.say) and not self.put_back.search(act.say) and not door:
            return bridged | {act.name}
        return bridged - {name for name in bridged if self.vocabulary.acts[name].undo == act.name}

    def fails(self, bridged, house, tree, step):
        if bridged and isinstance(step, Watch) and "burner.lights" in step.events:
            return f"lit with {', '.join(bridged)} still in"
        if not isinstance(step, Do) or not self.bridging.search(step.ask) or self.put_back.search(step.ask):
            return None
        act = self.vocabulary.acts.get(step.act)
        if act is None or act.undo is None:
            return "bridges something and nothing says that it must be undone"
        return None if step.common.caution else "bridges something without a caution"


class BreakersAreNoSwitches(Property):
    """4. No step moves a breaker or switch while a load on it may run: the thermostat is off on the path
    before (from memory; read by common practice)."""

    start = "may run"

    def act(self, load, act):
        if act.name.startswith("stat_"):
            return "rests" if act.name == "stat_off" else "may run"
        return load

    def fails(self, load, house, tree, step):
        act = self.vocabulary.acts.get(step.act) if isinstance(step, Do) else None
        if act is None or load == "rests":
            return None
        opens = any(state == "off" and name != "run_capacitor" for name, state in act.sets.items())
        cycles = bool(re.search(r"\boff\b.*\band on again\b", act.say))
        return f"{act.name} with a load that may run" if opens or cycles else None


class InsulationAfterDisconnecting(Property):
    """5. The resistance of a hot wire to ground is read with the circuit dead and the conductors
    disconnected: a load's at its own plug or lead, and what is left of the wiring with every load off it (TM
    5-683 chapter 5)."""

    disconnected = re.compile(r"\b(plugs?|leads?|wires?|conductors?)\b[^.;]*\b(off|out|lifted|pulled|apart)\b"
                              r"|\bunplugged\b|\bdisconnected\b|\blifted\b", re.IGNORECASE)

    def fails(self, state, house, tree, step):
        for reading in readings_of(step):
            grounded = any(self.vocabulary.points[point].of == "ground" for point in reading.at)
            hot = any(self.vocabulary.points[point].circuit and not point.endswith("neutral")
                      for point in reading.at)
            on = circuits(self.vocabulary, reading)
            if reading.kind not in OHMS or not grounded or not hot:
                continue
            if any(house[name] != "dead" for name in on):
                return f"{reading.ask}: not dead"
            if not self.disconnected.search(f"{words(step)} {reading.ask}"):
                return f"{reading.ask}: nothing is disconnected"
        return None


class OhmsBelowPowerOff(Property):
    """6. Ohms and continuity lie below a step that switched off and proved dead; voltages and currents do
    not, but for those that do the proving (TM 5-4120-243-14; TM 55-1905-223-24-17)."""

    def fails(self, state, house, tree, step):
        verifies = getattr(step, "verifies", ())
        for reading in readings_of(step):
            for name in circuits(self.vocabulary, reading):
                if reading.kind in OHMS and house[name] != "dead":
                    return f"{reading.kind} with {name} {house[name]}"
                if reading.kind in ENERGIZED and house[name] in ("off", "dead") and not verifies:
                    return f"{reading.kind} with {name} {house[name]}"
        for name in verifies:
            if name != "$circuit" and house[name] not in ("off", "dead"):
                return f"proves {name} dead while it is {house[name]}"
        return None


class SupplyBeforeControl(Property):
    """7. A dead controller: supply first, then its fuse, then the control circuit; the furnace's board and
    the zone panel are one each. And the first split of "no heat" parts supply from heat: here the 24 V and
    the call at the board, before anything of the heat side is touched (NAVEDTRA 14113 fig. 10-10; TM
    55-1905-223-24-17, where a duct heater is split with its fan switch)."""

    start = frozenset()
    heat_side = ("inducer.", "igniter.", "valve.", "port.", "board.inducer", "board.igniter", "board.valve",
                 "rod", "pressure.", "hose.", "limit.")
    # Controller: its own terminals, what feeds it and its fuse by the points read, and its control circuit.
    controllers = {
        "board": ({"r", "c"},
                  {"line supply": ({"box.line", "box.neutral"},),
                   "transformer supply": ({"primary.line", "primary.neutral"},)},
                  "fuse24.load",
                  ("float.", "stat.", "zone.", "panel.", "limit.", "rollout.", "aux.", "pressure.", "valve.",
                   "board.valve", "board.limit")),
        "zone panel": ({"panel.r", "panel.c"},
                       {"panel's supply": ({"panel.line", "panel.neutral"}, {"panel.feed", "panel.c"})},
                       "panel.feed", ("zone.", "damper.")),
    }

    def leave(self, known, tree, step, way):
        if tree.purpose != "complaint":
            return known
        found = set(known)
        for reading, bands in way.decided.values():
            at = set(getattr(reading, "at", ()))
            lowest = reading.bands[0] in bands
            for name, (terminals, supplies, fuse, _) in self.controllers.items():
                if at == terminals:
                    found.add(f"{name} read")
                    # The panel's own 24 V is read once, at its lowest: a sag there may be none at all.
                    if lowest and (name == "zone panel" or self.nothing(bands[0])):
                        found.add(f"{name} dead")
                found |= {supply for supply, points in supplies.items() if at in points and not lowest}
                if fuse in at:
                    found.add(f"{name}'s fuse")
        return frozenset(found)

    @staticmethod
    def nothing(band):
        """Whether a band of volts means none at all, and not just few."""
        return band.under is not None and float(band.under.text.removesuffix(" V")) <= 5

    def fails(self, known, house, tree, step):
        if tree.purpose != "complaint":
            return None
        for reading in readings_of(step):
            for point in reading.at:
                heat = tree.name == "no_heat" and point.startswith(self.heat_side)
                if heat and "board read" not in known:
                    return f"{point} before 24 V was read at the board"
                if self.vocabulary.points[point].circuit not in ("control", "zone"):
                    continue
                for name, (terminals, supplies, _, side) in self.controllers.items():
                    if f"{name} dead" not in known or not point.startswith(side) or point in terminals:
                        continue
                    missing = {*supplies, f"{name}'s fuse"} - known
                    if missing:
                        return f"{point} of a dead {name} before its {', '.join(sorted(missing))}"
        return None


class OverheatAndLockout(Property):
    """8. Overheat ends with the heat source off and the blower looked at: on, or the call is taken off and
    the blower is another walk, in which nothing is lit before the blower has been seen to blow. A failed
    ignition trial is a lockout that somebody clears before the next trial (TM 5-4520-240-14)."""

    start = frozenset()

    def act(self, known, act):
        if act.name in ("stat_off", "breaker_off", "power_cycle"):
            return (known | {"call off"}) - {"failed trial"}
        return known - {"call off"} if act.name.startswith("stat_") else known

    def leave(self, known, tree, step, way):
        found = set(known)
        if isinstance(step, Watch) and way.answer in ("no burner.lights", "no flame.holds"):
            found.add("failed trial")
        for reading, bands in way.decided.values():
            if "limit.face" in getattr(reading, "at", ()) and reading.bands[0] not in bands:
                found.add("hot limit")
        if isinstance(step, Look) and step.sees == "blower.forced":
            found.add("blower runs" if way.answer == "runs" else "blower stands")
        begun = tree.name == "blower_silent" and step.common.name == tree.start
        if begun or (tree.name == "heat_start" and way.answer in ("no blower.runs", "cannot")):
            found.add("no air")
        if isinstance(step, Look) and step.sees == "blower.does" and way.answer == "blows well":
            found.discard("no air")
        return frozenset(found)

    def hand_over(self, known, complaint):
        return known - {"hot limit", "no air"}

    def fails(self, known, house, tree, step):
        if isinstance(step, Watch) and "burner.lights" in step.events and "failed trial" in known:
            return "another trial with the lockout not cleared"
        if isinstance(step, Watch) and "burner.lights" in step.events and "no air" in known:
            return "lit before the blower was seen to blow"
        if "hot limit" not in known or not isinstance(step, (Finding, HandOver)):
            return None
        if "blower runs" in known:
            return None
        stands = "blower stands" in known and "call off" in known and isinstance(step, HandOver)
        return None if stands else ("an overheat is concluded with the blower not looked at or the call "
                                    "still on")


class NeverNoFaultAfterATrip(Property):
    """9. Whatever opened a fuse or breaker is there, if only now and then (an intermittent or floating
    ground): such a path never ends in "no fault" (NAVEDTRA 14026)."""

    start = False
    protective = ("fuse24.load", "fuse.load")

    def leave(self, opened, tree, step, way):
        if way.answer == "tripped":
            return True
        return opened or any(
            reading.bands[0] in bands and set(getattr(reading, "at", ())) & set(self.protective)
            for reading, bands in way.decided.values())

    def fails(self, opened, house, tree, step):
        return "no fault after a fuse or breaker had opened" if opened and _no_fault(step) else None


def _no_fault(step):
    return isinstance(step, Finding) and not step.fault


class NotOnlyTheLink(Property):
    """10. A blown link or an opened manual limit leads on to what opened it - lost airflow, a blower that
    does not run, a stuck or shorted load - and not only to a new one (TM 55-1905-223-24-17)."""

    wanted = {
        "limit": ("airflow", "blower"), "aux_limit": ("airflow", "blower"),
        "control_fuse": ("load",), "plug_fuse": ("load",), "panel_fuse": ("draw",),
    }

    def __init__(self, vocabulary, library):
        super().__init__(vocabulary)
        self.library = library

    def fails(self, state, house, tree, step):
        if not isinstance(step, Finding) or step.condemns not in self.wanted:
            return None
        asked = {kind for cause in step.causes for kind in self.kinds(cause)}
        missing = [kind for kind in self.wanted[step.condemns] if kind not in asked]
        return (f"{step.condemns} and no cause that looks at the "
                f"{' or the '.join(missing)}") if missing else None

    def kinds(self, cause):
        """What a cause tree looks at, by what it reads and sees."""
        found = set()
        for step in self.library.trees[cause].steps.values():
            if isinstance(step, Look) and step.sees in ("filter", "registers", "coil.face"):
                found.add("airflow")
            if isinstance(step, Look) and step.sees in ("blower.wheel", "blower.forced"):
                found.add("blower")
            if any(reading.kind in OHMS for reading in readings_of(step)):
                found |= {"load", "draw"}
            if any(reading.kind == "ac_current" for reading in readings_of(step)):
                found.add("draw")
        return found


PROPERTIES = (SafetyOnlyWithItsConditionNormal, OneResetAtMost, BridgesAreGuarded, BreakersAreNoSwitches,
              InsulationAfterDisconnecting, OhmsBelowPowerOff, SupplyBeforeControl, OverheatAndLockout,
              NeverNoFaultAfterATrip, NotOnlyTheLink)


def failures(property_, texts):
    library = from_texts(texts)
    assert not library.problems, "\n".join(map(str, library.problems[:5]))
    more = (library,) if property_ is NotOnlyTheLink else ()
    paths = Paths(library, property_(library.vocabulary, *more))
    return paths.follow(), paths


@pytest.mark.parametrize("property_", PROPERTIES, ids=lambda one: one.__name__)
def test_every_path_of_the_shipped_trees_has_the_property(property_):
    found, _ = failures(property_, SHIPPED)
    assert not found, "\n".join(f"{one.where}: {one.what}" for one in sorted(found, key=str))


NO_HEAT = "complaint/no_heat.yaml"
NO_AIR = "complaint/blower_silent.yaml"
ZONES = "complaint/zone_spillover.yaml"
# (property, what was spoiled, file, text that stands there once, text instead)
EDITS = [
    (SafetyOnlyWithItsConditionNormal, "the limit's ohms before its temperature", NO_HEAT,
     "is: the limit is open, then: limit_face}", "is: the limit is open, then: limit_ohms}"),
    (OneResetAtMost, "two resets instead of another walk", NO_HEAT,
     "  to_breaker: {hand_over: tripped_breaker}\n",
     "  to_breaker: {do: Reset it, act: reset_breaker, then: once_more}\n"
     "  once_more: {do: And again, act: reset_breaker, then: give_up}\n"
     "  give_up: {hand_over: tripped_breaker}\n"),
    (BridgesAreGuarded, "the door switch held in and on no list", NO_HEAT,
     "    act: hold_door_switch\n    why:", "    why:"),
    (BridgesAreGuarded, "a limit bridged to see whether it lights", NO_HEAT,
     "  clear: {call: restart, then: {done: cycle}}\n",
     "  clear: {call: restart, then: {done: bridge}}\n"
     "  bridge: {do: Bridge the limit, act: bridge_limit, caution: [line_voltage], then: cycle}\n"),
    (BreakersAreNoSwitches, "made dead with the thermostat calling", "procedure/make_dead.yaml",
     "start: thermostat\n", "start: switch_off\n"),
    (BreakersAreNoSwitches, "switched off and on under load", "procedure/restart.yaml",
     "start: thermostat\n", "start: power\n"),
    (InsulationAfterDisconnecting, "a load tested on its wires", "cause/line_short.yaml",
     "The inducer by itself, plug off, dead", "The inducer by itself, dead"),
    (OhmsBelowPowerOff, "a winding's ohms with power on", NO_HEAT,
     "    needs: {line: dead}\n    name: inducer_winding\n",
     "    needs: {line: live}\n    name: inducer_winding\n"),
    (OhmsBelowPowerOff, "a voltage after the power was cut", NO_HEAT,
     "    needs: {control: live}\n    caution: [live_24v, line_voltage]\n    name: secondary_alone\n",
     "    caution: [live_24v, line_voltage]\n    name: secondary_alone\n"),
    (OhmsBelowPowerOff, "dead by a reading alone", "procedure/make_dead.yaml",
     "    then: switch_off\n", "    then: proof\n"),
    (SupplyBeforeControl, "the float switch of a dead controller first", NO_HEAT,
     "is: no control voltage, then: line_volts,", "is: no control voltage, then: float_there,"),
    (SupplyBeforeControl, "the heat side before the split", NO_HEAT,
     "    then: board_24v\n", "    then: inducer_volts\n"),
    (SupplyBeforeControl, "the float switch of a dead controller first, with no air", NO_AIR,
     "    then: float_there\n    close: sag\n    cannot: no_reading\n",
     "    then: float_there\n    close: sag\n    cannot: float_there\n"),
    (SupplyBeforeControl, "the thermostats of a zone panel that sags", ZONES,
     "{under: 22, is: it sags, then: panel_primary}", "{under: 22, is: it sags, then: calling_g}"),
    (OverheatAndLockout, "a second trial on a lockout", "proof/full_cycle.yaml",
     "{call: close_up, then: {done: restart}}", "{call: close_up, then: {done: call_heat}}"),
    (OverheatAndLockout, "a hot furnace left with the call on", NO_HEAT,
     "{runs: limit_cool, stands still: heat_off}", "{runs: limit_cool, stands still: to_blower}"),
    (OverheatAndLockout, "fired with a blower that stands still", NO_AIR,
     "stands still and silent: call_psc", "stands still and silent: psc_heat"),
    (OverheatAndLockout, "a repaired blower fired before it was seen to blow", "proof/fan_test.yaml",
     "stands still and silent: not_proved", "stands still and silent: cooked"),
    (NeverNoFaultAfterATrip, "a blown fuse and nothing found", NO_HEAT,
     "is: nothing after the fuse, then: fuse_blown}", "is: nothing after the fuse, then: works_now}"),
    (NotOnlyTheLink, "a new limit and no look at the air", NO_HEAT,
     "    shows: [after_limit, limit_contact]\n    causes: [low_airflow, overfire, blower_dead]\n",
     "    shows: [after_limit, limit_contact]\n    causes: [overfire]\n"),
    (NotOnlyTheLink, "a zone panel's new fuse and no look at what its dampers draw", ZONES,
     "    causes: [zone_wire, damper_draw]\n    repair: [fit_panel_fuse]\n",
     "    causes: [zone_wire]\n    repair: [fit_panel_fuse]\n"),
    (NotOnlyTheLink, "a new fuse and no look at the loads", NO_HEAT,
     "    shows: [fuse_feed, fuse_load]\n    causes: [shorted_control_wire, overload_24v, water_track]\n",
     "    shows: [fuse_feed, fuse_load]\n    causes: [overload_24v, water_track]\n"),
]
MORE_ACTS = b"""
acts:
  bridge_limit: {say: Bridge the limit for one start, undo: bridge_out}
  bridge_out: {say: Take the bridge off the limit}
"""


def edited(file, old, new):
    """The shipped trees with one text changed; the house knows the acts that only an edit would use."""
    texts = dict(SHIPPED)
    texts["house.yaml"] = texts["house.yaml"].replace(b"\nacts:\n", MORE_ACTS, 1)
    assert texts[file].count(old.encode()) == 1, f"{file} has {texts[file].count(old.encode())} times {old!r}"
    texts[file] = texts[file].replace(old.encode(), new.encode())
    return texts


@pytest.mark.parametrize(("property_", "file", "old", "new"), [(p, f, o, n) for p, _, f, o, n in EDITS],
                         ids=[f"{p.__name__}: {what}" for p, what, *_ in EDITS])
def test_an_edit_that_spoils_it_is_refused(property_, file, old, new):
    found, _ = failures(property_, edited(file, old, new))
    assert found


def test_every_property_has_an_edit_that_it_refuses():
    assert {property_ for property_, *_ in EDITS} == set(PROPERTIES)


def test_acts_that_only_edits_use_change_nothing_by_themselves():
    for property_ in PROPERTIES:
        found, _ = failures(property_, {**SHIPPED, **edited(NO_HEAT, "\nstart: ", "\nstart: ")})
        assert not found


def test_every_step_of_a_visit_is_followed():
    """All but the steps of procedures that no step asks for yet."""
    _, paths = failures(OneResetAtMost, SHIPPED)
    reached = {tree for tree, _ in paths.asked}
    missed = {(tree.name, name) for tree in paths.library.trees.values() for name in tree.steps} - paths.asked
    assert not {(tree, step) for tree, step in missed if tree in reached}
    assert {"no_heat", "make_dead", "restore_line", "full_cycle", "low_airflow"} <= reached
