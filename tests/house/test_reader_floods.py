"""Files made to cost time or memory end in an error, and in little memory.

Each runs in a process of its own, so that its peak is its own. How quickly they end is measured by
tests/campaign/flood_speed.py.
"""

import json
import subprocess
import sys
import textwrap

import pytest

from assistant.house.reader import DEEPEST, LARGEST, Unreadable, read

MOST_MEMORY = 40_000_000
"""Bytes beyond the file itself and two copies of it as text."""

_PROBE = """
import json, resource, sys
from assistant.house.reader import Unreadable, read
data = {data}
before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
try:
    read(data, "f")
    said = ""
except Unreadable as error:
    said = str(error)[:300]
unit = 1 if sys.platform == "darwin" else 1024
grown = (resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before) * unit
print(json.dumps([said, grown, len(data)]))
"""

FLOODS = [
    ("b'[' * 50_000_000", "nested"),
    ("b'{' * 50_000_000", "nested"),
    ("b'- ' * 25_000_000", "nested"),
    ("b'? ' * 25_000_000", "nested"),
    ("b'{a: ' * 12_000_000", "nested"),
    ("b'[' + b'a,' * 24_000_000", "entries"),
    ("b'- a\\n' * 12_000_000", "entries"),
    ("b'a: 1\\n' * 10_000_000", "written twice"),
    ("b'[' * 60 + b'[],' * 16_000_000", "entries"),
    ("b'a: ' + b'9' * 49_999_000", "characters in one text"),
    ("b'a: \"' + b'\\\\\\\\n' * 12_000_000 + b'\"'", "characters in one text"),
    ("b'a: |\\n' + b'  x\\n' * 12_000_000", "characters in one text"),
    ("b'---\\n' * 12_000_000", "second document"),
    ("b'*a ' * 16_000_000", "alias"),
    ("b'\\n' * 50_000_000", "empty"),
    ("b'#' * 50_000_000", "empty"),
    ("b'\\n' * 49_000_000 + b'a: {'", "not closed"),
]
"""A file of some fifty megabytes, as Python, and a word of what is said of it."""

needs_resource = pytest.mark.skipif(sys.platform == "win32", reason="peak memory is asked of Unix")


def probe(data: str) -> tuple[str, int, int]:
    script = textwrap.dedent(_PROBE).format(data=data)
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True, timeout=120
    )
    return tuple(json.loads(done.stdout))


@needs_resource
@pytest.mark.parametrize(("data", "words"), FLOODS)
def test_a_flood_of_fifty_megabytes_ends_in_an_error(data, words):
    said, grown, size = probe(data)
    assert words in said
    assert grown < 3 * size + MOST_MEMORY


def test_an_alias_bomb_is_refused_without_unfolding():
    levels = ["a0: &a0 [x, x, x, x, x, x, x, x, x]"]
    levels += [f"a{n}: &a{n} [" + ", ".join([f"*a{n - 1}"] * 9) + "]" for n in range(1, 12)]
    with pytest.raises(Unreadable) as caught:
        read("\n".join(levels).encode(), "f")
    assert any("anchor" in p.message for p in caught.value.problems)
    assert any("alias" in p.message for p in caught.value.problems)


def test_more_than_the_greatest_size_is_refused_before_it_is_read():
    with pytest.raises(Unreadable, match="50,000,001 bytes"):
        read(b"\xff" * (LARGEST + 1), "f")


def test_the_deepest_nesting_is_read_and_one_more_is_not():
    node = read(b"[" * DEEPEST + b"x" + b"]" * DEEPEST, "f")
    for _ in range(DEEPEST):
        node = node.items[0]
    assert node.value == "x"
    with pytest.raises(Unreadable, match="nested deeper than 64"):
        read(b"[" * (DEEPEST + 1) + b"x" + b"]" * (DEEPEST + 1), "f")


@pytest.mark.parametrize("number", ["9" * 10_000, "1e999999999", "-" + "9" * 5_000, "1" + "_000" * 1_000])
def test_a_huge_number_is_only_text_here(number):
    assert read(f"a: {number}\n".encode(), "f").entries["a"].value == number
