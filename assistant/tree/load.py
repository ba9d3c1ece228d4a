"""From the text of a tree file to a tree, with every mistake of the file at once.

What is checked here needs nothing but the file and the vocabulary: fields, types, one verb a step, names,
units, ways. What needs paths or other trees is in assistant/tree/check.
"""

from __future__ import annotations

from pathlib import PurePosixPath

from assistant.house.around import needed
from assistant.house.fields import Form, Problems, good_name
from assistant.house.model import Vocabulary
from assistant.house.nearest import nearest
from assistant.house.numbers import number
from assistant.house.place import Problem
from assistant.house.reader import Fields, Node, Unreadable, collector_resting, read
from assistant.tree import asking, computing, moving
from assistant.tree.desk import TreeDesk
from assistant.tree.model import PURPOSES, VERBS, Common, Step, Tree
from assistant.tree.names import values_of

READERS = {
    "look": asking.look,
    "watch": asking.watch,
    "measure": asking.measure,
    "compute": computing.compute,
    "do": asking.do,
    "call": moving.call,
    "return": moving.return_,
    "hand_over": moving.hand_over,
    "finding": moving.finding,
    "stop": moving.stop,
}


def load_tree(data: bytes, file: str, vocabulary: Vocabulary) -> tuple[Tree | None, list[Problem]]:
    """The tree that `data` writes, or None, and what is wrong in the file (None exactly when something is).

    `file` is its path in the library; its stem is the tree's name. Never raises.
    """
    with collector_resting():
        return _loaded(data, file, vocabulary)


def _loaded(data: bytes, file: str, vocabulary: Vocabulary) -> tuple[Tree | None, list[Problem]]:
    problems = Problems()
    try:
        node = read(data, file)
    except Unreadable as unreadable:
        return None, unreadable.problems
    if not isinstance(node, Fields):
        problems.add(
            node.place, "type", "a tree file is a set of fields: format, purpose, title, start, steps"
        )
        return None, problems.sorted()
    tree = _tree(Form(node, "a tree", problems), file, vocabulary, problems)
    return (None if problems.found else tree), problems.sorted()


def _tree(form: Form, file: str, vocabulary: Vocabulary, problems: Problems) -> Tree | None:
    format_ = form.text("format", need=True)
    if format_ and format_.value != "1":
        problems.add(format_.place, "format", f"this program reads format 1, not '{format_.value[:20]}'")
        return None
    name = PurePosixPath(file).stem
    good_name(name, form.place(), "a tree file", problems)
    purpose = form.text("purpose", need=True)
    if purpose and purpose.value not in PURPOSES:
        problems.unknown(purpose, "purpose", dict.fromkeys(PURPOSES), "value")
    title, start = form.words("title", need=True), form.text("start", need=True)
    takes = _takes(form, purpose.value if purpose else "procedure", problems)
    covers = form.words("covers")
    if covers and purpose and purpose.value in PURPOSES and purpose.value != "complaint":
        problems.add(form.place("covers"), "field", "'covers' only stands in a complaint's tree")
    steps = form.fields("steps", need=True)
    form.close()
    if steps is None:
        return None
    if not steps.entries:
        problems.add(form.place("steps"), "missing", "'steps' is empty; write the first step")
    desk = TreeDesk(problems, {}, vocabulary, steps.keys, values_of(steps, vocabulary, problems), bool(takes))
    desk.way(start)
    built = {}
    for step_name, node in steps.entries.items():
        step = _step(step_name, node, steps, desk)
        if step is not None:
            built[step_name] = step
        elif not problems.found:
            # Each reader notes why it gives nothing; a step must never be missing without a word.
            problems.add(steps.keys[step_name], "step", f"step '{step_name}' can't be read")
    if not (purpose and title and start):
        return None
    return Tree(name, file, purpose.value, title, covers, takes, start.value, built, form.place())


def _takes(form: Form, purpose: str, problems: Problems) -> tuple[str, ...]:
    texts = form.texts("takes")
    for text in texts:
        if text.value != "circuit":
            problems.add(
                text.place, "value", f"a procedure takes [circuit] and nothing else, not '{text.value[:40]}'"
            )
    if form.has("takes") and purpose in PURPOSES and purpose != "procedure":
        problems.add(form.place("takes"), "field", "'takes' only stands in a procedure")
    return ("circuit",) if texts else ()


def _step(name: str, node: Node, steps: Fields, desk: TreeDesk) -> Step | None:
    place = steps.keys[name]
    good_name(name, place, "a step", desk.problems)
    what = f"step '{name[:40]}'"
    if not isinstance(node, Fields):
        desk.problems.add(
            node.place, "type", f"{what} needs its fields, the first of them a verb: {', '.join(VERBS)}"
        )
        return None
    form = Form(Fields(node.entries, node.keys, place), what, desk.problems)
    verb = _verb(form, desk)
    if verb is None:
        return None
    common = _common(name, form, desk)
    step = READERS[verb](form, common, desk)
    form.close()
    return step


def _verb(form: Form, desk: TreeDesk) -> str | None:
    """The one verb of a step. A stop may carry `finding` as a field, for what it found."""
    verbs = [name for name in form.node.entries if name in VERBS]
    if "stop" in verbs and "finding" in verbs:
        verbs.remove("finding")
    if len(verbs) == 1:
        return verbs[0]
    if verbs:
        desk.problems.add(
            form.place(verbs[1]),
            "verb",
            f"{form.what} has {len(verbs)} verbs ({', '.join(verbs)}); make it as many steps",
        )
        return None
    near = (
        None
        if desk.problems.full
        else next(filter(None, (nearest(name, VERBS) for name in form.node.entries)), None)
    )
    meant = f"; did you mean '{near}'?" if near else f"; it needs one of {', '.join(VERBS)}"
    desk.problems.add(form.place(), "verb", f"{form.what} has no verb{meant}")
    return None


def _common(name: str, form: Form, desk: TreeDesk) -> Common:
    minutes = number(form.get("minutes"), "'minutes'", desk.problems)
    if minutes is not None and minutes <= 0:
        desk.problems.add(form.place("minutes"), "number", "'minutes' is more than 0")
    return Common(
        name,
        form.place(),
        form.words("why"),
        form.words("teach"),
        tuple(text.value for text in form.texts("how", single=True)),
        desk.all_known(form.texts("caution"), "cautions", "caution"),
        needed(form, desk),
        desk.all_known(form.texts("at"), "points", "point"),
        None if minutes is None else float(minutes),
        form.words("hint"),
        desk.all_known(form.texts("opens", single=True), "openings", "opening"),
    )
