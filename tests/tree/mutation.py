"""Small changes to a valid file, of the kind that authors and editors make and of the kind that breaks
things.
"""

from __future__ import annotations

import random
import re

_SNIPPETS = (
    b": ",
    b"- ",
    b"{",
    b"}",
    b"[",
    b"]",
    b", ",
    b"'",
    b'"',
    b"#",
    b"\n",
    b"  ",
    b"\t",
    b"&a ",
    b"*a",
    b"!!str ",
    b"|",
    b">-",
    b"---\n",
    b"? ",
    b"<<",
    b"%",
    b"\xff",
    b"\x00",
    b"\xef\xbb\xbf",
    b"\r",
    b"\xe2\x80\xa8",
    b"no",
    b"on",
    b"017",
    b"1_000",
    b"1e999",
    b"-",
    b"$circuit",
    b"12:30",
    b"under: 5",
    b"then: ",
    b"*",
    b"/",
    b"(",
    b")",
    b"V",
    b"F",
    b"~",
)
_TOKEN = re.compile(rb"[A-Za-z_][A-Za-z0-9_.]*|\d+(?:\.\d+)?|[^\sA-Za-z0-9]")


def changed(data: bytes, seed: int) -> bytes:
    """`data` with one to four changes that follow from `seed`."""
    chance = random.Random(seed)
    for _ in range(chance.randint(1, 4)):
        data = chance.choice(_CHANGES)(data, chance)
    return data


def gently_changed(data: bytes, seed: int) -> bytes:
    """`data` with one or two changes of words and numbers, most of which still read as YAML."""
    chance = random.Random(seed)
    for _ in range(chance.randint(1, 2)):
        data = chance.choice(_GENTLE)(data, chance)
    return data


def _flip_a_bit(data: bytes, chance: random.Random) -> bytes:
    if not data:
        return data
    at = chance.randrange(len(data))
    return data[:at] + bytes([data[at] ^ 1 << chance.randrange(8)]) + data[at + 1 :]


def _cut_out(data: bytes, chance: random.Random) -> bytes:
    at = chance.randrange(len(data) + 1)
    return data[:at] + data[at + chance.choice((1, 1, 2, 5, 20, 200)) :]


def _cut_off(data: bytes, chance: random.Random) -> bytes:
    return data[: chance.randrange(len(data) + 1)]


def _put_in(data: bytes, chance: random.Random) -> bytes:
    at = chance.randrange(len(data) + 1)
    return data[:at] + chance.choice(_SNIPPETS) + data[at:]


def _lines(change):
    def apply(data: bytes, chance: random.Random) -> bytes:
        lines = data.splitlines(keepends=True)
        if lines:
            change(lines, chance)
        return b"".join(lines)

    return apply


def _drop_a_line(lines: list[bytes], chance: random.Random) -> None:
    del lines[chance.randrange(len(lines))]


def _double_a_line(lines: list[bytes], chance: random.Random) -> None:
    at = chance.randrange(len(lines))
    lines.insert(chance.choice((at, chance.randrange(len(lines)))), lines[at])


def _indent_a_line(lines: list[bytes], chance: random.Random) -> None:
    at = chance.randrange(len(lines))
    lines[at] = chance.choice((b" ", b"  ")) + lines[at] if chance.random() < 0.5 else lines[at][1:]


def _exchange_tokens(data: bytes, chance: random.Random) -> bytes:
    """One word, number or sign becomes another of the same file."""
    found = list(_TOKEN.finditer(data))
    if not found:
        return data
    one, other = chance.choice(found), chance.choice(found)
    return data[: one.start()] + other.group() + data[one.end() :]


def _exchange_words(data: bytes, chance: random.Random) -> bytes:
    """A word becomes another word, a number another number: the file still reads."""
    found = [token for token in _TOKEN.finditer(data) if token.group()[:1].isalnum()]
    if not found:
        return data
    one = chance.choice(found)
    same = [token.group() for token in found if token.group()[:1].isdigit() == one.group()[:1].isdigit()]
    return data[: one.start()] + chance.choice(same) + data[one.end() :]


def _misspell(data: bytes, chance: random.Random) -> bytes:
    found = [
        token for token in _TOKEN.finditer(data) if len(token.group()) > 2 and token.group()[:1].isalpha()
    ]
    if not found:
        return data
    one = chance.choice(found)
    word = bytearray(one.group())
    at = chance.randrange(len(word) - 1)
    word[at], word[at + 1] = word[at + 1], word[at]
    return data[: one.start()] + bytes(word) + data[one.end() :]


def _spoil_a_number(data: bytes, chance: random.Random) -> bytes:
    found = [token for token in _TOKEN.finditer(data) if token.group()[:1].isdigit()]
    if not found:
        return data
    one = chance.choice(found)
    other = chance.choice(
        (b"0", b"-1", b"1e999", b"1e5", b"017", b"1_000", b"9" * 400, b"5 V", b"72 F", b".5", b"nan")
    )
    return data[: one.start()] + other + data[one.end() :]


_CHANGES = (
    _flip_a_bit,
    _cut_out,
    _cut_off,
    _put_in,
    _put_in,
    _lines(_drop_a_line),
    _lines(_double_a_line),
    _lines(_indent_a_line),
    _exchange_tokens,
    _exchange_words,
    _misspell,
    _spoil_a_number,
)
_GENTLE = (_lines(_drop_a_line), _exchange_words, _exchange_words, _misspell, _spoil_a_number)
