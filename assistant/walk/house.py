"""What the house is like now: power per circuit, what has been jumpered, held, opened or fitted.

Going back in a walk never changes this: nobody un-throws a breaker by pressing Back.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from assistant.house.model import Vocabulary
from assistant.tree import power


@dataclass(frozen=True)
class Undone:
    """An act that must be followed by another before signing: the door switch that is still held in."""

    act: str
    undo: str
    step: str
    at: str
    sure: bool = True
    """False after an interruption: somebody may have undone it meanwhile."""


@dataclass(frozen=True)
class House:
    """Power, things to undo, tallies, parts fitted and acts done."""

    circuits: dict[str, str] = field(default_factory=dict)
    epochs: dict[str, int] = field(default_factory=dict)
    undone: tuple[Undone, ...] = ()
    tallies: dict[str, int] = field(default_factory=dict)
    fitted: tuple[tuple[str, str], ...] = ()
    """(part, time) for each part put in."""
    acts: tuple[tuple[str, str], ...] = ()
    """(act, time) for everything done, in order."""
    left_off: frozenset[str] = frozenset()
    """Circuits that were off when the work was interrupted and are not known to be on again."""


def as_met(vocabulary: Vocabulary) -> House:
    """The house at the start of a visit: every circuit unknown."""
    return House(power.all_unknown(vocabulary), dict.fromkeys(vocabulary.circuits, 0))


def resumed(house: House, vocabulary: Vocabulary) -> House:
    """After any interruption nobody knows what was switched: every circuit unknown, in a new epoch."""
    off = {name for name, state in house.circuits.items() if state in ("off", "dead")}
    return replace(
        house,
        left_off=house.left_off | off,
        circuits=power.all_unknown(vocabulary),
        epochs={name: epoch + 1 for name, epoch in house.epochs.items()},
        undone=tuple(replace(entry, sure=False) for entry in house.undone),
    )


def acted(house: House, vocabulary: Vocabulary, act_name: str, step: str, at: str) -> House:
    """The house after an act."""
    act = vocabulary.acts[act_name]
    circuits, epochs = power.after_act(vocabulary, act_name, house.circuits, house.epochs)
    undone = tuple(entry for entry in house.undone if entry.undo != act_name)
    if act.undo:
        undone = tuple(entry for entry in undone if entry.act != act_name) + (
            Undone(act_name, act.undo, step, at),
        )
    tallies = dict(house.tallies)
    if act.counts:
        tallies[act.counts] = tallies.get(act.counts, 0) + 1
    fitted = house.fitted
    if act.fits:
        fitted += ((act.fits, at),)
    circuits |= {name: house.circuits[name] for name in _own_off(house, vocabulary, circuits, act.sets)}
    left_off = frozenset(name for name in house.left_off if circuits[name] == "unknown")
    return House(circuits, epochs, undone, tallies, fitted, house.acts + ((act_name, at),), left_off)


def _own_off(house: House, vocabulary: Vocabulary, after: dict[str, str], sets: dict[str, str]) -> list[str]:
    """Circuits whose own plug is out: power that comes back to what feeds them does not reach them."""
    found = []
    for name, state in house.circuits.items():
        if state in ("off", "dead") and after[name] == "live" and name not in sets:
            own = [vocabulary.acts[act].sets.get(name) for act, _ in house.acts if act in vocabulary.acts]
            if next((one for one in reversed(own) if one), None) == "off":
                found.append(name)
    return found


def made_safe(house: House, vocabulary: Vocabulary) -> House:
    """After a stop page was left as done: what it says was switched off, and must be switched on again."""
    everything = frozenset(name for name, circuit in vocabulary.circuits.items() if circuit.restore)
    return replace(resumed(house, vocabulary), left_off=everything)


def lacking(house: House, needs: dict[str, str]) -> list[tuple[str, str]]:
    """The needs that the house does not meet; a circuit left off is not taken for live."""
    missing = power.lacking(needs, house.circuits)
    return missing + [
        (name, wanted)
        for name, wanted in needs.items()
        if wanted == "live" and name in house.left_off and house.circuits[name] == "unknown"
    ]


def proved_dead(house: House, circuits: tuple[str, ...]) -> House:
    """The house after a dead-proof of these circuits."""
    return replace(house, circuits=power.after_proof(house.circuits, circuits))


def already(house: House, vocabulary: Vocabulary, act_name: str) -> bool:
    """Whether doing this act now would change nothing: it is switched, held or opened already."""
    act = vocabulary.acts[act_name]
    if act.fits or act.counts:
        return False
    if act.sets:
        held = all(_is(house.circuits.get(name), state) for name, state in act.sets.items())
        return held and (not act.undo or any(entry.act == act_name and entry.sure for entry in house.undone))
    return bool(act.undo) and any(entry.act == act_name and entry.sure for entry in house.undone)


def _is(present: str | None, wanted: str) -> bool:
    return present == wanted or (wanted == "off" and present == "dead")
