"""The names that a file of faults can give for what is right: where each complaint's tree can end, and which
causes each end asks for.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.drill.fits import ends_of
from assistant.drill.prove import complaint_trees
from assistant.tree.library import Library
from assistant.tree.model import Finding, HandOver, Step, Stop


def ends_list(library: Library, trees: Sequence[str]) -> str:
    """A line for each end of each tree, its causes behind an arrow; then every cause tree with its title."""
    lines: list[str] = []
    complaints = complaint_trees(library)
    causes: dict[str, None] = {}
    for name in trees:
        tree = library.trees[name]
        lines += [f"Ends of {name} (complaint: {complaints[name]}), for finding, also and absent:", ""]
        for end in ends_of(tree):
            step = tree.steps[end]
            asked = step.causes if isinstance(step, Finding) else ()
            causes.update(dict.fromkeys(asked))
            lines.append(f"    {end}: {_words(step)}" + (f" -> {', '.join(asked)}" if asked else ""))
        lines.append("")
    lines += ["Causes that these ask for (behind ->), for cause:", ""]
    return "\n".join([*lines, *(f"    {name}: {library.trees[name].title}" for name in sorted(causes))])


def _words(step: Step) -> str:
    if isinstance(step, HandOver):
        return f"the work goes on under the complaint {step.complaint}"
    if isinstance(step, Finding):
        return step.title if step.fault else f"{step.title} (no fault)"
    return f"{step.finding} (the work stops)" if isinstance(step, Stop) else step.common.name
