"""Each row of the outside troubleshooting tables is a finding of a tree, or is waived by its class.

The tables are data/troubleshooting_tables.yaml, most of them from maintenance manuals of the US government.
The maps are data/no_heat_map.yaml and data/other_trees_map.yaml; who made them knew the tables and the names
and titles of the findings, and had not read the trees. A finding that takes in rows with many different
remedies tells nothing apart, so three are the most.
"""

import copy
from dataclasses import replace

import pytest

from assistant.resources import trees_folder
from assistant.tree.library import read_folder
from tests.outside.row_map import (
    TABLES,
    TREES,
    belongs_to,
    coverage,
    entries_of,
    mistakes,
    public_domain,
    taken_together,
    untaken,
    why_not,
)

TREE = "no_heat"
ENTRIES = entries_of(TREE)

# For each tree: rows with a finding, rows with a property alone, and all rows whose part a house can have.
# "own" are the tables that are said to be about what the tree is about.
MEASURED = {
    ("no_heat", "all tables"): (52, 12, 156),
    ("no_heat", "public domain"): (42, 12, 131),
    ("no_heat", "own"): (39, 7, 80),
    ("no_heat", "own, public domain"): (29, 7, 55),
    ("tripped_breaker", "all tables"): (38, 8, 156),
    ("tripped_breaker", "public domain"): (37, 8, 131),
    ("tripped_breaker", "own"): (29, 6, 79),
    ("tripped_breaker", "own, public domain"): (29, 6, 79),
    ("blower_silent", "all tables"): (70, 9, 156),
    ("blower_silent", "public domain"): (61, 9, 131),
    ("blower_silent", "own"): (45, 6, 96),
    ("blower_silent", "own, public domain"): (36, 6, 71),
    ("zone_spillover", "all tables"): (24, 6, 156),
    ("zone_spillover", "public domain"): (20, 6, 131),
    ("zone_spillover", "own"): (9, 2, 70),
    ("zone_spillover", "own, public domain"): (5, 2, 45),
}
# Rows that one of the four trees takes, rows that count, and rows that none takes though it should.
TOGETHER = {"all tables": (107, 156, 0), "public domain": (93, 131, 0)}


@pytest.fixture(scope="module")
def library():
    shipped = read_folder(trees_folder())
    assert set(TREES) <= set(shipped.trees), shipped.problems
    return shipped


@pytest.mark.parametrize("tree", TREES)
def test_every_row_belongs_to_a_finding_or_is_waived(tree, library):
    assert mistakes(TABLES, entries_of(tree), library, tree) == []


def test_what_one_tree_leaves_to_another_is_not_passed_round():
    assert untaken({tree: entries_of(tree) for tree in TREES}) == []


def wanted(tree, kind):
    return {
        "all tables": lambda table: True,
        "public domain": public_domain,
        "own": lambda table: belongs_to(table, tree),
        "own, public domain": lambda table: belongs_to(table, tree) and public_domain(table),
    }[kind]


@pytest.mark.parametrize(("tree", "kind"), MEASURED, ids=": ".join)
def test_the_share_of_rows_that_are_mapped_is_what_was_measured(tree, kind):
    found, rules, counted = coverage(TABLES, entries_of(tree), wanted(tree, kind))
    mapped = found + rules
    print(f"{tree}, {kind}: {mapped} of {counted} mapped, {mapped / counted:.1%} ({rules} by a property)")
    assert (found, rules, counted) == MEASURED[tree, kind]


@pytest.mark.parametrize("kind", TOGETHER)
def test_the_share_that_the_four_trees_take_together_is_what_was_measured(kind):
    taken, counted, missing = taken_together({tree: entries_of(tree) for tree in TREES}, wanted(TREE, kind))
    print(f"four trees, {kind}: {taken} of {counted} rows taken, {taken / counted:.1%}; missing: {missing}")
    assert (taken, counted, len(missing)) == TOGETHER[kind]


def test_every_table_says_where_it_stands_and_how_it_was_read():
    for table in TABLES:
        source = dict(table["source"])
        pairing = source.pop("pairing", "inferred")
        assert list(source) == ["title", "number", "year", "place", "licence", "status"], source
        assert source["status"] == "read" and pairing == "inferred", source
        assert all(len(row) == 3 and all(row) for row in table["rows"]), table["id"]


# The map must be able to fail: each of these spoils a copy of it in one way.


def entry_of(entries, row_id):
    return next(entry for entry in entries if entry["id"] == row_id)


def a_made_up_row(tables, entries):
    tables[0]["rows"].append(["furnace dead", "made up", "make it up"])


def a_row_left_out(tables, entries):
    entries.remove(entry_of(entries, "CONSUMER-furnace#5"))


def a_row_mapped_twice(tables, entries):
    entries.append(entry_of(entries, "CONSUMER-furnace#5"))


def a_row_that_is_in_no_table(tables, entries):
    entries.append({**entry_of(entries, "CONSUMER-furnace#5"), "id": "CONSUMER-furnace#99"})


def a_wrong_first_word(tables, entries):
    entry_of(entries, "CONSUMER-furnace#5")["words"] = "boiler dead: gas off"


def the_words_of_the_next_row(tables, entries):
    entry_of(entries, "CONSUMER-furnace#5")["words"] = entry_of(entries, "CONSUMER-furnace#6")["words"]


