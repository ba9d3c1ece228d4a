"""What each complaint's tree must tell apart, by a reading of its own and with a part or repair of its own.

The lists are wanted/<tree>.yaml and the trade's (common practice): what a technician with twenty years knows
to ask about. A row names the fault in plain words, the end that says so, the readings that separate it,
and where one reading is shared, the look that parts it, with its answer.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
import yaml
from sound_furnace import WALKS, replayed, shipped, walked

from assistant.tree.model import Finding, HandOver, Stop
from assistant.walk.visit import asked

WANTED = {path.stem: yaml.safe_load(path.read_text(encoding="utf-8"))["rows"]
          for path in sorted((Path(__file__).parent / "wanted").glob("*.yaml"))}
ROWS = [pytest.param(tree, row, id=f"{tree}: {row['fault']}")
        for tree, rows in WANTED.items() for row in rows]
LEAST = {"tripped_breaker": 45, "no_heat": 28, "blower_silent": 45, "zone_spillover": 48}
"""Findings that a tree has at least."""
STOPS = [("no_heat", name) for name in ("rollout", "exchanger", "bridged", "gas_passing", "supply_floats")]
HANDED_OVER = {("no_heat", "to_breaker"): "tripped_breaker", ("no_heat", "to_blower"): "blower_silent",
               ("zone_spillover", "to_blower"): "blower_silent", ("zone_spillover", "to_heat"): "no_heat"}
STOPS += [("tripped_breaker", name)
          for name in ("other_machine", "opens_empty", "opens_blower", "opens_inducer", "opens_igniter",
                       "stalls", "ground_back", "arc_fault", "supply_wrong")]
TOUCH_NOTHING = [("tripped_breaker", "panel_unsafe")]
STOPS += [("blower_silent", name) for name in ("fires_on", "co_found", "command_unread")]
HANDED_OVER |= {("blower_silent", "to_breaker"): "tripped_breaker",
                ("blower_silent", "to_no_heat"): "no_heat"}


def steps(tree: str = "no_heat"):
    return shipped().trees[tree].steps


@cache
def path_to(tree: str, name: str):
    """The recorded walk to an end."""
    return replayed(WALKS / tree / f"{name}.yaml").path


def test_every_tree_of_a_complaint_is_held_to_a_list():
    assert set(WANTED) == set(LEAST) == set(walked())


@pytest.mark.parametrize(("tree", "row"), ROWS)
def test_the_tree_knows_it_and_reads_what_separates_it(tree: str, row: dict):
    end, path = steps(tree)[row["end"]], path_to(tree, row["end"])
    one = (tree, row["end"])
    kind = HandOver if one in HANDED_OVER else Stop if one in [*STOPS, *TOUCH_NOTHING] else Finding
    assert isinstance(end, kind)
    assert set(row["reads"]) <= {record.name for taken in path for record in taken.records}
    looks = {taken.step: taken.answer for taken in path if taken.verb == "look"}
    assert row.get("seen", {}).items() <= {step.partition(".")[2]: looks[step] for step in looks}.items()


@pytest.mark.parametrize(("tree", "name"), HANDED_OVER)
def test_what_belongs_to_another_walk_is_handed_over(tree: str, name: str):
    visit = replayed(WALKS / tree / f"{name}.yaml")
    assert asked(visit).complaint == HANDED_OVER[tree, name]
    assert not visit.found


@pytest.mark.parametrize(("tree", "name"), STOPS)
def test_what_may_not_be_left_running_is_a_stop(tree: str, name: str):
    step = steps(tree)[name]
    assert step.finding and step.customer
    assert "off" in shipped().vocabulary.stops[step.page].lines[0]


def deciding(tree: str, name: str) -> tuple[str, str] | None:
    """The last reading that named the way on the walk to an end, with its band: on a page, the first one."""
    for taken in reversed(path_to(tree, name)):
        for record in taken.records:
            if record.verdict and record.verdict.decided and record.verdict.band.then:
                return record.name, record.verdict.band.label
    return None


@pytest.mark.parametrize("tree", WANTED)
def test_each_has_a_reading_or_a_repair_of_its_own(tree: str):
    """No two rest on one band of one reading, but where a look parts them and so does the repair."""
    seen: dict[tuple, str] = {}
    for row in WANTED[tree]:
        step, parted = steps(tree)[row["end"]], tuple(row.get("seen", {}).items())
        key = (deciding(tree, row["end"]), parted, getattr(step, "repair", ()) if parted else ())
        other = seen.setdefault(key, row["end"])
        assert other == row["end"], f"{row['end']} and {other} both rest on {key[0]} {parted}"


@pytest.mark.parametrize("tree", LEAST)
def test_there_are_enough_findings(tree: str):
    counted = [name for name, step in steps(tree).items()
               if (isinstance(step, Finding) and step.fault) or (isinstance(step, Stop) and step.finding)]
    assert len(counted) >= LEAST[tree]


@pytest.mark.parametrize("kind", [
    "gas with standing pilot", "gas with spark pilot or direct spark", "gas with natural draught",
    "gas with a thermostat on data wires", "oil", "electric", "heat pump", "boiler", "cannot tell",
])
def test_a_heater_that_is_not_covered_is_told_so_at_once(kind: str):
    look = steps()[shipped().trees["no_heat"].start]
    said = steps()[look.choices[kind].to]
    assert isinstance(said, Finding) and not said.fault and said.reason


HAZARDS = ("gas_smell", "carbon_monoxide", "unwell_people", "fire_damage", "hot_panel", "water_in_controls")


@pytest.mark.parametrize("hazard", HAZARDS)
def test_a_hazard_has_a_page_of_three_short_lines(hazard: str):
    page = shipped().vocabulary.stops[shipped().vocabulary.hazards[hazard]]
    assert len(page.lines) == 3
    assert all(len(line) <= 90 for line in page.lines)
