"""Draw a tree as a diagram for the wall: its questions, answers and findings, on one sheet or several.

TREE is a tree's name (see `check --json`), or a file. The file's ending says what is written: .svg or .pdf.
Where the checker finds something wrong, the diagram says it at the step.

Exit code 0: drawn. 2: it could not be drawn.
"""

from __future__ import annotations

import argparse
from pathlib import Path

from assistant.errors import UserError
from assistant.house.nearest import suggestion
from assistant.resources import trees_folder
from assistant.tree.chart.faults import faults_at
from assistant.tree.chart.sheets import PAPERS, draw
from assistant.tree.check.selection import select
from assistant.tree.library import Library, read_folder

ENDINGS = (".svg", ".pdf")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """TREE, --to FILE and --paper."""
    parser.add_argument("tree", metavar="TREE", help="a tree's name, or its file")
    parser.add_argument("--to", required=True, type=Path, metavar="FILE", help="what to write: .svg or .pdf")
    parser.add_argument("--paper", choices=tuple(PAPERS), default="a3", help="sheets that lie on their side")


def run(arguments: argparse.Namespace) -> int:
    """Writes the diagram and says how many sheets it has."""
    ending = arguments.to.suffix.lower()
    if ending not in ENDINGS:
        raise UserError(f"{str(arguments.to)!r} must end in .svg or .pdf.")
    library, name = _meant(arguments.tree)
    tree = library.trees[name]
    titles = {other.name: other.title for other in library.trees.values()}
    chart = draw(tree, library.vocabulary, titles, arguments.paper, errors=faults_at(library, tree))
    if ending == ".svg":
        from assistant.report.chart_svg import to_svg

        data = to_svg(chart).encode()
    else:
        from assistant.report.chart_pdf import to_pdf

        data = to_pdf(chart, arguments.paper)
    try:
        arguments.to.write_bytes(data)
    except OSError as error:
        raise UserError(f"{str(arguments.to)!r} can't be written: {error.strerror or error}.") from error
    sheets = len(chart.sheets)
    print(f"{tree.title}: {len(tree.steps)} steps on {sheets} {'sheet' if sheets == 1 else 'sheets'}, "
          f"{arguments.to}")
    return 0


def _meant(wanted: str) -> tuple[Library, str]:
    """The library and the tree's name in it. Raises UserError where there is none, or it does not load."""
    path = Path(wanted)
    if path.suffix == ".yaml" or path.is_file():
        selection = select(path, trees_folder())
        library, name = selection.library, path.stem
    else:
        library, name = read_folder(trees_folder()), wanted
    if name in library.trees:
        return library, name
    problem = next((one for one in library.problems if Path(one.file).stem == name), None)
    if problem is not None:
        raise UserError(f"{name!r} can't be drawn before it loads: {problem}")
    raise UserError(f"There is no tree {name!r}{suggestion(name, list(library.trees)) or '.'}")
