"""A breaker that has just opened: what touches is there now, so all is read dead before it stays off.

Common practice: a fault that comes and goes is met in the minutes after it opened.
"""

from __future__ import annotations

import pytest
from sound_furnace import WALKS, Furnace, driven, replayed

from assistant.walk.visit import asked

FOLDER = WALKS / "tripped_breaker"
BAD = {
    "igniter: {igniter_now": ("igniter_now: OL", 'igniter_now: "0.02"', "igniter_free"),
    "wiring: {wiring_now": ("wiring_now: OL", 'wiring_now: "0.02"', "wiring_back"),
    "inducer: {inducer_now": ("inducer_now: OL", 'inducer_now: "0.02"', "inducer_other"),
    "others: {others_now": ("others_now: OL", 'others_now: "0.02"', "other_back"),
    "branch: {run_now": ("branch_now: OL", 'branch_now: "0.02"', "branch_back"),
    "inducer_tester: {inducer_megohms": ('"900"', '"0.1"', "inducer_tester_other"),
    "blower_tester: {blower_megohms": ('"700"', '"0.1"', "blower_tester_other"),
}
"""Page of the procedure -> what it read, what it reads now, and where that leads."""


def replay(lines, folder):
    file = folder / "tripped_breaker" / "walk.yaml"
    file.parent.mkdir()
    file.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return replayed(file)


@pytest.mark.parametrize("page", BAD)
def test_what_reads_bad_now_is_read_a_second_time(page, tmp_path):
    old, new, leads = BAD[page]
    lines = (FOLDER / "ground_back.yaml").read_text(encoding="utf-8").splitlines()
    at = next(number for number, line in enumerate(lines) if f"after_opening.{page}" in line)
    assert old in lines[at]
    visit = replay([*lines[:at], lines[at].replace(old, new)], tmp_path)
    assert asked(visit).step == f"tripped_breaker.{leads}"


def test_no_load_is_blamed_where_none_was_put_back(tmp_path):
    lines = (FOLDER / "opens_other.yaml").read_text(encoding="utf-8").splitlines()
    at = next(number for number, line in enumerate(lines) if "tripped_breaker.other_any" in line)
    visit = replay([*lines[:at], "- tripped_breaker.other_any: nothing else"], tmp_path)
    end = asked(driven(visit, Furnace(), until=("stop",)))
    assert end.step == "tripped_breaker.ground_back"
