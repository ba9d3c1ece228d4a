"""Makes this checkout ready on a machine that has Python and nothing else, then opens, tests or runs it.

    python3 resources/ready.py open              opens the window
    python3 resources/ready.py test [...]        runs the tests; what follows goes to pytest
    python3 resources/ready.py run WORD [...]    the same as `python -m assistant WORD ...`

On Windows the words after `py` are the same. `--with EXTRA,EXTRA` in front of the word installs more of the
extras of pyproject.toml. Standard library only, and readable by Python 3.8, so that an old Python is told
which one is needed. The second run finds its stamp in .venv and starts at once.
"""

import hashlib
import importlib.util
import json
import os
import shutil
import subprocess
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
VENV = os.path.join(ROOT, ".venv")
STAMP = os.path.join(VENV, "ready.json")
PIP_LOG = os.path.join(VENV, "pip.log")
# Seen from ROOT: pip takes a space in such a setting for the end of a path, and ROOT may hold some.
CONSTRAINTS = "resources/constraints.txt"
OLDEST, NEWEST = (3, 10), (3, 14)  # what the pinned PySide6 has files for
COULD_NOT = 2

sys.path.insert(0, ROOT)
from assistant import display  # noqa: E402 - found only after the line above; Python 3.8 reads it too


class NotReadyError(Exception):
    """The sentence that the person is shown: what is the matter and what to type."""


def main(arguments):
    """Does what the words ask; gives the exit code."""
    extras = {"test"}
    if arguments[:1] == ["--with"] and len(arguments) > 1:
        extras.update(name for name in arguments[1].split(",") if name)
        arguments = arguments[2:]
    word, rest = (arguments[0], arguments[1:]) if arguments else ("", [])
    if word in ("-h", "--help"):
        print(__doc__.strip())
        return 0
    if word not in ("open", "test", "run") or (word == "open" and rest):
        print(__doc__.strip(), file=sys.stderr)
        return COULD_NOT
    try:
        check_python(sys.version_info[:3])
        if word == "open" and display.no_display():
            raise NotReadyError(display.no_display())
        python = make_ready(extras)
        return {"open": open_window, "test": run_tests, "run": run_command}[word](python, rest)
    except NotReadyError as sentence:
        print(sentence, file=sys.stderr)
    except OSError as error:  # a full disk, a folder that is not ours to write
        print(f"The set-up stopped: {error.strerror or error}: {error.filename}.", file=sys.stderr)
    except KeyboardInterrupt:
        print("Stopped.", file=sys.stderr)
    return COULD_NOT


def check_python(version):
    """Refuses a Python that the program or its window library doesn't know."""
    if OLDEST <= tuple(version[:2]) <= NEWEST:
        return
    this, oldest, newest = (".".join(map(str, each)) for each in (version, OLDEST, NEWEST))
    raise NotReadyError(
        f"Fault Trail needs Python {oldest} to {newest}, and this is {this}. Install one of those and start"
        " this script with it, for example: python3.11 resources/ready.py test"
    )


def hear(command, **settings):
    """Runs a command that is only listened to; gives its exit code and what it said, both streams as one."""
    settings.setdefault("stderr", subprocess.STDOUT)
    done = subprocess.run(command, check=False, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, **settings)
    return done.returncode, done.stdout.decode("utf-8", "replace")


def last_line(text):
    """The last line that says something."""
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    return lines[-1] if lines else "it said nothing."


# The environment


def make_ready(extras):
    """The Python of .venv with all installed; made or mended where the stamp doesn't say so already."""
    python = os.path.join(VENV, *(("Scripts", "python.exe") if os.name == "nt" else ("bin", "python")))
    wanted, stamp = fingerprint(), read_stamp()
    installed = stamp.get("fingerprint") == wanted and extras <= set(stamp.get("extras", ()))
    if installed and works(python, "yaml"):
        return python
    if not works(python, "pip"):
        make_environment()
    install(python, sorted(extras))
    with open(STAMP, "w") as file:
        json.dump({"fingerprint": wanted, "extras": sorted(extras)}, file)
    return python


def fingerprint():
    """Changes when what is to be installed changes, or when the checkout has moved."""
    digest = hashlib.sha256(ROOT.encode("utf-8", "surrogateescape"))
    for name in ("pyproject.toml", CONSTRAINTS):
        with open(os.path.join(ROOT, *name.split("/")), "rb") as file:
            digest.update(file.read())
    return digest.hexdigest()