def words_that_begin_two_rows(tables, entries):
    entry_of(entries, "CONSUMER-furnace#5")["words"] = "furnace dead: "


def an_unknown_finding(tables, entries):
    entry_of(entries, "CONSUMER-furnace#5")["findings"] = ["no_heat.gas_made_up"]


def an_unknown_cause(tables, entries):
    entry_of(entries, "CONSUMER-furnace#5")["findings"] = ["cause made_up"]


def an_unknown_property(tables, entries):
    entry_of(entries, "CONSUMER-furnace#5")["findings"] = ["property 11"]


def no_finding_named(tables, entries):
    entry_of(entries, "CONSUMER-furnace#5")["findings"] = []


def a_fourth_remedy(tables, entries):
    entry_of(entries, "CONSUMER-furnace#5")["findings"] = ["cause low_airflow"]


def an_unknown_class(tables, entries):
    entry_of(entries, "CONSUMER-furnace#4")["waived"] = "too hard"


def a_waiver_without_a_reason(tables, entries):
    del entry_of(entries, "CONSUMER-furnace#4")["why"]


def another_complaint_without_its_tree(tables, entries):
    del entry_of(entries, "CONSUMER-furnace#3")["tree"]


def mapped_and_waived(tables, entries):
    entry_of(entries, "CONSUMER-furnace#4")["findings"] = ["no_heat.gas_off"]


SPOILED = {
    a_made_up_row: "TM5683-5-2#29: is in the map 0 times",
    a_row_left_out: "CONSUMER-furnace#5: is in the map 0 times",
    a_row_mapped_twice: "CONSUMER-furnace#5: is in the map 2 times",
    a_row_that_is_in_no_table: "CONSUMER-furnace#99: there is no such row",
    a_wrong_first_word: "CONSUMER-furnace#5: 'boiler dead: gas off' begins no row of its table",
    the_words_of_the_next_row: "CONSUMER-furnace#5: 'furnace dead (oil): no fuel' begins CONSUMER-furnace#6",
    words_that_begin_two_rows: "CONSUMER-furnace#5: 'furnace dead: ' begins "
    + ", ".join(f"CONSUMER-furnace#{n}" for n in range(1, 6)),
    an_unknown_finding: "CONSUMER-furnace#5: no_heat.gas_made_up: there is no such step",
    an_unknown_cause: "CONSUMER-furnace#5: cause made_up: there is no such cause tree",
    an_unknown_property: "CONSUMER-furnace#5: property 11: there is no such property",
    no_finding_named: "CONSUMER-furnace#5: names no finding",
    a_fourth_remedy: "cause low_airflow: takes in 4 different remedies",
    an_unknown_class: "CONSUMER-furnace#4: 'too hard' is no class of waiver",
    a_waiver_without_a_reason: "CONSUMER-furnace#4: is waived without a reason",
    another_complaint_without_its_tree: "CONSUMER-furnace#3: "
    "names another tree if and only if it is another complaint",
    mapped_and_waived: "CONSUMER-furnace#4: is neither mapped nor waived, or is both",
}


@pytest.mark.parametrize("spoil", SPOILED, ids=lambda spoil: spoil.__name__)
def test_a_spoiled_map_is_told(spoil, library):
    tables, entries = copy.deepcopy(TABLES), copy.deepcopy(ENTRIES)
    spoil(tables, entries)
    assert mistakes(tables, entries, library, TREE) == [SPOILED[spoil]]


def test_a_finding_that_the_start_does_not_lead_to_is_told(library):
    cut = replace(library.trees[TREE], start="gas_off")
    told = mistakes(TABLES, ENTRIES, replace(library, trees={**library.trees, TREE: cut}), TREE)
    assert "CONSUMER-furnace#2: no_heat.switch_off: the tree's start does not lead to it" in told
    assert "CONSUMER-furnace#11: cause low_airflow: no finding leads on to this cause" in told
    assert not any("gas_off: " in line for line in told)


def test_a_step_that_ends_no_walk_is_no_finding(library):
    tree = library.trees[TREE]
    assert why_not(f"{TREE}.{tree.start}", library, TREE) == "this step ends no walk"


def test_rows_that_are_passed_round_are_told():
    maps = {tree: copy.deepcopy(entries_of(tree)) for tree in TREES}
    entry = entry_of(maps["blower_silent"], "CONSUMER-furnace#3")
    del entry["findings"]
    entry |= {"waived": "other complaint", "tree": "no_heat", "why": "made up"}
    assert untaken(maps)[0] == "CONSUMER-furnace#3: goes round by no_heat, blower_silent"


@pytest.mark.parametrize("tree", TREES[1:])
def test_a_spoiled_row_of_another_tree_is_told(tree, library):
    entries = copy.deepcopy(entries_of(tree))
    mapped = next(entry for entry in entries if "findings" in entry)
    mapped["findings"] = ["no_heat.gas_off"]
    waived = next(entry for entry in entries if entry.get("waived") == "other complaint")
    waived["tree"] = tree
    assert set(mistakes(TABLES, entries, library, tree)) == {
        f"{mapped['id']}: no_heat.gas_off: there is no such step",
        f"{waived['id']}: names another tree if and only if it is another complaint",
    }
