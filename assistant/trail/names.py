"""Folder names for visits that Windows, macOS and Linux all take."""

from __future__ import annotations

import re
import secrets
import unicodedata

from assistant.trail.clock import moment

LONGEST = 60


def folder_name(at: str, complaints: tuple[str, ...] = ()) -> str:
    """Such as 2026-11-25-0914-no-heat-3f9a: sorted by time in any file list, and taken by nobody else.

    Begins with a digit and holds only a-z, 0-9 and hyphens, so that no reserved name, trailing dot or
    character that a file system refuses can come up, whatever the complaint is called.
    """
    when = moment(at)
    begin = when.strftime("%Y-%m-%d-%H%M") if when else "0000-00-00-0000"
    words = "-".join(filter(None, (_plain(words) for words in complaints)))[:LONGEST].strip("-")
    return "-".join(filter(None, (begin, words, secrets.token_hex(2))))


def _plain(words: str) -> str:
    ascii_only = unicodedata.normalize("NFKD", words).encode("ascii", "ignore").decode("ascii").lower()
    return re.sub("[^a-z0-9]+", "-", ascii_only).strip("-")
