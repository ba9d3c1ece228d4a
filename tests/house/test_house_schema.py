"""The schema of house.yaml for editors and the loader, held together on good houses and on the table of
mistakes.

The checker of the schema is the jsonschema package (draft 2020-12).
"""

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from assistant.house.desk import DRAWINGS
from assistant.house.places import MEDIA
from assistant.house.reader import Unreadable, read
from assistant.quantity.kind import KINDS
from assistant.quantity.units import UNITS
from tests.house.test_load_house import HOUSE, ONE_MISTAKE, edited
from tests.tree.test_schema import as_an_editor_reads

ROOT = Path(__file__).parents[2]
SCHEMA = json.loads((ROOT / "resources" / "house.schema.json").read_text(encoding="utf-8"))
VALIDATOR = Draft202012Validator(SCHEMA)
HOUSES = [*sorted((ROOT / "tests" / "tree" / "examples").glob("*/house.yaml")), ROOT / "trees" / "house.yaml"]

BEYOND_A_SCHEMA = {"name", "unit", "circle"}
"""Rules of the loader that need other entries."""
LOOSER = {
    "pairs: [[r, r]]",
    "pairs: [[r, supply.air]]",  # two different points, on this circuit
    "one_of: [240, 120]",
    "range: [1, 0.2]",
    "by: [-1, 40]",  # order and sign of numbers
    "range: [0.2, 1e999]",
    "range: [0.2, 017]",
    "range: [.2, 1]",  # an editor's own reader takes these for numbers
    "{say: x, lime: live}",  # which circuits there are
    "safety: true",  # an editor that reads YAML 1.1 sees yes like this
}


def errors(data: bytes) -> list[str]:
    return [
        f"{e.json_path}: {e.message[:200]}"
        for e in VALIDATOR.iter_errors(as_an_editor_reads(read(data, "f")))
    ]


def test_the_schema_is_one():
    Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize("path", HOUSES, ids=lambda path: path.parent.name)
def test_houses_that_load_pass(path):
    assert errors(path.read_bytes()) == []


ROWS = [row for row in ONE_MISTAKE if row[0] == HOUSE and row[3] not in BEYOND_A_SCHEMA]


@pytest.mark.parametrize(("file", "old", "new", "rule", "words"), ROWS, ids=[row[2][-50:] for row in ROWS])
def test_the_schema_sees_every_mistake_of_form_but_the_listed(file, old, new, rule, words):
    try:
        seen = bool(errors(edited(file, old, new)[file]))
    except Unreadable:
        seen = True
    assert seen == (new not in LOOSER)


def test_names_that_the_schema_repeats_are_the_programs_own():
    plate = SCHEMA["properties"]["plate"]["additionalProperties"]["properties"]
    assert plate["quantity"]["enum"] == list(KINDS)
    assert plate["unit"]["enum"] == list(UNITS)
    point = SCHEMA["properties"]["points"]["additionalProperties"]["properties"]
    assert point["drawing"]["enum"] == list(DRAWINGS)
    assert point["of"]["enum"] == list(MEDIA)
