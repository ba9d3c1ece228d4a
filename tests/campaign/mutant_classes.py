"""Why a spoiled tree that nobody noticed was not noticed: a class for each, with its verdict.

`equivalent`: people and program do the same with it. `style`: the same is found, mended and proved, and
the page or the report says less. `for the rig`: it leads elsewhere, and only a walk through a fault can tell;
which of them it tells is sampled by mutants_on_the_rig.py. `missed`: a foreman would strike it out, and
nothing here does; the class says what would.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict

from assistant.tree.check.study import Study
from assistant.tree.library import Library
from assistant.tree.model import Compute, readings_of
from assistant.tree.power import MEETS, needs_of

CLASSES = {
    "asks for more": ("equivalent", "proved dead where off was asked: one proof more"),
    "met on every way": ("equivalent", "each way there leaves the circuit so, or the same is put in front"),
    "caution that the act shows": ("equivalent", "the page shows the cautions of the act itself"),
    "beyond what a meter shows": ("equivalent", "no ohmmeter reads so far; nobody is asked about a slip"),
    "renamed": ("equivalent", "a name that nothing else speaks of"),
    "words of a question": ("style", "what is asked reads badly and is asked all the same"),
    "normal, decides nothing": ("style", "no safety's condition reads it; gauge and report lose a word"),
    "one fact fewer shown": ("style", "the deciding reading and two facts stay; a page shows less"),
    "part that costs nothing": ("style", "nothing is renewed; the report names no part or another small one"),
    "caution of several": ("style", "another caution of the same step stays"),
    "answer elsewhere, walked": ("for the rig", "walks come to the step and give another answer"),
    "answer elsewhere, unwalked": ("for the rig", "no recorded walk comes to the step"),
    "argument swapped": ("for the rig", "a sum or an unbalance stays so, a difference changes its sign"),
    "undecided way": ("for the rig", "only a reading that can't be taken or is too close goes there"),
    "other proof": ("for the rig", "it reads one of the same spots, and passes on a sound house"),
    "act not done": ("for the rig", "what it leaves open shows in the house, not in the tree"),
    "caution of nothing named": ("missed", "a caution: of the thing, spot, act or event in house.yaml"),
    "need of nothing named": ("missed", "a needs: of the thing, spot or act in house.yaml"),
    "told the other way round": ("missed", "more pairs of words in band_words"),
    "spot that the page names too": ("missed", "words of that spot that no other on the page has"),
    "source of the same quantity": ("missed", "the source's own value in by_source.yaml"),
    "slip of the key too early": ("missed", "an up_to: of the spot or circuit in house.yaml"),
    "limit stated once": ("missed", "a row of limits.yaml, or the source's value in by_source.yaml"),
    "cause fewer": ("missed", "a dies_of: of the part in house.yaml"),
    "other": ("missed", "nothing yet"),
}


def class_of(mutant, address: str, library: Library, sound: Study, walks) -> str:
    """The name of a survivor's class."""
    kind, tree = mutant.kind, library.trees[address.partition(".")[0]]
    step = tree.steps[address.partition(".")[2]]
    if kind in ("need dropped", "need changed"):
        return _need(mutant, step, tree, sound)
    if kind in ("caution dropped", "one caution dropped"):
        act = library.vocabulary.acts.get(getattr(step, "act", None) or "")
        if act is not None and set(step.common.caution) <= {*act.caution, *act.warns}:
            return "caution that the act shows"
        return "caution of several" if kind.startswith("one") else "caution of nothing named"
    ohms = any(one.kind in ("resistance", "insulation") for one in readings_of(step))
    if kind == "plausible narrowed" and ohms:
        return "beyond what a meter shows"
    if kind == "normal dropped":
        names = {reading.name or step.common.name for reading in readings_of(step)}
        names |= {name for name, _ in step.page} if isinstance(step, Compute) else set()
        rests = {name for some in library.vocabulary.conditions.values() for name in some}
        return "normal, decides nothing" if not names & rests else "other"
    if kind in ("pointed elsewhere", "choices swapped", "way on dropped"):
        return _way(mutant, step, walks.comes_to(address))
    return {
        "one fact dropped": "one fact fewer shown", "part dropped": "part that costs nothing",
        "part changed": "part that costs nothing", "other proof": "other proof",
        "act dropped": "act not done", "other act": "act not done",
        "words of bands swapped": "told the other way round", "other point": "spot that the page names too",
        "other source": "source of the same quantity", "source removed": "source of the same quantity",
        "plausible narrowed": "slip of the key too early", "band moved": "limit stated once",
        "limits swapped": "limit stated once", "one cause dropped": "cause fewer",
    }.get(kind, "other")


def _need(mutant, step, tree, sound: Study) -> str:
    if mutant.kind == "need changed" and "off" in mutant.was and "dead" in mutant.now:
        return "asks for more"
    # off and dead are met by the same procedure, so that they differ only for who comes with it off, unproved
    less = mutant.kind == "need changed" and mutant.was.count("dead") > mutant.now.count("dead") \
        and mutant.now.count("off") > mutant.was.count("off")
    if mutant.kind == "need dropped" or less:
        for one in sound.instances_of(tree):
            houses = sound.trace(one).arrivals.get(step.common.name, {})
            for circuit, wanted in needs_of(step, one.circuit).items():
                met = {"unknown", "live", "dead"} if less else MEETS[wanted]
                if any(chain[0] not in met for chain in houses.get(circuit, ())):
                    return "need of nothing named"
        return "met on every way"
    return "need of nothing named"


def _way(mutant, step, walked: bool) -> str:
    if re.match(r"(name|source|proof|condemns|act|sees|quantity|unit|compute|call):", mutant.was):
        return "renamed"
    if re.match(r"(measure|look|do|watch|why|how|ask|says|customer):", mutant.was):
        return "words of a question"
    if mutant.was.startswith("from: "):
        return "argument swapped"
    if re.match(r"(close|cannot): ", mutant.was) and not re.match(r"\w+: \w+, ", mutant.was):
        return "undecided way"
    return "answer elsewhere, walked" if walked else "answer elsewhere, unwalked"


def classes_table(left: list[tuple]) -> list[str]:
    """The survivors by class, worst last, each with its verdict, its kinds and its trees."""
    rows: dict[str, list] = defaultdict(list)
    for mutant, name in left:
        rows[name].append(mutant)
    lines, verdicts = [], Counter()
    for name, (verdict, why) in CLASSES.items():
        if name not in rows:
            continue
        verdicts[verdict] += len(rows[name])
        kinds = Counter(mutant.kind for mutant in rows[name])
        trees = Counter(_tree(mutant.file) for mutant in rows[name])
        lines.append(f"{len(rows[name]):4}  {verdict:12} {name}: {why}")
        lines.append(" " * 6 + ", ".join(f"{kind} {times}" for kind, times in kinds.most_common())
                     + " | " + ", ".join(f"{tree} {times}" for tree, times in trees.most_common()))
    told = ", ".join(f"{one} {times}" for one, times in verdicts.most_common())
    return [f"survivors: {len(left)}: {told}", *lines]


def _tree(file: str) -> str:
    purpose, _, name = file.partition("/")
    return name.removesuffix(".yaml") if purpose == "complaint" else f"{purpose} trees"
