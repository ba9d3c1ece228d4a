"""Graphs, what holds on every path, and states carried along paths, on trees that can be followed by eye."""

from assistant.tree.check.always import Always, decided, fewest, read, without
from assistant.tree.check.circuits import Instance
from assistant.tree.check.graph import Graph
from assistant.tree.check.search import Search
from assistant.tree.check.study import Study
from assistant.tree.library import from_texts
from assistant.tree.model import Do
from tests.tree.check.test_bad_examples import SOUND

HEAD = "format: 1\npurpose: proof\ntitle: T\nstart: a\nsteps:\n"
ENDS = "  yes: {return: proved}\n  no: {return: not_proved}\n"


def graph(steps):
    library = from_texts(SOUND | {"proof/drawn.yaml": (HEAD + steps + ENDS).encode()})
    assert not library.problems, "\n".join(map(str, library.problems))
    return Graph(library.trees["drawn"])


def measure(name, bands, more=""):
    return (f"  {name}:\n    measure: M\n    quantity: count\n    name: n_{name}\n    bands: [{bands}]\n"
            f"    source: shop\n{more}")


def ways(graph, step):
    return [(edge.words, edge.to, edge.sure, decided(edge), list(read(edge))) for edge in graph.out[step]]


def test_a_reading_decides_where_its_bands_part():
    low_high = "{under: 1, is: low, then: no}, {is: high, then: yes}"
    drawn = graph(measure("a", low_high, "    close: no\n    cannot: no\n"))
    assert ways(drawn, "a") == [
        ("n_a: low", "no", True, ["n_a"], ["n_a"]), ("n_a: high", "yes", True, ["n_a"], ["n_a"]),
        ("too close to call", "no", False, [], ["n_a"]), ("can't be taken", "no", False, [], [])]


def test_bands_that_lead_one_way_decide_nothing():
    drawn = graph(measure("a", "{under: 1, is: low, then: yes}, {is: high, then: yes}", "    cannot: no\n"))
    assert ways(drawn, "a")[0] == ("n_a: low or high", "yes", True, [], ["n_a"])


def test_two_bands_with_one_way_are_told_from_the_third():
    low_so = "{under: 1, is: low, then: yes}, {under: 2, is: so, then: yes}"
    drawn = graph(measure("a", f"{low_so}, {{is: high, then: no}}"))
    first, second = drawn.out["a"]
    assert [band.label for band in first.decides[0].bands] == ["low", "so"]
    assert [band.label for band in second.decides[0].bands] == ["high"]
    assert decided(first) == []  # a value between low and so goes this way, and is no fact
    assert decided(second) == ["n_a"]


def test_two_bands_with_one_way_and_another_between_them_are_facts():
    low_so = "{under: 1, is: low, then: yes}, {under: 2, is: so, then: no}"
    drawn = graph(measure("a", f"{low_so}, {{is: high, then: yes}}"))
    assert [decided(edge) for edge in drawn.out["a"]] == [["n_a"], ["n_a"]]


GROUP = """  a:
    measure: Page
    source: shop
    readings:
      one: {ask: O, quantity: count, bands: [{under: 1, is: low, then: no}, {is: high}]}
      two: {ask: T, quantity: count, bands: [{under: 1, is: low}, {is: high, then: b}]}
      three: {ask: T, quantity: count, bands: [{under: 1, is: low, then: no}, {is: high, then: yes}]}
    close: no
"""


def test_on_a_page_the_first_reading_with_a_way_decides_and_those_before_it_are_decided_too():
    drawn = graph(GROUP + "  b: {do: B, then: yes}\n")
    assert [(words, to, names) for words, to, _, names, _ in ways(drawn, "a")] == [
        ("one: low", "no", ["one"]), ("two: high", "b", ["one", "two"]),
        ("three: low", "no", ["one", "two", "three"]),
        ("three: high", "yes", ["one", "two", "three"]), ("too close to call", "no", [])]


def diamond():
    low_high = "{under: 1, is: low, then: c}, {is: high, then: no}"
    return graph("  a: {look: Which?, sees: filter, choices: {clean: b, clogged: c}}\n"
                 + measure("b", low_high, "    close: c\n")
                 + measure("c", "{under: 1, is: low, then: d}, {is: high, then: d}")
                 + measure("d", "{under: 1, is: low, then: yes}, {is: high, then: no}"))


