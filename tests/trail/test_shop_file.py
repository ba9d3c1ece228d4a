"""shop.yaml: instruments as plain data for the visit, every mistake a sentence."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.trail.shop_file import shop_data
from assistant.walk.shop import read_shop

GOOD = """
instruments:
  - name: clamp meter
    covers: [ac_voltage, resistance]
    percent: {ac_voltage: "1", resistance: "1.5"}
    counts: "3"
    range_top: {resistance: 40 Mohm}
defaults: {ac_voltage: clamp meter}
may: [gas, vent]
"""


def test_a_good_file_gives_the_shop(tmp_path: Path) -> None:
    """Its accuracy and defaults are usable as read."""
    path = tmp_path / "shop.yaml"
    path.write_text(GOOD)
    data, problems = shop_data(path)
    shop, _ = read_shop(data)

    assert problems == []
    assert shop.instrument("ac_voltage", None).percent["ac_voltage"] == pytest.approx(1)
    assert shop.may == ("gas", "vent")


def test_no_file_is_no_mistake(tmp_path: Path) -> None:
    """Nothing is known then."""
    assert shop_data(tmp_path / "shop.yaml") == ({}, [])


@pytest.mark.parametrize(
    "text",
    [
        "- a",
        "tools: []",
        "instruments: {}",
        "instruments: [{name: x}]",
        "a: [",
        "",
        "defaults: {ac_voltage: nobody}",
    ],
)
def test_a_mistake_is_a_sentence(tmp_path: Path, text: str) -> None:
    """With the file's name in it; nothing raises."""
    path = tmp_path / "shop.yaml"
    path.write_text(text)
    _, problems = shop_data(path)

    assert problems
    assert all("shop.yaml" in problem for problem in problems)
