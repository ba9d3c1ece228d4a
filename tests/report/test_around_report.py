"""What the report tells around the walk: found and left, before and after, what is waited for, the warranty
page, our earlier visits, and parts and minutes for an invoice.
"""

import csv
import io
import json

import pytest

from assistant.__main__ import main
from assistant.report.html import to_html
from assistant.report.invoice import HEADS, sessions, to_csv, to_json
from assistant.report.outline_beside import before_and_after
from assistant.report.tell import tell
from assistant.report.text import to_text
from assistant.walk.event import Advised, Filled, Paused, Resumed, Signed
from assistant.walk.visit import fold
from tests.played import ROOT, at, demo_until, play

AROUND = (
    "- unit: {make: Northfield, model: N90-070, serial: NF 04411, made: June 2004, warranty: June 2024}\n"
    "- before: {monitor: zeroed outdoors, says_yes: the owner}\n"
    "- as_found: {thermostat: heat 68, levers: half open}\n"
)
BEFORE = (
    "- recalled: [{visit: a, began: 2026-02-03T09:00:00-05:00, complaints: [No heat],"
    " fitted: {igniter: 2026-02-03T10:00:00-05:00}, left: [the drain drips],"
    " doubted: [the cause was not found]}]\n"
)


def told(visit):
    return tell(list(visit.events), visit.library, "0123456789abcdef" * 4)


def text(visit):
    return " ".join(to_text(told(visit)).split())


@pytest.fixture(scope="module")
def waiting():
    """The demo visit where it waits for the igniter, with everything around it."""
    return play(AROUND, play(BEFORE, play(demo_until("- pause"))))


@pytest.fixture(scope="module")
def whole():
    """The demo visit up to its signature."""
    return play(
        "- as_left: {thermostat: heat 68, levers: open}\n",
        play(AROUND, play(demo_until("- zone_matrix.as_left"))),
    )


def test_settings_stand_side_by_side_and_what_changed_says_so(whole):
    """A lever half open before and open after."""
    settings = {s.what: (s.found, s.left, s.differs) for s in told(whole).beside.settings}
    assert settings["Thermostat"] == ("heat 68", "heat 68", False)
    assert settings["Damper and bypass levers"] == ("half open", "open", True)
    assert "As found: half open" in text(whole) and "As left: open" in text(whole)


def test_before_and_after_stand_side_by_side(whole):
    """The igniter drew 0.0 A before, and as much as it should after."""
    story = told(whole)
    found = story.findings[0]
    table = before_and_after(found.proof_readings, found.before)
    rows = {row[0].text: (row[1].text, row[2].text) for row in table.rows}
    draws = [ends for what, ends in rows.items() if "0.0 A" in ends[0]]
    assert draws == [("0.0 A", "1.2 A")]
    assert any(row[3].small for row in table.rows), "no reading stands against the plate"
    customer = story.customer.complaints[0].found[0]
    assert len(customer.before) == len(customer.proof) and any(customer.before)
    assert "Before: 0.0 A" in text(whole)


def test_what_is_waited_for_has_its_match_data(waiting):
    """The set, the plate, what must not differ, and what comes first next time."""
    (igniter,) = told(waiting).beside.wanted
    assert igniter.part == "igniter" and "volts" in igniter.matches and igniter.together
    assert ("igniter's voltage", "120 V") in igniter.plate
    assert igniter.before and not igniter.causes_open
    said = text(waiting)
    assert "Every circuit counts as not known" in said
    assert said.index("Next time, in this order") < said.index("Every circuit counts as not known")


def test_a_cause_that_is_not_answered_is_said_beside_the_part():
    """Found, and paused before its causes were walked."""
    (igniter,) = told(play(demo_until("- no_heat.igniter_open"))).beside.wanted[:1] or (None,)
    assert igniter is not None and igniter.causes_open


def test_our_earlier_visits_come_first_and_a_part_fitted_twice_is_pointed_out(waiting):
    """Before the findings of today."""
    said = text(waiting)
    assert "Igniter: we fitted one here before (February 3, 2026)." in said
    assert said.index("Our earlier visits here") < said.index("Finding: Igniter open")
    assert "the drain drips" in said and "the cause was not found" in said


