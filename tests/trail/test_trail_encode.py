"""Events on disk and back: every kind, and what this version does not know."""

import json
from dataclasses import fields
from typing import get_type_hints

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.trail.chain import START, again, open_line, seal
from assistant.trail.encode import from_object, text_of, to_object
from assistant.walk.earlier_visit import Past, PastReading
from assistant.walk.event import KINDS, Back, Did, Opened, Read, Typed, Unknown

TEXT = st.text(max_size=30)
NUMBER = st.floats(allow_nan=False, allow_infinity=False) | st.integers(-(10**6), 10**6)
PLAIN = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | TEXT,
    lambda inside: st.lists(inside, max_size=3) | st.dictionaries(TEXT, inside, max_size=3),
    max_leaves=8,
)
TYPED = st.builds(Typed, TEXT, st.none() | TEXT, st.none() | NUMBER, st.booleans(), st.none() | TEXT)
PAIRS = st.lists(st.tuples(TEXT, TEXT), max_size=3).map(tuple)
TEXTS = st.lists(TEXT, max_size=3).map(tuple)
END = st.none() | NUMBER
PAST_READING = st.builds(PastReading, TEXT, TEXTS, TEXT, TEXT, TEXT, END, END, TEXT, TEXT)
PAST = st.builds(
    Past,
    *(TEXT,) * 3,
    *(TEXTS,) * 5,
    PAIRS,
    st.lists(PAST_READING, max_size=2).map(tuple),
    st.booleans(),
)
OF = {
    str: TEXT,
    float | None: st.none() | NUMBER,
    str | None: st.none() | TEXT,
    int: st.integers(),
    bool: st.booleans(),
    dict: st.dictionaries(TEXT, PLAIN, max_size=3),
    dict[str, str]: st.dictionaries(TEXT, TEXT, max_size=3),
    dict[str, float]: st.dictionaries(TEXT, NUMBER, max_size=3),
    dict[str, Typed]: st.dictionaries(TEXT, TYPED, max_size=3),
    tuple[str, ...]: st.lists(TEXT, max_size=3).map(tuple),
    tuple[tuple[str, str], ...]: st.lists(st.tuples(TEXT, TEXT), max_size=3).map(tuple),
    tuple[Past, ...]: st.lists(PAST, max_size=2).map(tuple),
    Typed: TYPED,
}


def events_of(cls):
    hints = get_type_hints(cls)
    return st.builds(cls, **{part.name: OF[hints[part.name]] for part in fields(cls)})


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_every_kind_comes_back_as_it_was(kind):
    @given(events_of(KINDS[kind]))
    def comes_back(event):
        found = json.loads(text_of(to_object(event)))
        assert found["kind"] == kind
        again_, rest = from_object(found)
        assert again_ == event
        assert type(again_) is KINDS[kind]
        assert rest == {}

    comes_back()


@given(st.dictionaries(TEXT, PLAIN, max_size=6), st.sampled_from([*sorted(KINDS), "weighed", "", None, 7]))
def test_any_object_comes_back_byte_for_byte(found, kind):
    """Unknown kinds, known kinds with other fields, other types or nothing at all: nothing is lost."""
    if kind is not None:
        found["kind"] = kind
    event, rest = from_object(json.loads(text_of(found)))
    if "kind" in found and isinstance(found["kind"], str) and found["kind"]:
        assert text_of(to_object(event, rest)) == text_of(found)
    else:
        assert isinstance(event, Unknown)


@given(events_of(Read), st.dictionaries(TEXT.map(lambda t: "x" + t), PLAIN, min_size=1, max_size=3))
def test_unknown_fields_of_a_known_kind_are_kept(event, more):
    found = json.loads(text_of({**to_object(event), **more}))
    event_again, rest = from_object(found)
    assert event_again == event
    assert rest == json.loads(text_of(more))
    assert text_of(to_object(event_again, rest)) == text_of(found)


def test_an_unknown_field_inside_a_reading_is_kept():
    found = {"kind": "read", "at": "t", "step": "a.b", "readings": {"v": {"text": "118,4", "probe": "long"}}}
    event, rest = from_object(found)
    assert event == Read("t", "a.b", {"v": Typed("118,4")})
    assert rest == {"readings": {"v": {"probe": "long"}}}
    assert to_object(event, rest) == found


@pytest.mark.parametrize(
    "odd",
    [
        {"kind": "did", "at": "t", "step": "a.b", "waited": "long"},
        {"kind": "did", "at": "t", "step": "a.b", "waited": True},
        {"kind": "did", "at": "t"},
        {"kind": "did", "at": 5, "step": "a.b"},
        {"kind": "opened", "at": "t", "complaints": [["no_heat"]]},
        {"kind": "opened", "at": "t", "complaints": "no_heat"},
        {"kind": "read", "at": "t", "step": "a.b", "readings": {"v": "118"}},
    ],
)
def test_a_known_kind_of_another_shape_is_kept_as_unknown(odd):
    event, rest = from_object(odd)
    assert isinstance(event, Unknown)
    assert event.kind == odd["kind"]
    assert to_object(event, rest) == odd


def test_fields_that_equal_their_default_take_no_room():
    assert to_object(Did("t", "a.b")) == {"kind": "did", "at": "t", "step": "a.b"}
    assert to_object(Read("t", "a.b", {"v": Typed("0")}))["readings"] == {"v": {"text": "0"}}
    assert set(to_object(Opened("t", ()))) == {"kind", "at", "complaints"}
    # a value that only equals the default is written all the same: 0 is not False
    assert to_object(Read("t", "a.b", {"v": Typed("0", sure=0)}))["readings"]["v"]["sure"] == 0


@given(st.text(st.characters(), max_size=40))
def test_any_text_makes_one_line_that_verifies(text):
    """All code points, halves of surrogate pairs and every kind of line break included."""
    line, tip = seal(START, to_object(Back("t", text)) | {"n": 1})
    assert line.count(b"\n") == 1
    assert len(line.decode("utf-8").splitlines()) == 1
    fields_, stored = open_line(line[:-1])
    assert stored == tip
    assert again(START, fields_) == (line[:-1], tip)


HIGH, LOW = chr(0xD83D), chr(0xDE00)


@pytest.mark.parametrize("pieces", [HIGH, LOW, f"a{HIGH}{LOW}b", HIGH + HIGH + LOW, LOW + HIGH])
def test_halves_of_a_character_pair_survive(pieces):
    """Some clipboards hand over half a character; the other half may come with the next key."""
    line, _ = seal(START, {"n": 1, "text": pieces})
    fields_, _ = open_line(line[:-1])
    joined = pieces.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "surrogatepass")
    assert fields_["text"] == joined
    assert again(START, fields_)[0] == line[:-1]


@pytest.mark.parametrize("value", [float("nan"), float("inf"), -float("inf")])
def test_a_number_without_a_word_in_json_is_refused(value):
    with pytest.raises(ValueError):
        to_object(Did("t", "a.b", value))


def test_the_hash_is_the_published_one():
    """FIPS 180-4 names SHA-256; `sha256sum` of coreutils gives the same digits for the same bytes."""
    line, tip = seal(START, {"n": 1})
    assert line == b'{"n":1,"~":"%s"}\n' % tip.encode()
    # printf '%s{"n":1}' 000...0 (64 of them) | sha256sum
    assert tip == "d72c261cbe5387f5a686148bff2fa3118def7c3600e28933ef12e5c91dbe76af"
