"""Reports as files: recorded in the visit, with a fingerprint that verify finds again."""

from __future__ import annotations

import csv
import io
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from assistant.__main__ import main
from assistant.errors import UserError
from assistant.report import drawing
from assistant.report.export import write_all, write_one
from assistant.report.load import story_of
from assistant.trail.fingerprint import short
from assistant.trail.keep import FOLDER, erase
from assistant.trail.live import LiveVisit
from assistant.trail.read import read_trail
from assistant.trail.record import Recorder
from assistant.trail.verify import verify
from assistant.walk.event import Exported, Note, Person
from tests.report.pdf_reader import pages, squeezed
from tests.report.told import repaired
from tests.walk.small import library

ROOT = Path(__file__).parents[2]


@pytest.fixture
def visit(tmp_path):
    """The repaired visit on disk, with a person."""
    folder = tmp_path / "visit"
    first, *events = repaired().visit.events
    with Recorder.create(folder, library(), first) as recorder:
        recorder.append(Person(first.at, recorder.keep_person({"name": "Mx Example", "phone": "555 0100"})))
        for event in events:
            recorder.append(event)
    return folder


def test_all_four_are_written_and_the_export_is_recorded(qapp, visit, tmp_path):
    tip = read_trail(visit).tip
    out = tmp_path / "out"
    out.mkdir()
    assert write_all(visit, out) is None
    assert sorted(path.name for path in out.iterdir()) == [
        "parts.csv",
        "parts.json",
        "report.csv",
        "report.html",
        "report.pdf",
        "report.txt",
    ]
    last = read_trail(visit).events[-1]
    assert isinstance(last, Exported)
    assert last.fingerprint == tip
    assert last.file == "report.html, report.txt, report.csv, report.pdf, parts.csv, parts.json"
    for page in pages((out / "report.pdf").read_bytes()):
        assert squeezed(short(tip)) in squeezed(page.text)
    assert short(tip) in (out / "report.txt").read_text("utf-8")
    assert short(tip) in (out / "report.html").read_text("utf-8")
    rows = list(csv.DictReader(io.StringIO((out / "report.csv").read_text("utf-8-sig"), newline="")))
    assert {row["fingerprint"] for row in rows} == {tip}


def test_every_report_of_a_signed_visit_has_the_signatures_fingerprint(qapp, visit, tmp_path):
    signed = read_trail(visit).last("signed").line
    for number in range(3):
        assert write_one(visit, tmp_path / f"{number}.txt") is None
        assert f"Fingerprint {short(signed.hash)}" in (tmp_path / f"{number}.txt").read_text("utf-8")
    checked = verify(visit, short(signed.hash))
    assert (checked.code, checked.fingerprint) == (0, signed.hash)
    assert f"fingerprint of the signature {short(signed.hash)}." in checked.sentences[0]
    where = f"({signed.file}, line {signed.number})"
    assert f"the fingerprint on the paper matches: it is the line of the signature {where}." in (
        checked.sentences
    )


def test_without_a_signature_each_report_has_the_tip_before_it_and_all_are_found(qapp, tmp_path):
    folder = tmp_path / "visit"
    first, *events = repaired().visit.events[:-1]
    with Recorder.create(folder, library(), first) as recorder:
        for event in events:
            recorder.append(event)
    papers = []
    for number in range(3):
        papers.append(short(read_trail(folder).tip))
        assert write_one(folder, tmp_path / f"{number}.txt") is None
        assert papers[-1] in (tmp_path / f"{number}.txt").read_text("utf-8")
    assert len(set(papers)) == 3
    for paper in papers:
        said = " ".join(verify(folder, paper).sentences)
        assert "matches: it is an earlier line of this visit, and more was written after that (" in said
    assert "it is the last line (" in " ".join(verify(folder, read_trail(folder).tip).sentences)


def test_a_signature_does_not_stand_for_what_was_written_after_it(visit):
    note = Note("2026-11-25T12:00:00-05:00", "found it wet again")
    recorder, _, _ = Recorder.open(visit)
    with recorder:
        recorder.append(note)
    assert story_of(visit).fingerprint == verify(visit).fingerprint == read_trail(visit).tip
    assert story_of(visit).standing.endswith("More was written after that, which is not signed.")
    assert "more was written after the signature, which does not cover it." in verify(visit).sentences


