"""The strict reader: every scalar is the text that was written; what can't be read is said at its place."""

import pytest
import yaml

from assistant.house import reader
from assistant.house.reader import Fields, Items, Text, Unreadable, read


@pytest.fixture(params=["CSafeLoader", "SafeLoader"], autouse=True)
def either_parser(request, monkeypatch):
    """Everything holds with the parser in C and with the one in plain Python."""
    loader = getattr(yaml, request.param, None)
    if loader is None:
        pytest.skip("this PyYAML has no parser in C")
    monkeypatch.setattr(reader, "_LOADER", loader)
    return request.param


def value_of(text: str) -> str:
    return read(f"a: {text}\n".encode(), "f").entries["a"].value


def refusals(data: str | bytes) -> list[tuple[int, int, str]]:
    with pytest.raises(Unreadable) as caught:
        read(data.encode() if isinstance(data, str) else data, "f.yaml")
    problems = caught.value.problems
    assert problems
    assert all(p.file == "f.yaml" and p.rule == "yaml" for p in problems)
    return [(p.line, p.column, p.message) for p in problems]


def refusal(data: str | bytes) -> tuple[int, int, str]:
    found = refusals(data)
    assert len(found) == 1, found
    return found[0]


# What YAML 1.1 (2005, its type repository) reads as something else than text and YAML 1.2.2 (2021, section
# 10.3.2) mostly does not; here nothing does. The list is from runs of a 1.1 parser.
@pytest.mark.parametrize(
    "written",
    [
        "yes",
        "no",
        "on",
        "off",
        "Yes",
        "NO",
        "On",
        "OFF",
        "y",
        "n",
        "Y",
        "N",
        "true",
        "False",
        "TRUE",
        "12:30:45",
        "1:30",
        "12:30",
        "1:2:3.5",
        "190:20:30",
        "1_000",
        "0.1_5",
        "1,000",
        "017",
        "0o17",
        "08",
        "09.5",
        "0x1F",
        "0b101",
        "1e3",
        "1e-6",
        "1.5e3",
        "1.5e+3",
        "1.0e-6",
        "12e-6",
        "12",
        "1.50",
        "-0",
        "+1",
        "2026-11-25",
        "2026-11-25 14:03:22",
        "2001-12-14t21:59:43.10-05:00",
        ".inf",
        "-.inf",
        ".NaN",
        ".5",
        "~",
        "null",
        "Null",
        "=",
        "<<",
        "L1-L2",
        "a-b",
        "24 VAC (nominal)",
        "5 V",
        "0.90 * supply_volts",
        "a:b",
        "don't",
        "µA",
        "72 °F",
    ],
)
def test_a_plain_scalar_is_the_text_that_was_written(written):
    assert value_of(written) == written


@pytest.mark.parametrize(
    "key", ["yes", "no", "on", "off", "1:30", "017", "null", "~", "2026-11-25", "1", "1.0", "="]
)
def test_a_name_is_the_text_that_was_written(key):
    assert list(read(f"{key}: x\n".encode(), "f").entries) == [key]


def test_names_that_yaml_1_1_reads_alike_stay_apart():
    node = read(b"on: a\nyes: b\ntrue: c\n1: d\n01: e\n1.0: f\n", "f")
    assert {name: text.value for name, text in node.entries.items()} == {
        "on": "a",
        "yes": "b",
        "true": "c",
        "1": "d",
        "01": "e",
        "1.0": "f",
    }


def test_a_comment_begins_at_a_space_and_a_number_sign():
    assert value_of("a #b") == "a"
    assert value_of("a#b") == "a#b"
    assert value_of("'a #b'") == "a #b"


def test_an_empty_value_and_an_empty_text_are_told_apart():
    node = read(b"a:\nb: ''\nc: \"\"\n", "f")
    assert [(text.value, text.quoted) for text in node.entries.values()] == [
        ("", False),
        ("", True),
        ("", True),
    ]


