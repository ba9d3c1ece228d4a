"""Work out one of the trade's computations by hand: NAME key=value ...

Each value is a number with its unit, as in airflow=2000cfm or supply=120F; without a unit it is in the unit
that --list shows. A comma only separates the items of a list, as in windings=10.0,10.4,9.9. The answer shows
the formula with the numbers in it and where the formula comes from.

Exit code 0: worked out. 2: something in the line can't be used; the sentence says what to write instead.
"""

from __future__ import annotations

import argparse
import json
import re
import sys

from assistant.quantity.kind import KINDS, UNITS
from assistant.quantity.spelling import unit_named
from assistant.trade.entry import ANY, TEXT, Argument, ArgumentError, Entry, example_text, range_text
from assistant.trade.registry import REGISTRY, call, entry_of, explain, shown_result
from assistant.trade.search import find
from assistant.trade.unit import COMPOUND, from_si, known, to_si

NUMBER = re.compile(r"\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)(?:/(\d+))?\s*(.*?)\s*")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("name", nargs="?", metavar="NAME", help="the computation; --list shows all")
    parser.add_argument("values", nargs="*", metavar="key=value", help="an argument, as in airflow=2000cfm")
    parser.add_argument(
        "--list", action="store_true", help="show every computation, or those that have NAME in name or words"
    )
    parser.add_argument("--json", action="store_true", help="answer as one JSON object")


def run(arguments: argparse.Namespace) -> int:
    """Prints the answer and gives 0, or says what can't be used and gives 2."""
    try:
        if arguments.list:
            return _list(arguments.name or "", arguments.json)
        if not arguments.name:
            raise ArgumentError(
                "Which computation? For example: calc heat_rise supply=120F return_air=68F. calc --list "
                "shows all.",
                "",
            )
        _answer(entry_of(arguments.name), arguments.values, arguments.json)
    except ArgumentError as error:
        print(error, file=sys.stderr)
        return 2
    return 0


def _answer(entry: Entry, words: list[str], as_json: bool) -> None:
    values, units = read_values(entry, words)
    outcome = call(entry.name, values)
    unit = entry.result.unit
    if entry.result.kind == ANY:
        unit = next((units[a.name] for a in entry.arguments if units.get(a.name)), "")
        unit = {"F": "Fdiff", "C": "K"}.get(
            unit, unit
        )  # the difference of two temperatures is no temperature
    said = explain(entry.name, values, units, unit)
    if not as_json:
        if entry.results:  # each result on a line of its own
            print(said[: said.rfind(f": {entry.result.words} ")])
            for key, r in entry.results.items():
                print(f"  {r.words}: {shown_result(r, outcome[key])}")
        else:
            print(said)
        print(f"Source: {entry.source}")
        return
    several = entry.results or {"result": entry.result}
    got = outcome if entry.results else {"result": outcome}
    answer = {key: _plain(got[key], unit if key == "result" else r.unit) for key, r in several.items()}
    print(
        json.dumps(
            {
                "name": entry.name,
                "formula": entry.formula,
                "explained": said,
                **answer,
                "source": entry.source.text,
                "mark": entry.source.mark,
            },
            ensure_ascii=False,
        )
    )


def _plain(value, unit: str):
    """One result for JSON: in its unit and in SI; words, lists and nothing as they are."""
    if isinstance(value, (int, float)):
        return {"value": from_si(value, unit), "unit": unit, "si": value}
    if isinstance(value, tuple) and all(isinstance(v, (int, float)) for v in value):
        return {"value": [from_si(v, unit) for v in value], "unit": unit, "si": list(value)}
    return value


