"""A file of faults with any changes of any components, as somebody else might write one."""

from __future__ import annotations

from collections.abc import Sequence


def written(faults: Sequence[Sequence[tuple[str, str, str]]]) -> bytes:
    """A file in which each fault makes several changes: (component, change, degree)."""
    lines = ["format: 1", "faults:"]
    for number, changes in enumerate(faults):
        made = ", ".join(
            f'{{part: {part}, change: "{change}", degree: {degree}}}' for part, change, degree in changes
        )
        lines += [
            f"  fault{number}:",
            "    title: Anything",
            "    complaint: no_heat",
            "    finding: igniter_open",
            "    degrees: [nominal]",
            f"    change: [{made}]",
        ]
    return ("\n".join(lines) + "\n").encode()
