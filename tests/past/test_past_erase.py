"""A customer erased: what goes, what stays, that the chain is whole and that it is said."""

import pytest
from shelved import put

from assistant.past.erase import erase_customer
from assistant.past.refresh import refresh
from assistant.past.search import search
from assistant.past.store import open_store
from assistant.report.load import story_of
from assistant.trail.erased import erased, in_words
from assistant.trail.error import LockedError
from assistant.trail.live import LiveVisit
from assistant.trail.read import read_trail
from assistant.trail.verify import verify
from assistant.walk.event import Note

AT = "2026-11-25T10:00:00+00:00"
PERSON = {"name": "Mx Example", "address": "12 Sample St."}


@pytest.fixture
def folder(tmp_path):
    folder = put(tmp_path / "shelf", "one", "no_heat/fuse_blown", person=PERSON)
    live = LiveVisit.take_up(folder)
    photo = live.recorder.keep(b"a photo of the plate")
    live.send(Note("2026-01-14T12:00:00-05:00", "the plate", None, photo))
    live.close()
    (folder / "report.pdf").write_bytes(b"a report with the name in it")
    return folder


def test_what_goes_and_what_stays(folder):
    before = verify(folder)
    gone = erase_customer(folder, AT, "A. Foreman")
    assert [each.what for each in gone.gone] == ["customer's data", "photo", "report"]
    assert gone.stays == 2  # the customer's words and the note
    everything = b"".join(path.read_bytes() for path in folder.rglob("*") if path.is_file())
    for words in (b"Mx Example", b"12 Sample", b"a photo of the plate"):
        assert words not in everything
    after = verify(folder)
    assert after.fingerprint == before.fingerprint
    assert not any("altered" in said and "none altered" not in said for said in after.sentences)


def test_it_is_said_in_the_report_and_beside_the_trail(folder):
    erase_customer(folder, AT, "A. Foreman")
    said = "Erased on 2026-11-25 by A. Foreman: the customer's data, 1 photo, 1 report."
    assert in_words(erased(folder)) == said
    assert said in story_of(folder).remarks


def test_photos_may_stay(folder):
    gone = erase_customer(folder, AT, "A. Foreman", photos=False)
    assert [each.what for each in gone.gone] == ["customer's data", "report"]


def test_once_is_enough(folder):
    erase_customer(folder, AT, "A. Foreman")
    assert erase_customer(folder, AT, "A. Foreman").gone == ()
    assert len(erased(folder)) == 3


def test_the_visit_can_be_gone_on_with(folder):
    erase_customer(folder, AT, "A. Foreman")
    live = LiveVisit.take_up(folder)
    assert live.remarks == [] and live.recorder.read_only is None
    live.send(Note("2026-11-25T11:00:00+00:00", "taken up again"))
    live.close()
    assert read_trail(folder).events[-1].text == "taken up again"


def test_an_open_visit_is_left_alone(folder):
    live = LiveVisit.take_up(folder)
    with pytest.raises(LockedError):
        erase_customer(folder, AT, "A. Foreman")
    live.close()
    assert (folder / "report.pdf").exists()


def test_the_search_no_longer_finds_the_name(folder, tmp_path):
    store = open_store(tmp_path / "index.sqlite")
    for _ in refresh(store, folder.parent):
        pass
    assert len(search(store, folder.parent, "example")) == 1
    erase_customer(folder, AT, "A. Foreman")
    for _ in refresh(store, folder.parent):
        pass
    assert search(store, folder.parent, "example") == []
    assert len(search(store, folder.parent, "fuse")) == 1
    store.close()