def test_a_fingerprint_of_another_visit_is_a_defect(visit):
    checked = verify(visit, "0000 0000 0000 0000 0000 0000")
    assert checked.code == 1
    assert not any("matches" in words for words in checked.sentences)


def test_reports_may_lie_in_the_visits_own_folder(qapp, visit):
    assert write_all(visit, visit) is None
    assert verify(visit).code == 0
    assert story_of(visit).rows[-1].asked == "Report written"


def test_a_person_who_was_erased_is_in_no_report(qapp, visit, tmp_path):
    write_one(visit, tmp_path / "before.txt")
    assert "Mx Example" in (tmp_path / "before.txt").read_text("utf-8")
    known = next(event for event in read_trail(visit).events if isinstance(event, Person))
    erase(visit, known.kept)
    write_one(visit, tmp_path / "after.txt")
    assert "Mx Example" not in (tmp_path / "after.txt").read_text("utf-8")


def test_an_open_visit_records_its_own_export(qapp, tmp_path):
    live = LiveVisit.start(tmp_path / "visit", library(), (("no_heat", "cold"),))
    try:
        tip = live.recorder.tip
        assert write_one(tmp_path / "visit", tmp_path / "r.txt", send=live.send) is None
        assert live.visit.events[-1].fingerprint == tip
        before = len(read_trail(tmp_path / "visit").lines)
        assert write_one(tmp_path / "visit", tmp_path / "s.txt") is None  # who has it open records it
        assert len(read_trail(tmp_path / "visit").lines) == before
        done = run("report", tmp_path / "visit", "--to", tmp_path / "s.txt")
        assert done.returncode == 0
        assert "could not be recorded" in done.stderr
        assert "another window" in done.stderr
        assert (tmp_path / "s.txt").exists()
    finally:
        live.close()


@pytest.mark.parametrize("name", ["report", "report.docx", "report.pdf.exe"])
def test_another_ending_is_refused_with_the_ones_there_are(visit, tmp_path, name):
    with pytest.raises(UserError, match=r"\.pdf, \.html, \.txt, \.csv"):
        write_one(visit, tmp_path / name)
    assert not (tmp_path / name).exists()


def test_parts_and_minutes_are_written_for_an_invoice_program_and_are_no_report(visit, tmp_path, capsys):
    before = [path.name for path in visit.iterdir()]
    assert main(["report", str(visit), "--parts", "--to", str(tmp_path / "bill.json")]) == 0
    assert main(["report", str(visit), "--parts", "--to", str(tmp_path / "bill.csv")]) == 0
    bill = json.loads((tmp_path / "bill.json").read_text(encoding="utf-8"))
    rows = list(csv.reader((tmp_path / "bill.csv").read_text(encoding="utf-8-sig").splitlines()))
    assert bill["visit"] == visit.name == rows[1][1]
    assert rows[-1][:2] == ["total", "work"] and rows[-1][3] == str(bill["minutes"])
    assert [path.name for path in visit.iterdir()] == before
    assert main(["report", str(visit), "--parts", "--to", str(tmp_path / "bill.pdf")]) == 2
    assert "should end in .csv or .json" in capsys.readouterr().err


def test_a_folder_that_is_not_there_is_a_sentence(visit, tmp_path):
    with pytest.raises(UserError, match="could not be written"):
        write_one(visit, tmp_path / "nowhere" / "r.txt")
    with pytest.raises(UserError, match="is not there"):
        write_one(tmp_path / "nowhere", tmp_path / "r.txt")
    with pytest.raises(UserError, match="There is no visit"):
        write_one(tmp_path, tmp_path / "r.txt")


def test_a_lost_tree_text_is_a_sentence_that_names_it(visit, tmp_path):
    trail = read_trail(visit)
    name = trail.events[0].files["house.yaml"] if trail.events[0].files else None
    if name is None:
        files = json.loads(next(visit.glob("trail-*")).read_bytes().splitlines()[1])["files"]
        name = files["house.yaml"]
    (visit / FOLDER / name).unlink()
    with pytest.raises(UserError, match=r"house\.yaml"):
        write_one(visit, tmp_path / "r.txt")


