"""resources/ready.py and what it reads: sentences instead of tracebacks, and one list of packages for all."""

import importlib.util
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).resolve().parents[1]
SCRIPT = ROOT / "resources" / "ready.py"


def load_script():
    """The script as a module; it is not part of the package."""
    spec = importlib.util.spec_from_file_location("ready", SCRIPT)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.fixture
def ready(monkeypatch, tmp_path):
    """The script with an environment folder of the test's own, so that none touches the one it runs in."""
    monkeypatch.setattr(sys, "path", list(sys.path))
    module = load_script()
    monkeypatch.setattr(module, "VENV", str(tmp_path / ".venv"))
    monkeypatch.setattr(module, "STAMP", str(tmp_path / ".venv" / "ready.json"))
    monkeypatch.setattr(module, "PIP_LOG", str(tmp_path / ".venv" / "pip.log"))
    return module


# Which Python


@pytest.mark.parametrize("version", [(3, 10, 0), (3, 11, 2), (3, 14, 9)])
def test_a_python_that_fits_is_taken(ready, version):
    """From the oldest that the program is written for to the newest that its window library has files for."""
    ready.check_python(version)


@pytest.mark.parametrize("version", [(3, 8, 18), (3, 9, 2), (3, 15, 0)])
def test_another_python_is_told_which_one_is_needed(ready, version):
    """The sentence names this one and the ones that fit."""
    with pytest.raises(ready.NotReadyError) as told:
        ready.check_python(version)
    for words in (".".join(map(str, version)), "3.10", "3.14"):
        assert words in str(told.value)


@pytest.mark.parametrize("path", [SCRIPT, ROOT / "assistant/display.py", ROOT / "assistant/__init__.py"])
def test_what_an_old_python_must_read_uses_no_newer_word(path):
    """Whatever runs before the version is looked at must be readable by Python 3.8."""
    import ast

    ast.parse(path.read_text(encoding="utf-8"), feature_version=(3, 8))


def test_the_oldest_python_is_the_same_everywhere(ready):
    """pyproject.toml, the script and the style rules name one."""
    text = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    assert f'requires-python = ">={ready.OLDEST[0]}.{ready.OLDEST[1]}"' in text
    assert f'target-version = "py{ready.OLDEST[0]}{ready.OLDEST[1]}"' in text


# What it says


def run(*words, **environment):
    """Runs the script; gives its exit code and what it said on the error stream."""
    done = subprocess.run(
        [sys.executable, str(SCRIPT), *words], capture_output=True, text=True, check=False, timeout=120,
        env={**{n: v for n, v in os.environ.items() if n not in DISPLAYS}, **environment},
    )  # fmt: skip
    return done.returncode, done.stdout, done.stderr


DISPLAYS = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")


@pytest.mark.parametrize("words", [(), ("frobnicate",), ("open", "this"), ("--with",)])
def test_a_word_that_it_does_not_know_gets_the_three_it_does(words):
    """Exit code 2 and the list, before anything is installed."""
    code, _, said = run(*words)
    assert code == 2
    for word in ("open", "test", "run"):
        assert f"ready.py {word}" in said


def test_help_is_no_failure():
    """The same list on the ordinary stream."""
    code, said, _ = run("--help")
    assert code == 0
    assert "ready.py open" in said


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="Windows and macOS always have a display")
def test_open_without_a_display_is_one_sentence():
    """It says how the same visit runs without one, and installs nothing first."""
    code, out, said = run("open")
    assert (code, out) == (2, "")
    assert said.count("\n") == 1
    assert "python -m assistant replay ENTRIES.yaml --out FOLDER" in said


