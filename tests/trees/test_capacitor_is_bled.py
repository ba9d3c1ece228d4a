"""A run capacitor is bled by somebody before it is read empty, also where the power was off already.

Nothing obliges it to empty itself (NEC 460.1 leaves a motor's own capacitor out; from memory), and a circuit
that was switched off with its feeder is not yet an empty capacitor (reasoned).
"""

from __future__ import annotations

import pytest
from sound_furnace import WALKS, replayed

FILES = [path for path in sorted(WALKS.glob("*/*.yaml")) if "discharge.proof:" in path.read_text("utf-8")]


def test_there_are_walks_to_a_capacitor():
    assert len(FILES) >= 5


@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.name}.{path.stem}")
def test_it_is_bled_before_it_is_read(path):
    taken = replayed(path).path
    read = [number for number, one in enumerate(taken) if one.step == "discharge.proof"]
    assert read
    for number in read:
        bled = [one for one in taken[:number] if one.step == "discharge.bleed"]
        assert bled and not bled[-1].passed
