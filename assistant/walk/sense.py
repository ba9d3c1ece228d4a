"""Whether watched times make sense: what can't have happened as it was tapped, in a sentence each.

They decide nothing. A slip of the finger is offered to be put right, and what stays is said in the trail.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from itertools import pairwise

from assistant.house.model import Vocabulary
from assistant.tree.model import Watch


def doubts(watch: Watch, events: Mapping[str, float], vocabulary: Vocabulary) -> tuple[str, ...]:
    """`events`: what happened -> seconds from the start. Empty where nothing is strange about them."""
    return tuple(said for _, said in doubted(watch, events, vocabulary))


def doubted(
    watch: Watch, events: Mapping[str, float], vocabulary: Vocabulary
) -> tuple[tuple[str, str], ...]:
    """(what happened, why that is doubtful)."""
    words = {name: f"\u201c{vocabulary.happens.get(name, name)}\u201d" for name in (*watch.events, *events)}
    timed = [name for name in watch.events if name in events and math.isfinite(events[name])]
    never = [name for name, at in events.items() if not math.isfinite(at) or at < 0]
    turned = [(one, other) for one, other in pairwise(timed) if events[other] < events[one]]
    late = [name for name in timed if events[name] > watch.within]
    return (
        *((name, f"{words[name]} at {events[name]:g} s is no time after the start") for name in never),
        *(
            (
                other,
                f"{words[other]} at {events[other]:g} s is before {words[one]} at {events[one]:g} s",
            )
            for one, other in turned
        ),
        *(
            (name, f"{words[name]} at {events[name]:g} s is later than the {watch.within:g} s of this watch")
            for name in late
        ),
    )
