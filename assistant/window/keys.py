"""What can be done from every page, each with its key: one table for shortcuts, buttons and the help page."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Action:
    """`name` is the page it opens, `words` stand on its button, `key` opens it from anywhere in a visit."""

    name: str
    words: str
    key: str
    says: str


ACTIONS = (
    Action("put_down", "Put down a reading", "F2", "one you already have, in any order"),
    Action("unproved", "Still unproved", "F3", "what can still be the fault"),
    Action("back", "Go back", "F4", "to any step, house as is"),
    Action("notes", "Note or photo", "F5", "words or a picture for the trail"),
    Action("as_found", "As found", "F6", "before you touch it"),
    Action("take_along", "Next readings", "F7", "a list to take to the unit"),
    Action("hazard", "Hazard", "F8", "gas, people unwell, fire, hot panel, water"),
    Action("pause", "Pause", "F9", "for a part, another day"),
    Action("leave", "Hand over", "F10", "open points, name, signature, report"),
    Action("drawing", "Large drawing", "F11", "the spot, very large"),
    Action("instrument", "Instrument", "Ctrl+I", "which of the shop's meters"),
    Action("around", "Around the walk", "Ctrl+R", "unit, parts, advice, as left"),
    Action("more", "More", "F12", "this list, as buttons"),
    Action("help", "Keys", "F1", "every key of this window"),
)

CLOSE = Action("shelf", "Close this visit", "Ctrl+W", "it stays open in the list")
"""Leads away from the visit, to the list of all of them."""

DRILLS = "drills"
"""Practice is begun from the list of visits, never from within one."""
AT_START = (
    Action("calls", "What our calls say", "Ctrl+L", "counts of the shop's own visits"),
    Action("workbench", "Workbench", "Ctrl+B", "airflow, wire, gas"),
    Action("tree", "See the tree", "Ctrl+T", "as a diagram, the walk in it"),
    Action(DRILLS, "Drills", "Ctrl+D", "practice on a simulated house"),
)
"""Pages that need no visit: buttons on the list of visits, and their keys from anywhere."""

BY_NAME = {action.name: action for action in (*ACTIONS, *AT_START)}

PAGE_KEYS = (
    ("Enter", "judge and save; Enter again goes on"),
    ("1 to 9", "choose, where there are numbered choices"),
    ("Tab, Shift+Tab", "to the next or the previous thing on the page"),
    ("Up, Down", "to the previous or the next field, where there are several"),
    ("Page Up, Page Down", "scroll the page; the field stays where it is"),
    ("Esc", "back to the question; nothing typed is lost"),
    ("Alt+C", "Can't take it, can't tell, can't do it"),
    ("Alt+W", "Won't hold steady"),
    ("Alt+S", "Still true"),
    ("Alt+M", "Mend a slip of the key"),
    ("Alt+F", "cautions in full, where they stand in one line each"),
    ("Alt+P", "pad of numbers on the screen"),
    ("Alt+N", "the same as the big button at the bottom right"),
)
