"""Reads the maps from the rows of outside troubleshooting tables to the findings of the trees, and says what
is wrong with them. Written for the tests beside it alone.
"""

from collections import Counter, defaultdict
from pathlib import Path

import yaml

from assistant.tree.model import Finding, HandOver, Stop, ways_of

DATA = Path(__file__).parent / "data"
TREES = ("no_heat", "tripped_breaker", "blower_silent", "zone_spillover")
LABELS = {
    "no_heat": "no_heat", "tripped_breaker": "breaker",
    "blower_silent": "blower", "zone_spillover": "airflow",
}
"""How `trees:` of the tables calls each tree."""
CLASSES = ("not in houses", "other machine", "text lost", "other complaint", "missing")
PROPERTIES = range(1, 11)
MOST_REMEDIES = 3


def belongs_to(table, tree):
    return LABELS[tree] in table["trees"]


def public_domain(table):
    return table["source"]["licence"].startswith("public domain")


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


def why_not(name, library, of):
    """What keeps this from being a name for the end of a walk of that tree, or None."""
    tree = library.trees[of]
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
    if owner != of or step not in tree.steps:
        return "there is no such step"
    if not isinstance(tree.steps[step], (Finding, Stop, HandOver)):
        return "this step ends no walk"
    return None if step in reached else "the tree's start does not lead to it"


def wrong_entry(entry, library, of):
    """What is wrong with the entry as such, whichever row it is for."""
    if ("findings" in entry) == ("waived" in entry):
        yield "is neither mapped nor waived, or is both"
    if entry.get("findings") == []:
        yield "names no finding"
    for name in entry.get("findings", []):
        if reason := why_not(name, library, of):
            yield f"{name}: {reason}"
    if "waived" in entry:
        if entry["waived"] not in CLASSES:
            yield f"'{entry['waived']}' is no class of waiver"
        if not entry.get("why"):
            yield "is waived without a reason"
        if (entry["waived"] == "other complaint") != (entry.get("tree") in set(TREES) - {of}):
            yield "names another tree if and only if it is another complaint"


def mistakes(tables, entries, library, of):
    """Everything that is wrong with the map of one tree, one line for each mistake."""
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
        found += [f"{row_id}: {wrong}" for wrong in wrong_entry(entry, library, of)]
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


def entries_of(tree):
    """The map of one tree: {id, words, findings | waived, tree, why} for each row."""
    if tree == "no_heat":
        return read("no_heat_map.yaml")["rows"]
    entries = []
    for row in read("other_trees_map.yaml")["rows"]:
        said = row.get("all", row.get(tree))
        entry = {"id": row["id"], "words": row["words"], "why": row.get("why")}
        if isinstance(said, list):
            entry["findings"] = said
        elif said is not None:
            kind, _, other = said.partition(": ")
            entry["waived"] = kind
            if other:
                entry |= {"tree": other, "why": entry["why"] or f"is what {other} is about"}
        entries.append(entry)
    return entries


def untaken(maps):
    """Rows that one tree leaves to another, and that no tree takes: {tree: entries} -> one line a row."""
    of = {tree: {entry["id"]: entry for entry in entries} for tree, entries in maps.items()}
    found = []
    for tree in maps:
        for row_id in of[tree]:
            at, passed = tree, [tree]
            while of[at][row_id].get("waived") == "other complaint":
                at = of[at][row_id]["tree"]
                if at in passed:
                    found.append(f"{row_id}: goes round by {', '.join(passed)}")
                    break
                passed.append(at)
    return found


def taken_together(maps, wanted):
    """(rows that some tree takes, rows that count, rows that are some tree's and that it misses)."""
    ids = [row_id for row_id, _ in rows_of([table for table in TABLES if wanted(table)])]
    of = {row_id: [] for row_id in ids}
    for entries in maps.values():
        for entry in entries:
            if entry["id"] in of:
                of[entry["id"]].append(entry)
    counted = [row for row in ids if any(one.get("waived") != "not in houses" for one in of[row])]
    taken = [row for row in counted if any("findings" in one for one in of[row])]
    missing = [row for row in counted if row not in taken
               and any(one.get("waived") == "missing" for one in of[row])]
    return len(taken), len(counted), missing
