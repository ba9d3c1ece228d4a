"""A part that costs money is condemned by two facts, not by one: a reading can be a slip, a loose clip or the
wrong pin. A fact is a reading or a computed value that its own bands have decided; a look is none. They are
shown by name, and they are there on every path that leads to the finding.
"""

from __future__ import annotations

from assistant.tree.check.always import Always, decided, fewest
from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.study import Study
from assistant.tree.model import Finding, Tree

MEND = "Decide a second reading on the path, by its own bands, and name both under shows:."

WANTED = 2


def in_tree(study: Study, tree: Tree) -> Faults:
    """Condemned parts with fewer than two facts on some path."""
    graph = study.graphs[tree.name]
    for name in graph.order:
        step = tree.steps[name]
        if not isinstance(step, Finding) or step.condemns is None:
            continue
        part = study.vocabulary.parts.get(step.condemns)
        if part is None or not part.costs:
            continue
        shows = frozenset(step.shows)
        if len(shows) < WANTED:
            what = f"only {step.shows[0]}" if shows else "nothing"
            yield step.common.place, (f"'{name}' condemns the {part.title} and shows {what}; write under "
                                      "shows: the names of at least two readings that decided it")
            continue
        holds = study.keep(f"decided in {tree.name}", lambda: Always(graph, decided))
        if len(holds.of(name, shows)) >= WANTED:
            continue
        facts, path = fewest(graph, decided, shows, name)
        if len(facts) < WANTED:
            only = f"only {next(iter(facts))}" if facts else "none of them"
            yield step.common.place, (f"'{name}' condemns the {part.title}, but of {', '.join(step.shows)} "
                                      f"{only} is decided on the path {steps_on(path)}; two are needed on "
                                      "every path"), path
