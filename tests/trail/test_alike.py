"""Addresses and telephone numbers that may be the same place. All of them are invented; the pairs of street
words and abbreviations are those of United States mail (from memory)."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.trail.alike import ONE_UNIT, PHONE, WRITTEN, looked_up, read_address, same_address, same_phone


@pytest.mark.parametrize(
    ("one", "other", "why"),
    [
        ("12 Sample Lane", "12 sample ln.", WRITTEN),
        ("12 Sample Street", "12 SAMPLE ST", WRITTEN),
        ("12 Sample Lane, Apt. 3", "12 Sample Ln #3", WRITTEN),
        ("12 Sample Lane Unit 3B, Anytown", "12 Sample Ln, Apt 3b", WRITTEN),
        ("12 N. Sample Ave, Anytown", "12 North Sample Avenue", WRITTEN),
        ("12 Sample St. N.", "12 Sample Street North, Anytown", WRITTEN),
        ("12 St. Sample's Road", "12 St Samples Rd", WRITTEN),
        ("12 Sample Lane", "12 Sample Ln Apt 3", ONE_UNIT),
        ("12 Sample Lane Apt 2", "12 Sample Ln Apt 3", ""),
        ("12 Sample Lane", "14 Sample Lane", ""),
        ("12 Sample Lane", "12 Sample Street", ""),
        ("12 North Sample Lane", "12 South Sample Lane", ""),
        ("12 Sample Lane, Anytown", "12 Sample Lane, Otherville", ""),
        ("12A Sample Lane", "12 Sample Lane", ""),
        ("Sample Lane", "Sample Ln", ""),
        ("", "", ""),
        ("12", "12", ""),
    ],
)
def test_addresses_that_may_be_the_same_house(one, other, why):
    """Both ways round; a doubt about the unit is said, two units are two homes."""
    assert same_address(one, other) == why == same_address(other, one)


@pytest.mark.parametrize(
    ("one", "other", "why"),
    [
        ("(518) 555-0100", "518.555.0100", PHONE),
        ("+1 518 555 0100", "5185550100", PHONE),
        ("555-0100", "518 555 0100", PHONE),
        ("518 555 0100", "519 555 0100", ""),
        ("0100", "518 555 0100", ""),
        ("", "", ""),
    ],
)
def test_telephone_numbers_that_may_be_the_same(one, other, why):
    assert same_phone(one, other) == why == same_phone(other, one)


@given(st.text(max_size=60), st.text(max_size=60))
def test_any_text_is_taken(one, other):
    """Never raises; alike is the same both ways round."""
    assert same_address(one, other) == same_address(other, one)
    assert same_phone(one, other) == same_phone(other, one)
    assert isinstance(looked_up(one, other), list)
    read_address(one)


def test_what_is_looked_up_is_in_both_ways_of_writing():
    """The number and the longest word of the name; the last digits by themselves."""
    assert looked_up("12 N Sample Ln", "(518) 555-0100")[:2] == ["12 sample", "0100"]
