"""From house.yaml, cautions.yaml and sources.yaml to the vocabulary, every mistake of the three at once."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.house import acts, cautions, places, plate, sheets
from assistant.house.desk import Desk
from assistant.house.fields import Form, Problems
from assistant.house.model import Vocabulary
from assistant.house.place import Place, Problem
from assistant.house.reader import Fields, Items, Node, Text, Unreadable, read

HOUSE, CAUTIONS, SOURCES = "house.yaml", "cautions.yaml", "sources.yaml"
FILES = (HOUSE, CAUTIONS, SOURCES)


def load_house(texts: Mapping[str, bytes]) -> tuple[Vocabulary, list[Problem]]:
    """The vocabulary that the three files in `texts` (name -> bytes) write, and what is wrong in them.

    Entries with a problem may be missing from the vocabulary. A file that is not given counts as empty,
    except house.yaml. Never raises.
    """
    desks = {name: Desk(Problems()) for name in FILES}
    tops = {name: _top(name, texts, desks[name].problems) for name in FILES}
    no_cautions = bool(desks[CAUTIONS].problems.found)
    house = Form(tops[HOUSE], HOUSE, desks[HOUSE].problems)
    safety = Form(tops[CAUTIONS], CAUTIONS, desks[CAUTIONS].problems)
    _format(house, desks[HOUSE])
    _format(safety, desks[CAUTIONS])
    happens = house.get("happens")
    section = {
        name: house.fields(name)
        for name in (
            "circuits",
            "points",
            "seen",
            "acts",
            "conditions",
            "parts",
            "plate",
            "hazards",
            "complaints",
            "sheets",
            "baseline",
            "spread",
            "openings",
            "marks",
        )
    }
    section |= {name: safety.fields(name) for name in ("cautions", "stops", "tonight")}
    house.close()
    safety.close()
    names = {name: node.keys if node else {} for name, node in section.items()}
    if no_cautions:
        names |= {"cautions": None, "stops": None}
    for desk in desks.values():
        desk.names = names
    desk = desks[HOUSE]
    labels, watched = places.happens(_list_or_fields(happens, desk), desk)
    spread, spread_mark = sheets.spreads(section["spread"], desk)
    vocabulary = Vocabulary(
        circuits=places.circuits(section["circuits"], desk),
        points=places.points(section["points"], desk),
        seen=places.seen(section["seen"], desk),
        happens=labels,
        watched=watched,
        openings=places.openings(section["openings"], desk),
        acts=acts.acts(section["acts"], desk),
        conditions=acts.conditions(section["conditions"], desk),
        parts=acts.parts(section["parts"], desk),
        plate=plate.plate(section["plate"], desk),
        hazards=acts.hazards(section["hazards"], desk),
        complaints=acts.complaints(section["complaints"], desk),
        cautions=cautions.cautions(section["cautions"], desks[CAUTIONS]),
        stops=cautions.stops(section["stops"], desks[CAUTIONS]),
        sources=cautions.sources(tops[SOURCES], desks[SOURCES]),
        sheets=sheets.sheets(section["sheets"], desk),
        baseline=sheets.known(section["baseline"], desk),
        spread=spread,
        spread_mark=spread_mark,
        tonight=sheets.tonight(section["tonight"], desks[CAUTIONS]),
        marks=sheets.marks(section["marks"], desk),
    )
    acts.agree(vocabulary, desk)
    places.pairs_lie_on_their_circuit(vocabulary.circuits, vocabulary.points, desk)
    return vocabulary, [problem for desk in desks.values() for problem in desk.problems.sorted()]


def _top(file: str, texts: Mapping[str, bytes], problems: Problems) -> Fields:
    """The file's fields; empty with a problem noted where it can't be read."""
    empty = Fields({}, {}, Place(file, 1, 1))
    if file not in texts:
        if file == HOUSE:
            problems.add(
                empty.place,
                "missing",
                "there is no house.yaml; it names the circuits, points, things seen and "
                "acts that trees refer to",
            )
        return empty
    try:
        node = read(texts[file], file)
    except Unreadable as unreadable:
        for problem in unreadable.problems:
            problems.take(problem)
        return empty
    if isinstance(node, Fields):
        return node
    problems.add(node.place, "type", f"{file} is a set of fields (name: value)")
    return empty


def _format(form: Form, desk: Desk) -> None:
    text = form.text("format")
    if text and text.value != "1":
        desk.problems.add(text.place, "format", f"this program reads format 1, not '{text.value[:20]}'")


def _list_or_fields(node: Node | None, desk: Desk) -> Node | None:
    if isinstance(node, (Items, Fields)) or (isinstance(node, Text) and not node.value) or node is None:
        return node
    desk.problems.add(node.place, "type", "'happens' is a list of events, or fields with a label for each")
    return None
