"""The front door: words to commands, help, and what a person sees when something goes wrong."""

import errno
import os
import subprocess
import sys
from types import SimpleNamespace

import pytest

import assistant.__main__ as front
from assistant import __version__, command, display, folders
from assistant.errors import UserError


def no_such_entry(arguments):
    """A mistake of the program's own, as any command might hold one."""
    return {}[len(arguments.what)]


@pytest.fixture
def one_command(monkeypatch):
    """Installs a single command named `tell`, whose run the test chooses."""

    def install(run):
        module = SimpleNamespace(
            __doc__="Tells what it was given.",
            add_arguments=lambda parser: parser.add_argument("what"),
            run=run,
        )
        monkeypatch.setattr(command, "words", lambda: ["tell"])
        monkeypatch.setattr(command, "load", lambda word: module)

    return install


def test_a_word_runs_its_command_and_its_exit_code_counts(one_command, capsys):
    """The command gets its own arguments only, and its exit code is the program's."""
    one_command(lambda arguments: print(arguments.what) or 1)
    assert front.main(["tell", "this"]) == 1
    assert capsys.readouterr().out == "this\n"


def test_an_unknown_word_names_the_nearest(one_command, capsys):
    """A slip of the key gets the word that was meant, exit code 2 and no traceback."""
    one_command(lambda arguments: 0)
    assert front.main(["tel"]) == 2
    said = capsys.readouterr().err
    assert "'tel'" in said
    assert "'tell'" in said
    assert said.count("\n") == 1


def test_a_strange_word_gets_the_list(one_command, capsys):
    """Where no word is near, all are named."""
    one_command(lambda arguments: 0)
    assert front.main(["--frobnicate"]) == 2
    assert "tell" in capsys.readouterr().err


def test_wrong_arguments_end_with_two(one_command, capsys):
    """A missing argument is said with the command's usage."""
    one_command(lambda arguments: 0)
    assert front.main(["tell"]) == 2
    assert "fault-trail tell" in capsys.readouterr().err


def test_help_of_a_command_ends_with_nought(one_command, capsys):
    """`--help` behind a word is no failure and shows what the command says of itself."""
    one_command(lambda arguments: 0)
    assert front.main(["tell", "--help"]) == 0
    assert "Tells what it was given." in capsys.readouterr().out


@pytest.mark.parametrize("word", ["-h", "--help", "help"])
def test_help_lists_every_command_with_its_sentence(word, capsys):
    """Each module of assistant/command stands in the help with the first line of its docstring."""
    assert front.main([word]) == 0
    said = capsys.readouterr().out
    assert "fault-trail" in said
    for name in command.words():
        assert command.summary(name), f"assistant/command/{name}.py needs a docstring"
        assert any(
            line.split()[:1] == [name.replace("_", "-")] and command.summary(name) in line
            for line in said.splitlines()
        )


def test_each_command_has_the_two_functions():
    """A command that lacks one would only be found out by whoever types its word."""
    for name in command.words():
        module = command.load(name)
        assert callable(module.add_arguments)
        assert callable(module.run)


