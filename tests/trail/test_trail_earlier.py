"""Our own earlier visits to an address or a unit: found by what is written, practice never among them."""

from pathlib import Path

import pytest

from assistant.trail.earlier import past_of, recall, same_place
from assistant.trail.live import LiveVisit
from assistant.trail.shelf import Shelved, shelved
from assistant.walk.event import Filled, Person
from tests.played import at, shipped


def listed(name, address="", serial="", last="2026-01-01"):
    unit = (("serial", serial),) if serial else ()
    return Shelved(Path(name), "signed", person=(("address", address),), last=last, unit=unit)


@pytest.mark.parametrize(
    ("address", "serial", "found"),
    [
        ("12 elm st", "", ["b", "a"]),
        ("12, Elm St.", "", ["b", "a"]),
        ("112 Elm St", "", []),
        ("", "nf-04411", ["c"]),
        ("12 Elm St", "NF 04411", ["c", "b", "a"]),
        ("", "", []),
        ("12", "", []),
    ],
)
def test_the_same_place_is_written_alike_but_for_case_and_signs(address, serial, found):
    """The latest first; a number alone is no address."""
    shelf = [
        listed("a", "12 Elm St.", last="2025-01-01"),
        listed("b", "12  ELM ST", last="2026-01-01"),
        listed("c", "9 Oak Rd", "NF 04411", last="2026-02-01"),
        listed("d", "12"),
        listed("e", ""),
    ]
    assert [path.name for path in same_place(shelf, address, serial)] == found


def test_todays_visit_is_none_of_the_earlier_ones():
    shelf = [listed("a", "12 Elm Street"), listed("b", "12 Elm Street")]
    assert same_place(shelf, "12 Elm Street", but=Path("b")) == [Path("a")]


def visit(folder, practice=False):
    live = LiveVisit.start(folder, shipped(), (("no_heat", "cold"),), at=at(0), practice=practice)
    live.send(Person(at(1), live.recorder.keep_person({"address": "12 Elm Street"})))
    live.send(Filled(at(2), "unit", {"serial": "NF 04411"}))
    live.close()
    return folder


def test_practice_is_never_an_earlier_visit(tmp_path):
    """Nor is what can't be read; the others are told."""
    real, drill = visit(tmp_path / "real"), visit(tmp_path / "drill", practice=True)
    (tmp_path / "empty").mkdir()
    assert (
        past_of(drill) is None and past_of(tmp_path / "empty") is None and past_of(tmp_path / "gone") is None
    )
    (past,) = recall([drill, tmp_path / "empty", real])
    assert past.visit == "real" and past.complaints == ("No heat",)
    assert dict(shelved(real).unit) == {"serial": "NF 04411"}


def test_an_interrupted_visit_is_taken_up_with_every_circuit_unknown(tmp_path):
    """Closed without a pause, a minute ago: nobody knows what was switched."""
    folder = visit(tmp_path / "real")
    live = LiveVisit.take_up(folder)
    live.go_on_after_interruption()
    assert set(live.visit.house.circuits.values()) == {"unknown"}
    assert all(epoch == 1 for epoch in live.visit.house.epochs.values())
    live.close()
