"""Mistakes in a good tree file: what is changed, how the loader tells it, and whether the schema for editors
sees it.

A schema knows no names of the vocabulary, no other step and no units; everything else it should see too.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

GOOD = Path(__file__).parent / "examples" / "good"


@dataclass(frozen=True)
class Mistake:
    file: str
    old: str
    new: str
    rule: str
    words: str
    seen_by_schema: bool = False

    @property
    def text(self) -> str:
        text = (GOOD / self.file).read_text(encoding="utf-8")
        assert text.count(self.old) == 1, (self.old, text.count(self.old))
        return text.replace(self.old, self.new)

    @property
    def lines(self) -> range:
        """The lines of the step that holds the changed place, where it may be told."""
        good = (GOOD / self.file).read_text(encoding="utf-8")
        changed = good.split(self.old)[0].count("\n") + 1
        lines = good.split("\n")
        steps = [number for number, line in enumerate(lines, 1) if re.match(r"  \w+:", line)]
        first = max([number for number in steps if number <= changed], default=1)
        after = min([number for number in steps if number > changed], default=len(lines))
        return range(first, after + self.new.count("\n") + 1)


AIR, DEAD = "complaint/no_air.yaml", "procedure/make_dead.yaml"
CAUSE, PROOF = "cause/water.yaml", "proof/blower_runs.yaml"
SEEN = True
AFTER = "\n    caution: [line_voltage, rotating"
NEEDS = "needs: {line: live}" + AFTER
LAST = "  no_supply: {hand_over: tripped_breaker}"
CHOICES = "choices: {on: wheel, off: switched_off}"
FROM = "from: {supply: t_supply, return_air: t_return}"

LIVE = "         bands: [{under: 90, is: not live, then: leave}, {is: live}]}\n      line_neutral"

# fmt: off
MISTAKES = [
    # the top of a file
    Mistake(AIR, "format: 1\n", "", "missing", "'format'", SEEN),
    Mistake(AIR, "format: 1\n", "format: 2\n", "format", "reads format 1", SEEN),
    Mistake(AIR, "purpose: complaint", "purpose: complain", "value", "did you mean 'complaint'", SEEN),
    Mistake(AIR, "title: The furnace comes on but nothing blows\n", "", "missing", "'title'", SEEN),
    Mistake(AIR, "title: The furnace comes on but nothing blows\n", "title:\n", "missing", "'title' is empty",
            SEEN),
    Mistake(AIR, "title: The furnace comes on but nothing blows\n", "title: [a]\n", "type",
            "must be one text", SEEN),
    Mistake(AIR, "start: switch\n", "", "missing", "'start'", SEEN),
    Mistake(AIR, "start: switch\n", "start: swich\n", "way", "did you mean 'switch'"),
    Mistake(AIR, "covers: forced", "cover: forced", "field", "did you mean 'covers'", SEEN),
    Mistake(AIR, "start: switch\n", "start: switch\ntakes: [circuit]\n", "field",
            "only stands in a procedure", SEEN),
    Mistake(DEAD, "takes: [circuit]", "takes: [line]", "value", "takes [circuit]", SEEN),
    Mistake(CAUSE, "start: look", "covers: x\nstart: look", "field", "only stands in a complaint", SEEN),
    # steps and verbs
    Mistake(AIR, LAST, "  no_supply: tripped_breaker", "type", "needs its fields", SEEN),
    Mistake(AIR, LAST, "  no_supply: {handover: tripped_breaker}", "verb", "did you mean 'hand_over'", SEEN),
    Mistake(AIR, LAST, "  no_supply: {why: x}", "verb", "it needs one of look", SEEN),
    Mistake(AIR, LAST, "  no_supply: {hand_over: tripped_breaker, stop: electrician}", "verb", "2 verbs",
            SEEN),
    Mistake(AIR, "  lift:\n    do: Take", "  Lift Off:\n    do: Take", "name", "write 'lift_off'", SEEN),
    Mistake(AIR, "    why: This kind", "    whi: This kind", "field", "did you mean 'why'", SEEN),
    Mistake(AIR, "    minutes: 5\n", "    minutes: five\n", "number", "no number", SEEN),
    Mistake(AIR, "    minutes: 5\n", "    minutes: 0\n", "number", "more than 0", SEEN),
    Mistake(AIR, "    how: [Leads", "    how: [[Leads], ", "type", "must be one text", SEEN),
    Mistake(AIR, "caution: [rotating_parts]\n    choices", "caution: [rotatin_parts]\n    choices", "name",
            "did you mean 'rotating_parts'"),
    Mistake(AIR, "caution: [rotating_parts]\n    choices", "caution: rotating_parts\n    choices", "type",
            "must be a list", SEEN),
    Mistake(AIR, NEEDS, "needs: {lone: live}" + AFTER, "name", "did you mean 'line'"),
    Mistake(AIR, NEEDS, "needs: {line: hot}" + AFTER, "value", "live, off, dead", SEEN),
    Mistake(AIR, NEEDS, "needs: line" + AFTER, "type", "must be fields", SEEN),
    Mistake(AIR, NEEDS, "needs: {$circuit: live}" + AFTER, "circuit", "takes: [circuit]"),
    # look
    Mistake(AIR, "    sees: service_switch\n", "", "missing", "'sees'", SEEN),
    Mistake(AIR, "    sees: service_switch\n", "    sees: servis_switch\n", "name",
            "did you mean 'service_switch'"),
    Mistake(AIR, CHOICES, "choices: {on: weel, off: switched_off}", "way", "did you mean 'wheel'"),
    Mistake(AIR, CHOICES, "choices: {on: wheel, of: switched_off}", "choice", "did you mean 'off'"),
    Mistake(AIR, CHOICES, "choices: {}", "missing", "'choices' is empty", SEEN),
    Mistake(AIR, CHOICES, "choices: [wheel, switched_off]", "type", "must be fields", SEEN),
    # watch
    Mistake(AIR, "within: 150 s", "within: 150", "number", "150 s, 5 min", SEEN),
    Mistake(AIR, "within: 150 s", "within: 150 sec", "number", "150 s, 5 min", SEEN),
    Mistake(AIR, "    within: 150 s\n", "", "missing", "'within'", SEEN),
    Mistake(AIR, "events: [inducer.runs, burner.lights,", "events: [inducer.runs, burner.light,", "name",
            "did you mean 'burner.lights'"),
    Mistake(AIR, "missing: {inducer.runs: unproved, ", "missing: {", "missing", "a way for 'inducer.runs'"),
    Mistake(AIR, "missing: {inducer.runs: unproved, ",
            "missing: {inducer.run: unproved, inducer.runs: unproved, ", "choice",
            "did you mean 'inducer.runs'"),
    Mistake(AIR, "    then: rise\n", "", "missing", "'then'", SEEN),
    Mistake(AIR, "{ask: Return air, quantity", "{quantity", "missing", "'ask'", SEEN),
    Mistake(AIR, "      t_return:\n", "      t_x1: &x\n", "yaml", "anchor", SEEN),
    # readings
    Mistake(AIR, "    quantity: pressure\n", "    quantity: presure\n", "name", "did you mean 'pressure'",
            SEEN),
    Mistake(AIR, "    quantity: pressure\n", "", "missing", "'quantity'", SEEN),
    Mistake(AIR, "    unit: inwc\n", "    unit: V\n", "unit", "there is inwc"),
    Mistake(AIR, "    unit: inwc\n", "    unit: in.w.c.\n", "unit", "write 'inwc'", SEEN),
    Mistake(AIR, "    unit: inwc\n", "", "missing", "'unit'", SEEN),
    Mistake(AIR, "at: [static.supply, static.return]", "at: [static.suply, static.return]", "name",
            "did you mean 'static.supply'"),
    Mistake(AIR, "plausible: [0, 3]\n", "plausible: [3, 0]\n", "number", "low one comes first"),
    Mistake(AIR, "plausible: [0, 3]\n", "plausible: [0]\n", "type", "two numbers", SEEN),
    Mistake(AIR, "plausible: [0, 3]\n", "plausible: [0, 3 inwc]\n", "number", "no number", SEEN),
    Mistake(AIR, "    name: static\n", "    name: Static\n", "name", "write 'static'", SEEN),
    Mistake(AIR, "    name: static\n", "    name: static_rated\n", "name", "is a plate value"),
    Mistake(AIR, "    name: static\n", "    name: rpm\n", "name", "is a unit"),
    Mistake(AIR, "    name: static\n", "    name: t_supply\n", "name", "the name of two readings"),
    Mistake(AIR, "safe: {under: 1.25 * supply_volts, ", "safe: {", "missing", "'over', 'under' or both",
            SEEN),
    Mistake(AIR, "stop: electrician, source: motor_tolerance}", "stop: electricain, source: motor_tolerance}",
            "name", "did you mean 'electrician'"),
    Mistake(AIR, "stop: electrician, source: motor_tolerance}", "stop: electrician, source: motor_tolerence}",
            "name", "did you mean 'motor_tolerance'"),
    Mistake(AIR, "    meter: low impedance\n    needs: {line: live}\n",
            "    meter: [low]\n    needs: {line: live}\n", "type", "must be one text", SEEN),
    # bands and limits
    Mistake(AIR, "- {under: static_rated, is: within the plate, ", "- {is: within the plate, ", "band",
            "needs 'under'"),
    Mistake(AIR, "- {is: high, then: unproved}", "- {under: 5, is: high, then: unproved}", "band",
            "last band has no 'under'"),
    Mistake(AIR, "- {is: high, then: unproved}", "- {then: unproved}", "missing", "'is'", SEEN),
    Mistake(AIR, "- {is: high, then: unproved}", "- {is: high}", "missing", "this band needs 'then'", SEEN),
    Mistake(AIR, "- {is: high, then: unproved}", "- {is: within the plate, then: unproved}", "band",
            "two bands"),
    Mistake(AIR, "- {is: high, then: unproved}", "- high", "type", "a band is fields", SEEN),
    Mistake(AIR, "- {is: high, then: unproved}", "- {is: high, then: unprovd}", "way",
            "did you mean 'unproved'"),
    Mistake(AIR, "is: within the plate, then: unproved, normal: yes",
            "is: within the plate, then: unproved, normal: maybe", "type", "yes or no", SEEN),
    Mistake(AIR, "is: within the plate, then: unproved, normal: yes",
            "is: within the plate, then: unproved, norml: yes", "field", "did you mean 'normal'", SEEN),
    Mistake(AIR, "under: static_rated", "under: static_rate", "name", "did you mean 'static_rated'"),
    Mistake(AIR, "under: static_rated", "under: supply_volts", "unit", "something in V"),
    Mistake(AIR, "under: static_rated", "under: static_rated + 0.1", "unit", "write its unit"),
    Mistake(AIR, "under: static_rated", "under: static_rated + 0.1 inch", "unit", "no unit"),
    Mistake(AIR, "under: static_rated", "under: .5", "limit", "0.5"),
    Mistake(AIR, "under: static_rated", "under: 0,5", "field", "no field '5'", SEEN),
    Mistake(AIR, "under: static_rated", "under: 1 / 0", "limit", "no number"),
    Mistake(AIR, "under: static_rated", "under: [1]", "type", "must be one text", SEEN),
    Mistake(AIR, "under: static_rated", "under: ''", "missing", "is empty", SEEN),
    Mistake(AIR, "under: static_rated", "under: '(supply_volts + rise_min) * static_rated * rise_max'",
            "limit", "4 plate values"),
    Mistake(AIR, "under: 100 ohm", "under: 100 V", "unit", "something in V"),
    # groups and the proof that a circuit is dead
    Mistake(DEAD, "    then: done\n", "", "missing", "needs 'then'", SEEN),
    Mistake(DEAD, "verifies: [line, control]", "verifies: [line, contrl]", "name", "did you mean 'control'"),
    Mistake(DEAD, "known_live: yes,\n" + LIVE, "known_live: true,\n" + LIVE, "type", "yes or no"),
    Mistake(DEAD, "      control:\n        {ask: R to C,",
            "      line_ground2: x\n      control:\n        {ask: R to C,", "type", "needs its fields", SEEN),
    Mistake(AIR, "    name: winding_ohms\n", "    name: winding_ohms\n    verifies: [line]\n", "field",
            "stands in a measure with 'readings'", SEEN),
    # compute
    Mistake(AIR, "compute: heat_rise", "compute: heat_ries", "name", "did you mean 'heat_rise'"),
    Mistake(AIR, "compute: heat_rise", "compute: static_split", "name", "gives several results"),
    Mistake(AIR, FROM, "from: {supply: t_supply}", "missing", "'return_air'"),
    Mistake(AIR, FROM, "from: {supply: t_supply, return_ar: t_return, return_air: t_return}", "field",
            "did you mean 'return_air'"),
    Mistake(AIR, FROM, "from: {supply: t_supply, return_air: t_retrn}", "name", "did you mean 't_return'"),
    Mistake(AIR, FROM, "from: {supply: t_supply, return_air: static}", "unit", "return_air is a temperature"),
    Mistake(AIR, FROM, "from: {supply: t_supply, return_air: 70}", "unit", "write its unit"),
    Mistake(AIR, FROM, "from: {supply: t_supply, return_air: 70 degF}", "unit", "write 'F'"),
    Mistake(AIR, "    from: {supply: t_supply, return_air: t_return}\n", "", "missing", "'from'", SEEN),
    Mistake(AIR, "    name: rise\n", "    name: rise\n    unit: inwc\n", "unit", "there is Fdiff, K"),
    # do, call, return, hand over, finding, stop
    Mistake(AIR, "    act: leads_off\n", "    act: lead_off\n", "name", "did you mean 'leads_off'"),
    Mistake(AIR, "    wait: 1 min\n", "    wait: a minute\n", "number", "150 s, 5 min", SEEN),
    Mistake(AIR, LAST, "  no_supply: {hand_over: triped_breaker}", "name", "did you mean 'tripped_breaker'"),
    Mistake(AIR, LAST, "  no_supply: {call: ../make_dead.yaml, then: {done: motor}}", "name",
            "write 'make_dead'", SEEN),
    Mistake(AIR, LAST, "  no_supply: {call: make_dead, with: lin, then: {done: motor}}", "name",
            "did you mean 'line'"),
    Mistake(AIR, LAST, "  no_supply: {call: make_dead}", "missing", "'then'", SEEN),
    Mistake(AIR, LAST, "  no_supply: {call: make_dead, then: {done: moter}}", "way", "did you mean 'motor'"),
    Mistake(AIR, "    condemns: blower_motor\n", "    condemns: blowr_motor\n", "name",
            "did you mean 'blower_motor'"),
    Mistake(AIR, "shows: [plug_volts, winding_ohms]", "shows: [plug_volts, winding_ohm]", "name",
            "did you mean 'winding_ohms'"),
    Mistake(AIR, "shows: [plug_volts, winding_ohms]", "shows: plug_volts", "type", "must be a list", SEEN),
    Mistake(AIR, "repair: [fit_motor, leads_on]", "repair: [fit_moter, leads_on]", "name",
            "did you mean 'fit_motor'"),
    Mistake(AIR, "causes: [water]", "causes: [water.yaml]", "name", "write 'water'", SEEN),
    Mistake(AIR, "    customer: The motor that moves the air has burnt out.\n", "", "missing", "'customer'",
            SEEN),
    Mistake(AIR, "    fault: none\n", "    fault: yes\n", "value", "can't be 'fault'", SEEN),
    Mistake(AIR, "    fault: none\n", "", "field", "'reason' only stands beside", SEEN),
    Mistake(AIR, "    reason: The blower ran and the temperature rise was read while it did.\n", "",
            "missing", "'reason'", SEEN),
    Mistake(AIR, "    fault: none\n", "    fault: none\n    repair: [fit_motor]\n", "field", "no 'repair'",
            SEEN),
    Mistake(AIR, "wet: {stop: electrician, ", "wet: {stop: electric, ", "name", "no stop page"),
    Mistake(AIR, "finding: Winding shorted, shows", "findings: Winding shorted, shows", "field",
            "did you mean 'finding'", SEEN),
    Mistake(CAUSE, "repair: [lead_water_away]", "repair: [led_water_away]", "name",
            "did you mean 'lead_water_away'"),
    Mistake(CAUSE, "return: found", "return:", "missing", "is empty", SEEN),
    Mistake(PROOF, "close: not_yet", "close: [not_yet]", "type", "must be one text", SEEN),
]
# fmt: on
