"""Small sets of faults for the tests of drill/, as a person would write them."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from assistant.drill.run import Matter, Worker
from assistant.resources import resources_folder
from assistant.tree.folder import read_texts
from assistant.tree.library import Library, from_texts

TREES = Path(__file__).parents[2] / "trees"

FEW = b"""\
format: 1
faults:
  cracked_element:
    title: The igniter is broken
    complaint: no_heat
    finding: igniter_open
    cause: igniter_harm
    change: [{part: igniter, change: open}]
  lead_off:
    title: The gas valve's lead is off
    complaint: no_heat
    finding: valve_wire
    cause: rough_wiring
    change: [{part: valve_harness, change: hot open}]
  handle_off:
    title: Somebody took the service switch for a light switch
    complaint: no_heat
    finding: switch_off
    cause: switched_off
    change: [{part: service_switch, change: "off"}]
  capacitor_open:
    title: Nothing blows
    complaint: blower_silent
    finding: capacitor
    change: [{part: capacitor, change: open}]
"""


@cache
def texts() -> dict[str, bytes]:
    """The shipped trees as bytes."""
    return dict(read_texts(TREES)[0])


@cache
def library() -> Library:
    """The shipped trees."""
    return from_texts(texts())


def worker_on(tree: str, **more: bytes) -> Worker:
    """Walks that tree, and no other, on the shipped faults and on more files of them."""
    files = {path.name: path.read_bytes() for path in (resources_folder() / "faults").glob("*.yaml")}
    return Worker(Matter(texts(), {**files, **more}, 0, {tree: tree}))