def test_todays_readings_stand_beside_the_earlier_ones():
    """In the trail, with the change and with what this unit should show."""
    before = (
        "- recalled: [{visit: a, began: 2026-02-03T09:00:00-05:00, healthy: 'yes', readings:"
        " [{quantity: ac_voltage, at: [igniter.line, igniter.neutral], text: '110.0'}]}]\n"
    )
    rows = told(play(before, play(demo_until("- no_heat.igniter_volts")))).beside.compared
    ((what, earlier, today, change),) = rows
    assert what.startswith("AC voltage, igniter plug, hot to") and today == "119.4 V"
    assert earlier == "110.0 V, February 3, 2026 (expected of this unit 104.5 to 115.5 V)"
    assert change == "+9.4 V (+9 %), outside what this unit had"


def test_the_warranty_page_has_serial_facts_and_what_was_ruled_out(waiting):
    """On a page of its own."""
    said = text(waiting)
    page = said[said.index("FOR THE WARRANTY DESK") :]
    for words in ("NF 04411", "June 2024", "Igniter: Igniter open", "Ruled out", "Why it failed"):
        assert words in page, words
    missing = text(play(demo_until("- act.dry_and_lead_away")))
    assert "The serial number was not read" in missing


def numbers(visit):
    rows = list(csv.reader(io.StringIO(to_csv(visit, list(visit.events), "a"))))
    return [row[HEADS.index("part number")] for row in rows if row[0] == "part"]


def test_a_part_without_a_number_says_so_wherever_it_stands(whole):
    """To the customer, the next technician, the warranty desk and the invoice."""
    said = text(whole)
    assert said.count("part number not written down") == 3
    bill = json.loads(to_json(whole, list(whole.events), "a"))
    assert (bill["parts"][0]["number"], bill["parts"][0]["remark"]) == ("", "part number not written down")
    assert numbers(whole) == ["part number not written down"]


def test_a_part_with_its_number_has_it_wherever_it_stands():
    rest = demo_until("- zone_matrix.as_left").partition("- act.fit_igniter: done")
    assert rest[1]
    visit = play(rest[0] + "- act.fit_igniter: {number: NF-IG-2}" + rest[2])
    said = text(visit)
    assert "part number not written down" not in said
    assert said.count("part number NF-IG-2") >= 4  # the row of the act has it too
    assert numbers(visit) == ["NF-IG-2"]
    assert "remark" not in json.loads(to_json(visit, list(visit.events), "a"))["parts"][0]


def test_how_the_night_was_agreed_stands_with_its_plan():
    """Whoever opens the visit next reads what the family was told."""
    waits = fold(play(demo_until("- act.set_igniter")), Paused(at(300), "Waiting for a part"))
    visit = play("- tonight: {heat: two plug-in heaters lent, back: tomorrow before ten}\n", waits)
    said = text(visit)
    night = said[said.index("No heat tonight") : said.index("THE TRAIL")]
    assert "two plug-in heaters lent" in night and "tomorrow before ten" in night and "The people" in night


def test_a_house_without_heat_gets_its_plan():
    """Where a part is waited for, and where a stop page leaves the heater off; not after the repair."""
    waits = fold(play(demo_until("- act.set_igniter")), Paused(at(300), "Waiting for a part"))
    for said in (text(waits), text(play("- hazard: fire_damage\n", None, "no_heat"))):
        for words in (
            "No heat tonight",
            "one heater to a circuit",
            "Never an oven",
            "running in a thin stream",
        ):
            assert words in said, words
    assert "No heat tonight" not in text(play(demo_until("- zone_matrix.as_left")))


def test_a_call_that_sent_everybody_out_says_so_on_every_page():
    """No complaint was asked; the lines stand there, and it is open."""
    said = text(play("- triage: {smell: 'yes, or not sure'}\n"))
    page = said[: said.index("THE TRAIL")]
    for line in ("GAS. Everybody out.", "From outside, call the gas supplier and 911.", "Not cleared yet"):
        assert line in page, line
    assert "Nothing that we know of" not in page