# What pip 23.0.1 of Debian 12 printed when each of these was made to happen there, shortened: no network, a
# proxy that is not there, a certificate of somebody else, no certificate at all, a file system of 60 MB. The
# last three are from memory.
RETRY = "WARNING: Retrying (Retry(total=0, connect=None, read=None)) after connection broken by "
CONFLICT = (
    "\nERROR: Cannot install hatchling because these package versions have conflicting dependencies.\n"
    "    The user requested hatchling\n    The user requested (constraint) hatchling==1.33.0\n"
    "ERROR: ResolutionImpossible: for help visit the manual\n"
)
PIP_SAID = [
    (
        "could not be reached",
        RETRY + "'NewConnectionError('Failed to establish a new connection: [Errno -3] Temporary failure in"
        " name resolution')': /simple/hatchling/" + CONFLICT,
    ),
    (
        "proxy",
        RETRY + "'ProxyError('Cannot connect to proxy.', NewConnectionError('Failed to establish a new"
        " connection: [Errno 111] Connection refused'))': /simple/hatchling/" + CONFLICT,
    ),
    (
        "certificate",
        RETRY + "'SSLError(SSLCertVerificationError(1, '[SSL: CERTIFICATE_VERIFY_FAILED] certificate verify"
        " failed'))': Max retries exceeded with url: /simple/hatchling/" + CONFLICT,
    ),
    (
        "certificate",
        RETRY + "'SSLError(SSLError(136, '[X509: NO_CERTIFICATE_OR_CRL_FOUND] no certificate or crl found"
        " (_ssl.c:4123)'))': Max retries exceeded with url: /simple/hatchling/" + CONFLICT,
    ),
    (
        "disk is full",
        'Traceback (most recent call last):\n  File "contextlib.py", line 155, in __exit__\n'
        "urllib3.exceptions.ProtocolError: (\"Connection broken: OSError(28, 'No space left on"
        " device')\", OSError(28, 'No space left on device'))",
    ),
    ("no file of a needed package", CONFLICT),
    (
        "no file of a needed package",
        "ERROR: Could not find a version that satisfies the requirement PySide6-Essentials<6.12,>=6.8\n"
        "ERROR: No matching distribution found for PySide6-Essentials<6.12,>=6.8",
    ),
    (
        "who owns this folder",
        "ERROR: Could not install packages due to an OSError: [Errno 13] Permission denied",
    ),
    (
        "the wheel is damaged",
        "Traceback (most recent call last):\n  somewhere\nERROR: the wheel is damaged\nWARNING: whatever\n",
    ),
]


@pytest.mark.parametrize(("words", "said"), PIP_SAID)
def test_a_failing_pip_is_a_sentence(ready, words, said):
    """Each mishap has its own sentence; another one gets the last error line. None shows a traceback."""
    sentence = ready.explain_pip(said)
    assert words in sentence
    assert "Traceback" not in sentence
    assert "\n" not in sentence


def test_all_that_pip_said_is_kept(ready, tmp_path):
    """The sentence names a file with the whole text, for whoever has to look further."""
    (tmp_path / ".venv").mkdir()
    pip = tmp_path / "python"
    pip.write_text("#!/bin/sh\necho 'ERROR: it is full: No space left on device'\nexit 1\n")
    pip.chmod(0o755)
    with pytest.raises(ready.NotReadyError) as told:
        ready.install(str(pip), ["test"])
    assert "disk is full" in str(told.value)
    assert "it is full" in (tmp_path / ".venv" / "pip.log").read_text(encoding="utf-8")


# The system's packages


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no such packages")
def test_only_root_on_debian_has_packages_installed(ready, monkeypatch):
    """Anybody else is told the exact line to type."""
    monkeypatch.setattr(ready.shutil, "which", lambda name: "/usr/bin/" + name)
    monkeypatch.setattr(ready.os, "geteuid", lambda: 1000)
    with pytest.raises(ready.NotReadyError) as told:
        ready.install_packages(["libgl1", "libegl1"], "Something is missing.")
    assert "sudo apt-get install -y --no-install-recommends libgl1 libegl1" in str(told.value)


def test_a_system_without_apt_is_told_what_debian_calls_it(ready, monkeypatch):
    """The names help to find those of the other system."""
    monkeypatch.setattr(ready.shutil, "which", lambda name: None)
    with pytest.raises(ready.NotReadyError) as told:
        ready.install_packages(["python3-venv"], "Something is missing.")
    assert "python3-venv" in str(told.value)


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no such packages")
def test_package_lists_are_fetched_only_when_the_first_try_fails(ready, monkeypatch):
    """Old or missing lists cost one more round, a machine that is up to date none."""
    monkeypatch.setattr(ready.shutil, "which", lambda name: "/usr/bin/" + name)
    monkeypatch.setattr(ready.os, "geteuid", lambda: 0)
    for answers, asked in (([0], ["install"]), ([100, 0, 0], ["install", "update", "install"])):
        said, left = [], list(answers)

        def answer(command, said=said, left=left, **_):
            said.append(command[1])
            return left.pop(0), "E: x"

        monkeypatch.setattr(ready, "hear", answer)
        ready.install_packages(["libgl1"], "Something is missing.")
        assert said == asked
    monkeypatch.setattr(ready, "hear", lambda command, **_: (100, "E: Unable to locate package libgl1"))
    with pytest.raises(ready.NotReadyError, match="Unable to locate package libgl1"):
        ready.install_packages(["libgl1"], "Something is missing.")


# The stamp


