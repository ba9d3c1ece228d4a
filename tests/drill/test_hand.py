"""The hand in front of a simulated house: it walks by the pages alone and harms nobody."""

from __future__ import annotations

from copy import deepcopy

import pytest
from houses import FEW, library

from assistant.drill.hand import AT, LOOKS, Hand, Stuck, insisted
from assistant.drill.kit import HIGH, LOW, NULLED, PERFECT, STATED, TRUCK, named_for
from assistant.drill.moment import FIRE, Moment
from assistant.drill.taking import Taking, Wanted
from assistant.drill.trial import after_finding, opened, until_end
from assistant.quantity.shop import read_instruments
from assistant.rig.fault_file import load_faults
from assistant.rig.house import CannotMeasure, Rig
from assistant.tree.model import Finding, readings_of
from assistant.walk.event import Read, Typed
from assistant.walk.visit import asked

FAULTS, _ = load_faults(FEW, "few.yaml")


def walked(fault: str | None):
    """Visit, page, hand and rig at the end of a walk."""
    rig = Rig(fault=FAULTS[fault] if fault else None)
    hand = Hand(rig, PERFECT)
    visit, ask = until_end(opened(library(), "no_heat"), hand, library())
    return visit, ask, hand, rig


def test_a_healthy_house_is_walked_to_nothing_found():
    visit, ask, hand, rig = walked(None)
    assert ask.kind == "finding"
    assert isinstance(ask.body, Finding)
    assert not ask.body.fault
    assert not rig.mishaps
    assert not hand.undone
    assert visit.house.circuits["line"] in ("live", "unknown")


@pytest.mark.parametrize("fault", ["cracked_element", "lead_off", "handle_off"])
def test_a_fault_is_walked_to_its_finding(fault: str):
    _, ask, _, rig = walked(fault)
    assert ask.step == f"no_heat.{FAULTS[fault].finding}"
    assert not rig.mishaps


def test_the_repair_cures_the_house():
    visit, _, hand, rig = walked("lead_off")
    assert not rig.cured
    visit = after_finding(visit, hand, wholly=False)
    assert rig.cured
    assert visit.found[-1].repaired


def test_what_the_display_shows_goes_through_the_entry_as_typed():
    visit, *_ = walked("lead_off")
    records = [record for taken in visit.path for record in taken.records if record.computed is None]
    assert records
    assert all(record.typed.text.strip() for record in records)
    assert any(record.typed.text.endswith(" V") for record in records)


def test_ohms_are_only_asked_of_what_the_house_has_dead():
    """Step by step, the simulated house agrees with what the walk believes of its power."""
    rig = Rig(fault=FAULTS["cracked_element"])
    hand, visit, read = Hand(rig, PERFECT), opened(library(), "no_heat"), 0
    while (ask := asked(visit)).kind not in ("finding", "stop", "handed_over"):
        if ask.kind == "measure" and any(r.kind == "resistance" for r in readings_of(ask.body)):
            seen = deepcopy(rig).measure("ac_voltage", ("box.line", "ground"), PERFECT[LOW])
            assert float(seen.split()[0]) < 1
            read += 1
        visit = hand.answer(visit)
    assert read


def test_a_fault_that_returns_while_the_house_is_closed_up_was_not_met(monkeypatch):
    """The last pages of a walk put covers back; nobody looks at the blower then."""
    looked: list[float] = []

    class Clock(Hand):
        def event(self, visit):
            event = super().event(visit)
            page = asked(visit)
            if page.kind in LOOKS and page.tree.purpose == "complaint":
                looked.append(self.rig.time)
            return event

    until_end(opened(library(), "no_heat"), Clock(Rig(), PERFECT), library())
    for returns, met in ((looked[-1] + 1, False), (looked[-2], True)):
        monkeypatch.setattr(Rig, "present", property(lambda rig, returns=returns: rig.time >= returns))
        hand = Hand(Rig(), PERFECT)
        until_end(opened(library(), "no_heat"), hand, library())
        assert hand.met is met
        assert hand.rig.present


def test_what_can_not_be_measured_is_said_and_decides_nothing():
    hand = Hand(Rig(fault=FAULTS["cracked_element"]), PERFECT)

    def nothing_to_read(*_):
        raise CannotMeasure("there is no such point")

    hand.taking.page = nothing_to_read
    visit, ask = until_end(opened(library(), "no_heat"), hand, library())
    assert ask.kind == "stop"
    assert not visit.found
    assert any("there is no such point" in words for words in hand.undone)


def test_a_question_without_a_way_on_is_stuck_and_says_where():
    hand = Hand(Rig(), PERFECT)
    hand.rig.see = lambda _thing: "something else"
    with pytest.raises(Stuck, match=r"no_heat\.kind") as stuck:
        until_end(opened(library(), "no_heat"), hand, library())
    assert len(stuck.value.visit.events) == 1


def test_an_implausible_reading_is_confirmed_once():
    event = Read(AT, "no_heat.step", {"a": Typed("700 V")})
    assert insisted(event).readings["a"].sure


def test_a_flame_that_goes_out_as_it_is_read_is_awaited_again():
    """The call ends in the second before the reading: no flame current of a fire that is over is typed."""
    rig = Rig()
    taking = Taking(rig, PERFECT)
    rig.machine.hands["stat"] = "off"
    assert taking.lit(), "the valve shuts with the next second"
    (reading,) = readings_of(library().trees["no_heat"].steps["flame_signal"])
    shown = taking.page([Wanted("flame", reading, Moment(FIRE))], 60)
    assert float(shown["flame"].split()[0]) > 1


@pytest.mark.parametrize(
    ("kind", "meter", "name"),
    [
        ("ac_voltage", "low impedance, true RMS", LOW),
        ("ac_voltage", "high impedance", HIGH),
        ("resistance", "ohms, leads nulled", NULLED),
        ("resistance", "ohms, clips", HIGH),
    ],
)
def test_the_note_beside_the_reading_picks_the_instrument(kind: str, meter: str, name: str):
    assert named_for(kind, meter) == name
    assert kind in STATED[name].covers


def test_the_truck_is_a_shop_that_a_visit_takes():
    assert read_instruments(TRUCK)[1] == []
    assert all(instrument.percent for instrument in STATED.values())
    assert not any(instrument.percent for instrument in PERFECT.values())