def read_stamp():
    """What was installed last, as far as it can be read."""
    try:
        with open(STAMP) as file:
            stamp = json.load(file)
    except (OSError, ValueError):
        return {}
    return stamp if isinstance(stamp, dict) else {}


def works(python, module):
    """Whether that Python starts at all and knows the module; a moved or half-made environment doesn't."""
    return os.path.exists(python) and hear([python, "-c", f"import {module}"])[0] == 0


def make_environment():
    """Makes .venv afresh. Debian's python3 lacks ensurepip, and leaves a .venv without pip behind it."""
    if importlib.util.find_spec("ensurepip") is None or importlib.util.find_spec("venv") is None:
        install_packages(
            ["python3-venv"], "This Python cannot make environments of its own (ensurepip is missing)."
        )
    print(f"Making {VENV} ...", flush=True)
    if os.path.isdir(VENV):
        shutil.rmtree(VENV)
    # A script that was started with .venv's own Python can't build upon it.
    base = getattr(sys, "_base_executable", None) or sys.executable
    code, said = hear([base, "-m", "venv", VENV])
    if code and shutil.disk_usage(ROOT).free < 50e6:  # venv itself only says that some command failed
        raise NotReadyError(DISK_FULL)
    if code:
        raise NotReadyError(f"Python could not make {VENV}: {last_line(said)}")


def install(python, extras):
    """Has pip install the checkout with what it needs; a failure becomes one sentence."""
    print(f"Installing what {CONSTRAINTS} lists (about 100 MB the first time) ...", flush=True)
    environment = dict(os.environ, PIP_DISABLE_PIP_VERSION_CHECK="1", PYTHONUTF8="1")
    # The environment that pip builds in is held to the same list; newer pips look for it by the second name.
    environment["PIP_CONSTRAINT"] = environment["PIP_BUILD_CONSTRAINT"] = CONSTRAINTS
    what = ".[{}]".format(",".join(extras))
    said = []
    with subprocess.Popen(
        [python, "-m", "pip", "install", "--progress-bar", "off", "-e", what],
        cwd=ROOT, env=environment, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
    ) as pip:  # fmt: skip
        for raw in pip.stdout:
            line = raw.decode("utf-8", "replace").rstrip()
            said.append(line)
            if line.lstrip().startswith(("Downloading", "Installing collected")):
                print("  " + line.strip()[:100], flush=True)
    if pip.returncode == 0:
        return
    text = "\n".join(said)
    sentence = explain_pip(text)
    try:
        with open(PIP_LOG, "w", encoding="utf-8") as file:
            file.write(text + "\n")
        sentence += f" All that pip said is in {PIP_LOG}."
    except OSError:
        pass  # a full disk takes no log either; the sentence has said so
    raise NotReadyError(sentence)


DISK_FULL = "The disk is full; the program needs about 500 MB. Free some and start this again."
# The first row whose words occur counts: a refused certificate or proxy also shows as a failed connection.
PIP_REASONS = {
    "No space left on device|not enough space on the disk": DISK_FULL,
    "CERTIFICATE_VERIFY_FAILED|SSLError": (
        "The package index shows a certificate that is not trusted here. A network that inspects"
        " connections needs its own certificate named in PIP_CERT."
    ),
    "ProxyError|Tunnel connection failed|407 Proxy Authentication": (
        "The proxy refused the way to the package index; see to HTTPS_PROXY and start this again."
    ),
    "name resolution|Name or service not known|nodename nor servname|getaddrinfo failed|NameResolutionError"
    "|NewConnectionError|Failed to establish a new connection|Network is unreachable|Connection refused"
    "|Connection reset|Read timed out|ReadTimeoutError|ConnectTimeoutError|Max retries exceeded": (
        "The package index could not be reached; connect to the network and start this again."
    ),
    "Permission denied|Access is denied": (
        "Some file may not be written by you; see who owns this folder and start this again."
    ),
    # With a pinned list a file that is not there shows as a conflict.
    "No matching distribution found|conflicting dependencies": (
        "The package index has no file of a needed package for this Python and this system."
    ),
}


