"""`drill --list` and `drill --run FILE`: exit codes, places of mistakes, and the debrief in words."""

from __future__ import annotations

import json

import pytest
from practice_matter import drills, faults

from assistant.__main__ import main
from assistant.command import drill as command


@pytest.fixture(autouse=True)
def few(monkeypatch):
    """The small drills in place of the shipped ones, so that a debrief takes no time."""
    from houses import library

    monkeypatch.setattr(command, "_matter", lambda: (library(), faults(), drills()))


GOOD = """\
drill: dark
entries:
  - expect: "off"
  - look: service_switch
  - finding: switch_off
  - cause: switched_off
  - say: Somebody had switched it off.
"""


def ran(tmp_path, text: str, *words: str) -> int:
    file = tmp_path / "entries.yaml"
    file.write_text(text, encoding="utf-8")
    return main(["drill", "--run", str(file), *words])


def test_a_drill_that_is_worked_well_ends_in_0(tmp_path, capsys):
    assert ran(tmp_path, GOOD) == 0
    said = capsys.readouterr().out
    assert "PRACTICE" in said
    assert "You found it" in said
    assert "1 of 1 came as you said" in said


def test_a_wrong_finding_a_missed_cause_and_an_unsafe_act_end_in_1(tmp_path):
    assert ran(tmp_path, GOOD.replace("switch_off\n", "door_switch\n")) == 1
    assert ran(tmp_path, GOOD.replace("cause: switched_off", "cause: worn")) == 1
    unsafe = GOOD.replace("  - finding", "  - look: blower.wheel\n  - finding")
    assert ran(tmp_path, unsafe) == 1


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (("look: service_switch", "lok: service_switch"), "4:5"),
        (("look: service_switch", "look: nothing_like_it"), "4:11"),
        (("  - finding: switch_off\n", ""), "before a finding"),
        (("finding: switch_off", "finding: nobody_knows"), "no finding"),
        (("drill: dark", "drill: nowhere"), "no drill 'nowhere'"),
        (("drill: dark", "drill: dark\nway: upwards"), "no way to work"),
        (("entries:", "entries: none\nmore:"), "list"),
        (("  - look: service_switch", "  - wait: soon"), "no time"),
        (("  - look: service_switch", "  - read: {with: spoon, red: r}"), "no 'spoon'"),
        (("  - look: service_switch", "  - read: {with: low, red: r, black: nowhere}"), "no point"),
        (("  - look: service_switch", "  - do: dance"), "can't be done"),
        (("drill: dark", "drill: [dark]"), "text"),
    ],
)
def test_what_can_not_be_run_or_finished_ends_in_2_with_its_place(tmp_path, capsys, change, says):
    assert ran(tmp_path, GOOD.replace(*change)) == 2
    assert says in capsys.readouterr().err


def test_a_missing_file_ends_in_2(tmp_path, capsys):
    assert main(["drill", "--run", str(tmp_path / "none.yaml")]) == 2
    assert "can't be read" in capsys.readouterr().err


def test_a_drill_along_the_tree(tmp_path, capsys):
    text = "drill: dark\nway: tree\nentries:\n  - expect: gas\n  - walk: causes\n  - say: It was off.\n"
    assert ran(tmp_path, text, "--json") == 0
    told = json.loads(capsys.readouterr().out)
    assert told["figures"]["right"]
    assert told["figures"]["cause"]
    assert told["practice"] is True
    assert "kind of heater" in told["path"][0]


def test_a_hazard_called_out_at_once_ends_a_house_to_leave(tmp_path):
    text = "drill: smell\nway: tree\nentries:\n  - hazard: gas_smell\n"
    assert ran(tmp_path, text) == 0
    assert ran(tmp_path, "drill: smell\nentries:\n  - finding: hazard.gas_smell\n") == 0


def test_the_list_hides_what_is_wrong_but_from_the_foreman(capsys):
    assert main(["drill", "--list"]) == 0
    said = capsys.readouterr().out
    assert "It tries and gives up" in said
    assert "igniter is broken" not in said
    assert main(["drill", "--list", "--foreman"]) == 0
    assert "igniter is broken" in capsys.readouterr().out


def test_the_list_by_complaint_and_difficulty(capsys):
    assert main(["drill", "--list", "--difficulty", "hard", "--json"]) == 0
    assert [one["name"] for one in json.loads(capsys.readouterr().out)] == ["dark"]
    assert main(["drill", "--list", "--complaint", "blower_silent"]) == 0
    assert "No drill" in capsys.readouterr().out
    assert main(["drill", "--list", "--complaint", "no_hot_water"]) == 2
    assert main(["drill", "--list", "--difficulty", "silly"]) == 2


def test_the_example_can_be_read():
    from assistant.drill.practice.script import EXAMPLE, load_script

    script, problems = load_script(EXAMPLE.encode(), "example")
    assert not problems
    assert script.steps


def test_nothing_is_recorded(tmp_path, monkeypatch):
    monkeypatch.setenv("FAULT_TRAIL_HOME", str(tmp_path / "home"))
    ran(tmp_path, GOOD)
    assert not (tmp_path / "home").exists()
