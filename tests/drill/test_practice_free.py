"""Free work on a simulated house: the meter shows what it would show, and what is unsafe is noted."""

from __future__ import annotations

from random import Random

import pytest
from houses import library
from practice_matter import drills, faults

from assistant.drill.practice.answers import findings, right_findings
from assistant.drill.practice.calls import number
from assistant.drill.practice.debrief import Debrief, debrief
from assistant.drill.practice.drill import Drill
from assistant.drill.practice.expect import parted
from assistant.drill.practice.meter import FUNCTIONS, frames
from assistant.drill.practice.possible import Narrowing, narrowing
from assistant.drill.practice.sitting import METER_FUSE, CantDo, Sitting


def at(name: str = "cold") -> Sitting:
    return Sitting(drills()[name], library(), clock=lambda: 0.0)


def laid(sitting: Sitting, function: str, red: str, black: str = "", expected: str = "") -> str:
    """A reading; what the display stands at."""
    sitting.meter.function, sitting.meter.red, sitting.meter.black = function, red, black
    return sitting.read(expected)[-1][1]


def rules(sitting: Sitting) -> set[str]:
    return {one.rule for one in sitting.log.unsafe}


def told(sitting: Sitting) -> Debrief:
    return next(one for one in debrief(sitting, library(), faults(), orders=None) if isinstance(one, Debrief))


def section(made: Debrief, title: str) -> str:
    return "\n".join(line for one in made.sections if one.title == title for line in one.lines)


def proved_dead(sitting: Sitting) -> None:
    laid(sitting, "low", "known.line", "known.neutral")
    sitting.act("stat_off")
    sitting.act("breaker_off")
    for red, black in (("box.line", "box.neutral"), ("box.line", "ground"), ("box.neutral", "ground")):
        assert number("ac_voltage", laid(sitting, "low", red, black)) < 1
    laid(sitting, "low", "known.line", "known.neutral")


def test_the_display_ranges_settles_and_ends_at_what_the_meter_reads():
    shown = frames("118.4 V", FUNCTIONS["low"], Random(1))
    assert shown[0] == (0.0, "- - -")
    assert shown[-1][1] == "118.4 V"
    assert [time for time, _ in shown] == sorted(time for time, _ in shown)
    assert len({text for _, text in shown}) > 3
    assert abs(float(shown[-2][1].split()[0]) - 118.4) <= 0.11  # its last digit wanders by one
    assert frames("OL", FUNCTIONS["ohms"], Random(1)) == [(0.0, "- - -"), (1.6, "OL")]


def test_ohms_on_a_live_circuit_take_the_meters_fuse_and_everything_is_open_from_then_on():
    """A blown fuse behind the ohms reads OL whatever is there: the trap that condemns good parts."""
    sitting = at()
    assert laid(sitting, "ohms", "box.line", "box.neutral") == "Err"
    assert rules(sitting) == {"ohms on live"}
    assert sitting.meter.fuse_blown
    assert sitting.leads_together() == "OL"
    proved_dead(sitting)
    assert laid(sitting, "ohms", "inducer.line", "inducer.neutral") == "OL"
    assert sitting.log.entries[-1].blind
    sitting.act(METER_FUSE)
    assert sitting.leads_together() == "0.2 ohm"
    assert number("resistance", laid(sitting, "ohms", "inducer.line", "inducer.neutral")) < 100


def test_ohms_on_24_volts_spare_the_fuse():
    sitting = at()
    laid(sitting, "ohms", "r", "c")
    assert rules(sitting) == {"ohms on live"}
    assert not sitting.meter.fuse_blown


def test_a_proof_of_dead_makes_ohms_and_hands_safe():
    sitting = at()
    proved_dead(sitting)
    laid(sitting, "ohms", "igniter.line", "igniter.neutral")
    sitting.look("igniter.state")
    sitting.act("fit_igniter")
    assert not sitting.log.unsafe


def test_a_switch_thrown_and_not_proved_is_not_dead():
    sitting = at()
    sitting.act("breaker_off")
    laid(sitting, "ohms", "igniter.line", "igniter.neutral")
    assert rules(sitting) == {"ohms not proved dead"}


