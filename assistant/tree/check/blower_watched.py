"""A furnace that fires with no blower cooks its heat exchanger, and the limit is not a test stand. Whoever
watches the burner light also watches the blower start, and a blower that does not is a way on of its own.
"""

from __future__ import annotations

from assistant.tree.check.leak_check import LIT
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Tree, Watch

MEND = "Add blower.runs to events: and its way to missing:."

RUNS = "blower.runs"


def in_tree(_study: Study, tree: Tree) -> Faults:
    """Watched starts that leave out the blower."""
    for name, step in tree.steps.items():
        if isinstance(step, Watch) and LIT in step.events and RUNS not in step.events:
            yield step.common.place, (f"'{name}' watches {LIT} and not {RUNS}; add it to events: and say "
                                      "under missing: where a furnace without a blower goes")
