"""A library: a folder's files or texts kept with a visit, what a walk can read of them, nothing outside."""

import hashlib
import os
import shutil
import sys

import pytest

from assistant.tree import folder
from assistant.tree.library import from_texts, read_folder
from tests.tree.mistakes import GOOD

TEXTS = {path.relative_to(GOOD).as_posix(): path.read_bytes() for path in sorted(GOOD.rglob("*.yaml"))}


@pytest.fixture
def trees(tmp_path):
    """A copy of the good library, to spoil."""
    return shutil.copytree(GOOD, tmp_path / "trees")


def told(library):
    return [(problem.file, problem.rule) for problem in library.problems]


def test_a_folder_and_its_texts_are_the_same_library():
    one, other = read_folder(GOOD), from_texts(TEXTS)
    assert one == other
    assert one.texts == TEXTS
    assert one.problems == ()
    assert read_folder(str(GOOD)) == one


def test_a_step_is_found_by_its_address():
    library = from_texts(TEXTS)
    tree, step = library.step("no_air.volts")
    assert (tree.name, step.common.name) == ("no_air", "volts")
    for address in ("no_air.nothing", "nothing.volts", "no_air", "", ".", "no_air.volts.x"):
        with pytest.raises(KeyError):
            library.step(address)


def test_the_closure_is_every_file_that_the_walk_can_read():
    library = from_texts(TEXTS)
    assert library.reach(["no_air"]) == ["blower_runs", "make_dead", "no_air", "restore_line", "water"]
    # A circuit's procedures belong to every walk: the walker puts them in front by itself.
    assert library.reach(["water"]) == ["make_dead", "restore_line", "water"]
    assert library.reach([]) == ["make_dead", "restore_line"]
    closure = library.closure(["water"])
    assert sorted(closure) == [
        "cause/water.yaml",
        "cautions.yaml",
        "house.yaml",
        "procedure/make_dead.yaml",
        "procedure/restore_line.yaml",
        "sources.yaml",
    ]
    assert closure["house.yaml"] == hashlib.sha256(TEXTS["house.yaml"]).hexdigest()
    assert library.closure(["no_such_tree"]) == library.closure([])


def test_the_texts_of_a_closure_are_a_library_that_can_be_walked():
    library = from_texts(TEXTS)
    kept = from_texts({path: TEXTS[path] for path in library.closure(["no_air"])})
    assert kept.problems == ()
    assert kept.trees["no_air"] == library.trees["no_air"]
    assert kept.closure(["no_air"]) == library.closure(["no_air"])


def test_a_hand_over_is_another_walk():
    more = dict(TEXTS)
    more["house.yaml"] = TEXTS["house.yaml"].replace(
        b"keeps tripping.}", b"keeps tripping., tree: trips.yaml}"
    )
    more["complaint/trips.yaml"] = TEXTS["complaint/no_air.yaml"].replace(
        b"{hand_over: tripped_breaker}", b"{hand_over: no_air}"
    )
    library = from_texts(more)
    assert library.problems == ()
    assert "trips" not in library.reach(["no_air"])
    assert "no_air" not in library.reach(["trips"])


def test_one_changed_byte_changes_one_fingerprint():
    changed = {**TEXTS, "cause/water.yaml": TEXTS["cause/water.yaml"] + b"# a word\n"}
    one, other = from_texts(TEXTS).closure(["no_air"]), from_texts(changed).closure(["no_air"])
    assert {path for path in one if one[path] != other[path]} == {"cause/water.yaml"}


@pytest.mark.parametrize(
    ("path", "rule"),
    [
        ("cause/no_air.yaml", "name"),  # a second tree of that name
        ("procedure/other.yaml", "folder"),  # purpose: complaint in procedure/
        ("other.yaml", "folder"),
        ("misc/other.yaml", "folder"),
        ("complaint/deep/other.yaml", "folder"),
        ("complaint/other.yml", "folder"),
        ("../other.yaml", "folder"),
        ("/complaint/other.yaml", "folder"),
        ("complaint/../other.yaml", "folder"),
        ("complaint//other.yaml", "folder"),
        ("complaint\\other.yaml", "folder"),
        ("complaint/Other.yaml", "name"),
        ("complaint/.yaml", "name"),
        ("", "folder"),
    ],
)
def test_a_tree_in_the_wrong_place_is_told_and_left_out(path, rule):
    library = from_texts({**TEXTS, path: TEXTS["complaint/no_air.yaml"]})
    assert rule in [found for file, found in told(library) if file in (path, "complaint/no_air.yaml")]
    assert "other" not in library.trees


