"""Alt+N is the big button on the pages of a drill, too, whatever stands on it."""

from __future__ import annotations

from assistant.window.page.base import Page


def give_next_key(page: Page) -> None:
    """As every page has it; its button must have no N of its own."""
    page.next_key.setEnabled(True)
