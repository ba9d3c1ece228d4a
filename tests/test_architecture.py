"""The shape of the house, read from the files themselves: who may import whom, how long a file may be.

A room that is not built yet breaks no rule; every rule counts for it from its first file on.
"""

import ast
import json
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "assistant"

# Below every room, and standing on none.
GROUND = {"assistant", "errors", "folders", "plain", "resources"}
# What a room may import besides itself and the ground. Imports point down only.
BELOW = {
    "quantity": set(),
    "trade": {"quantity"},
    "house": {"quantity", "trade"},
    "tree": {"quantity", "trade", "house"},
    "walk": {"quantity", "trade", "house", "tree"},
    "trail": {"quantity", "trade", "house", "tree", "walk"},
    # The simulated house must not know the trees that are proved with it.
    "rig": {"quantity", "trade", "house"},
    "report": {"quantity", "trade", "house", "tree", "walk", "trail"},
    "past": {"quantity", "trade", "house", "tree", "walk", "trail"},
    "drill": {"quantity", "trade", "house", "tree", "walk", "trail", "rig"},
    "window": {
        "quantity", "trade", "house", "tree", "walk", "trail", "rig", "report", "past", "drill", "display",
        "crash",
    },
    "command": {
        "quantity", "trade", "house", "tree", "walk", "trail", "rig", "report", "past", "drill", "window",
        "display",
    },
    "crash": set(),
    "display": set(),
    "__main__": {"command", "window", "display", "crash"},
}  # fmt: skip

# The module of trail/ that locks for its writer: only it may import Qt there, and only its core.
TRAIL_WRITERS = {"assistant/trail/lock.py"}
# The walk is a function of what was entered: it asks neither the clock, the disk nor chance.
IMPURE = {
    "os", "io", "pathlib", "shutil", "tempfile", "glob", "fileinput", "datetime", "time", "random", "secrets",
    "uuid", "threading", "multiprocessing", "asyncio", "subprocess", "socket", "logging", "sqlite3",
}  # fmt: skip
TOUCHES = {"open", "read_text", "read_bytes", "write_text", "write_bytes", "input", "print"}
QT_FREE_COMMANDS = ("check", "verify", "calc", "prove", "drill")
LONGEST_FILE = 400


def modules():
    """Each file of the program with its path from the top and its room."""
    for path in sorted(PACKAGE.rglob("*.py")):
        parts = path.relative_to(PACKAGE).parts
        room = parts[0] if len(parts) > 1 else Path(parts[0]).stem
        yield path, path.relative_to(ROOT).as_posix(), "assistant" if room == "__init__" else room


def imports(path):
    """All modules that a file imports at any depth of it, as (line, full name)."""
    package = path.relative_to(ROOT).with_suffix("").parts[:-1]
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            for name in node.names:
                yield node.lineno, name.name
        elif isinstance(node, ast.ImportFrom):
            base = list(package[: len(package) - node.level + 1]) if node.level else []
            base += node.module.split(".") if node.module else []
            for name in node.names:  # `from assistant import crash` imports a module too
                yield node.lineno, ".".join([*base, name.name])


def test_the_house_has_no_room_that_these_rules_do_not_know():
    """A new room is written down here first, with what it may stand on."""
    unknown = {room for _, _, room in modules()} - set(BELOW) - GROUND
    assert not unknown
    assert {"quantity", "tree", "walk"} <= {room for _, _, room in modules()}


def test_imports_point_down_only():
    """No room imports one that stands on it; the ground imports no room."""
    wrong = []
    for path, name, room in modules():
        allowed = GROUND | BELOW.get(room, set()) | {room}
        for line, imported in imports(path):
            first, _, rest = imported.partition(".")
            if first != "assistant":
                continue
            target = rest.partition(".")[0]
            # `from assistant import __version__` names no module
            if target in BELOW and target not in allowed:
                wrong.append(f"{name}:{line}: {room} may not import {imported}")
    assert not wrong, "\n".join(wrong)


def test_qt_is_imported_only_where_a_window_or_a_page_is_drawn():
    """report/ draws without widgets, the trail's writer locks, everything else knows no Qt."""
    wrong = []
    for path, name, room in modules():
        for line, imported in imports(path):
            first, _, rest = imported.partition(".")
            if first not in ("PySide6", "shiboken6"):
                continue
            part = rest.partition(".")[0]
            if room == "window":
                continue
            if room == "report" and part in ("QtCore", "QtGui", "QtSvg"):
                continue
            if name in TRAIL_WRITERS and part == "QtCore":
                continue
            wrong.append(f"{name}:{line}: no {imported} here")
    assert not wrong, "\n".join(wrong)


