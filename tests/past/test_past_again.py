"""Past visits walked again: on the same trees they end the same, on changed ones the difference is named."""

import re
import shutil
from pathlib import Path

import pytest
from shelved import LIBRARY, WALKS, put, walked

from assistant.past.again import Again, walk_again, walked_again
from assistant.resources import trees_folder
from assistant.tree.library import from_texts


@pytest.fixture(scope="module")
def shelf(tmp_path_factory):
    root = tmp_path_factory.mktemp("shelf")
    put(root, "one", "no_heat/igniter_open", 0)
    put(root, "two", "no_heat/fuse_blown", 1)
    put(root, "practice", "no_heat/fuse_blown", 1, practice=True)
    return root


def folders(shelf):
    return sorted(path for path in shelf.iterdir() if path.is_dir())


@pytest.mark.parametrize("tree", sorted(path.name for path in WALKS.iterdir()))
def test_on_the_same_trees_every_walk_ends_the_same(tree):
    """A sample of the walks of each tree; every tenth is enough to hold each kind of page."""
    for file in sorted((WALKS / tree).glob("*.yaml"))[::10]:
        again = walk_again(Path(file.stem), walked(f"{tree}/{file.stem}"), LIBRARY)
        assert not again.differs, file.stem
        assert again.unread == "", file.stem


def changed(old, new):
    texts = dict(LIBRARY.texts)
    name = next(name for name in texts if name.endswith("complaint/no_heat.yaml"))
    text = texts[name].decode()
    assert text.count(old) == 1, text.count(old)
    texts[name] = text.replace(old, new).encode()
    return from_texts(texts)


def test_practice_is_passed_over(shelf):
    assert [each.folder.name for each in walked_again(folders(shelf), LIBRARY)] == ["one", "two"]


def test_a_step_by_another_name_changes_nothing(shelf):
    """Readings answer by what they measure, not by what the step is called."""
    texts = dict(LIBRARY.texts)
    name = next(name for name in texts if name.endswith("complaint/no_heat.yaml"))
    texts[name] = re.sub(rb"\bigniter_volts_at\b|\bswitch_volts\b", b"volts_over_there", texts[name])
    library = from_texts(texts)
    assert texts[name] != LIBRARY.texts[name]
    assert not any(each.differs or each.unread for each in walked_again(folders(shelf), library))


def test_an_edited_limit_names_the_visits_that_would_end_differently(shelf):
    """With a limit below nothing in place of 9 ppm, no room that was called clean was clean."""
    library = changed("{under: 9, is: no source shown}", "{under: -1, is: no source shown}")
    told = list(walked_again(folders(shelf), library))
    assert all(each.differs for each in told)
    assert {each.now[0] for each in told} == {"Carbon monoxide in the room before the furnace ran"}
    assert [each.then[0] for each in told] == ["Igniter open", "24 V fuse blown"]


def test_a_question_that_nobody_answered_is_named(shelf):
    library = changed("start: kind", "start: new_look")
    texts = dict(library.texts)
    name = next(name for name in texts if name.endswith("complaint/no_heat.yaml"))
    text = texts[name].decode()
    text = text.replace(
        "\nsteps:\n",
        "\nsteps:\n  new_look:\n    measure: Something new\n    quantity: ac_voltage\n    unit: V\n"
        "    at: [y, c]\n    meter: low impedance\n    bands: [{is: seen, then: kind}]\n    cannot: kind\n",
        1,
    )
    texts[name] = text.encode()
    library = from_texts(texts)
    told = list(walked_again(folders(shelf), library))
    assert all(isinstance(each, Again) for each in told)
    assert {each.unread for each in told} == {"no_heat.new_look"}
    assert not any(each.differs for each in told)


def test_a_visit_that_cannot_be_read_is_told_and_stops_no_other(shelf, tmp_path):
    copy = shutil.copytree(shelf, tmp_path / "shelf")
    (copy / "a broken one").mkdir()
    shutil.rmtree(copy / "one" / "kept")
    told = list(walked_again(folders(copy), LIBRARY))
    assert [each.folder.name for each in told if isinstance(each, Again)] == ["two"]
    assert trees_folder().is_dir()
