"""Each computation of the trade, what outside the project it agrees with, and how nearly: `python
tests/campaign/trade_table.py [--text]`.

Agreement is the worst of the kept outside answers: how far the computation is from it, in the answer's unit
and in percent of it. Below the table: what stands on memory alone, and the answers that carry an error.
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "trade"))
sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from trade_cases import Case, cases, value

from assistant.trade.registry import REGISTRY, call
from assistant.trade.unit import from_si, known, symbol

LONGEST = 96
"""Letters of a source in the table; the data files hold the whole."""


def unit_of(text) -> str:
    """The unit that an expected answer is written in."""
    unit = text.partition(" ")[2].strip() if isinstance(text, str) else ""
    return unit if known(unit) else ""


def deviations(case: Case):
    """(how far off in the answer's unit, unit, share of the answer, tolerance) of each number of a case."""
    outcome = call(case.call, case.given)
    several = case.expect if isinstance(case.expect, dict) else {"": case.expect}
    got = outcome if isinstance(outcome, dict) else {"": outcome}
    for name, text in several.items():
        if isinstance(got[name], str):
            yield 0.0, "", 0.0, 0.0
            continue
        unit, wanted = unit_of(text), value(text)
        tol = case.tol[name] if isinstance(case.tol, dict) else case.tol
        off = abs(from_si(got[name], unit) - from_si(wanted, unit))
        base = abs(from_si(wanted, unit))
        yield off, unit, off / base if base else 0.0, float(tol)


def agreement(found: list[Case]) -> str:
    """The worst deviation of the right answers, in words."""
    every = [each for case in found for each in deviations(case)]
    off, unit, share, _ = max(every, key=lambda each: each[2])
    if all(each[2] <= 1e-9 for each in every):
        return "exact"
    return f"{off:.2g} {symbol(unit)}".strip() + f" ({100 * share:.2g} %)"


def sources(found: list[Case]) -> str:
    """What the answers come from, each once with how well it is known; the read ones first."""
    order = {"oracle": 0, "read": 1, "computed": 2, "common practice": 3, "memory": 4}
    named = {(case.row["source"], case.row["status"]): None for case in found}
    said = [f"{source} [{status}]" for source, status in sorted(named, key=lambda each: order[each[1]])]
    text = "; ".join(said[:2]) + (f"; {len(said) - 2} more" if len(said) > 2 else "")
    return text if len(text) <= 2 * LONGEST else text[: 2 * LONGEST - 3] + "..."


def table() -> list[tuple[str, str, str, str, str]]:
    """(function, the formula's own mark, outside source, how many answers, agreement), in registry order."""
    by_name: dict[str, list[Case]] = {}
    for case in cases():
        if not case.wrong:
            by_name.setdefault(case.call, []).append(case)
    return [
        (name, entry.source.mark, sources(by_name[name]), str(len(by_name[name])), agreement(by_name[name]))
        if name in by_name
        else (name, entry.source.mark, "worked by hand in tests of its own", "", "")
        for name, entry in REGISTRY.items()
    ]


def memory_only() -> list[str]:
    """Computations whose formula and whose every outside answer are from memory."""
    statuses: dict[str, set[str]] = {}
    for case in cases():
        if not case.wrong:
            statuses.setdefault(case.call, set()).add(case.row["status"])
    known = {name for name, found in statuses.items() if found == {"memory"}}
    return [name for name, e in REGISTRY.items() if e.source.mark == "from memory" and name in known]


def main() -> None:
    rows = table()
    head = ("computation", "formula", "outside answer", "answers", "worst deviation")
    if "--text" in sys.argv:
        for row in rows:
            print(" | ".join(row))
    else:
        print("| " + " | ".join(head) + " |")
        print("|---|---|---|---|---|")
        for row in rows:
            print("| " + " | ".join(cell.replace("|", "/") for cell in row) + " |")
    marks = Counter(row[1] for row in rows)
    print(f"\n{len(rows)} computations, {sum(int(row[3] or 0) for row in rows)} outside answers.")
    print("Formulas: " + ", ".join(f"{count} {mark}" for mark, count in marks.most_common()) + ".")
    answers = Counter(case.row["status"] for case in cases() if not case.wrong)
    print("Answers: " + ", ".join(f"{count} {status}" for status, count in answers.most_common()) + ".")
    wrong = [case for case in cases() if case.wrong]
    print(f"Published answers with an error, which must not be met: {len(wrong)}.")
    alone = memory_only()
    print(f"Formula and every answer from memory ({len(alone)}): " + (", ".join(alone) or "none") + ".")
    formula = [name for name, entry in REGISTRY.items() if entry.source.mark == "from memory"]
    helped = [name for name in formula if name not in alone]
    print(f"Formula from memory, with an answer that is not: {', '.join(helped)}.")


if __name__ == "__main__":
    main()
