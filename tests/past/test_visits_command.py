"""The words of `visits`, on a shelf of their own."""

import pytest
from shelved import LIBRARY, put

from assistant.__main__ import main
from assistant.resources import trees_folder


@pytest.fixture(scope="module")
def shelf(tmp_path_factory):
    root = tmp_path_factory.mktemp("shelf")
    put(root, "one", "no_heat/igniter_open", 0, person={"name": "Mx Example", "address": "12 Sample St."})
    put(root, "two", "no_heat/fuse_blown", 1)
    return root


def run(shelf, *words):
    return main(["visits", "--shelf", str(shelf), *words])


def test_find(shelf, capsys):
    assert run(shelf, "find", "sample") == 0
    said = capsys.readouterr().out
    assert "Mx Example, 12 Sample St." in said
    assert said.count("\n") == 1


def test_counts_and_their_tables(shelf, capsys, tmp_path):
    assert run(shelf, "counts", "--to", str(tmp_path / "out")) == 0
    said = capsys.readouterr().out
    assert "2 visits of our own." in said
    assert "Igniter open" in said
    assert {path.name for path in (tmp_path / "out").iterdir()} == {
        "findings.csv", "step-costs.csv", "never-changed.csv",
    }  # fmt: skip
    (tmp_path / "file").write_text("in the way")
    assert run(shelf, "counts", "--to", str(tmp_path / "file")) == 2
    assert "Name another folder" in capsys.readouterr().err


def test_again_on_the_same_and_on_changed_trees(shelf, capsys, tmp_path):
    assert run(shelf, "again", str(trees_folder())) == 0
    assert "2 visits walked again: 0 would end differently, 0 would ask" in capsys.readouterr().out
    for name, text in LIBRARY.texts.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_bytes(text)
    tree = tmp_path / "complaint" / "no_heat.yaml"
    text = tree.read_text(encoding="utf-8")
    tree.write_text(text.replace("finding: Igniter open", "finding: Igniter broken"), encoding="utf-8")
    assert run(shelf, "again", str(tmp_path)) == 1
    said = capsys.readouterr().out
    assert "one: then Igniter open; no_heat: found; now Igniter broken; no_heat: found" in said
    tree.write_text(text.replace("start: kind", "start: nowhere"), encoding="utf-8")
    assert run(shelf, "again", str(tmp_path)) == 2
    assert "mend them first" in capsys.readouterr().err


def test_erase(tmp_path, capsys):
    folder = put(tmp_path / "shelf", "one", "no_heat/fuse_blown", person={"name": "Mx Example"})
    assert run(tmp_path / "shelf", "erase", str(folder), "--by", "A. Foreman") == 0
    assert "by A. Foreman: the customer's data." in capsys.readouterr().out
    assert run(tmp_path / "shelf", "erase", str(folder), "--by", "A. Foreman") == 0
    assert "Nothing was left to erase." in capsys.readouterr().out
    assert run(tmp_path / "shelf", "erase", str(tmp_path / "none"), "--by", "A. Foreman") == 2


def test_a_shelf_that_is_not_there(tmp_path, capsys):
    assert run(tmp_path / "none", "find") == 2
    assert "--shelf" in capsys.readouterr().err
