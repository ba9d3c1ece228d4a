"""Each row of the outside troubleshooting tables is a finding of the no-heat tree, or is waived by its class.

The tables are data/troubleshooting_tables.yaml, most of them from maintenance manuals of the US government.
The map is data/no_heat_map.yaml; who made it knew the tables and the names and titles of the findings, and
had not read the tree. A finding that takes in rows with many different remedies tells nothing apart, so three
are the most.
"""

import copy
from collections import Counter, defaultdict
from dataclasses import replace
from pathlib import Path

import pytest
import yaml

from assistant.resources import trees_folder
from assistant.tree.library import read_folder
from assistant.tree.model import Finding, HandOver, Stop, ways_of

DATA = Path(__file__).parent / "data"
TREE = "no_heat"
CLASSES = ("not in houses", "other machine", "text lost", "other complaint")
OTHER_TREES = ("tripped_breaker", "blower_silent", "zone_spillover")
PROPERTIES = range(1, 11)
MOST_REMEDIES = 3


def in_no_heat(table):
    return TREE in table["trees"]


def public_domain(table):
    return table["source"]["licence"].startswith("public domain")


# Rows with a finding, rows with a property alone, and all rows whose part a house can have.
MEASURED = {
    "all tables": (lambda table: True, 50, 12, 156),
    "public domain": (public_domain, 41, 12, 131),
    "no heat": (in_no_heat, 37, 7, 80),
    "no heat, public domain": (lambda table: in_no_heat(table) and public_domain(table), 28, 7, 55),
}


def rows_of(tables):
    """(id, row) of every row, in the order of the tables."""
    return [(f"{table['id']}#{n}", row) for table in tables for n, row in enumerate(table["rows"], 1)]


def reachable(tree):
    """Names of the steps that the tree's start leads to."""
    seen, waiting = set(), [tree.start]
    while waiting:
        name = waiting.pop()
        if name not in seen:
            seen.add(name)
            waiting += [way.to for _, way in ways_of(tree.steps[name])]
    return seen


def why_not(name, library):
    """What keeps this from being a name for the end of a walk, or None."""
    tree = library.trees[TREE]
    kind, _, rest = name.partition(" ")
    if kind == "property":
        return None if rest in {str(n) for n in PROPERTIES} else "there is no such property"
    reached = reachable(tree)
    if kind == "cause":
        if rest not in library.trees or library.trees[rest].purpose != "cause":
            return "there is no such cause tree"
        leads = any(isinstance(s := tree.steps[step], Finding) and rest in s.causes for step in reached)
        return None if leads else "no finding leads on to this cause"
    owner, _, step = name.partition(".")
    if owner != TREE or step not in tree.steps:
        return "there is no such step"
    if not isinstance(tree.steps[step], (Finding, Stop, HandOver)):
        return "this step ends no walk"
    return None if step in reached else "the tree's start does not lead to it"


def wrong_entry(entry, library):
    """What is wrong with the entry as such, whichever row it is for."""
    if ("findings" in entry) == ("waived" in entry):
        yield "is neither mapped nor waived, or is both"
    if entry.get("findings") == []:
        yield "names no finding"
    for name in entry.get("findings", []):
        if reason := why_not(name, library):
            yield f"{name}: {reason}"
    if "waived" in entry:
        if entry["waived"] not in CLASSES:
            yield f"'{entry['waived']}' is no class of waiver"
        if not entry.get("why"):
            yield "is waived without a reason"
        if (entry["waived"] == "other complaint") != (entry.get("tree") in OTHER_TREES):
            yield "names another tree if and only if it is another complaint"


def mistakes(tables, entries, library):
    """Everything that is wrong with the map, one line for each mistake."""
    rows = dict(rows_of(tables))
    begins = {row_id: ": ".join(row) for row_id, row in rows.items()}
    times = Counter(entry["id"] for entry in entries)
    found = [f"{row_id}: is in the map {times[row_id]} times" for row_id in rows if times[row_id] != 1]
    remedies = defaultdict(set)
    for entry in entries:
        row_id = entry["id"]
        if row_id not in rows:
            found.append(f"{row_id}: there is no such row")
            continue
        table = row_id.partition("#")[0] + "#"
        beside = [other for other in begins if other.startswith(table)]
        like = [other for other in beside if begins[other].startswith(entry["words"])]
        if like != [row_id]:
            found.append(f"{row_id}: '{entry['words']}' begins {', '.join(like) or 'no row of its table'}")
        found += [f"{row_id}: {wrong}" for wrong in wrong_entry(entry, library)]
        for name in entry.get("findings", []):
            remedies[name].add(rows[row_id][2])
    found += [
        f"{name}: takes in {len(several)} different remedies"
        for name, several in remedies.items()
        if len(several) > MOST_REMEDIES
    ]
    return found


def coverage(tables, entries, wanted):
    """(rows with a finding, with a property alone, rows that count) over the tables that are wanted; what no
    house has does not count.
    """
    ids = {row_id for row_id, _ in rows_of([table for table in tables if wanted(table)])}
    counted = [entry for entry in entries if entry["id"] in ids and entry.get("waived") != "not in houses"]
    mapped = [entry["findings"] for entry in counted if "findings" in entry]
    rules = sum(all(name.startswith("property ") for name in names) for names in mapped)
    return len(mapped) - rules, rules, len(counted)


def read(name):
    return yaml.safe_load((DATA / name).read_text(encoding="utf-8"))


TABLES = read("troubleshooting_tables.yaml")["tables"]
ENTRIES = read("no_heat_map.yaml")["rows"]


@pytest.fixture(scope="module")
def library():
    shipped = read_folder(trees_folder())
    assert TREE in shipped.trees, shipped.problems
    return shipped


def test_every_row_belongs_to_a_finding_or_is_waived(library):
    assert mistakes(TABLES, ENTRIES, library) == []


@pytest.mark.parametrize("name", MEASURED)
def test_the_share_of_rows_that_are_mapped_is_what_was_measured(name):
    wanted, *measured = MEASURED[name]
    found, rules, counted = coverage(TABLES, ENTRIES, wanted)
    mapped = found + rules
    print(f"{name}: {mapped} of {counted} rows mapped, {mapped / counted:.1%} ({rules} to a property alone)")
    assert [found, rules, counted] == measured


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
    assert mistakes(tables, entries, library) == [SPOILED[spoil]]


def test_a_finding_that_the_start_does_not_lead_to_is_told(library):
    cut = replace(library.trees[TREE], start="gas_off")
    told = mistakes(TABLES, ENTRIES, replace(library, trees={**library.trees, TREE: cut}))
    assert "CONSUMER-furnace#2: no_heat.switch_off: the tree's start does not lead to it" in told
    assert "CONSUMER-furnace#11: cause low_airflow: no finding leads on to this cause" in told
    assert not any("gas_off: " in line for line in told)


def test_a_step_that_ends_no_walk_is_no_finding(library):
    tree = library.trees[TREE]
    assert why_not(f"{TREE}.{tree.start}", library) == "this step ends no walk"
