"""The schema for editors and the loader, held together: what loads passes, and what the schema can see it
sees.

The checker of the schema is the jsonschema package (draft 2020-12); texts become numbers and truth values by
the core schema of YAML 1.2.2 (2021), section 10.3.2, as an editor reads them.
"""

import copy
import json
import re
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from assistant.house.reader import Fields, Items, Text, Unreadable, read
from assistant.quantity.kind import KINDS
from assistant.quantity.units import UNITS
from assistant.tree.load import load_tree
from assistant.tree.model import PURPOSES, VERBS
from tests.tree.mistakes import GOOD, MISTAKES
from tests.tree.test_load_tree import VOCABULARY

ROOT = Path(__file__).parents[2]
SCHEMA = json.loads((ROOT / "resources" / "tree.schema.json").read_text(encoding="utf-8"))
VALIDATOR = Draft202012Validator(SCHEMA)
TREES = sorted(
    path for folder in PURPOSES for root in (GOOD, ROOT / "trees") for path in (root / folder).glob("*.yaml")
)

NUMBER = re.compile(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?")
WORDS = {
    "true": True,
    "True": True,
    "TRUE": True,
    "false": False,
    "False": False,
    "FALSE": False,
    "null": None,
    "Null": None,
    "NULL": None,
    "~": None,
    "": None,
}


def as_an_editor_reads(node):
    if isinstance(node, Fields):
        return {name: as_an_editor_reads(child) for name, child in node.entries.items()}
    if isinstance(node, Items):
        return [as_an_editor_reads(child) for child in node.items]
    assert isinstance(node, Text)
    if node.quoted:
        return node.value
    if node.value in WORDS:
        return WORDS[node.value]
    if re.fullmatch(r"[-+]?[0-9]+", node.value):
        return int(node.value)
    return float(node.value) if NUMBER.fullmatch(node.value) else node.value


def errors(text: str) -> list[str]:
    data = as_an_editor_reads(read(text.encode(), "f"))
    return [f"{error.json_path}: {error.message[:200]}" for error in VALIDATOR.iter_errors(data)]


def test_the_schema_is_one():
    Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize("path", TREES, ids=lambda path: path.stem)
def test_what_loads_passes_the_schema(path):
    text = path.read_text(encoding="utf-8")
    try:
        found = errors(text)
    except Unreadable:
        pytest.skip("being written")
    assert found == []


@pytest.mark.parametrize("mistake", MISTAKES, ids=lambda m: m.new.strip()[-60:])
def test_the_schema_sees_what_is_marked_and_lets_the_rest_pass(mistake):
    """The schema is looser than the loader in the rows that are not marked, and nowhere else."""
    try:
        seen = bool(errors(mistake.text))
    except Unreadable:
        seen = True  # an editor's own reader says so
    assert seen == mistake.seen_by_schema


def test_names_that_the_schema_repeats_are_the_programs_own():
    definitions = SCHEMA["$defs"]
    assert definitions["quantity"]["enum"] == list(KINDS)
    assert definitions["unit"]["enum"] == list(UNITS)
    assert SCHEMA["properties"]["purpose"]["enum"] == list(PURPOSES)
    assert {next(iter(way["required"])) for way in definitions["step"]["anyOf"]} == set(VERBS)


def paths(data, at=()):
    """Every path into nested fields and lists."""
    for key, child in (
        data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    ):
        yield (*at, key)
        yield from paths(child, (*at, key))


def without(data, path):
    data = copy.deepcopy(data)
    at = data
    for key in path[:-1]:
        at = at[key]
    del at[path[-1]]
    return data


def renamed(data, path):
    data = copy.deepcopy(data)
    at = data
    for key in path[:-1]:
        at = at[key]
    at["qq_" + str(path[-1])] = at.pop(path[-1])
    return data


CONTENT = ("steps", "choices", "missing", "readings", "needs", "from")
"""Fields whose own names are free, so that leaving one out or renaming it leaves the form right."""


def loader_says(data, file: str) -> bool:
    """Whether the loader finds a mistake of form: a field unknown, missing or of the wrong type."""
    problems = load_tree(json.dumps(data, ensure_ascii=False).encode(), file, VOCABULARY)[1]
    return any(problem.rule in ("field", "missing", "type", "verb") for problem in problems)


@pytest.mark.parametrize("change", [without, renamed])
@pytest.mark.parametrize("file", sorted(path.relative_to(GOOD).as_posix() for path in GOOD.glob("*/*.yaml")))
def test_leaving_out_or_renaming_any_field_is_judged_alike(file, change):
    good = as_an_editor_reads(read((GOOD / file).read_bytes(), file))
    compared = 0
    for path in paths(good):
        if not isinstance(path[-1], str) or (len(path) > 1 and path[-2] in CONTENT):
            continue
        data = change(good, path)
        compared += 1
        assert any(VALIDATOR.iter_errors(data)) == loader_says(data, file), path
    assert compared > 10