def test_a_broken_tree_is_left_out_and_the_others_load():
    library = from_texts({**TEXTS, "cause/water.yaml": TEXTS["cause/water.yaml"].replace(b"sees:", b"seas:")})
    assert "water" not in library.trees
    assert "no_air" in library.trees
    assert {file for file, _ in told(library)} == {"cause/water.yaml"}


def test_a_house_that_can_not_be_read_is_told_alone():
    library = from_texts({**TEXTS, "cautions.yaml": b"cautions: ["})
    assert {file for file, _ in told(library)} == {"cautions.yaml"}
    assert not library.trees


def test_texts_that_are_missing_are_told():
    assert ("house.yaml", "missing") in told(from_texts({}))
    assert from_texts({}).closure(["x"]) == {}


class TestFolder:
    def test_a_folder_that_is_not_there(self, tmp_path):
        library = read_folder(tmp_path / "nothing")
        assert any("can't be read" in problem.message for problem in library.problems)

    def test_a_file_in_place_of_the_folder(self, trees):
        library = read_folder(trees / "house.yaml")
        assert any(problem.rule == "folder" for problem in library.problems)

    def test_other_files_and_hidden_ones_are_passed_over(self, trees):
        (trees / "README.md").write_text("x")
        (trees / "complaint" / ".no_air.yaml.swp").write_text("x")
        (trees / ".git").mkdir()
        (trees / ".git" / "x.yaml").write_text("x")
        (trees / "complaint" / "no_air.yaml~").write_text("x")
        assert read_folder(trees) == from_texts(TEXTS)

    def test_a_link_out_of_the_folder_is_not_followed(self, trees, tmp_path):
        secret = tmp_path / "secret.yaml"
        secret.write_bytes(TEXTS["cause/water.yaml"])
        outside = tmp_path / "outside"
        outside.mkdir()
        (outside / "y.yaml").write_text("x")
        try:
            (trees / "cause" / "x.yaml").symlink_to(secret)
            (trees / "proof" / "more").symlink_to(outside)
        except OSError:
            pytest.skip("links can't be made here")
        library = read_folder(trees)
        assert told(library) == [("cause/x.yaml", "folder"), ("proof/more", "folder")]
        assert set(library.texts) == set(TEXTS)

    def test_a_link_inside_the_folder_is_a_second_file(self, trees):
        try:
            (trees / "cause" / "x.yaml").symlink_to(trees / "cause" / "water.yaml")
        except OSError:
            pytest.skip("links can't be made here")
        assert "x" in read_folder(trees).trees

    @pytest.mark.skipif(sys.platform == "win32", reason="links in a circle and pipes are made on Unix")
    def test_links_in_a_circle_broken_links_and_pipes(self, trees):
        (trees / "cause" / "a.yaml").symlink_to(trees / "cause" / "b.yaml")
        (trees / "cause" / "b.yaml").symlink_to(trees / "cause" / "a.yaml")
        (trees / "cause" / "c.yaml").symlink_to(trees / "cause" / "nothing.yaml")
        os.mkfifo(trees / "cause" / "d.yaml")
        (trees / "cause" / "e.yaml").mkdir()
        library = read_folder(trees)
        assert told(library) == [(f"cause/{name}.yaml", "folder") for name in "abcd"]

    def test_a_file_that_is_too_large_is_not_read(self, trees, monkeypatch):
        monkeypatch.setattr(folder, "LARGEST", 3000)
        library = read_folder(trees)
        assert ("complaint/no_air.yaml", "folder") in told(library)
        assert "complaint/no_air.yaml" not in library.texts

    def test_more_files_than_are_read_are_told(self, trees, monkeypatch):
        monkeypatch.setattr(folder, "MOST_FILES", 3)
        assert any("the rest is not read" in problem.message for problem in read_folder(trees).problems)

    def test_a_file_without_permission(self, trees):
        secret = trees / "cause" / "water.yaml"
        secret.chmod(0)
        if os.access(secret, os.R_OK):
            # Root, and some file systems, read everything.
            secret.chmod(0o600)
            assert read_folder(trees).problems == ()
            return
        assert ("cause/water.yaml", "folder") in told(read_folder(trees))
