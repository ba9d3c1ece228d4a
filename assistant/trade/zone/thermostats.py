"""Thermostats that drive one and the same zone: whichever of them calls, the same registers blow alike."""

from __future__ import annotations

from assistant.trade.zone.chance import above
from assistant.trade.zone.survey import Finding, Survey

ALIKE = 0.75
"""Two flows count as alike when each may be this share of the other."""


def merged(survey: Survey) -> tuple[dict[str, str], list[Finding]]:
    """Each thermostat's representative, and a finding for each pair that is one zone."""
    groups = {z: z for z in survey.zones}
    findings = []
    for i, a in enumerate(survey.zones):
        for b in survey.zones[i + 1 :]:
            sure = _alike(survey, a, b)
            if sure is not None and sure > 0.5 and groups[b] == b:
                groups[b] = groups[a]
                findings.append(
                    Finding(
                        "two thermostats, one zone",
                        (a, b),
                        f"{a} and {b} open the same registers alike: both thermostats drive one zone, or one "
                        "is wired or paired to the other's",
                        sure,
                    )
                )
    return groups, findings


def _alike(survey: Survey, a: str, b: str) -> float | None:
    """How sure the two calls are alike at every register that blows in either; None where too little was
    read.
    """
    sure, blowing = 1.0, 0
    for mode in survey.modes:
        for r in survey.registers:
            one, two = survey.flow(mode, a, r), survey.flow(mode, b, r)
            if one is None or two is None or max(one.value, two.value) <= 2 * survey.meter.floor:
                continue
            blowing += 1
            sure = min(sure, above(one, two, ALIKE), above(two, one, ALIKE))
    return sure if blowing >= 2 else None
