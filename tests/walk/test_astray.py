"""Which registers have air in another call, in words for technician and customer, and against the customer's
own.
"""

import pytest

from assistant.walk.astray import against_the_words, for_customer, for_technician, spill_of
from assistant.walk.survey_sheet import Sheet

HOUSE = {
    "den": {"den": "150", "bedroom 1": "4", "bedroom 2": "35"},
    "upstairs": {"den": "3", "bedroom 1": "110", "bedroom 2": "105"},
    "hall": {"den": "5", "bedroom 1": "3", "bedroom 2": "33"},
}
"""Worked by hand: bedroom 2 keeps a third of its air while others call; the rest stays under a tenth."""
QUIET = {
    caller: {**flows, "bedroom 2": flows["bedroom 2"] if caller == "upstairs" else "5"}
    for caller, flows in HOUSE.items()
}


def spill(cells=HOUSE, drawn=("den", "upstairs", "upstairs")):
    made = Sheet()
    assert made.name(", ".join(cells), "den, bedroom 1, bedroom 2") == ""
    for caller, flows in cells.items():
        for register, text in flows.items():
            made.write("fan", caller, register, text)
    for register, whose in zip(made.registers, drawn, strict=False):
        assert made.draw(register, whose) == ""
    return spill_of(made)


def test_the_registers_are_named():
    assert for_technician(spill()) == ["bedroom 2 (of upstairs) has air when den or hall calls"]
    assert for_customer(spill()).endswith("came out of bedroom 2.")


def test_nobody_said_whose_it_is():
    """Then it is of the thermostat that moves most air there."""
    assert for_technician(spill(drawn=())) == for_technician(spill())


def test_a_shut_damper_passes_a_little():
    assert for_technician(spill(QUIET)) == ["By the survey no register has air in another thermostat's call."]
    assert for_customer(spill(QUIET)) == ""


def test_air_with_nobody_calling():
    idle = {**HOUSE, "hall": {}}
    made = Sheet()
    made.name("den, upstairs, hall", "den, bedroom 1, bedroom 2")
    for caller, flows in idle.items():
        for register, text in flows.items():
            made.write("fan", caller, register, text)
    made.write("fan", "nobody", "bedroom 2", "90")

    assert "has air when den calls and when nobody calls" in for_technician(spill_of(made))[0]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("Bedroom 2 blows when the den heats", ""),
        ("Bedroom_1 blows", "speaks of bedroom 1, and on the survey it is still in every other call."
         " The survey has air at bedroom 2 instead."),
        ("It blows upstairs", ""),
        ("It is noisy", ""),
        ("The den blows when upstairs heats", "speaks of den"),
        ("The den blows", "speaks of den"),
    ],
)  # fmt: skip
def test_what_the_customer_said_is_held_against_it(words, said):
    found = against_the_words(spill(), words)
    assert said in found and bool(found) == bool(said)


def test_no_air_in_the_wrong_place_and_no_register_named():
    assert "Ask which register" in against_the_words(spill(QUIET), "Air where nobody asked for it")


def test_a_register_that_was_not_read_contradicts_nobody():
    unread = {caller: {r: t for r, t in flows.items() if r != "den"} for caller, flows in HOUSE.items()}

    assert against_the_words(spill(unread), "The den blows") == ""


def test_an_empty_sheet_says_nothing():
    assert spill_of(Sheet()) is None