def test_the_walk_asks_neither_clock_nor_disk_nor_chance():
    """Replay, drill and window drive one pure function; what it may know comes in as an event."""
    wrong = []
    for path, name, room in modules():
        if room != "walk":
            continue
        wrong += [
            f"{name}:{line}: no {imported} here"
            for line, imported in imports(path)
            if imported.partition(".")[0] in IMPURE
        ]
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call):
                called = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
                if called in TOUCHES:
                    wrong.append(f"{name}:{node.lineno}: no {called}() here")
    assert not wrong, "\n".join(wrong)


def test_no_file_is_longer_than_one_idea():
    """No module of the program has more than 400 lines."""
    long = {
        name: lines
        for path, name, _ in modules()
        if (lines := len(path.read_text(encoding="utf-8").splitlines())) > LONGEST_FILE
    }
    assert not long


TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "assistant", "trees", "tests", "resources"}
# What Python and its build leave behind, where git is not there to tell what belongs to the project.
LEFT_OVERS = {"dist", "build", "__pycache__"}


def top_level():
    """The names at the top of the checkout, as git has them, or as they lie there without git."""
    if shutil.which("git") and (ROOT / ".git").exists():
        listed = subprocess.run(
            ["git", "-c", f"safe.directory={ROOT}", "ls-files"],
            cwd=ROOT, capture_output=True, text=True, check=True,
        ).stdout.splitlines()  # fmt: skip
        if listed:
            return {line.partition("/")[0] for line in listed}
    names = {path.name for path in ROOT.iterdir()} - LEFT_OVERS
    return {name for name in names if not name.endswith(".egg-info")}


def test_nothing_new_lies_at_the_top():
    """A newcomer finds six names there, and files that begin with a dot."""
    assert not {name for name in top_level() - TOP if not name.startswith(".")}


NO_QT = """
import json, sys

class Refuse:
    def find_spec(self, name, path=None, target=None):
        if name.partition(".")[0] in ("PySide6", "shiboken6"):
            raise ImportError(f"{name} is refused here")

sys.meta_path.insert(0, Refuse())
from assistant.__main__ import main
code = main(json.loads(sys.argv[1]))
print("EXIT", code, [name for name in sys.modules if name.startswith(("PySide6", "shiboken6"))])
"""


def run_without_qt(*words):
    """Runs a command in a Python that has no Qt; gives its exit code and what it said."""
    done = subprocess.run(
        [sys.executable, "-c", NO_QT, json.dumps(words)],
        cwd=ROOT, capture_output=True, text=True, check=True, timeout=300,
    )  # fmt: skip
    said, _, end = done.stdout.rpartition("EXIT ")
    code, _, loaded = end.strip().partition(" ")
    assert loaded == "[]"
    return int(code), said + done.stderr


def command_exists(word):
    return (PACKAGE / "command" / f"{word}.py").is_file()


@pytest.mark.parametrize("word", QT_FREE_COMMANDS)
def test_commands_that_draw_nothing_need_no_qt(word):
    """check, verify, calc and prove run on a machine where Qt does not even load."""
    code, said = run_without_qt(word, "--help")
    if command_exists(word):
        assert code == 0, said
    else:
        assert (code, "no command" in said) == (2, True)


def test_the_trees_are_checked_without_qt():
    """`check` reads and checks all that is shipped without loading Qt."""
    if command_exists("check"):
        code, said = run_without_qt("check", "--json")
        assert code in (0, 1), said
        assert json.loads(said)["trees"]


def test_no_crash_note_is_written_by_a_trail_that_is_not_there(tmp_path):
    """`verify` of a missing folder says so, without Qt, and is no mistake of the program's own."""
    if command_exists("verify"):
        code, said = run_without_qt("verify", str(tmp_path / "nowhere"))
        assert code == 2, said
        assert "was not made for" not in said


def test_a_walked_visit_is_verified_without_qt(tmp_path):
    """The trail's writer locks with Qt; who only reads a trail, on a server or years later, needs none."""
    if not (command_exists("replay") and command_exists("verify")):
        return
    for entries in sorted((ROOT / "resources" / "demo").glob("*.yaml")):
        visit = tmp_path / entries.stem
        subprocess.run(
            [sys.executable, "-m", "assistant", "replay", str(entries), "--out", str(visit)],
            cwd=ROOT, capture_output=True, check=False, timeout=300,
        )  # fmt: skip
        code, said = run_without_qt("verify", str(visit))
        assert code in (0, 1), said
