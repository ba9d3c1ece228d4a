"""The recorded walks of tests/trees as a catcher of spoiled trees.

Each recorded walk is gone to its end on a furnace that is sound from the finding on; those that come to the
spoiled step are gone again on the spoiled tree. It is noticed where a walk can't be answered any more, ends
elsewhere, shows other facts, is proved otherwise or leaves something undone.
"""

from __future__ import annotations

import sys
from collections import defaultdict
from pathlib import Path

TESTS = Path(__file__).parents[1]
sys.path.insert(0, str(TESTS / "trees"))

from sound_furnace import AT, WALKS, Furnace, complaint_of, healthy  # noqa: E402

from assistant.house.reader import read  # noqa: E402
from assistant.tree.library import Library  # noqa: E402
from assistant.walk.entries import events_of, read_entries  # noqa: E402
from assistant.walk.event import Opened  # noqa: E402
from assistant.walk.visit import asked, begin, fold  # noqa: E402

MOST_ANSWERS = 400
BROKEN = {"no_heat": {"first.blower.runs": "no", "two_more": "one failed"},
          "blower_silent": {"blows": "stands still and silent"},
          "tripped_breaker": {"first.blower.runs": "no", "two_more": "one failed"},
          "zone_spillover": {"fan_quiet": "260"}}
"""What a furnace answers to a proof while it still has what was complained about."""


def ended(path: Path, library: Library, odd: dict[str, str]) -> tuple[tuple, set[str]]:
    """How a recorded walk comes out on a library, and the steps that it took."""
    entries, _ = read_entries(read(path.read_bytes(), path.name))
    visit = begin(library)
    complaint = complaint_of(path.parent.name)
    visit = fold(visit, Opened(AT, ((complaint, library.vocabulary.complaints[complaint].words),)))
    for entry in entries:
        for make in events_of(entry, AT):
            event = make(visit)
            if event is not None:
                visit = fold(visit, event)
    end, furnace, taken = asked(visit).step, Furnace(odd), {step.step for step in visit.history}
    for _ in range(MOST_ANSWERS):
        ask = asked(visit)
        if ask.kind in ("choose", "leave", "stop", "handed_over"):
            break
        visit = fold(visit, furnace.event(ask))
    taken |= {step.step for step in visit.history}
    facts = tuple((found.step, tuple(sorted(fact.name for fact in found.facts)), found.proof)
                  for found in visit.found)
    undone = tuple(sorted(one.act for one in visit.house.undone))
    return (end, asked(visit).kind, facts, undone), taken | {end}


class Walks:
    """The recorded walks, gone once on the sound library."""

    def __init__(self, library: Library, most: int = 3) -> None:
        healthy()
        self.most = most
        self.sound: dict[tuple[Path, bool], tuple] = {}
        self.through: dict[str, list[tuple[Path, bool]]] = defaultdict(list)
        self.broken = 0
        for path in sorted(WALKS.glob("*/*.yaml")):
            for still in (False, True):
                try:
                    self.sound[path, still], taken = ended(path, library, self._odd(path, still))
                except Exception:  # noqa: BLE001 - a walk that others are just mending is no catcher
                    self.broken += 1
                    continue
                for step in taken:
                    self.through[step].append((path, still))

    def _odd(self, path: Path, still: bool) -> dict[str, str]:
        return BROKEN[path.parent.name] if still else {}

    def comes_to(self, address: str) -> bool:
        """Whether any walk comes to a step."""
        return bool(self.through.get(address))

    def refuses(self, spoiled: Library, address: str) -> str | None:
        """What tells that a walk through a step comes out otherwise on a spoiled library."""
        near = sorted(self.through.get(address, ()), key=lambda one: (one[1], one[0].name))
        own = [one for one in near if f"{one[0].parent.name}.{one[0].stem}" == address]
        for path, still in [*own, *(one for one in near if one not in own)][:self.most]:
            try:
                told, _ = ended(path, spoiled, self._odd(path, still))
            except Exception as problem:  # noqa: BLE001 - a spoiled tree may break anything
                return f"walks: {type(problem).__name__}"
            if told != self.sound[path, still]:
                return "walks: other end"
        return None
