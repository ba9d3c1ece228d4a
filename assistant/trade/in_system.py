"""A computation's formula with its numbers in the units that a person works in.

Most formulas hold in any units that belong together; those with a number of their own units in them (1.08,
6356) hold in US customary units alone. Which it is, is found by working the written formula out with the
other units' numbers: where that gives the very result, it may stand so.
"""

from __future__ import annotations

import ast
import math
import operator
import re
from collections.abc import Mapping
from functools import cache

from assistant.trade.entry import ANY, TEXT, Entry
from assistant.trade.figure import figure, with_unit
from assistant.trade.registry import call, entry_of, explain
from assistant.trade.systems import US, in_system
from assistant.trade.unit import from_si

AGREES = 1e-6
"""Relative difference up to which two results are the same: far above rounding, far below a wrong unit."""
US_ONLY = "In US customary units"
_DO = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: operator.pow,
    ast.USub: operator.neg,
}
_CALLS = {"sqrt": math.sqrt, "abs": abs, "exp": math.exp, "ln": math.log}


def formula_in(
    system: str,
    entry: Entry,
    values: Mapping[str, object],
    read_in: Mapping[str, str],
    result_unit: str,
) -> str:
    """The formula with the numbers in it and its result in the system's units, as `registry.explain` says it
    in US customary ones. Raises ArgumentError as `call` does.
    """
    usual = explain(entry.name, values, read_in, result_unit)
    kind_free = any(a.kind == ANY for a in entry.arguments)
    if system == US or kind_free or not _differs(entry, system):
        return usual
    if holds_in(system, entry.name):
        return _said_so(entry, values, system)
    if entry.results:
        return f"{US_ONLY}: {usual}"
    outcome = with_unit(call(entry.name, values), in_system(entry.result.unit, system))
    same = in_system(entry.result.unit, system) == entry.result.unit
    return f"{US_ONLY}: {usual}" + ("" if same else f", which is {outcome}")


def _differs(entry: Entry, system: str) -> bool:
    units = [a.unit for a in entry.arguments] + [unit for _, unit, _ in entry.where.values()]
    units += [r.unit for r in (entry.results or {"result": entry.result}).values()]
    return any(in_system(unit, system) != unit for unit in units)


@cache
def holds_in(system: str, name: str) -> bool:
    """Whether the formula as it is written holds in the system's units: tried on its own example."""
    entry = entry_of(name)
    if entry.results or any(a.many or a.kind == TEXT or a.choices for a in entry.arguments):
        return False
    values = {a.name: a.example for a in entry.arguments}
    sizes, units = _sizes(entry, values, system)
    got = worked_out(entry.template, {key: from_si(size, units[key]) for key, size in sizes.items()})
    wanted = from_si(call(name, values), in_system(entry.result.unit, system))
    return got is not None and math.isclose(got, wanted, rel_tol=AGREES)


def _sizes(
    entry: Entry, values: Mapping[str, object], system: str
) -> tuple[dict[str, float], dict[str, str]]:
    """What stands in the places of the template, in SI, and the unit that each is shown in."""
    full = {a.name: values.get(a.name, a.default) for a in entry.arguments}
    sizes = {a.name: abs(full[a.name]) if a.unsigned else full[a.name] for a in entry.arguments}
    units = {a.name: in_system(a.unit, system) for a in entry.arguments}
    for key, (function, unit, _) in entry.where.items():
        sizes[key], units[key] = function(**full), in_system(unit, system)
    return sizes, units


def _said_so(entry: Entry, values: Mapping[str, object], system: str) -> str:
    """The formula with the numbers of the system's units in it."""
    text = entry.template
    sizes, units = _sizes(entry, values, system)
    for name, size in sizes.items():
        said = figure(size, units[name])
        text = text.replace("{" + name + "}", f"({said})" if said.startswith("-") else said)
    outcome = with_unit(call(entry.name, values), in_system(entry.result.unit, system))
    return f"{entry.formula} = {text} = {outcome}"


def worked_out(template: str, numbers: Mapping[str, float]) -> float | None:
    """The arithmetic of a written formula; None where it is written in words."""
    text = re.sub(r"\|([^|]*)\|", r"abs(\1)", template)
    for name, number in numbers.items():
        text = text.replace("{" + name + "}", f"({number!r})")
    text = text.replace("\u00d7", "*").replace("^", "**")
    try:
        return _value(ast.parse(text, mode="eval").body)
    except (SyntaxError, ValueError, ArithmeticError, TypeError):
        return None


def _value(node: ast.AST) -> float:
    if isinstance(node, ast.Constant) and isinstance(node.value, (int, float)):
        return float(node.value)
    if isinstance(node, ast.UnaryOp) and type(node.op) in _DO:
        return _DO[type(node.op)](_value(node.operand))
    if isinstance(node, ast.BinOp) and type(node.op) in _DO:
        return _DO[type(node.op)](_value(node.left), _value(node.right))
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in _CALLS:
        return _CALLS[node.func.id](*(_value(one) for one in node.args))
    raise ValueError("no arithmetic")