def test_block_texts_and_quotes():
    node = read(b"a: |\n  one\n  two\nb: >-\n  one\n  two\nc: 'it''s'\nd: \"tab\\tand \\u00b0\"\n", "f")
    assert [text.value for text in node.entries.values()] == ["one\ntwo\n", "one two", "it's", "tab\tand °"]
    assert all(text.quoted for text in node.entries.values())


def test_places_count_from_one_in_characters():
    node = read("é: {ü: 'x', ß: [µ, b]}\n  \n# c\nz: |\n  text\nq: \"v\"\n".encode(), "trees/a.yaml")
    assert node.place.line == 1
    assert node.place.column == 1
    inner = node.entries["é"]
    assert (inner.place.line, inner.place.column) == (1, 4)
    assert (inner.keys["ü"].column, inner.entries["ü"].place.column) == (5, 8)
    assert (inner.keys["ß"].column, inner.entries["ß"].place.column) == (13, 16)
    assert [item.place.column for item in inner.entries["ß"].items] == [17, 20]
    assert (node.keys["z"].line, node.entries["q"].place) == (
        4,
        reader.Text("", node.entries["q"].place, True).place,
    )
    assert (node.entries["q"].place.line, node.entries["q"].place.column) == (6, 4)
    assert node.entries["q"].place.file == "trees/a.yaml"


def test_windows_line_ends_count_as_one_line():
    node = read(b"a: 1\r\nb: 2\r\n", "f")
    assert (node.keys["b"].line, node.keys["b"].column, node.entries["b"].value) == (2, 1, "2")


def test_lists_and_fields_keep_their_order():
    node = read(b"z: 1\na: [3, 1, 2]\nm: {y: 1, b: 2}\n", "f")
    assert isinstance(node, Fields)
    assert list(node.entries) == ["z", "a", "m"]
    assert isinstance(node.entries["a"], Items)
    assert [text.value for text in node.entries["a"].items] == ["3", "1", "2"]
    assert list(node.entries["m"].entries) == ["y", "b"]
    assert isinstance(read(b"just text", "f"), Text)


@pytest.mark.parametrize(
    ("text", "at", "words"),
    [
        ("a: 1\nb: 2\na: 3\n", (3, 1), "'a' is written twice, on line 1 and on line 3"),
        ("x: {b: 1, b: 2}\n", (1, 11), "'b' is written twice"),
        ("a: 1\n'a': 2\n", (2, 1), "'a' is written twice"),
        ("a: &x 1\n", (1, 4), "an anchor (&x)"),
        ("a: *x\n", (1, 4), "an alias (*x)"),
        ("a: !!str 1\n", (1, 4), "a tag ("),
        ("a: !mine 1\n", (1, 4), "a tag ("),
        ("a: !!python/object/apply:os.system [x]\n", (1, 4), "a tag ("),
        ("<<: {a: 1}\n", (1, 1), "can't be merged with <<"),
        ("a: 1\n---\nb: 2\n", (2, 1), "a second document"),
        ("[a, b]: c\n", (1, 1), "a name must be text"),
        ("{a: b}: c\n", (1, 1), "a name must be text"),
        ("'': c\n", (1, 1), "a name is missing"),
        ("' ': c\n", (1, 1), "a name is missing"),
        ("? a\n: b\n", (1, 3), "can't start with '?'"),
        ("{?a: b}\n", (1, 3), "can't start with '?'"),
        ("a: [b: c]\n", (1, 5), "needs braces"),
        ("%YAML 1.2\n---\na: b\n", (1, 1), "start with %"),
        ("%TAG ! tag:x,2000:\n---\na: b\n", (1, 1), "start with %"),
        ("a:\tb\n", (1, 3), "a tab"),
        ("a: b\n\tc: d\n", (2, 1), "a tab"),
        ("a: 'x\ty'\n", (1, 6), "a tab"),
        ("\u00e9: \x00\n", (1, 4), "NUL"),
        ("a: b\u2028c\n", (1, 5), "U+2028"),
        ("a: \u202eb\n", (1, 4), "U+202E"),
        ("a: \x1bb\n", (1, 4), "U+001B"),
        ("a: \ufeffb\n", (1, 4), "U+FEFF"),
        ('a: "\\0"\n', (1, 4), "U+0000"),
        ('a: "\\u202e"\n', (1, 4), "U+202E"),
        ("\ufeffa: b\n", (1, 1), "byte order mark"),
        ("", (1, 1), "empty"),
        ("# nothing\n", (1, 1), "empty"),
        ("...\n", (1, 1), ""),
    ],
)
def test_what_is_refused_is_said_at_its_place(text, at, words):
    line, column, message = refusals(text)[0]
    assert (line, column) == at
    assert words in message