def test_help_imports_no_command():
    """Listing the commands must not load what they need."""
    code = (
        "import sys; from assistant.__main__ import main; main(['--help']);"
        "print([m for m in sys.modules if m.startswith(('assistant.command.', 'PySide6', 'yaml'))])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"


def test_version(capsys):
    """A crash note and a report name the same version as this."""
    assert front.main(["--version"]) == 0
    assert __version__ in capsys.readouterr().out


def test_a_user_error_is_its_sentence(one_command, capsys):
    """What the person can put right is shown as it stands."""

    def run(arguments):
        raise UserError("The folder is locked by another window; close that one first.")

    one_command(run)
    assert front.main(["tell", "x"]) == 2
    assert capsys.readouterr().err == "The folder is locked by another window; close that one first.\n"


def test_a_mistake_of_its_own_is_one_sentence_and_a_note(one_command, capsys, monkeypatch, tmp_path):
    """The note holds the traceback, the screen doesn't; no argument of the person's gets into it."""
    monkeypatch.setenv(folders.HOME_VARIABLE, str(tmp_path))
    one_command(no_such_entry)
    assert front.main(["tell", "the-blue-house"]) == 2
    said = capsys.readouterr().err
    assert said.count("\n") == 1
    assert "Traceback" not in said
    (note,) = (tmp_path / "notes").iterdir()
    assert str(note) in said
    text = note.read_text(encoding="utf-8")
    assert "KeyError" in text
    assert __version__ in text
    assert "the-blue-house" not in text


def test_a_note_that_cannot_be_written_is_still_a_sentence(one_command, capsys, monkeypatch, tmp_path):
    """Where neither the user's folder nor the temporary one takes the note, the sentence says that."""
    blocked = tmp_path / "a file"
    blocked.write_text("")
    monkeypatch.setenv(folders.HOME_VARIABLE, str(blocked))
    monkeypatch.setattr("tempfile.gettempdir", lambda: str(blocked))
    one_command(no_such_entry)
    assert front.main(["tell", "x"]) == 2
    said = capsys.readouterr().err
    assert "no note" in said
    assert "Traceback" not in said


def test_a_full_disk_is_named(one_command, capsys):
    """What the system refused stands in the sentence."""

    def run(arguments):
        raise OSError(errno.ENOSPC, "No space left on device")

    one_command(run)
    assert front.main(["tell", "x"]) == 2
    assert "No space left on device" in capsys.readouterr().err


def test_interrupting_is_no_mistake(one_command, capsys):
    """Ctrl-C ends with the code that a shell knows, and without a note."""

    def run(arguments):
        raise KeyboardInterrupt

    one_command(run)
    assert front.main(["tell", "x"]) == 130
    assert capsys.readouterr().err == "Stopped.\n"


@pytest.mark.skipif(sys.platform == "win32", reason="a pipe that breaks is another error on Windows")
def test_a_reader_that_leaves_gets_no_complaint():
    """`... --help | true` prints nothing on the error stream."""
    done = subprocess.run(
        ["bash", "-c", f"'{sys.executable}' -m assistant --help | true; echo ${{PIPESTATUS[0]}}"],
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert done.stderr == ""
    assert done.stdout.strip() in ("0", "2")


def test_a_terminal_that_knows_no_ohm_sign_gets_the_rest():
    """Words outside the terminal's letters are replaced and end nothing."""
    code = (
        "import assistant.__main__ as front; front._help = lambda: '4.7 k\\u2126';"
        "raise SystemExit(front.main(['--help']))"
    )
    terminal = dict(os.environ, PYTHONIOENCODING="ascii")
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, check=False, env=terminal)
    assert (done.returncode, done.stdout.strip()) == (0, b"4.7 k?")


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="Windows and macOS always have a display")
def test_without_a_display_the_window_says_how_to_do_without(monkeypatch, capsys):
    """One sentence and the command that walks the same visit, instead of Qt ending the process."""
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    assert front.main([]) == 2
    said = capsys.readouterr().err
    assert said.count("\n") == 1
    assert "python -m assistant replay ENTRIES.yaml --out FOLDER" in said


@pytest.mark.parametrize(
    ("said", "library"),
    [
        ("libGL.so.1: cannot open shared object file: No such file or directory", "libGL.so.1"),
        ("ImportError: libEGL.so.1: cannot open shared object file: No such file", "libEGL.so.1"),
        ("No module named 'PySide6'", None),
    ],
)
def test_a_missing_system_library_is_named_with_the_line_to_type(said, library):
    """The loader's words become the name of what is missing; other failures are none of the system's."""
    sentence = display.missing_library(said)
    if library is None:
        assert sentence is None
    else:
        assert library in sentence
        assert "apt-get install" in sentence


@pytest.mark.parametrize("platform", ["linux", "darwin", "win32"])
def test_the_users_folder_follows_the_systems_custom(platform, monkeypatch, tmp_path):
    """Below the person's own folder on each system, or where the shop says."""
    monkeypatch.setattr(sys, "platform", platform)
    monkeypatch.delenv(folders.HOME_VARIABLE, raising=False)
    for name in ("XDG_DATA_HOME", "LOCALAPPDATA"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("USERPROFILE", str(tmp_path))
    assert tmp_path in folders.user_folder().parents
    monkeypatch.setenv(folders.HOME_VARIABLE, str(tmp_path / "shop"))
    assert folders.user_folder() == tmp_path / "shop"
