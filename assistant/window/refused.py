"""The one kind of refusal that a page shows as it stands."""

from __future__ import annotations


class Refused(Exception):
    """An answer was not taken; the text is a sentence for the person, and nothing has changed."""