def test_what_holds_on_every_path_and_the_shortest_path_without_it():
    drawn = diamond()
    names = ["n_a", "n_b", "n_c", "n_d"]
    assert Always(drawn, read).of("d", names) == {"n_c"}
    assert Always(drawn, read).of("yes", names) == {"n_c", "n_d"}
    assert Always(drawn, decided).of("yes", names) == {"n_d"}
    assert without(drawn, read, "n_b", "d") == ["a", "c", "d"]
    assert without(drawn, read, "n_c", "d") == []


def test_the_path_with_the_fewest_facts():
    facts, path = fewest(diamond(), decided, frozenset({"n_b", "n_d"}), "yes")
    assert (facts, path) == ({"n_d"}, ["a", "c", "d", "yes"])
    facts, path = fewest(diamond(), decided, frozenset({"n_b"}), "d")
    assert (facts, path) == (frozenset(), ["a", "c", "d"])


def test_an_undecided_way_is_told_on_the_path():
    low_high = "{under: 1, is: low, then: b}, {is: high, then: no}"
    drawn = graph(measure("a", low_high, "    close: b\n")
                  + measure("b", "{under: 1, is: low, then: yes}, {is: high, then: no}"))
    assert without(drawn, decided, "n_a", "yes") == ["a (too close to call)", "b", "yes"]
    assert fewest(drawn, decided, frozenset({"n_a"}), "b")[1] == ["a (too close to call)", "b"]


def test_order_reach_and_back():
    drawn = diamond()
    assert drawn.order.index("a") < drawn.order.index("b") < drawn.order.index("c") < drawn.order.index("d")
    assert drawn.path("yes") == ["a", "c", "d", "yes"]
    assert drawn.back is None
    assert [edge.start for edge in drawn.into["c"]] == ["a", "b", "b"]
    ring = graph("  a: {look: A, sees: filter, choices: {clean: b, clogged: yes}}\n  b: {do: B, then: a}\n")
    assert (ring.back.start, ring.back.to) == ("b", "a")


def acts_done(files):
    """Where each tree can be asked, with the acts done on the way, those of procedures in front included."""
    library = from_texts(SOUND | files)
    study = Study(library.vocabulary, library.trees)

    def cross(_tree, step, _edge, state):
        return state | {step.act} if isinstance(step, Do) and step.act else state

    return study, Search(study, cross)


def test_a_state_goes_through_the_procedures_that_are_put_in_front():
    study, search = acts_done({})
    walked = search.walk(Instance("holds", None), [frozenset()])
    off = frozenset({"stat_off", "breaker_off"})
    assert set(walked.ready()) >= {("ohms", frozenset()), ("ohms", off)}  # left out where it is dead already
    assert study.put_in(Instance("holds", None), "ohms") == [(Instance("make_dead", "line"), True)]
    assert walked.path("proved", off) == ["ohms", "proved"]


def test_a_state_comes_back_from_a_call_by_the_return_it_was_called_for():
    called = HEAD + ("  a: {call: dust, then: {found: b, ruled_out: yes}}\n"
                     "  b: {do: Off, act: stat_off, then: no}\n") + ENDS
    _, search = acts_done({"proof/drawn.yaml": called.encode()})
    after = search.after(Instance("drawn", None), frozenset())
    assert after == {"proved": {frozenset()}, "not_proved": {frozenset({"stat_off"})}}


def test_everywhere_follows_calls_and_findings():
    study, search = acts_done({})
    found = search.everywhere({Instance("trips", None): {frozenset({"begun"})}},
                              lambda finding, state: [(finding.proof, state | {"repaired"})])
    states = {state for _, state in found[Instance("holds", None)].ready()}
    assert all({"begun", "repaired", "reset_breaker"} <= state for state in states)
    assert Instance("make_dead", "line") in found
    assert Instance("lights", None) not in found
    assert study.instances_of(study.trees["make_dead"]) == [Instance("make_dead", "line"),
                                                            Instance("make_dead", "control")]