def read_values(entry: Entry, words: list[str]) -> tuple[dict[str, object], dict[str, str]]:
    """The typed key=value words as SI values and their units. Raises ArgumentError with a sentence."""
    values, units, kinds = {}, {}, set()
    for word in words:
        key, mark, text = word.partition("=")
        names = [a.name for a in entry.arguments]
        if not mark or key not in names:
            wanted = " ".join(example_text(a) for a in entry.arguments)
            what = f"has no argument '{key}'" if mark else f"can't use '{word}', which is no key=value"
            raise ArgumentError(
                f"{entry.name} {what}; write for example: calc {entry.name} {wanted}.", entry.name
            )
        if key in values:
            raise ArgumentError(f"{entry.name}: '{key}' is given twice; leave one out.", entry.name)
        a = entry.argument(key)
        if a.choices or a.kind == TEXT:
            values[key] = text
            continue
        read = [_number(entry, a, item) for item in (text.split(",") if a.many else [text])]
        values[key] = [v for v, _ in read] if a.many else read[0][0]
        units[key] = read[-1][1]
        if a.kind == ANY:
            kinds |= {_dimension(unit) for _, unit in read}
    if len(kinds) > 1:
        raise ArgumentError(f"{entry.name} needs readings of one kind; give both the same unit.", entry.name)
    return values, units


def _dimension(unit: str):
    return UNITS[unit].dimension if unit in UNITS else unit


def _number(entry: Entry, a: Argument, text: str) -> tuple[float, str]:
    found = NUMBER.fullmatch(text)
    if "," in text or not found:
        why = (
            "takes one value, and a comma only separates list items"
            if "," in text
            else f"can't be read ('{text}')"
        )
        raise ArgumentError(
            f"{entry.name}: '{a.name}' ({a.words}) {why}; it must be {range_text(a)}, for example "
            f"{example_text(a)}.",
            entry.name,
            a,
            text,
        )
    number, parts, spelled = found.groups()
    unit = _unit(a, spelled)
    if unit is None:
        raise ArgumentError(
            f"{entry.name}: '{a.name}' ({a.words}) has no unit '{spelled}'; write for example "
            f"{example_text(a)}. The range is {range_text(a)}.",
            entry.name,
            a,
            text,
        )
    if parts and int(parts) == 0:
        raise ArgumentError(
            f"{entry.name}: '{a.name}' can't be divided by zero; it must be {range_text(a)}, for example "
            f"{example_text(a)}.",
            entry.name,
            a,
            text,
        )
    return to_si(float(number) / int(parts or 1), unit), unit


def _unit(a: Argument, spelled: str) -> str | None:
    """The unit's name, "" for a plain number, None where the argument has no such unit."""
    if a.kind == ANY:
        if not spelled or spelled in UNITS:
            return spelled
        return next((u for kind in KINDS.values() if (u := unit_named(spelled, kind, kind.units[0]))), None)
    if not spelled:
        return a.unit
    if a.kind in KINDS:
        return unit_named(spelled, KINDS[a.kind], a.unit if a.unit in UNITS else KINDS[a.kind].units[0])
    same = known(spelled) and (spelled == a.unit or (spelled in COMPOUND and a.unit in COMPOUND))
    return spelled if same else None


def _list(part: str, as_json: bool) -> int:
    entries = [e for e in REGISTRY.values() if part in e.name] or find(part)
    if not entries:
        raise ArgumentError(f"No computation has '{part}' in its name or words; calc --list shows all.", part)
    if as_json:
        print(json.dumps([_described(e) for e in entries], ensure_ascii=False))
        return 0
    for e in entries:
        print(f"{e.name}: {e.title}")
        print(f"    {e.formula}")
        for a in e.arguments:
            default = "" if a.default is None else f"; {_default(a) or 'nothing'} when left out"
            print(f"    {example_text(a):28} {a.words}; {range_text(a)}{default}")
        print(f"    Source: {e.source}")
    return 0


def _default(a: Argument) -> str:
    return a.default if a.choices or a.kind == TEXT else shown_result(a, a.default)


def _described(e: Entry) -> dict[str, object]:
    return {
        "name": e.name,
        "title": e.title,
        "formula": e.formula,
        "source": e.source.text,
        "mark": e.source.mark,
        "arguments": [
            {
                "name": a.name,
                "kind": a.kind,
                "unit": a.unit,
                "words": a.words,
                "range": range_text(a),
                "example": example_text(a),
                "sense": a.sense,
            }
            for a in e.arguments
        ],
        "results": {
            key: {"kind": r.kind, "unit": r.unit, "words": r.words}
            for key, r in (e.results or {"result": e.result}).items()
        },
    }