def test_a_proof_with_a_meter_that_was_not_shown_to_work_is_said():
    sitting = at()
    sitting.act("breaker_off")
    for red, black in (("box.line", "box.neutral"), ("box.line", "ground"), ("box.neutral", "ground")):
        laid(sitting, "low", red, black)
    assert rules(sitting) == {"meter not proved"}


def test_a_hand_in_the_blower_unlocked_is_unsafe():
    sitting = at()
    sitting.look("blower.wheel")
    assert rules(sitting) == {"hand in unlocked"}


def test_work_on_a_live_part_is_unsafe():
    sitting = at()
    sitting.act("fit_igniter")
    assert rules(sitting) == {"work not dead"}


def test_what_is_left_held_or_open_is_unsafe_and_a_leak_check_is_named():
    sitting = at()
    sitting.act("hold_door_switch")
    sitting.act("open_port")
    sitting.act("close_port")
    sitting.conclude("igniter_open", "worn", "")
    assert rules(sitting) == {"left so", "leak check missing"}


def test_a_breaker_closed_before_the_loads_were_read_is_unsafe_and_a_second_time_too():
    sitting = at()
    sitting.act("reset_breaker")
    assert rules(sitting) == {"reset before tests"}
    sitting.act("reset_breaker")
    assert "second reset" in rules(sitting)


def test_fire_without_a_blower_is_unsafe_once_the_apprentice_called_for_it():
    drill = Drill("hums", "Hums", "blower_silent", "It hums.", fault=faults()["capacitor_open"])
    sitting = Sitting(drill, library(), clock=lambda: 0.0)
    sitting.wait(300)
    assert not sitting.log.unsafe  # the customer's own call, as it was met
    sitting.act("stat_call")
    sitting.wait(1200)
    assert rules(sitting) == {"fired without blower"}


def test_only_what_can_be_done_now_is_offered():
    sitting = at()
    assert "release_door_switch" not in sitting.acts()
    assert METER_FUSE not in sitting.acts()
    sitting.act("hold_door_switch")
    assert "release_door_switch" in sitting.acts()
    assert "hold_door_switch" not in sitting.acts()
    with pytest.raises(CantDo):
        sitting.act("hold_door_switch")


def test_the_thermostat_can_be_turned_down_again_after_a_call():
    sitting = at()
    sitting.act("stat_off")
    sitting.act("stat_call")
    assert "stat_off" in sitting.acts()


def test_what_can_not_be_measured_is_a_sentence_and_takes_nothing_down():
    sitting = at()
    for function, red, black in (("clamp", "port.inlet", ""), ("low", "r", ""), ("ohms", "", "")):
        with pytest.raises(CantDo, match=r"\."):
            laid(sitting, function, red, black)
    assert not sitting.log.entries
    with pytest.raises(CantDo):
        sitting.look("no such thing")
    for wrong in (0, -5, 1e9):
        with pytest.raises(CantDo):
            sitting.wait(wrong)


@pytest.mark.parametrize(
    ("expected", "shown", "kind", "says"),
    [
        ("120", "118.9 V", "ac_voltage", False),
        ("24", "0.002 V", "ac_voltage", True),
        ("50-100", "61.2 ohm", "resistance", False),
        ("50-100", "OL", "resistance", True),
        ("OL", "OL", "resistance", False),
        ("open", "61.2 ohm", "resistance", True),
        ("dead", "0.004 V", "ac_voltage", False),
        ("about the line's", "118.9 V", "ac_voltage", None),
        ("", "118.9 V", "ac_voltage", None),
        ("steady", "flashing a code", "", True),
        ("flashing", "flashing a code", "", False),
        ("on", "none", "", True),
        ("Flashing a code", "flashing a code", "", False),
    ],
)
def test_expectation_and_reading_part_or_a_person_judges(expected, shown, kind, says):
    assert parted(expected, shown, kind) is says


