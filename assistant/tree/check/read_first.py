"""A limit or a computation that uses a reading can only be worked out when that reading was taken on the way
here. On a path that misses it, every value would be possible and the step could never decide.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.house.place import Place
from assistant.tree.check.always import Always, read, without
from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.study import Study
from assistant.tree.limits import Limit
from assistant.tree.model import Band, Compute, Safe, Step, Tree, readings_of

MEND = "Take the reading before this step on every path, or write the limit with a plate value or a number."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Names in limits and computes that have no value on some path."""
    graph = study.graphs[tree.name]
    named = study.named[tree.name]
    holds = study.keep(f"read in {tree.name}", lambda: Always(graph, read))
    for name in graph.order:
        step = tree.steps[name]
        for wanted, place, page in _wanted(step):
            if wanted not in named or wanted in page or holds.has(name, wanted):
                continue
            path = without(graph, read, wanted, name)
            yield place, (f"'{wanted}' has no value on the path {steps_on(path)}; take that reading before "
                          "this step on every path, or use a plate value"), path


def _wanted(step: Step) -> Iterator[tuple[str, Place, set[str]]]:
    """Every name that judging the step needs, where it stands, and the names read earlier on the same
    page."""
    page: set[str] = set()
    for reading in readings_of(step):
        for limit in limits_of(reading.bands, reading.safe):
            for name in limit.names:
                yield name, limit.place, set(page)
        page.add(reading.name or step.common.name)
    if isinstance(step, Compute):
        for name in step.texts:
            yield name, step.common.place, set()
        given = {result for result, _ in step.page}
        for _, one in step.page:
            for limit in limits_of(one.bands, None):
                for name in limit.names:
                    yield name, limit.place, given


def limits_of(bands: tuple[Band, ...], safe: Safe | None) -> list[Limit]:
    """The limits of a reading, bands first."""
    limits = [band.under for band in bands] + ([safe.over, safe.under] if safe else [])
    return [limit for limit in limits if limit is not None]
