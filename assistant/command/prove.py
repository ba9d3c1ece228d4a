"""Prove trees on simulated houses: every fault, healthy houses too, on many plates.

Each TREE is a complaint tree by its name, as in no_heat; without one all that exist are proved. A walk is
driven by what the simulated house shows, typed as a person would type it. --faults takes a file of faults of
your own; --components says what such a file can name, and --findings which names it can give for what is
right. --walk prints one walk, question by question.

Each fault is walked once at each degree without noise (at its usual degree with its repair and the proof of
repair), then --samples times with noise: another plate and house, instruments that err within their stated
accuracy. Faults of other complaints and healthy houses are walked beside them, and every test is tried
by itself on each fault for the best order: so there are several times more walks than faults.

Exit code 0: nothing was told wrongly and no part condemned wrongly. 1: something was. 2: it could not run.
"""

from __future__ import annotations

import argparse
import json
import sys
import time
from pathlib import Path

from assistant.errors import UserError
from assistant.resources import resources_folder, trees_folder

BAR = 30
MOST_SAMPLES = 10_000
TENTHS = 10
WORDS = """\
what the output's words mean:
  right          the walk ended at the fault's finding, or at one that its file calls as right (also)
  one of a group, ambiguous
                 right, at an end to which a fault with another finding comes too: the walk does not part them
  isolated       right, and no fault with another finding comes to that end
  undecided      the walk ended without a finding: a stop page, or a question that nobody can answer there
  wrong          it ended at another finding
  condemned wrongly
                 a part was to be changed by a wrong end: the healthy part would have been paid for
  cause named    the finding asked why the part failed, and the answer was the fault's cause (or "worn", where
                 the fault has none); "-": it did not ask
  proved         the proof of repair after the repair, and what it said; "with something still wrong": it
                 passed although a part of the fault was still in the house
  read, min      readings taken, and minutes of the steps up to the finding
  detected       share of the faults that do not end as a healthy house does
  isolated to one, to two or fewer; mean ambiguity
                 share of the faults whose end names one finding, or two; the mean number it leaves
  best order found
                 minutes of the cheapest order of the tree's own tests that the program found for these
                 faults, each proved as the tree proves it; "over it": the tree's minutes divided by these
  floor          minutes below which no order of these tests can be, however good
  too close to call
                 a reading within its instrument's error of a limit
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """TREE..., --faults, --samples, --seed, --jobs, --json, --components, --findings and --walk."""
    parser.epilog = WORDS
    parser.add_argument("trees", nargs="*", metavar="TREE", help="complaint trees to prove; all without one")
    parser.add_argument("--faults", type=Path, metavar="FILE", help="faults of your own instead of the usual")
    parser.add_argument(
        "--samples", type=int, default=4, metavar="N", help="noisy samples for each fault (4 if not said)"
    )
    parser.add_argument("--seed", type=int, default=0, metavar="S", help="another seed gives other samples")
    parser.add_argument("--jobs", type=int, default=None, metavar="N", help="cores to use; all if not said")
    parser.add_argument("--json", action="store_true", help="print one JSON object instead of tables")
    parser.add_argument("--components", action="store_true", help="list what a file of faults can name")
    parser.add_argument(
        "--findings", action="store_true", help="list the findings and causes that it can give as right"
    )
    parser.add_argument(
        "--walk", metavar="FAULT[:DEGREE]", help="print one walk; 'healthy' is a house without a fault"
    )
    parser.add_argument(
        "--sample", type=int, metavar="N", help="for --walk: the noisy sample with this number, from 0"
    )


def run(arguments: argparse.Namespace) -> int:
    """Prints the proof."""
    if arguments.components:
        from assistant.rig.fault_words import components

        print(components())
        return 0
    if not 0 <= arguments.samples <= MOST_SAMPLES:
        raise UserError(f"--samples is a number from 0 to {MOST_SAMPLES} (got {arguments.samples}).")
    library, known = _library(arguments.trees)
    if arguments.findings:
        from assistant.drill.ends_list import ends_list

        print(ends_list(library, arguments.trees or known))
        return 0
    files, texts = _fault_files(arguments.faults), library.texts
    if not _faults_fit(files, texts, arguments.trees or known):
        return 2
    if arguments.walk:
        return _one_walk(arguments, library, files)
    from assistant.drill.as_json import as_json
    from assistant.drill.proof import WRONG
    from assistant.drill.prove import prove
    from assistant.drill.table import EXPLAINED, table

    begun = time.monotonic()
    proofs = prove(
        texts,
        files,
        arguments.trees,
        arguments.samples,
        arguments.seed,
        Bar(sys.stderr),
        arguments.jobs,
    )
    if arguments.json:
        print(json.dumps(as_json(proofs), indent=2, ensure_ascii=False))
    else:
        print("\n\n".join(table(proof) for proof in proofs))
        print(f"\nSeed {arguments.seed}, {time.monotonic() - begun:.0f} s. {EXPLAINED}")
    bad = any(
        proof.false_condemnations or any(proof.verdict(o) == WRONG for o in proof.outcomes)
        for proof in proofs
    )
    return int(bad)


def _fault_files(path: Path | None) -> dict[str, bytes]:
    """The bytes of the files of faults, by the name to show."""
    if path is not None:
        try:
            return {str(path): path.read_bytes()}
        except OSError as error:
            raise UserError(f"{path} can't be read: {error.strerror or error}.") from error
    folder = resources_folder() / "faults"
    found = {f"faults/{one.name}": one.read_bytes() for one in sorted(folder.glob("*.yaml"))}
    if not found:
        raise UserError(f"There are no faults in {folder}; name a file with --faults.")
    return found


def _library(wanted: list[str]):
    """The library and its complaint trees. Raises UserError for one that is not there."""
    from assistant.drill.prove import complaint_trees
    from assistant.tree.library import read_folder

    library = read_folder(trees_folder())
    known = sorted(complaint_trees(library))
    for name in wanted:
        if name not in known:
            raise UserError(f"There is no complaint tree '{name}'; there is {', '.join(known) or 'none'}.")
    if not known:
        raise UserError("There is no complaint tree that can be walked; `check` says what is wrong.")
    return library, known


def _one_walk(arguments: argparse.Namespace, library, files: dict[str, bytes]) -> int:
    """Prints the walk of one fault, in the first TREE that is named or that of its complaint."""
    from assistant.drill.one_walk import case_of, walk_lines
    from assistant.drill.outcome import WRONG
    from assistant.drill.prove import complaint_trees
    from assistant.drill.run import Matter

    known = complaint_trees(library)
    faults = Matter(library.texts, files).faults()
    chosen = {tree: known[tree] for tree in arguments.trees or known}
    case = case_of(arguments.walk, chosen, faults, arguments.sample)
    verdict, lines = walk_lines(case, library, known[case.tree], faults.get(case.fault), arguments.seed)
    print("\n".join(lines))
    return int(verdict == WRONG)


def _faults_fit(files: dict[str, bytes], texts: dict[str, bytes], trees: list[str]) -> bool:
    """Whether the files can be used; prints every mistake at its place."""
    from assistant.drill.fits import problems_of

    problems = problems_of(files, texts, trees)
    for problem in problems:
        print(problem, file=sys.stderr)
    return not problems


class Bar:
    """How far it is: a bar on a terminal; anywhere else a line after the first walk and ten more."""

    def __init__(self, stream) -> None:
        self.stream = stream
        self.begun = time.monotonic()
        self.tenth = -1

    def __call__(self, done: int, total: int) -> None:
        seconds = time.monotonic() - self.begun
        if self.stream.isatty():
            filled = BAR * done // total
            left = seconds / done * (total - done)
            end = "\n" if done == total else ""
            self.stream.write(
                f"\r[{'#' * filled}{'.' * (BAR - filled)}] {done}/{total}, {left:.0f} s to go  {end}"
            )
        elif (tenth := TENTHS * done // total) > self.tenth:
            self.tenth = tenth
            self.stream.write(f"{done} of {total} walked, {seconds:.0f} s\n")
        self.stream.flush()
