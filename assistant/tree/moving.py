"""The verbs that lead somewhere else or end a walk: call, return, hand_over, finding, stop."""

from __future__ import annotations

from assistant.house.fields import NAME, Form
from assistant.house.reader import Text
from assistant.tree.asking import ways
from assistant.tree.desk import TreeDesk
from assistant.tree.model import Call, Common, Finding, HandOver, Return, Stop

_OF_A_FAULT = ("condemns", "causes", "repair", "proof")


def call(form: Form, common: Common, desk: TreeDesk) -> Call | None:
    """A procedure, cause or proof that comes back."""
    tree = _tree(form.text("call", need=True), desk)
    circuit = desk.circuit(form.text("with"))
    then = ways(form, "then", desk)
    cannot = desk.way(form.text("cannot"))
    return Call(common, tree, circuit, then, cannot) if tree else None


def return_(form: Form, common: Common, desk: TreeDesk) -> Return | None:
    """How this tree comes back."""
    outcome = form.words("return", need=True)
    says, customer = form.words("says"), form.words("customer")
    repair = desk.all_known(form.texts("repair"), "acts", "act")
    return Return(common, outcome, says, customer, repair) if outcome else None


def hand_over(form: Form, common: Common, desk: TreeDesk) -> HandOver | None:
    """Another complaint takes over."""
    complaint = desk.known(form.text("hand_over", need=True), "complaints", "complaint")
    return HandOver(common, complaint) if complaint else None


def finding(form: Form, common: Common, desk: TreeDesk) -> Finding | None:
    """What failed, or `fault: none`."""
    title = form.words("finding", need=True)
    fault = (
        desk.one_of(form.text("fault"), ("none",), "'fault' (leave it out where something failed)") is None
    )
    condemns = desk.known(form.text("condemns"), "parts", "part")
    shows = desk.shown(form)
    causes = tuple(name for name in (_tree(text, desk) for text in form.texts("causes")) if name)
    repair = desk.all_known(form.texts("repair"), "acts", "act")
    proof = _tree(form.text("proof"), desk)
    customer = form.words("customer", need=True)
    reason = form.words("reason", need=not fault)
    advice = form.words("advice")
    if not fault:
        for name in _OF_A_FAULT:
            if form.has(name):
                desk.problems.add(
                    form.place(name),
                    "field",
                    f"'fault: none' says that nothing failed, so there is no '{name}'",
                )
    elif form.has("reason"):
        desk.problems.add(form.place("reason"), "field", "'reason' only stands beside 'fault: none'")
    if title is None or customer is None:
        return None
    return Finding(common, title, fault, condemns, shows, causes, repair, proof, customer, reason, advice)


def stop(form: Form, common: Common, desk: TreeDesk) -> Stop | None:
    """A stop page, with `finding` where the stop is itself something found."""
    page = desk.known(form.text("stop", need=True), "stops", "stop page")
    found = form.words("finding")
    shows = desk.shown(form)
    customer = form.words("customer")
    return Stop(common, page, found, shows, customer) if page else None


def _tree(text: Text | None, desk: TreeDesk) -> str | None:
    """The name of another tree; whether there is one, only the whole library can tell."""
    if text is None:
        return None
    if NAME.fullmatch(text.value):
        return text.value
    plain = text.value.rpartition("/")[2].removesuffix(".yaml")
    better = f"; write '{plain}'" if NAME.fullmatch(plain) else ""
    desk.problems.add(text.place, "name", f"'{text.value[:60]}' is no name of a tree{better}")
    return None
