"""Circuits, points, things seen and events of house.yaml."""

from __future__ import annotations

from assistant.house.around import cautions_of, event, highest, needed, reads, words_of
from assistant.house.desk import DRAWINGS, Desk, ring
from assistant.house.fields import Form, one_text, spoken, text_items
from assistant.house.model import Around, Circuit, Point, Thing
from assistant.house.reader import Fields, Items, Node, Text

MEDIA = ("gas", "air", "vent", "room", "ground", "water")


def circuits(section: Fields | None, desk: Desk) -> dict[str, Circuit]:
    """`circuits:`, and that none feeds itself."""

    def build(name: str, form: Form) -> Circuit | None:
        make_dead = form.words("make_dead", need=True)
        fed_by = desk.known(form.text("fed_by"), "circuits", "circuit")
        pairs = _pairs(form, desk)
        title = form.words("title") or spoken(name)
        restore = form.words("restore")
        caution = desk.known(form.text("caution"), "cautions", "caution")
        up_to = highest(form, desk)
        loads = [desk.known(text, "points", "point") for text in form.texts("loads", single=True)]
        if make_dead is None:
            return None
        return Circuit(name, title, make_dead, restore, fed_by, pairs, form.place(), caution, up_to,
                       tuple(load for load in loads if load))

    built = desk.forms(section, "circuit", build)
    for name, circuit in built.items():
        circle = ring(name, lambda at: built[at].fed_by if at in built else None)
        if circle and name == min(circle):
            desk.problems.add(
                circuit.place, "circle", f"circuits feed each other in a circle: {' <- '.join(circle)}"
            )
    return built


def _pairs(form: Form, desk: Desk) -> tuple[tuple[str, str], ...]:
    node = form.get("pairs", need=True)
    if node is None:
        return ()
    if not isinstance(node, Items) or not node.items:
        desk.problems.add(
            node.place,
            "type",
            "'pairs' is a list of pairs of points such as [[r, c]]: the readings that prove the circuit dead",
        )
        return ()
    pairs = []
    for item in node.items:
        if not isinstance(item, Items) or len(item.items) != 2:
            desk.problems.add(item.place, "type", "a pair is two points, such as [r, c]")
            continue
        points = [desk.known(text, "points", "point") for text in text_items(item, "a pair", desk.problems)]
        if len(points) == 2 and None not in points:
            if points[0] == points[1]:
                desk.problems.add(item.place, "value", "a pair is two different points")
            pairs.append((points[0], points[1]))
    return tuple(pairs)


def points(section: Fields | None, desk: Desk) -> dict[str, Point]:
    """`points:`, each on a circuit or of another medium."""

    def build(name: str, form: Form) -> Point | None:
        circuit = desk.known(form.text("circuit"), "circuits", "circuit")
        of = desk.one_of(form.text("of"), MEDIA, "what a point is of")
        drawing = desk.one_of(form.text("drawing", need=True), DRAWINGS, "a drawing")
        label = form.words("label") or spoken(name)
        caution = desk.known(form.text("caution"), "cautions", "caution")
        opens = desk.known(form.text("opens"), "openings", "opening")
        words, taken = words_of(form), reads(form, desk)
        if form.has("circuit") == form.has("of"):
            desk.problems.add(
                form.place(),
                "missing" if not form.has("of") else "field",
                f"point '{name}' needs one of 'circuit' (the circuit it is on) and 'of' ({', '.join(MEDIA)})",
            )
            return None
        if drawing is None:
            return None
        return Point(name, label, circuit, of, drawing, form.place(), caution, opens, words, taken)

    return desk.forms(section, "point", build, dotted=True)


def pairs_lie_on_their_circuit(circuits: dict[str, Circuit], points: dict[str, Point], desk: Desk) -> None:
    """A dead-proof reads the circuit's own points, or one of them against ground."""
    for circuit in circuits.values():
        for pair in circuit.pairs:
            for name in pair:
                point = points.get(name)
                elsewhere = point and (
                    point.circuit not in (None, circuit.name) or point.of not in (None, "ground")
                )
                if elsewhere:
                    desk.problems.add(
                        circuit.place,
                        "value",
                        f"pair [{', '.join(pair)}] can't prove circuit "
                        f"'{circuit.name}' dead: '{name}' is not on it and not of ground",
                    )


def seen(section: Fields | None, desk: Desk) -> dict[str, Thing]:
    """`seen:`, a list of words or fields with `values` and `ask`."""
    built: dict[str, Thing] = {}
    for name, node in desk.each(section, "thing seen", dotted=True):
        place = section.keys[name]
        if isinstance(node, Items):
            built[name] = Thing(name, spoken(name), _values(name, node, desk), None, place)
        elif isinstance(node, Fields):
            form = Form(Fields(node.entries, node.keys, place), f"thing seen '{name}'", desk.problems)
            values = form.get("values", need=True)
            title = form.words("ask") or spoken(name)
            drawing = desk.one_of(form.text("drawing"), DRAWINGS, "a drawing")
            needs, caution, hidden = needed(form, desk), cautions_of(form, desk), form.yes("hidden")
            good = tuple(form.texts("good", single=True))
            form.close()
            words = _values(name, values, desk) if values else ()
            sound = tuple(text.value for text in good if desk.one_of(text, words, f"a value of '{name}'"))
            built[name] = Thing(name, title, words, drawing, place, needs, caution, hidden, sound)
        else:
            desk.problems.add(
                node.place, "type", f"thing seen '{name}' is the list of words it can be described by"
            )
    return built


def _values(name: str, node: Node, desk: Desk) -> tuple[str, ...]:
    texts = list(text_items(node, f"the values of '{name}'", desk.problems))
    first: dict[str, Text] = {}
    for text in texts:
        if first.setdefault(text.value, text) is not text:
            desk.problems.add(
                text.place, "value", f"'{text.value}' is written twice among the values of '{name}'"
            )
    if isinstance(node, Items) and len(node.items) < 2:
        desk.problems.add(
            node.place, "value", f"'{name}' needs at least two values, or there is nothing to look for"
        )
    return tuple(first)


def openings(section: Fields | None, desk: Desk) -> dict[str, str]:
    """What only some shops' people may open -> its label."""
    labels = {}
    for name, node in desk.each(section, "opening"):
        label = one_text(node, f"the label of '{name}'", desk.problems)
        if label:
            labels[name] = label.value
    return labels


def happens(section: Node | None, desk: Desk) -> tuple[dict[str, str], dict[str, Around]]:
    """Event -> its label, and what goes with watching it; a plain list of names is its own label."""
    if isinstance(section, Items):
        return {text.value: spoken(text.value)
                for text in text_items(section, "'happens'", desk.problems)}, {}
    fields = section if isinstance(section, Fields) else None
    labels: dict[str, str] = {}
    around: dict[str, Around] = {}
    for name, node in desk.each(fields, "event", dotted=True):
        if isinstance(node, Fields):
            label, around[name] = event(name, node, desk)
        else:
            text = one_text(node, f"the label of '{name}'", desk.problems)
            label = text.value if text else None
        if label:
            labels[name] = label
    return labels, around
