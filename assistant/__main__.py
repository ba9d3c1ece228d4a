"""The front door: no argument opens the window, a word runs the command of that name."""

from __future__ import annotations

import argparse
import contextlib
import difflib
import os
import sys
from collections.abc import Sequence

from assistant import __version__, command, display
from assistant.errors import UserError

COULD_NOT = 2  # could not run, or not finish
INTERRUPTED = 130  # what a shell reports for Ctrl-C


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs what the arguments ask for and gives the exit code; shows a sentence, never a traceback."""
    words = list(sys.argv[1:] if arguments is None else arguments)
    _write_what_the_terminal_can()
    try:
        code = _dispatch(words)
        if sys.stdout is not None:
            sys.stdout.flush()  # here, where a full disk or a reader that left still gets its answer
        return code
    except UserError as error:
        _say(str(error))
    except KeyboardInterrupt:
        _say("Stopped.")
        return INTERRUPTED
    except BrokenPipeError:
        # The reader has left (`... | head`). Python would complain once more when it flushes at the end.
        with contextlib.suppress(OSError, ValueError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    except Exception as error:  # noqa: BLE001 - the last resort is the point of this line
        from assistant.crash import crash_sentence

        _say(crash_sentence(error, repr(words[0]) if words else "the window"))
    return COULD_NOT


def _dispatch(words: list[str]) -> int:
    if not words:
        return _open_window()
    first = words[0]
    if first in ("-h", "--help", "help"):
        print(_help())
        return 0
    if first == "--version":
        print(f"Fault Trail {__version__}")
        return 0
    name = first.replace("-", "_")
    if name not in command.words():
        raise UserError(_unknown(first))
    module = command.load(name)
    parser = argparse.ArgumentParser(
        prog=f"fault-trail {first}",
        description=module.__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    module.add_arguments(parser)
    try:
        chosen = parser.parse_args(words[1:])
    except SystemExit as end:  # argparse has said what is wrong, or has printed the help
        return int(end.code or 0)
    return int(module.run(chosen))


def _open_window() -> int:
    sentence = display.no_display()
    if sentence:
        raise UserError(sentence)
    try:
        from assistant.window.app import run
    except ImportError as error:
        missing = display.missing_library(str(error))
        if missing is None:
            raise
        raise UserError(missing) from error
    return int(run())


def _help() -> str:
    rows = [(word.replace("_", "-"), command.summary(word)) for word in command.words()]
    width = max((len(word) for word, _ in rows), default=0)
    lines = [
        "usage: fault-trail [COMMAND ...]      (in a checkout: python -m assistant [COMMAND ...])",
        "",
        "Without a command the window opens. With one:",
        "",
        *(f"  {word.ljust(width)}  {says}".rstrip() for word, says in rows),
        "",
        "`fault-trail COMMAND --help` tells what a command takes.",
        "Exit codes: 0 done, no defect found; 1 a defect was found; 2 could not run or not finish.",
    ]
    return "\n".join(lines)


def _unknown(first: str) -> str:
    known = [word.replace("_", "-") for word in command.words()]
    near = difflib.get_close_matches(first.lower(), known, n=1)
    hint = f"Did you mean {near[0]!r}?" if near else f"There is {', '.join(known) or 'none'}."
    return f"Fault Trail has no command {first!r}. {hint} --help tells what each does."


def _write_what_the_terminal_can() -> None:
    """A terminal that knows no ohm sign gets a question mark instead of an error."""
    for stream in (sys.stdout, sys.stderr):
        if stream is not None and hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")


def _say(sentence: str) -> None:
    if sys.stderr is not None:  # a window program on Windows has none
        print(sentence, file=sys.stderr)


if __name__ == "__main__":
    sys.exit(main())