@pytest.mark.parametrize(
    ("data", "at", "words"),
    [
        (b"a: b\nc: \xff\n", (2, 4), "0xff is not UTF-8"),
        ("ü: ".encode() + b"\xc3(", (1, 4), "0xc3 is not UTF-8"),
        (b"a: \xed\xa0\x80", (1, 4), "is not UTF-8"),
        (b"a: \xc0\x80", (1, 4), "is not UTF-8"),
        ("a: b".encode("utf-16"), (1, 1), "UTF-16"),
        (b"\xfe\xff\x00a", (1, 1), "UTF-16"),
    ],
)
def test_other_encodings_are_refused_at_their_place(data, at, words):
    line, column, message = refusal(data)
    assert (line, column) == at
    assert words in message


def test_surrogates_can_not_be_escaped_in():
    for text in ('a: "\\ud800"\n', 'a: "\\udfff x"\n', 'a: "\\U0000d800"\n', 'a: "\\UFFFFFFFF"\n'):
        refusals(text)


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ("a: 1\nb: x: y\n", 2, "put the whole text in quotes"),
        ("L: L1-L2: 240\n", 1, "put the whole text in quotes"),
        ("a: @x\n", 1, "put it in quotes"),
        ("a: `x`\n", 1, "put it in quotes"),
        ("a: %x\n", 1, "put it in quotes"),
        ("b: 1\na: 'x\nc: 2\n", 2, "a quote is not closed"),
        ('b: 1\na: "x\nc: 2\n', 2, "a quote is not closed"),
        ("a:\n  - 1\n - 2\n", 3, "indent"),
        ('a: "\\q"\n', 1, "escape"),
        ("a: - b\n", 1, "list item"),
        ("a: {", 1, "not closed"),
    ],
)
def test_mistakes_of_writing_are_said_in_words_for_the_author(text, line, words):
    found, _, message = refusal(text)
    assert found == line
    assert words in message


@pytest.mark.parametrize("text", ["a: [1, 2\nb: 3\n", "a: {b: c\nd: e\n"])
def test_an_open_bracket_names_the_line_where_it_began(text):
    line, _, message = refusal(text)
    assert line == 2
    assert "comma" in message
    assert "began on line 1" in message


def test_all_mistakes_of_a_file_are_told_at_once():
    found = refusals("a: 1\na: 2\nb: &x 3\nc: *x\nd: !t 4\n<<: e\nf: {g: 1, g: 2}\n[h]: i\n")
    assert [line for line, _, _ in found] == [2, 3, 4, 5, 6, 7, 8]


def test_a_message_stays_on_one_line_whatever_it_quotes():
    found = refusals('? "a\\nb"\n: 1\n? "a\\nb"\n: 2\n"c\\nd": 1\n"c\\nd": 2\n')
    assert all("\n" not in message for _, _, message in found)
    assert any("'c d' is written twice" in message for _, _, message in found)


def test_a_refused_name_does_not_shift_what_follows():
    with pytest.raises(Unreadable) as caught:
        read(b"[x]: {deep: [1, 2]}\nok: 1\nok: 2\n", "f")
    assert [p.line for p in caught.value.problems] == [1, 3]


def test_the_message_lists_every_problem_with_file_line_and_column():
    with pytest.raises(Unreadable) as caught:
        read(b"a: 1\na: 2\n", "trees/x.yaml")
    assert str(caught.value).startswith("trees/x.yaml:2:1: yaml: 'a' is written twice")
