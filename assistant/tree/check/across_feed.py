"""0 V across a switch means "closed" only while the switch is fed: with nothing on the feed, with another
switch open in the same string, or with no call at all it also reads 0 V. So the lowest band of a reading
across something is only believed after one of its two points was read live to the return, earlier on every
path.
"""

from __future__ import annotations

from assistant.tree.check.always import Always, without
from assistant.tree.check.graph import Decided, Edge
from assistant.tree.check.points import across, fed_points
from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.study import Study
from assistant.tree.model import Reading, Tree

MEND = ("Read the feed end to the return first, on every path, as an earlier step or as the reading "
        "above on the same page.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Readings of 0 V across something that may have no feed."""
    graph = study.graphs[tree.name]

    def fed(edge: Edge) -> list[str]:
        return [point for one in edge.decides if isinstance(one.what, Reading) and not _lowest(one)
                for point in fed_points(study.vocabulary, one.what)]

    holds = None
    for name in graph.order:
        for edge in graph.out[name]:
            earlier: list[str] = []
            for one in edge.decides:
                what = one.what
                if isinstance(what, Reading) and _lowest(one) and across(study.vocabulary, what):
                    holds = holds or Always(graph, fed)
                    if not holds.of(name, what.at) | (set(what.at) & set(earlier)):
                        path = without(graph, fed, what.at[0], name)
                        yield edge.way.place, (f"'{one.bands[0].label}' across {' and '.join(what.at)} is "
                                               f"believed on the path {steps_on(path)}, where neither was "
                                               "read live to the return before; read the feed end "
                                               "first"), path
                earlier += fed(Edge(name, name, "", edge.way, decides=(one,)))


def _lowest(one: Decided) -> bool:
    """Whether a reading may lie in its lowest band."""
    return one.bands[0] is one.what.bands[0]
