"""What goes with a thing of house.yaml wherever a step has to do with it: its power state, its cautions, the
words for it, and how high a reading there can come."""

from __future__ import annotations

from assistant.house.desk import Desk
from assistant.house.fields import Form, one_text
from assistant.house.model import Around
from assistant.house.quantity_fields import amount
from assistant.house.reader import Fields, Text
from assistant.quantity.kind import KINDS

NEEDS = ("live", "off", "dead")


def needed(form: Form, desk: Desk) -> dict[str, str]:
    """`needs: {circuit: live|off|dead}` of an act or step."""
    fields = form.fields("needs")
    needs = {}
    for circuit, node in fields.entries.items() if fields else ():
        name = desk.circuit(Text(circuit, fields.keys[circuit], False))
        state = desk.one_of(
            one_text(node, f"'{circuit}'", desk.problems), NEEDS, f"what circuit '{circuit}' must be"
        )
        if name and state:
            needs[name] = state
    return needs


def cautions_of(form: Form, desk: Desk) -> tuple[str, ...]:
    """`caution: [names in cautions.yaml]`; one may stand without its brackets."""
    named = (desk.known(text, "cautions", "caution") for text in form.texts("caution", single=True))
    return tuple(name for name in named if name is not None)


def words_of(form: Form) -> tuple[str, ...]:
    """`words: [what a page says, "this|or this"]`."""
    return tuple(text.value for text in form.texts("words", single=True))


def reads(form: Form, desk: Desk) -> dict[str, Around]:
    """`reads: {pressure: {needs: {line: live}, caution: [gas], up_to: 30 inwc}}` of a point."""
    fields = form.fields("reads")
    taken: dict[str, Around] = {}
    for kind, node in fields.entries.items() if fields else ():
        if desk.one_of(Text(kind, fields.keys[kind], False), KINDS, "a quantity that is read there") is None:
            continue
        inner = Form(node, f"'{kind}' of {form.what}", desk.problems) if isinstance(node, Fields) else None
        if inner is None:
            if not (isinstance(node, Text) and not node.value):
                desk.problems.add(node.place, "type", f"'{kind}' is fields such as {{needs: {{line: live}}}}")
            taken[kind] = Around()
            continue
        taken[kind] = Around(needed(inner, desk), cautions_of(inner, desk),
                             amount(inner.text("up_to"), kind, desk))
        inner.close()
    return taken


def highest(form: Form, desk: Desk) -> dict[str, float]:
    """`up_to: {ac_voltage: 260 V}` of a circuit: quantity -> the highest value that a fault can put there."""
    fields = form.fields("up_to")
    values: dict[str, float] = {}
    for kind, node in fields.entries.items() if fields else ():
        if desk.one_of(Text(kind, fields.keys[kind], False), KINDS, "a quantity") is not None:
            value = amount(one_text(node, f"'{kind}'", desk.problems), kind, desk)
            if value is not None:
                values[kind] = value
    return values


def event(name: str, node: Fields, desk: Desk) -> tuple[str | None, Around]:
    """`{say: flame, needs: {line: live}, caution: [lighting]}`: an event's label and what goes with it."""
    form = Form(node, f"event '{name}'", desk.problems)
    label = form.words("say", need=True)
    around = Around(needed(form, desk), cautions_of(form, desk))
    form.close()
    return label, around