def narrowed(sitting: Sitting) -> Narrowing:
    calls = sitting.rig.calls
    steps = narrowing(sitting.drill, sitting.log.entries, calls, faults())
    return next(one for one in steps if isinstance(one, Narrowing))


def test_a_look_that_splits_what_is_possible_gains_information_and_the_same_again_gains_none():
    """Halving is one bit; what no house would answer otherwise is none (C. E. Shannon, A Mathematical Theory
    of Communication, 1948, from memory).
    """
    sitting = at()
    sitting.look("code_light")
    sitting.look("code_light")
    first, second = narrowed(sitting).told
    assert first.before > first.after >= 1
    assert first.bits > 0
    assert second.nothing
    assert second.bits == 0


def test_the_houses_own_fault_stays_possible_and_others_go():
    sitting = at("dark")
    sitting.look("service_switch")
    made = narrowed(sitting)
    assert made.told[-1].after == 1
    assert made.left == ()


def test_the_debrief_names_what_was_right_and_what_it_cost():
    sitting = at()
    sitting.look("code_light", "steady")
    laid(sitting, "low", "box.line", "box.neutral", "120")
    sitting.conclude("igniter_open", "worn", "The igniter winding broke.")
    made = told(sitting)
    assert made.figures.right
    assert made.figures.right_first
    assert made.figures.cause is False  # this house's cause is known
    assert "missed" in section(made, "The cause")
    assert "you expected steady, it was flashing a code" in section(
        made, "Where expectation and reading parted"
    )
    assert "winding" in section(made, "The sentence for the customer")
    assert made.best_path
    assert made.figures.beyond == 0
    assert "shown by" in section(made, "Condemned without proof")


def test_two_facts_condemn_a_part_and_nothing_is_said_then():
    sitting = at()
    sitting.act("hold_door_switch")
    sitting.act("stat_call")
    sitting.wait(25)
    laid(sitting, "low", "igniter.line", "igniter.neutral")
    sitting.act("release_door_switch")
    proved_dead(sitting)
    laid(sitting, "ohms", "igniter.line", "igniter.neutral")
    sitting.conclude("igniter_open", "igniter_harm", "")
    made = told(sitting)
    assert section(made, "Condemned without proof") == ""
    assert section(made, "Unsafe, and why") == "Nothing."
    assert made.figures.cause


def test_a_wrong_finding_is_told_with_the_right_one_and_no_mark_is_given():
    sitting = at()
    sitting.conclude("valve_wire", "rough_wiring", "")
    made = told(sitting)
    assert not made.figures.right
    assert "It was: Igniter open" in section(made, "What was wrong")
    words = made.text().lower()
    assert not any(word in words for word in ("score", "grade", "badge", "points out", "percent right"))
    assert words.startswith("practice")


def test_a_sound_house_is_right_by_nothing_wrong():
    sitting = at("sound")
    right = right_findings(sitting.drill, library())
    assert right
    sitting.conclude(right[0], "", "It is fine.")
    assert told(sitting).figures.right
    other = at("sound")
    other.conclude("igniter_open", "worn", "")
    assert "can be sound" in section(told(other), "What was wrong")


def test_a_house_to_leave_is_left_at_once():
    stays = at("smell")
    for _ in range(3):
        stays.look("code_light")
    stays.conclude("hazard.gas_smell", "", "Please come outside with me.")
    assert rules(stays) == {"stayed inside"}
    leaves = at("smell")
    leaves.conclude("hazard.gas_smell", "", "Please come outside with me.")
    assert not leaves.log.unsafe
    assert told(leaves).figures.right


def test_what_comes_and_goes_is_away_on_arrival():
    sitting = at("comes_back")
    assert not sitting.rig.rig.present
    assert right_findings(sitting.drill, library(), present=False)[0] == "works_now"


def test_everything_that_can_be_found_is_listed_with_words_of_its_own():
    listed = findings(library(), "no_heat")
    assert {"igniter_open", "exchanger", "to_breaker", "hazard.gas_smell"} <= set(listed)
    titles = [one.title for one in listed.values()]
    assert all(titles)
    assert "not_covered" not in listed
