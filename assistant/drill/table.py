"""A proof as lines to read: a row for each fault, then the sums, then what deserves a second look."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from assistant.drill.outcome import RIGHT, UNDECIDED, WRONG, Outcome, cause_named
from assistant.drill.proof import Proof, summary

NAMED = {True: "named", False: "not named", None: "-"}
OPEN_END = "(open)"


def table(proof: Proof) -> str:
    """All of it."""
    return "\n".join([*_rows(proof), "", *_sums(proof), *_looks(proof)])


EXPLAINED = "What these words mean: prove --help. One walk, question by question: prove --walk FAULT:DEGREE."


def _rows(proof: Proof) -> Iterator[str]:
    rows = [("fault", "ends at", "verdict", "cause", "proved", "read", "min", "noisy: right/open/wrong")]
    for name, usual in proof.usual.items():
        noisy = Counter(proof.verdict(o) for o in proof.own if o.case.noisy and o.case.fault == name)
        rows.append(
            (
                name,
                _end(usual),
                _verdict(proof, usual),
                NAMED[cause_named(usual, proof.fault(usual))],
                usual.proof.replace("_", " ") or "-",
                str(usual.readings),
                f"{usual.minutes:.0f}",
                "/".join(str(noisy[word]) for word in (RIGHT, UNDECIDED, WRONG)),
            )
        )
    return _aligned(rows)


def _end(outcome: Outcome) -> str:
    return outcome.end or f"{OPEN_END} {outcome.page}".strip()


def _verdict(proof: Proof, outcome: Outcome) -> str:
    said = proof.verdict(outcome)
    return "one of a group" if said == RIGHT and not proof.isolated(outcome) else said


def _aligned(rows: Sequence[tuple[str, ...]]) -> Iterator[str]:
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    for row in rows:
        yield "  ".join(text.ljust(width) for text, width in zip(row, widths, strict=True)).rstrip()


def _sums(proof: Proof) -> Iterator[str]:
    s = summary(proof)
    samples = s["samples"] or 1
    yield f"{proof.tree}: {s['faults']} faults, {s['samples']} samples"
    for word in ("isolated", "ambiguous", "undecided", "wrong"):
        yield f"  {word}: {s[word]} ({s[word] / samples:.1%})"
    yield f"  parts condemned wrongly: {s['false_condemnations']}"
    yield (
        f"  detected {s['fraction_detected']:.3f}, isolated to one {s['fraction_isolated_to_one']:.3f}, "
        f"to two or fewer {s['fraction_isolated_to_two']:.3f}, mean ambiguity {s['mean_ambiguity']:.2f}"
    )
    yield f"  causes named: {s['causes_named']} of {s['causes_asked']} asked"
    yield (
        f"  repairs proved: {s['repairs_proved']} of {s['repairs_walked']} walked, "
        f"{s['proved_too_soon']} of them with something still wrong"
    )
    yield f"  mean: {s['mean_readings']:.1f} readings, {s['mean_minutes']:.1f} minutes"
    costs = proof.costs
    if costs:
        yield (
            f"  faults told rightly: {costs.tree:.1f} minutes; best order found ({costs.by}) "
            f"{costs.best:.1f}; over it {costs.over_best:.2f}; floor {costs.floor:.1f}"
        )
    for key, title in (("healthy", "healthy houses"), ("elsewhere", "faults of other complaints")):
        counts = ", ".join(f"{s[key][word]} {word}" for word in ("samples", RIGHT, UNDECIDED, WRONG))
        yield f"  {title}: {counts}"


def _looks(proof: Proof) -> Iterator[str]:
    taken = proof.undecided_steps
    close = {name: pair for name, pair in taken.items() if pair[0]}
    if taken:
        yield ""
        yield "Too close to call, noisy samples (of how often taken):"
        for name, (how_often, of) in sorted(close.items(), key=lambda one: -one[1][0] / one[1][1]):
            yield f"  {name}: {how_often} of {of}"
        yield "Never too close to call: " + (", ".join(n for n in taken if n not in close) or "none")
    not_done: dict[str, set[str]] = {}
    for outcome in proof.outcomes:
        for words in outcome.undone:
            not_done.setdefault(words, set()).add(outcome.case.fault)
    if not_done:
        yield ""
        yield "Could not be read or done, and the walk went on by its own way for that:"
        for words in sorted(not_done):
            yield f"  {words} ({', '.join(sorted(not_done[words]))})"
    too_soon = [o for o in proof.own if o.proved_too_soon]
    if too_soon:
        yield ""
        yield "Repair proved, and still wrong in the house:"
    for outcome in too_soon:
        yield f"  {outcome.case.fault}: {', '.join(outcome.left)}"
    worth = [o for o in proof.outcomes if proof.verdict(o) != RIGHT or o.mishaps]
    if worth:
        yield ""
        yield "To look at:"
    for outcome in worth:
        case = outcome.case
        words = [
            f"{case.fault} ({case.degree}{f', noisy {case.number}' if case.noisy else ''})",
            f"{_verdict(proof, outcome)}: {_end(outcome)}",
        ]
        fault = proof.fault(outcome)
        if fault and proof.verdict(outcome) != RIGHT:
            right = " or ".join(fault.right(proof.complaint))
            words.append(f"right is {right}" if fault.complaint == proof.complaint else "elsewhere")
        words += [*outcome.mishaps, *outcome.undone]
        if proof.verdict(outcome) != RIGHT:
            read = [f"{name} (too close to call)" if close else name for name, close in outcome.steps]
            words.append(f"read: {', '.join(read) or 'nothing'}")
        yield "  " + "; ".join(words)
