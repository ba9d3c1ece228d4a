"""A report where the disk is full at any byte, the folder is shut or there is no font: a sentence, the older
report whole, and nothing half written left behind.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from assistant.errors import UserError
from assistant.report.export import write_all, write_one
from assistant.trail.live import LiveVisit
from assistant.trail.verify import verify
from assistant.walk.event import Note
from tests.report.pdf_reader import pages, squeezed
from tests.trail.disk_full import files_end_at
from tests.walk.small import AT, library

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def visit(tmp_path_factory):
    folder = tmp_path_factory.mktemp("trouble") / "visit"
    live = LiveVisit.start(folder, library(), (("no_heat", "cold"),), at=AT)
    live.send(Note(AT, "Door hung from its tape"))
    live.close()
    return folder


@pytest.mark.parametrize("kind", ["txt", "csv", "html", "pdf"])
def test_a_disk_that_is_full_at_any_byte_leaves_the_older_report_whole(qapp, visit, tmp_path, kind):
    file = tmp_path / f"r.{kind}"
    assert write_one(visit, file) is None
    before = file.read_bytes()
    for part in range(12):
        with files_end_at(len(before) * part // 12), pytest.raises(UserError, match="could not be written"):
            write_one(visit, file)
        assert file.read_bytes() == before
        assert [path.name for path in tmp_path.iterdir()] == [file.name]
    assert write_one(visit, file) is None


def test_a_full_disk_in_the_middle_of_all_reports_loses_nothing_of_the_visit(qapp, visit, tmp_path):
    """The text fits and the HTML does not."""
    with files_end_at(3_000), pytest.raises(UserError, match="could not be written"):
        write_all(visit, tmp_path)
    assert not [path for path in tmp_path.iterdir() if path.suffix == ".part"]
    assert "none altered" in verify(visit).sentences[0]
    assert write_all(visit, tmp_path) is None


def test_a_folder_that_may_not_be_written_to_is_a_sentence(visit, tmp_path):
    (tmp_path / "file").write_text("a file where a folder should be")
    for place in (tmp_path / "file" / "r.txt", tmp_path / "nowhere" / "r.txt"):
        with pytest.raises(UserError, match="could not be written"):
            write_one(visit, place)


def _run(*words, **environment):
    return subprocess.run(
        [sys.executable, *map(str, words)],
        capture_output=True, text=True, encoding="utf-8", cwd=ROOT, check=False,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen", **environment},
    )  # fmt: skip


@pytest.fixture
def no_font(tmp_path):
    """The environment of a computer on which no font is installed."""
    (tmp_path / "none").mkdir()
    (tmp_path / "fonts.conf").write_text(
        f"<?xml version='1.0'?><!DOCTYPE fontconfig SYSTEM 'fonts.dtd'>"
        f"<fontconfig><dir>{tmp_path / 'none'}</dir></fontconfig>"
    )
    return {"FONTCONFIG_FILE": str(tmp_path / "fonts.conf"), "QT_QPA_FONTDIR": str(tmp_path / "none")}


def test_where_no_font_is_installed_the_programs_own_draws_the_letters(visit, tmp_path, no_font):
    done = _run("-m", "assistant", "report", visit, "--to", tmp_path / "r.pdf", **no_font)
    assert (done.returncode, done.stderr) == (0, "")
    made = pages((tmp_path / "r.pdf").read_bytes())
    assert "Doorhungfromitstape" in squeezed("".join(page.text for page in made))


WITHOUT_ITS_FONT = """
import sys
from assistant.report import drawing
drawing.SHIPPED = ()
from assistant.__main__ import main
sys.exit(main(sys.argv[1:]))
"""


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="other systems have fonts of their own")
def test_where_the_programs_own_font_is_gone_too_it_says_how_to_mend_it(visit, tmp_path, no_font):
    done = _run("-c", WITHOUT_ITS_FONT, "report", visit, "--to", tmp_path / "r.pdf", **no_font)
    assert done.returncode == 2 and not (tmp_path / "r.pdf").exists()
    assert "There is no font on this computer" in done.stderr
    assert "Install the program again, or a font" in done.stderr and "HTML, text and CSV" in done.stderr
    assert "Traceback" not in done.stderr
    again = _run("-c", WITHOUT_ITS_FONT, "report", visit, "--to", tmp_path / "r.html", **no_font)
    assert again.returncode == 0 and (tmp_path / "r.html").exists()


def test_a_visit_whose_folder_is_gone_is_a_sentence(visit, tmp_path):
    gone = tmp_path / "gone"
    shutil.copytree(visit, gone)
    shutil.rmtree(gone)
    with pytest.raises(UserError, match="is not there"):
        write_one(gone, tmp_path / "r.txt")
