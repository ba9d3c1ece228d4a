"""A proof as plain data: each fault, each sample that was not right, each step, and the sums last."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from assistant.drill.outcome import RIGHT, UNDECIDED, WRONG, Outcome, cause_named
from assistant.drill.proof import Proof, together


def as_json(proofs: Sequence[Proof]) -> dict[str, object]:
    """`faults` and `steps` by tree, `to_look_at`, and `summary`."""
    return {
        "faults": {proof.tree: _faults(proof) for proof in proofs},
        "steps": {
            proof.tree: {
                name: {"undecided": close, "taken": taken}
                for name, (close, taken) in proof.undecided_steps.items()
            }
            for proof in proofs
        },
        "to_look_at": {
            proof.tree: [_sample(proof, o) for o in proof.outcomes if proof.verdict(o) != RIGHT or o.mishaps]
            for proof in proofs
        },
        "summary": together(proofs),
    }


def _faults(proof: Proof) -> dict[str, object]:
    found: dict[str, object] = {}
    for name, usual in proof.usual.items():
        noisy = Counter(proof.verdict(o) for o in proof.own if o.case.noisy and o.case.fault == name)
        found[name] = {
            **_sample(proof, usual),
            "isolated": proof.isolated(usual),
            "cause_named": cause_named(usual, proof.fault(usual)),
            "causes": list(usual.causes),
            "proof": usual.proof or None,
            "cured": usual.cured,
            "left": list(usual.left),
            "readings": usual.readings,
            "minutes": usual.minutes,
            "noisy": {word: noisy[word] for word in (RIGHT, UNDECIDED, WRONG)},
        }
    return found


def _sample(proof: Proof, outcome: Outcome) -> dict[str, object]:
    fault = proof.fault(outcome)
    return {
        "fault": outcome.case.fault,
        "degree": outcome.case.degree,
        "noisy": outcome.case.number if outcome.case.noisy else None,
        "end": outcome.end,
        "page": outcome.page or None,
        "verdict": proof.verdict(outcome),
        "right": fault.finding if fault else None,
        "mishaps": list(outcome.mishaps),
        "not_done": list(outcome.undone),
    }