def test_an_altered_visit_is_reported_up_to_the_line_and_says_so(visit, tmp_path):
    (file,) = visit.glob("trail-*")
    file.write_bytes(file.read_bytes().replace(b"Door held", b"Door hung"))
    said = write_one(visit, tmp_path / "r.txt")
    assert "altered" in said
    text = " ".join((tmp_path / "r.txt").read_text("utf-8").split())
    assert "This visit was altered after it was written" in text
    assert "Door hung" not in text


def test_where_nothing_can_be_drawn_the_rest_is_written_and_said(visit, tmp_path, monkeypatch):
    def cannot():
        raise drawing.CannotDrawError("PDF and photos need QtGui, which does not load here.")

    monkeypatch.setattr("assistant.report.pdf.ready", cannot)
    assert "QtGui" in write_all(visit, tmp_path)
    assert {path.name for path in tmp_path.glob("report.*")} == {"report.html", "report.txt", "report.csv"}
    with pytest.raises(UserError, match="QtGui"):
        write_one(visit, tmp_path / "r.pdf")
    assert verify(visit).code == 0


NO_QTGUI = """
import sys
class No:
    def find_spec(self, name, path=None, target=None):
        if name == "PySide6.QtGui":
            raise ImportError("libGL.so.1: cannot open shared object file: No such file or directory")
sys.meta_path.insert(0, No())
from assistant.__main__ import main
sys.exit(main(sys.argv[1:]))
"""


def run(*words, code=None):
    start = ["-c", code] if code else ["-m", "assistant"]
    environment = {
        key: value for key, value in os.environ.items() if key not in ("QT_QPA_PLATFORM", "DISPLAY")
    }
    return subprocess.run(
        [sys.executable, *start, *map(str, words)],
        capture_output=True, text=True, encoding="utf-8", cwd=ROOT, env=environment, check=False,
    )  # fmt: skip


def test_the_command_writes_a_pdf_without_a_display(visit, tmp_path):
    done = run("report", visit, "--to", tmp_path / "r.pdf", "--paper", "a4")
    assert (done.returncode, done.stderr) == (0, "")
    assert pages((tmp_path / "r.pdf").read_bytes())[0].width == pytest.approx(595, abs=1)


def test_the_command_says_in_one_sentence_that_qt_does_not_load(visit, tmp_path):
    done = run("report", visit, "--to", tmp_path / "r.pdf", code=NO_QTGUI)
    assert done.returncode == 2
    assert "QtGui" in done.stderr
    assert "Traceback" not in done.stderr
    assert len(done.stderr.strip().splitlines()) == 1
    done = run("report", visit, "--to", tmp_path / "r.html", code=NO_QTGUI)
    assert (done.returncode, done.stderr) == (0, "")
    assert (tmp_path / "r.html").exists()


@pytest.mark.parametrize(
    ("change", "code", "word"),
    [
        (lambda data: data, 0, "none altered"),
        (lambda data: data.replace(b"118.4", b"118.5"), 1, "line "),
        (lambda data: b"".join(data.splitlines(keepends=True)[:-1]), 1, "not signed yet"),
        (lambda data: data[:-30], 1, "not whole"),
    ],
)
def test_verify_has_its_exit_codes_and_sentences(visit, capsys, change, code, word):
    (file,) = visit.glob("trail-*")
    file.write_bytes(change(file.read_bytes()))
    assert main(["verify", str(visit)]) == code
    said = capsys.readouterr().out
    assert word in said
    if code and "altered" in word:
        assert file.name in said


def test_verify_of_several_gives_the_worst(visit, tmp_path, capsys):
    assert main(["verify", str(visit), str(tmp_path / "nowhere")]) == 2
    assert main(["verify", str(visit), "--fingerprint", short(read_trail(visit).tip)]) == 0
    assert main(["verify", str(visit), "--fingerprint", "0" * 24]) == 1
    capsys.readouterr()
