"""The checker's power states against the walker's own: whatever is answered, the house at every question is
one that the checker had foreseen.
"""

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.tree.check.circuits import Instance
from assistant.tree.check.study import Study
from assistant.tree.library import from_texts
from assistant.walk.event import Did, GoOn, Opened, Read, Saw, TakeUp, Typed
from assistant.walk.visit import asked, begin, fold
from tests.tree.check.test_bad_examples import SOUND

AT = "2026-11-25T09:00:00-05:00"
NEEDS = ["", "{line: live}", "{control: live}", "{line: dead}", "{control: dead}", "{line: off}",
         "{line: dead, control: dead}", "{control: live, line: live}"]
ACTS = ["stat_off", "stat_on", "breaker_off", "breaker_on", "reset_breaker", "fit_valve", "leak_check"]


@st.composite
def trees(draw):
    """A complaint tree of looks, acts and calls, with needs here and there."""
    last = draw(st.integers(2, 9))
    lines = ["format: 1", "purpose: complaint", "title: Any", "start: s0", "steps:"]
    for number in range(last):
        onward = st.integers(number + 1, last).map("s{}".format)
        needs = draw(st.sampled_from(NEEDS))
        needs = f", needs: {needs}" if needs else ""
        kind = draw(st.sampled_from(["look", "do", "do", "call"]))
        if kind == "look":
            ways = f"choices: {{clean: {draw(onward)}, clogged: {draw(onward)}}}"
            lines.append(f"  s{number}: {{look: What now?, sees: filter, {ways}{needs}}}")
        elif kind == "do":
            act = draw(st.sampled_from(ACTS))
            lines.append(f"  s{number}: {{do: It, act: {act}, then: {draw(onward)}{needs}}}")
        else:
            tree = draw(st.sampled_from(["make_dead", "restore"]))
            circuit = draw(st.sampled_from(["line", "control"]))
            way = f"then: {{done: {draw(onward)}}}"
            lines.append(f"  s{number}: {{call: {tree}, with: {circuit}, {way}{needs}}}")
    lines.append(f"  s{last}: {{stop: unsafe}}")
    return "\n".join(lines).encode()


def answer(ask, data):
    if ask.kind == "look":
        return Saw(AT, ask.step, data.draw(st.sampled_from(ask.choices)))
    if ask.kind == "do":
        return Did(AT, ask.step)
    if ask.kind == "measure":
        typed = {reading.name: Typed("121" if reading.known_live else "0") for reading in ask.readings}
        return Read(AT, ask.step, typed)
    if ask.kind in ("stop", "finding", "handed_over"):
        return GoOn(AT, ask.step)
    return TakeUp(AT, "no_heat")


@settings(max_examples=80, suppress_health_check=[HealthCheck.too_slow])
@given(trees(), trees(), st.data())
def test_the_house_at_every_question_was_foreseen(no_heat, trips, data):
    kept = {name: text for name, text in SOUND.items() if not name.startswith("complaint/")}
    library = from_texts(kept | {"complaint/no_heat.yaml": no_heat, "complaint/trips.yaml": trips})
    assert not library.problems, "\n".join(map(str, library.problems))
    study = Study(library.vocabulary, library.trees)
    visit = fold(begin(library), Opened(AT, (("no_heat", "x"), ("trips", "y"))))
    for _ in range(40):
        ask = asked(visit)
        if ask.body is not None and ask.kind in ("look", "do", "measure"):
            ready = study.trace(Instance(ask.tree.name, ask.circuit if ask.tree.takes else None)).ready
            foreseen = ready[ask.body.common.name]
            for circuit, state in visit.house.circuits.items():
                assert state in {chain[0] for chain in foreseen[circuit]}, (ask.step, circuit, state)
        visit = fold(visit, answer(ask, data))
