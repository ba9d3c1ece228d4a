"""One line of a trail, tied to the line before it.

A line is a JSON object with its sequence number `n` and, last, `~`: the SHA-256 (FIPS 180-4) of the
previous line's `~` and of this line's own bytes before `~` is put in. A line is verified by writing it
again from what was read and comparing every byte: a comparison of the hashes alone misses damage to the
quotes around them.
"""

from __future__ import annotations

import hashlib
import json

from assistant.trail.encode import text_of

FORMAT = 1
START = "0" * 64
"""What the first line of a visit continues."""


class AlteredError(Exception):
    """The line is not what was written, or not where it was written."""


def seal(previous: str, fields: dict) -> tuple[bytes, str]:
    """The line (with its line end) for these fields, and its hash. Raises ValueError for infinite numbers."""
    body = text_of(fields).encode("utf-8")
    tip = hashlib.sha256(previous.encode("ascii") + body).hexdigest()
    return b'%s,"~":"%s"}\n' % (body[:-1], tip.encode("ascii")), tip


def open_line(line: bytes) -> tuple[dict, str]:
    """The fields of a line and the hash stored in it, not yet verified. Raises AlteredError where it is no
    such line."""
    try:
        found = json.loads(line.decode("utf-8"))
    except (ValueError, RecursionError) as problem:
        raise AlteredError("it can't be read as a line of a trail") from problem
    if not isinstance(found, dict) or not isinstance(found.get("~"), str):
        raise AlteredError("it is no line of a trail")
    tip = found.pop("~")
    if not isinstance(found.get("n"), int) or isinstance(found["n"], bool):
        raise AlteredError("its number is missing")
    return found, tip


def again(previous: str, fields: dict) -> tuple[bytes, str]:
    """The line (without its line end) and hash that these fields give after `previous`, to hold against what
    is on disk; empty where they can't be written at all."""
    try:
        line, tip = seal(previous, fields)
    except (ValueError, RecursionError):
        return b"", ""
    return line[:-1], tip
