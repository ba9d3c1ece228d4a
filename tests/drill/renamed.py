"""The same trees and faults with every step of the complaint trees, and every finding, under another name."""

from __future__ import annotations

import random
from collections.abc import Mapping
from pathlib import PurePosixPath

import yaml


def renamed(texts: Mapping[str, bytes], faults: bytes, seed: int) -> tuple[dict[str, bytes], bytes, dict]:
    """New texts, a new file of faults, and the map from new to old names of steps."""
    chance, new_texts, back = random.Random(seed), dict(texts), {}
    numbers = iter(chance.sample(range(1000, 10000), 2000))
    of_complaint: dict[str, dict[str, str]] = {}
    for file, data in texts.items():
        if file.startswith("complaint/"):
            tree = _read(data)
            own = {name: f"s{next(numbers)}" for name in tree["steps"]}
            tree["start"] = own[tree["start"]]
            tree["steps"] = {own[name]: _step(step, name, own) for name, step in tree["steps"].items()}
            new_texts[file] = _text(tree)
            back |= {new: old for old, new in own.items()}
            of_complaint[PurePosixPath(file).stem] = own
    written = _read(faults)
    for fault in written["faults"].values():
        own = of_complaint.get(fault["complaint"], {})
        for field in ("finding", "absent"):
            if field in fault:
                fault[field] = own.get(fault[field], fault[field])
        if "also" in fault:
            fault["also"] = _also(fault["also"], own, of_complaint)
    return new_texts, _text(written), back


def _also(also, own: dict[str, str], of_complaint: dict[str, dict[str, str]]):
    """Other right findings: a list for the fault's own complaint, or lists by complaint."""
    if not isinstance(also, dict):
        return [own.get(name, name) for name in also]
    return {one: [of_complaint.get(one, {}).get(n, n) for n in names] for one, names in also.items()}


def _read(data: bytes) -> dict:
    return yaml.load(data, yaml.BaseLoader)  # noqa: S506 - every scalar stays text


def _text(data) -> bytes:
    return yaml.safe_dump(data, default_style='"', sort_keys=False, allow_unicode=True, width=100).encode()


WAYS = ("then", "close", "cannot", "choices", "missing")
"""Fields that name other steps, wherever they stand in a step."""


def _step(step: dict, name: str, names: dict[str, str]) -> dict:
    """A step with all its ways under their new names."""
    made = _deep(step, names)
    if "measure" in step and "readings" not in step:
        made.setdefault("name", name)  # a reading without a name has its step's
    return made


def _deep(what, names: dict[str, str]):
    if isinstance(what, list):
        return [_deep(one, names) for one in what]
    if not isinstance(what, dict):
        return what
    return {key: _ways(one, names) if key in WAYS else _deep(one, names) for key, one in what.items()}


def _ways(ways, names: dict[str, str]):
    return names[ways] if isinstance(ways, str) else {key: names[way] for key, way in ways.items()}
