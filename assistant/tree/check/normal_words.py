"""What is right is marked as right. A band with `normal: yes` is what the page and the report put beside the
reading as "normal", what a debrief counts as ruled out, and what a safety's condition rests on. Where one
tree marks "clear of ground" and another does not, the same reading is told in two ways.
"""

from __future__ import annotations

import re

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Compute, Tree, readings_of

MEND = "Write normal: yes on the band, or other words where it is not how a sound house reads there."

_RIGHT = re.compile(
    r"(right|right here|fed|supplied|powered|(it )?holds|(it )?passes|passed|arrived|sent|driven"
    r"|clear of (ground|the shell)|not shorted|nothing across|dry|enough|equal|in range|on the plate"
    r"|inside the plate's range|(as on|at most|up to|not above) its plate"
    r"|(the )?[a-z0-9]+( [a-z0-9]+)? (?<!not )(passes|is whole|is fed|is powered|holds))", re.IGNORECASE)


def in_tree(_study: Study, tree: Tree) -> Faults:
    """Bands that say what is right and are not marked as normal."""
    for step in tree.steps.values():
        whats = [one for _, one in step.page] if isinstance(step, Compute) else readings_of(step)
        for what in whats:
            for band in what.bands if len(what.bands) > 1 else ():
                if not band.normal and _RIGHT.fullmatch(band.label) and " not " not in band.label:
                    yield band.place, (f"'{band.label}' is what a sound house reads and is not marked; write "
                                       "normal: yes, or other words")
