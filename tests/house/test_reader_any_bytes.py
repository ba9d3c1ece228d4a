"""Whatever the bytes, the reader gives nodes or says Unreadable; half the inputs are valid files, changed a
little.
"""

import contextlib
import json
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.house import reader
from assistant.house.place import Place
from assistant.house.reader import Fields, Items, Text, Unreadable, read
from tests.tree.mutation import changed

GOOD = Path(__file__).parents[1] / "tree" / "examples" / "good"
FILES = [path.read_bytes() for path in sorted(GOOD.rglob("*.yaml"))]


def places(node):
    yield node.place
    for child in (
        node.items if isinstance(node, Items) else node.entries.values() if isinstance(node, Fields) else ()
    ):
        yield from places(child)
    if isinstance(node, Fields):
        assert list(node.entries) == list(node.keys)
        yield from node.keys.values()


LOADERS = [loader for name in ("CSafeLoader", "SafeLoader") if (loader := getattr(yaml, name, None))]
"""The parser in C where there is one, and the one in plain Python."""


def reads_or_refuses(data: bytes) -> None:
    for loader in LOADERS:
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(reader, "_LOADER", loader)
            reads_or_refuses_with_one(data)


def reads_or_refuses_with_one(data: bytes) -> None:
    problems = ()
    try:
        node = read(data, "f")
    except Unreadable as unreadable:
        problems = unreadable.problems
        found = [Place(p.file, p.line, p.column) for p in problems]
    else:
        assert isinstance(node, (Text, Items, Fields))
        found = list(places(node))
    assert found
    assert all(problem.message for problem in problems)
    lines = data.decode("utf-8", "replace").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    for place in found:
        assert 1 <= place.line <= len(lines)
        assert 1 <= place.column <= len(lines[place.line - 1]) + 1


@given(st.binary(max_size=400))
def test_any_bytes(data):
    reads_or_refuses(data)


@given(st.text(alphabet="ab: -[]{}\n'\"#&*!|>%?,<@\\\t0é\u2028\r", max_size=80))
def test_any_text_of_yaml_signs(text):
    reads_or_refuses(text.encode())


@settings(max_examples=200)
@given(st.sampled_from(FILES), st.integers(0, 2**32 - 1))
def test_valid_files_changed_a_little(data, seed):
    reads_or_refuses(changed(data, seed))


class TestRoundTrip:
    """Texts written in double quotes, as JSON is, come back as they were (JSON is YAML: YAML 1.2.2, section
    1.2).
    """

    values = st.recursive(
        st.text(max_size=20),
        lambda inner: (
            st.lists(inner, max_size=4) | st.dictionaries(st.text(min_size=1, max_size=8), inner, max_size=4)
        ),
        max_leaves=12,
    )

    @given(values)
    def test_json_of_texts_reads_as_itself(self, value):
        with contextlib.suppress(Unreadable):
            assert (
                plain(read(json.dumps(value, ensure_ascii=False).encode("utf-8", "surrogatepass"), "f"))
                == value
            )

    @given(
        st.recursive(
            st.sampled_from(["a", "no", "12:30", "x y", ""]),
            lambda inner: (
                st.lists(inner, max_size=4)
                | st.dictionaries(st.sampled_from(["a", "on", "017"]), inner, max_size=3)
            ),
            max_leaves=12,
        )
    )
    def test_harmless_texts_always_read(self, value):
        assert plain(read(json.dumps(value).encode(), "f")) == value


def plain(node):
    if isinstance(node, Text):
        return node.value
    if isinstance(node, Items):
        return [plain(item) for item in node.items]
    return {name: plain(child) for name, child in node.entries.items()}
