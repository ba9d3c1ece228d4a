"""Check that visits are as they were written: every line, every kept file, and the signature.

Exit code 0: signed and unaltered. 1: a line or a kept file was altered (file and line are named), or the
visit is not signed yet, so that the last lines may be missing. 2: it could not be checked.

A chain of hashes shows that something was altered; it does not prevent it. Lines taken off the end, or a
whole visit written anew, show only against the fingerprint on a printed report: give that with
--fingerprint.
"""

from __future__ import annotations

import argparse
from pathlib import Path

from assistant.trail.verify import verify


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """VISIT... and --fingerprint."""
    parser.add_argument("visits", nargs="+", metavar="VISIT", type=Path, help="a visit's folder")
    parser.add_argument(
        "--fingerprint",
        metavar="TEXT",
        help="the fingerprint printed on a report, in quotes; it must belong to the visit",
    )


def run(arguments: argparse.Namespace) -> int:
    """Prints a sentence for each thing found, and gives the worst code of all visits."""
    code = 0
    for folder in arguments.visits:
        checked = verify(folder, arguments.fingerprint)
        for sentence in checked.sentences:
            print(f"{folder}: {sentence}")
        code = max(code, checked.code)
    return code
