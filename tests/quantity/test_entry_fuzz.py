"""Entries from a grammar, meant before they are parsed, and any text at all."""

from collections import Counter

import pytest
from entry_check import OUTCOMES, complaint, sanity
from entry_grammar import Entry, Grammar
from hypothesis import given
from hypothesis import strategies as st

from assistant.quantity.entry import understand
from assistant.quantity.kind import KINDS

ENTRIES = 20_000
KIND_AND_UNIT = st.sampled_from([(kind.name, unit) for kind in KINDS.values() for unit in kind.units])
NUMBER_LIKE = st.text("0123456789.,-+/: kMmuVoOLlFC'\"%½−٣eE", max_size=14)


@pytest.mark.parametrize("seed", [1, 2])
def test_entries_mean_what_was_written(seed):
    """Each entry is understood, doubted or refused as the grammar meant it; every form and outcome occurs."""
    grammar = Grammar(seed)
    forms = Counter()
    complaints = []
    for _ in range(ENTRIES // 2):
        entry = grammar.entry()
        forms[entry.form] += 1
        if trouble := complaint(entry):
            complaints.append(f"{entry.text!r} as {entry.kind} in {entry.field}: {trouble}")
    assert not complaints, "\n".join(complaints[:10])
    assert set(forms) == {
        "number", "thousands", "spread", "negative spread", "fraction", "fraction with a dash", "clock",
        "in parts", "OL", "OL with its range", "wrong unit", "minus", "small m", "near miss", "blank",
        "mutation",
    }  # fmt: skip
    assert min(forms.values()) >= 20


@given(st.one_of(st.text(), NUMBER_LIKE), KIND_AND_UNIT)
def test_no_text_raises(text, kind_and_unit):
    """Whatever is typed, the answer is one of four, and a sentence, a choice or an echo that reads back."""
    kind, unit = kind_and_unit
    meaning = understand(text, kind, unit)
    assert type(meaning) in OUTCOMES
    assert not sanity(Entry(text, kind, unit, "anything"), meaning)


@given(st.text(st.characters(min_codepoint=0xD800, max_codepoint=0xDFFF), min_size=1), KIND_AND_UNIT)
def test_half_characters_are_refused_and_can_be_shown(text, kind_and_unit):
    """Lone surrogates, as a broken paste gives them, end in a sentence that can be written to a file."""
    understand(text, *kind_and_unit).message.encode("utf-8")
