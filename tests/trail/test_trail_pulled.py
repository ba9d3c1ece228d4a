"""A stick that is pulled and a disk that is full at any byte, on a real disk: nothing saved is lost."""

from __future__ import annotations

import shutil
import sys

import pytest
from disk_full import files_end_at
from visits import LIBRARY, answers, opened

from assistant.trail.draft import draft_of, keep_draft
from assistant.trail.erased import Erased, erased, note_erased
from assistant.trail.error import TrailError
from assistant.trail.read import read_trail
from assistant.trail.record import Recorder
from assistant.trail.shop_file import say_may, shop_data
from assistant.walk.event import Recovered

EVENTS = answers(6)


@pytest.mark.skipif(sys.platform == "win32", reason="an open file can't be taken away on Windows")
def test_a_stick_that_was_pulled_says_so_and_goes_on_when_it_is_back(tmp_path):
    """The file is gone with its folder, though its handle is still open and takes every byte."""
    folder, pulled = tmp_path / "visit", tmp_path / "pulled"
    recorder = Recorder.create(folder, LIBRARY, opened())
    recorder.append(EVENTS[0])
    shutil.copytree(folder, pulled)
    shutil.rmtree(folder)
    for _ in range(2):
        with pytest.raises(TrailError, match=r"is gone.*Put the stick or drive back.*what you typed stays"):
            recorder.append(EVENTS[1])
    pulled.rename(folder)
    recorder.append(EVENTS[1])
    recorder.close()
    trail = read_trail(folder)
    assert trail.events == [opened(), *EVENTS[:2]]
    assert not trail.damage and not trail.torn and not trail.beside


def test_a_disk_that_is_full_at_any_byte_of_an_answer(tmp_path):
    """The system itself refuses the rest of a line; with room again the same answer is saved."""
    whole = Recorder.create(tmp_path / "whole", LIBRARY, opened())
    whole.append(EVENTS[0])
    whole.close()
    (file,) = (tmp_path / "whole").glob("trail-*")
    begin = file.read_bytes().rstrip(b"\n").rindex(b"\n") + 1
    for size in range(begin, file.stat().st_size, 9):
        folder = tmp_path / f"at-{size}"
        recorder = Recorder.create(folder, LIBRARY, opened())
        with files_end_at(size), pytest.raises(TrailError, match=r"disk is full.*what you typed stays"):
            recorder.append(EVENTS[0])
        assert read_trail(folder).events == [opened()], size
        recorder.append(EVENTS[0])
        recorder.close()
        trail = read_trail(folder)
        assert [e for e in trail.events if not isinstance(e, Recovered)] == [opened(), EVENTS[0]], size
        assert not trail.damage and not trail.torn, size


def test_what_lies_beside_a_trail_stays_whole_on_a_full_disk(tmp_path):
    """A draft, the list of what was erased, the shop's own file: the older one is still there, every byte."""
    shop = tmp_path / "shop.yaml"
    shop.write_text("instruments:\n  - {name: clamp meter, covers: {ac_voltage: {percent: 1}}}\n")
    assert keep_draft(tmp_path, "a.b", "cells", "den 110")
    note_erased(tmp_path, [Erased("t", "A.", "photo", "x")])
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    for size in (0, 1, 20, 60):
        with files_end_at(size):
            assert not keep_draft(tmp_path, "a.b", "cells", "den 110, east 95" * 10)
            with pytest.raises(TrailError, match="disk is full"):
                note_erased(tmp_path, [Erased("t", "A.", "photo", "y")])
            with pytest.raises(TrailError, match="can't be written"):
                say_may(shop, ["gas", "vent"])
        assert {name: (tmp_path / name).read_bytes() for name in before} == before, size
    assert keep_draft(tmp_path, "a.b", "cells", "den 112") and draft_of(tmp_path, "a.b", "cells") == "den 112"
    note_erased(tmp_path, [Erased("t", "A.", "photo", "y")])
    assert [each.name for each in erased(tmp_path)] == ["x", "y"]
    say_may(shop, ["gas", "vent"])
    assert shop_data(shop)[0]["may"] == ["gas", "vent"]
