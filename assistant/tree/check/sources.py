"""A limit decides what a customer pays for, so every limit says where it comes from and how that is known. A
number without a source is a number that nobody can check; one that is only remembered says so on the screen.
A source whose numbers are about another quantity is none for this limit.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Band, Compute, Safe, Tree, readings_of

MEND = ("Name an entry of sources.yaml beside the limit or on the step; write the entry if there is "
        "none, with its mark.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Limits without a source, or with one that is about something else."""
    for step in tree.steps.values():
        for reading in readings_of(step):
            yield from _limits(study, reading.kind, reading.bands, reading.safe, reading.source)
        if isinstance(step, Compute):
            for _, one in step.page:
                yield from _limits(study, one.kind, one.bands, None, one.source or step.source)


def _limits(study: Study, kind: str, bands: tuple[Band, ...], safe: Safe | None,
            shared: str | None) -> Faults:
    instead = "has no source; write source: with a name from sources.yaml, here or on the step"
    for band in bands:
        if band.under is not None and not (band.source or shared):
            yield band.under.place, f"the limit of '{band.label}' {instead}"
    if safe is not None and not (safe.source or shared):
        yield safe.place, f"this safe limit {instead}"
    cited = [(band.under.place, band.source or shared) for band in bands if band.under is not None]
    cited += [(safe.place, safe.source or shared)] if safe is not None else []
    for place, name in cited:
        source = study.vocabulary.sources.get(name or "")
        if source is not None and source.limits and kind not in source.limits:
            yield place, (f"the source '{name}' is about {' and '.join(source.limits)}, and this is a limit "
                          f"of {kind}; cite one that is about it")
