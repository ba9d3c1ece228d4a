"""From a file's bytes to text: size, encoding and characters that have no business in a tree file."""

from __future__ import annotations

import re

from assistant.house.place import Problem

LARGEST = 50_000_000
"""Bytes; a tree file of 10,000 steps has about 4,000,000."""

_FORBIDDEN = re.compile(
    "[\x00-\x09\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff"
    "\ud800-\udfff]"
)
_FORBIDDEN_IN_VALUE = re.compile(_FORBIDDEN.pattern.replace("\x00-\x09", "\x00-\x08"))


def decode(data: bytes, file: str) -> tuple[str, Problem | None]:
    """The text of a file, or the reason why it can't be read, with its place (column in characters)."""
    if len(data) > LARGEST:
        return "", Problem(
            file, 1, 1, "yaml", f"the file has {len(data):,} bytes; at most {LARGEST:,} are read"
        )
    if data.startswith(b"\xef\xbb\xbf"):
        return "", Problem(
            file, 1, 1, "yaml", "the file starts with a byte order mark; save it as UTF-8 without one"
        )
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return "", Problem(file, 1, 1, "yaml", "the file is UTF-16; save it as UTF-8")
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8")
        line, column = position(before, len(before))
        return "", Problem(
            file, line, column, "yaml", f"byte {data[error.start]:#04x} is not UTF-8; save the file as UTF-8"
        )
    found = _FORBIDDEN.search(text)
    if found:
        line, column = position(text, found.start())
        return "", Problem(file, line, column, "yaml", _say(found.group()))
    return text, None


def position(text: str, index: int) -> tuple[int, int]:
    """Line and column, from 1, of the character at `index`."""
    before = text[:index]
    line = before.count("\n") + before.count("\r") - before.count("\r\n") + 1
    return line, index - max(before.rfind("\n"), before.rfind("\r"))


def forbidden_in_value(value: str) -> str | None:
    """The first character that an escape such as "\\0" brought in and no text may hold, named; or None."""
    found = _FORBIDDEN_IN_VALUE.search(value)
    return f"U+{ord(found.group()):04X}" if found else None


def one_line(message: str) -> str:
    """A sentence that quotes a file's text, on one line whatever that text holds."""
    return " ".join(message.split()) if "\n" in message or "\t" in message else message


def _say(character: str) -> str:
    if character == "\t":
        return "a tab stands here; write spaces"
    if character == "\x00":
        return "a NUL byte stands here; the file is damaged or not text"
    return f"the invisible character U+{ord(character):04X} stands here; remove it"