def explain_pip(text):
    """The sentence for a pip that failed with this text."""
    for words, sentence in PIP_REASONS.items():
        if any(word in text for word in words.split("|")):
            return sentence
    errors = [line for line in text.splitlines() if line.lower().startswith("error")]
    return "pip could not install what is needed: {}".format(last_line("\n".join(errors) or text))


# The system's own libraries


def install_packages(packages, problem):
    """Installs Debian packages as root; anybody else, and every other system, is told what to type."""
    line = display.install_line(packages)
    if not shutil.which("apt-get"):
        raise NotReadyError(f"{problem} Your system's packages have it; on Debian the line is: {line}")
    if os.geteuid() != 0:
        raise NotReadyError(f"{problem} Type this line, then the same command again:\n    {line}")
    print("Installing {} ...".format(" ".join(packages)), flush=True)
    environment = dict(os.environ, DEBIAN_FRONTEND="noninteractive")
    command = ["apt-get", "install", "-y", "--no-install-recommends", *packages]
    code, said = hear(command, env=environment)
    if code:  # the machine's package lists may be missing or old; fetching them takes long, so only now
        hear(["apt-get", "update"], env=environment)
        code, said = hear(command, env=environment)
    if code:
        raise NotReadyError(f"{problem} apt-get could not install it: {last_line(said)}")


def can_draw(python):
    """Sees to it that Qt loads, installing or naming the system libraries that a bare machine lacks."""
    code, said = hear([python, "-c", "import PySide6.QtWidgets"])
    if code == 0:
        return
    said = last_line(said)
    if not sys.platform.startswith("linux") or ".so" not in said:
        raise NotReadyError(f"The window library does not load: {said}")
    install_packages(display.DRAWING_PACKAGES, f"A system library that Qt needs is missing ({said}).")


OPEN_SCREEN = "from PySide6.QtGui import QGuiApplication as A; A([])"
# Says which library the X screen's part of Qt lacks; Qt's own message names the same one for every failure.
LOAD_SCREEN = """
import ctypes, pathlib, PySide6, PySide6.QtGui
try:
    ctypes.CDLL(str(pathlib.Path(PySide6.__file__).parent / "Qt/plugins/platforms/libqxcb.so"))
except OSError as error:
    print(error)
"""


def can_show(python):
    """Sees to it that the display takes a window; otherwise Qt would end the program without a sentence."""
    if not sys.platform.startswith("linux") or hear([python, "-c", OPEN_SCREEN])[0] == 0:
        return
    lacks = hear([python, "-c", LOAD_SCREEN], stderr=subprocess.DEVNULL)[1].strip()
    if lacks:
        install_packages(
            display.SCREEN_PACKAGES, f"A system library that Qt needs for this screen is missing ({lacks})."
        )
    if hear([python, "-c", OPEN_SCREEN])[0] == 0:
        return
    names = ("QT_QPA_PLATFORM", "WAYLAND_DISPLAY", "DISPLAY")
    named = ", ".join(f"{name}={os.environ[name]}" for name in names if os.environ.get(name))
    raise NotReadyError(f"The display takes no window ({named}); is it running, and may you use it?")


# The three words


def open_window(python, rest):
    """Opens the window and waits for its end."""
    can_draw(python)
    can_show(python)
    return ended(subprocess.call([python, "-m", "assistant", *rest]))


def run_tests(python, rest):
    """Runs pytest without a screen, a file of tests at a time on every core; `-n 0` takes one process."""
    can_draw(python)
    environment = dict(os.environ, QT_QPA_PLATFORM="offscreen")
    spread = ["-n", "auto", "--maxprocesses", "8", "--max-worker-restart", "0"]
    if "-n" in rest or "--pdb" in rest:
        spread = []
    command = [python, "-m", "pytest", *spread, "--dist", "loadfile", "--no-loadscope-reorder", *rest]
    return ended(subprocess.call(command, cwd=ROOT, env=environment))


def run_command(python, rest):
    """Runs a command where the person stands; most need no Qt, so a library that lacks stops none of them."""
    try:
        can_draw(python)
    except NotReadyError as sentence:
        print(sentence, file=sys.stderr)
    return ended(subprocess.call([python, "-m", "assistant", *rest]))


def ended(code):
    """An exit code as the shell reports it; a program that a signal ended has a negative one here."""
    return code if code >= 0 else 128 - code


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
