"""The one kind of error whose text is meant for the person in front of the screen."""

from __future__ import annotations


class UserError(Exception):
    """Something that the person can put right: a missing file, a folder that is locked, a misspelt name.

    Its text is shown as it stands, without a traceback, and the command ends with exit code 2. The text
    says what is the matter and what to do about it. Everything else that is raised is a mistake of the
    program's own and ends in a crash note (see crash.py).
    """
