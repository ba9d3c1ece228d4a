"""What is right is marked as right. A band with `normal: yes` is what the page and the report put beside the
reading as "normal", what a debrief counts as ruled out, and what a safety's condition rests on. Where one
tree marks "clear of ground" and another does not, the same reading is told in two ways.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Band, Compute, Reading, Step, Tree, readings_of

MEND = "Write normal: yes on the band, or other words where it is not how a sound house reads there."

_RIGHT = re.compile(
    r"(right|right here|fed|supplied|powered|(it )?holds|(it )?passes|passed|arrived|sent|driven"
    r"|clear of (ground|the shell)|not shorted|nothing across|dry|enough|equal|in range|on the plate"
    r"|inside the plate's range|(as on|at most|up to|not above) its plate"
    r"|(the )?[a-z0-9]+( [a-z0-9]+)? (?<!not )(passes|is whole|is fed|is powered|holds))", re.IGNORECASE)


def in_tree(study: Study, tree: Tree) -> Faults:
    """Bands that say what is right, or what is marked elsewhere, and are not marked as normal."""
    marked = study.keep("marked normal", lambda: _marked(study))
    for step in tree.steps.values():
        for what in _judged(step):
            for band in what.bands:
                if band.normal:
                    continue
                elsewhere = marked.get(_same(what, band))
                if _RIGHT.fullmatch(band.label) and " not " not in band.label:
                    yield band.place, (f"'{band.label}' is what a sound house reads and is not marked; write "
                                       "normal: yes, or other words")
                elif elsewhere is not None:
                    yield band.place, (f"'{band.label}' is marked normal where '{elsewhere}' reads the same; "
                                       "write normal: yes, or other words")


def _judged(step: Step) -> Iterator[Reading | Compute]:
    """What a step reads or works out, where its bands tell something apart."""
    whats = [one for _, one in step.page] if isinstance(step, Compute) else readings_of(step)
    yield from (what for what in whats if len(what.bands) > 1)


def _marked(study: Study) -> dict[tuple, str]:
    """Words that are marked normal for a quantity at some spots, or of a formula, each with a step."""
    return {_same(what, band): f"{tree.name}.{name}" for tree in study.trees.values()
            for name, step in tree.steps.items() for what in _judged(step) for band in what.bands
            if band.normal}


def _same(what: Reading | Compute, band: Band) -> tuple:
    """What two bands have in common that say the same of the same."""
    where = what.function if isinstance(what, Compute) else tuple(sorted(what.at))
    return what.kind, where, band.label.lower()
