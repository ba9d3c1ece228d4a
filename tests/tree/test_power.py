"""Power states: what meets a need, what follows a switch, what a proof is worth."""

from assistant.house.model import Act, Circuit, Vocabulary
from assistant.house.place import Place
from assistant.tree import power
from assistant.tree.model import Common, Do, Measure, Way

HERE = Place("house.yaml", 1, 1)


def circuit(name, fed_by=None):
    return Circuit(name, name, "make_dead", "restore", fed_by, (), HERE)


def act(name, fits=None, **sets):
    return Act(name, name, sets, None, fits, None, HERE)


HOUSE = Vocabulary(
    circuits={c.name: c for c in (circuit("line"), circuit("control", "line"), circuit("bell", "control"),
                                  circuit("panel"))},
    acts={a.name: a for a in (act("breaker_off", line="off"), act("breaker_on", line="live"),
                              act("breaker_on_bell_out", line="live", bell="off"), act("look_around"),
                              act("bell_switch_on", bell="live"),
                              act("fit_motor", fits="motor"))})


def test_looking_meets_a_live_need_but_never_a_dead_one():
    states = {"line": "unknown", "control": "off", "bell": "dead"}
    assert power.lacking({"line": "live"}, states) == []
    assert power.lacking({"line": "off"}, states) == [("line", "off")]
    assert power.lacking({"control": "off", "bell": "off"}, states) == []
    both = {"control": "dead", "bell": "live"}
    assert power.lacking(both, states) == [("control", "dead"), ("bell", "live")]
    assert power.lacking({"nowhere": "live"}, states) == []


def test_what_is_fed_follows_and_what_is_not_stays():
    states, epochs = power.after_act(HOUSE, "breaker_off", power.all_unknown(HOUSE), {})
    assert states == {"line": "off", "control": "off", "bell": "off", "panel": "unknown"}
    assert epochs == {"line": 1, "control": 1, "bell": 1}
    states, epochs = power.after_act(HOUSE, "breaker_on_bell_out", states, epochs)
    assert states == {"line": "live", "control": "live", "bell": "off", "panel": "unknown"}
    assert epochs == {"line": 2, "control": 2, "bell": 2}


def test_an_act_that_touches_nothing_changes_nothing():
    states, epochs = {"line": "dead"}, {"line": 4}
    assert power.after_act(HOUSE, "look_around", states, epochs) == (states, epochs)
    assert power.after_act(HOUSE, "no such act", states, epochs) == (states, epochs)


def test_a_proof_ends_with_the_next_act_on_its_circuit():
    states = power.after_proof({"line": "off", "control": "off"}, ["line"])
    assert states == {"line": "dead", "control": "off"}
    assert power.after_act(HOUSE, "breaker_off", states, {})[0]["line"] == "off"
    assert power.after_act(HOUSE, "breaker_on", states, {})[0]["line"] == "live"


def test_nothing_is_live_behind_a_feeder_that_is_off():
    states, _ = power.after_act(HOUSE, "breaker_off", power.all_unknown(HOUSE), {})
    assert power.after_act(HOUSE, "bell_switch_on", states, {})[0]["bell"] == "off"
    assert power.after_act(HOUSE, "bell_switch_on", power.all_unknown(HOUSE), {})[0]["bell"] == "live"


def test_a_part_fitted_opens_a_new_epoch_and_ends_proofs():
    unknown = power.all_unknown(HOUSE)
    states, epochs = power.after_act(HOUSE, "fit_motor", {**unknown, "line": "dead"}, {"line": 3})
    assert states == {**unknown, "line": "off"}
    assert epochs == {"line": 4, "control": 1, "bell": 1, "panel": 1}


def test_arguments_are_left_alone():
    states, epochs = {"line": "live"}, {"line": 1}
    power.after_act(HOUSE, "breaker_off", states, epochs)
    power.after_proof(states, ["line"])
    assert (states, epochs) == ({"line": "live"}, {"line": 1})


def test_a_ring_of_feeds_ends():
    ring = Vocabulary(circuits={"a": circuit("a", "b"), "b": circuit("b", "a")},
                      acts={"off": act("off", b="off")})
    assert power.fed_from(ring, "a") == ["a", "b"]
    assert power.after_act(ring, "off", power.all_unknown(ring), {})[0] == {"a": "off", "b": "off"}


def step(verifies=(), **needs):
    common = Common("s", HERE, needs={("$circuit" if k == "bound" else k): v for k, v in needs.items()})
    if verifies:
        return Measure(common, "Prove it dead", (), True, Way("next", HERE), None, None, tuple(verifies))
    return Do(common, "Do it", None, None, Way("next", HERE))


def test_needs_are_the_step_s_own_with_the_circuit_bound():
    assert power.needs_of(step(line="live")) == {"line": "live"}
    assert power.needs_of(step(bound="dead", line="off"), "control") == {"control": "dead", "line": "off"}
    assert power.needs_of(step(bound="dead")) == {}
    assert power.proves_dead(step(line="live")) == ()


def test_a_proof_needs_its_circuit_off_unless_it_says_more():
    assert power.needs_of(step(verifies=["$circuit"]), "line") == {"line": "off"}
    assert power.needs_of(step(verifies=["line"], line="dead")) == {"line": "dead"}
    assert power.proves_dead(step(verifies=["$circuit", "panel"]), "line") == ("line", "panel")
