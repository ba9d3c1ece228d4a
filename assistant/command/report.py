"""Write a visit's report as PDF, HTML, text or CSV; the file's ending names the format. With --parts, parts
and minutes for an invoice program, as CSV or JSON.

The export is recorded in the visit. The fingerprint on the pages is the one of the signature's line, so that
every report of a signed visit has the same; without a signature it is the last line's before the export.
`verify --fingerprint` finds it again.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from assistant.report.export import write_one, write_parts
from assistant.report.pdf import PAPERS


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """VISIT --to FILE, and the paper of a PDF."""
    parser.add_argument("visit", metavar="VISIT", type=Path, help="a visit's folder")
    parser.add_argument(
        "--to", metavar="FILE", type=Path, required=True, help="ends in .pdf, .html, .txt or .csv"
    )
    parser.add_argument(
        "--parts", action="store_true", help="parts and minutes for an invoice program; .csv or .json"
    )
    parser.add_argument(
        "--paper", choices=PAPERS, default="letter", help="paper of a PDF; letter where not said"
    )


def run(arguments: argparse.Namespace) -> int:
    """0: the report is written. What can't be raises UserError, which is code 2."""
    if arguments.parts:
        write_parts(arguments.visit, arguments.to)
        print(f"Parts and minutes are in {arguments.to}.")
        return 0
    said = write_one(arguments.visit, arguments.to, arguments.paper)
    print(f"The report is in {arguments.to}.")
    if said:
        print(said, file=sys.stderr)
    return 0
