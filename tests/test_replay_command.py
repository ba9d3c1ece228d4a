"""`replay`: a list of answers becomes a visit folder with its reports; exit codes say how it went."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from assistant.__main__ import main
from assistant.resources import resources_folder, trees_folder
from assistant.trail.live import LiveVisit

DEMO = resources_folder() / "demo" / "visit.yaml"


def replay(tmp_path: Path, text: str, *more: str) -> int:
    """The exit code of replaying `text` into tmp_path/out."""
    entries = tmp_path / "entries.yaml"
    entries.write_text(text, encoding="utf-8")
    return main(["replay", str(entries), "--out", str(tmp_path / "out"), *more])


def test_the_demo_visit_walks_to_its_signature(tmp_path: Path) -> None:
    """All four reports lie in the visit's folder, and the visit is signed."""
    out = tmp_path / "out"
    shop = str(resources_folder() / "shop.yaml")

    assert main(["replay", str(DEMO), "--out", str(out), "--shop", shop]) == 0
    assert {path.name for path in out.glob("report.*")} == {
        "report.pdf", "report.html", "report.txt", "report.csv"}
    assert main(["verify", str(out)]) == 0


def test_a_trail_line_keeps_what_the_answer_came_to(tmp_path: Path) -> None:
    """Limits, answer and next step stand beside the input, for a reader without the program."""
    replay(tmp_path, "- no_heat.kind: oil")
    lines = [json.loads(line) for path in sorted((tmp_path / "out").glob("trail-*.jsonl"))
             for line in path.read_text(encoding="utf-8").splitlines()]
    saw = next(line for line in lines if line.get("kind") == "saw")

    assert saw["copy"]["steps"][0]["answer"] == "oil"
    assert saw["copy"]["next"].startswith("no_heat.")


@pytest.mark.parametrize("text", [
    "- no_heat.kind: oil",
    "- complaints: [no_heat]\n- hazard: gas_smell",
    "- complaints: [no_heat]\n- pause: waiting for a part",
])
def test_a_finding_a_stop_and_a_pause_are_ends(tmp_path: Path, text: str) -> None:
    """Exit code 0: the command did its work."""
    assert replay(tmp_path, text) == 0


@pytest.mark.parametrize(("text", "said"), [
    ("- no_heat.kind: gas with inducer and hot surface igniter", "is still asked"),
    ("- no_heat.kind: oil\n- plate.nothing: 1", "entries.yaml:2:3"),
    ("- no_heat.nowhere: 1", "asked is"),
])
def test_a_list_that_ends_early_keeps_its_trail(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str, said: str
) -> None:
    """Exit code 2 with the place; what was answered is on disk and can be taken up again."""
    assert replay(tmp_path, text) == 2
    assert said in capsys.readouterr().err

    live = LiveVisit.take_up(tmp_path / "out")
    assert live.visit.complaint == "no_heat"
    live.close()


@pytest.mark.parametrize("text", ["", "just text", "- nte: x", "- noise.x: 1", "a: [", "- a: *b"])
def test_a_list_that_is_none_starts_nothing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str
) -> None:
    """Exit code 2, a sentence, no traceback, no folder."""
    assert replay(tmp_path, text) == 2
    assert "Traceback" not in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_a_folder_that_is_not_empty_is_left_alone(tmp_path: Path) -> None:
    """Nothing is written over."""
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "mine.txt").write_text("mine")

    assert replay(tmp_path, "- no_heat.kind: oil") == 2
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["mine.txt"]


def test_trees_with_an_error_are_not_walked(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A rule of the checker is enough: here a step that nothing leads to."""
    trees = tmp_path / "trees"
    shutil.copytree(trees_folder(), trees)
    tree = trees / "complaint" / "no_heat.yaml"
    lonely = "\n  lonely: {stop: leave_the_house}\n"
    tree.write_text(tree.read_text(encoding="utf-8").rstrip("\n") + lonely, encoding="utf-8")

    assert replay(tmp_path, "- no_heat.kind: oil", "--trees", str(trees)) == 2
    assert "no_heat.yaml:" in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_a_heater_that_the_tree_does_not_know_leaves_the_complaint_open(tmp_path: Path) -> None:
    """Nothing was measured, so nothing is settled: the customer's page says what is still to do."""
    replay(tmp_path, "- no_heat.kind: oil\n- no_heat.not_covered: go on")
    live = LiveVisit.take_up(tmp_path / "out")
    live.close()

    assert live.visit.complaints[0].status == "open"
    assert live.ask().choices == ("no_heat",)
    text = (tmp_path / "out" / "report.txt").read_text(encoding="utf-8")
    assert "Find out what is wrong" in text
    assert "Nothing that we know of" not in text