def test_nothing_is_done_twice(ready, monkeypatch):
    """A second start asks neither pip nor venv; a changed list, a missing extra or a moved folder does."""
    did = []
    monkeypatch.setattr(ready, "works", lambda python, module: Path(ready.VENV).is_dir())
    monkeypatch.setattr(ready, "make_environment", lambda: did.append("venv") or Path(ready.VENV).mkdir())
    monkeypatch.setattr(ready, "install", lambda python, extras: did.append(extras))
    ready.make_ready({"test"})
    assert did == ["venv", ["test"]]
    ready.make_ready({"test"})
    assert len(did) == 2
    ready.make_ready({"test", "oracles"})
    assert did[2:] == [["oracles", "test"]]
    ready.make_ready({"test"})
    assert len(did) == 3
    monkeypatch.setattr(ready, "fingerprint", lambda: "another")
    ready.make_ready({"test"})
    assert did[3:] == [["test"]]


@pytest.mark.parametrize("text", ["", "{", "[]", '"x"', "null"])
def test_a_stamp_that_cannot_be_read_counts_as_none(ready, text):
    """A machine that went dark while the stamp was written installs again."""
    Path(ready.VENV).mkdir()
    Path(ready.STAMP).write_text(text)
    assert ready.read_stamp() == {}


def test_an_environment_without_pip_is_made_afresh(ready):
    """A half-made one, as Debian leaves behind when ensurepip is missing, is replaced by one that works."""
    made = Path(ready.VENV)
    made.mkdir()
    (made / "half made").write_text("")
    ready.make_environment()
    python = str(made / ("Scripts/python.exe" if os.name == "nt" else "bin/python"))
    assert ready.works(python, "pip")
    assert not ready.works(python, "no_such_module")
    assert not (made / "half made").exists()


# The list of packages


def pinned():
    """Name to requirement of each line of constraints.txt; a name may stand twice with different markers."""
    lines = (ROOT / "resources" / "constraints.txt").read_text(encoding="utf-8").splitlines()
    return [Requirement(line) for line in lines if not line.startswith("#")]


def declared():
    """All requirements of pyproject.toml, the extras' and the build's too."""
    text = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    found = []
    lists = r"^(?:requires|dependencies|test|oracles|style) = \[(.*?)\]"
    for block in re.findall(lists, text, re.MULTILINE | re.DOTALL):
        found += [Requirement(line) for line in re.findall(r"\"([^\"]+)\"", re.sub(r"#.*", "", block))]
    return found


def test_each_package_is_pinned_to_a_version_that_pyproject_admits():
    """What is installed is what was tried, the build's own tools included."""
    names = {canonicalize_name(line.name): line for line in pinned()}
    assert len(declared()) >= 10
    for requirement in declared():
        line = names[canonicalize_name(requirement.name)]
        (pin,) = line.specifier
        assert requirement.specifier.contains(pin.version), requirement


def test_each_line_is_a_name_and_one_version():
    """No address, no path, no option: the list says what, and the machine's own settings say from where."""
    text = (ROOT / "resources" / "constraints.txt").read_text(encoding="utf-8")
    assert ":" + "//" not in text
    for requirement in pinned():
        (pin,) = requirement.specifier
        assert pin.operator == "=="
        assert requirement.url is None


# What the tests stand on


def test_a_window_or_timer_left_behind_fails_its_test(tmp_path):
    """The guard of conftest.py sees both, and lets a test pass that cleans up."""
    (tmp_path / "conftest.py").write_text((ROOT / "tests" / "conftest.py").read_text(encoding="utf-8"))
    (tmp_path / "pytest.ini").write_text("[pytest]\nqt_api = pyside6\nmarkers = gui\n")
    (tmp_path / "test_left.py").write_text(
        "from PySide6.QtCore import QTimer\n"
        "from PySide6.QtWidgets import QWidget\n"
        "kept = []\n"
        "def test_window(qtbot):\n"
        "    kept.append(QWidget())\n"
        "def test_timer(qapp):\n"
        "    kept.append(QTimer()); kept[-1].start(60000)\n"
        "def test_clean(qtbot):\n"
        "    widget = QWidget(); qtbot.addWidget(widget); widget.show()\n"
        "    timer = QTimer(widget); timer.start(60000)\n"
    )
    done = subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", str(tmp_path)],
        capture_output=True, text=True, check=False, cwd=tmp_path,
    )  # fmt: skip
    assert "3 passed, 2 errors" in done.stdout, done.stdout
    assert "top-level widget" in done.stdout
    assert "running timer" in done.stdout