def test_advice_and_options_stand_on_the_customers_page(whole):
    """With reason and number, and no price that nobody typed."""
    visit = play(
        "- advise: {what: Larger return duct, why: the blower pulls against twice the plate,"
        " number: 0.84 against 0.50, answer: declined}\n"
        "- outlook: {repair: new igniter, replace: a new furnace in spring}\n",
        whole,
    )
    said = text(visit)
    page = said[: said.index("THE TRAIL")]
    assert (
        "Larger return duct: the blower pulls against twice the plate (0.84 against 0.50). You said no."
        in page
    )
    assert "about 22 years (made June 2004)" in page and "a new furnace in spring" in page
    assert "$" not in said


def test_before_starting_says_what_was_left_out(waiting):
    """Skipping is allowed, and seen."""
    said = text(waiting)
    assert "Carbon monoxide monitor: zeroed outdoors" in said
    assert "Up to what sum without asking again" in said[said.index("Not filled in") :]


def test_minutes_are_worked_time_without_the_pauses(whole):
    """Nine to ten, a night, and half an hour more: an hour and a half."""
    began = whole.events[0]
    hours = ["2026-11-25T10:00:00-05:00", "2026-11-26T08:00:00-05:00", "2026-11-26T08:30:00-05:00"]
    events = [began, Paused(hours[0], "part"), Resumed(hours[1], "B."), Signed(hours[2], "B.")]
    first, second = sessions(events)
    assert (first.minutes, second.minutes, second.by) == (60, 30, "B.")
    back = sessions([began, Signed("2026-11-25T08:00:00-05:00", "A.")])
    assert back[0].minutes is None
    bill = json.loads(to_json(whole, events, "x"))
    assert bill["minutes"] == 90 and [p["part"] for p in bill["parts"]] == ["igniter"]
    assert bill["unit"]["serial"] == "NF 04411" and "price" not in json.dumps(bill)


def test_the_invoice_table_runs_nothing_and_has_every_part(whole):
    """A serial number that looks like a formula is text."""
    visit = play("- unit: {serial: '=cmd()'}\n", whole)
    rows = list(csv.reader(io.StringIO(to_csv(visit, list(visit.events), "x"))))
    assert tuple(rows[0]) == HEADS and all(len(row) == len(HEADS) for row in rows)
    assert rows[1][2] == "'=cmd()"
    assert [row[1] for row in rows if row[0] == "part"] == ["igniter"]
    assert rows[-1][0] == "total"


def test_awkward_words_around_the_walk_stay_words(whole):
    """Mark-up, a right-to-left mark and ten thousand characters, in every format."""
    visit = whole
    for words in ("<script>alert(1)</script> \u202edda", "=cmd()", "y" * 10_000):
        visit = fold(visit, Advised(at(400), words, words, words, "declined"))
    visit = fold(visit, Filled(at(401), "outlook", {"repair": "<b>\u202e</b>"}))
    page = to_html(told(visit))
    assert "<script>" not in page and "<b>" not in page
    assert "y" * 10_000 in to_html(told(visit)) and "\u202e" not in to_text(told(visit))


def test_a_job_of_three_days_walks_from_the_telephone_to_its_signature(tmp_path):
    """The shipped one: a call-back, a wait for a part, two people; parts and minutes beside the reports."""
    job = ROOT / "resources" / "demo" / "three_days.yaml"
    assert main(["replay", str(job), "--out", str(tmp_path / "out")]) == 0
    assert main(["verify", str(tmp_path / "out")]) == 0
    bill = json.loads((tmp_path / "out" / "parts.json").read_text("utf-8"))
    assert [part["part"] for part in bill["parts"]] == ["igniter"] and len(bill["sessions"]) == 3
    said = " ".join((tmp_path / "out" / "report.txt").read_text("utf-8").split())
    for words in ("we fitted one here before", "Before: 0.0 A", "You said yes.", "bypass arm free"):
        assert words in said, words
