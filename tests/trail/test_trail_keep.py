"""What is kept beside the trail: tree texts, photos and a person who can be erased."""

import pytest
from visits import LIBRARY, TEXTS, at, opened

from assistant.trail import keep
from assistant.trail.error import TrailError
from assistant.trail.record import Recorder
from assistant.trail.shelf import shelved
from assistant.trail.verify import DEFECT, FINE, verify
from assistant.walk.event import AsFound, AsLeft, Filled, Note, Person, Signed

PERSON = {"name": "Mx Example", "address": "12 Sample Street", "phone": "555 0100"}


@pytest.fixture
def visit(tmp_path):
    folder = tmp_path / "visit"
    with Recorder.create(folder, LIBRARY, opened()) as recorder:
        photo = recorder.keep(b"not really a picture")
        who = recorder.keep_person(PERSON)
        recorder.append(Note(at(1), "the plate", photo=photo))
        recorder.append(AsFound(at(2), {"light": "steady"}, (photo,)))
        recorder.append(Person(at(3), who))
        recorder.append(Signed(at(4), "A. Technician"))
    return folder, photo, who


def test_tree_texts_come_back_as_they_were(visit):
    folder, _, _ = visit
    assert keep.kept_texts(folder, opened().files) == TEXTS


def test_the_person_comes_back_and_can_be_erased_with_the_chain_whole(visit):
    folder, _, who = visit
    assert keep.person(folder, who) == PERSON
    assert dict(shelved(folder).person) == PERSON
    keep.erase(folder, who)
    keep.erase(folder, who)  # a second time is no error
    assert keep.person(folder, who) is None
    assert shelved(folder).person == ()
    checked = verify(folder)
    assert checked.code == FINE
    assert any("erased or lost" in words for words in checked.sentences)
    for path in folder.rglob("*"):
        assert not path.is_file() or b"Sample Street" not in path.read_bytes()


def test_a_persons_hash_can_not_be_guessed_from_the_name(tmp_path):
    """The same person kept twice has two hashes."""
    tmp_path.joinpath("a").mkdir()
    first = keep.keep_person(tmp_path / "a", PERSON)
    assert first != keep.keep_person(tmp_path / "a", PERSON)


@pytest.mark.parametrize("which", ["photo", "person", "text"])
def test_an_altered_kept_file_is_found(visit, which):
    folder, photo, who = visit
    name = {"photo": photo, "person": who, "text": next(iter(opened().files.values()))}[which]
    path = folder / keep.FOLDER / name
    path.write_bytes(path.read_bytes() + b" ")
    with pytest.raises(keep.NotAsKeptError):
        keep.kept(folder, name)
    assert verify(folder).code == DEFECT


@pytest.mark.parametrize(
    "named",
    [
        lambda photo: Note(at(1), "the plate", photo=photo),
        lambda photo: AsFound(at(1), {"light": "steady"}, (photo,)),
        lambda photo: AsLeft(at(1), {"light": "steady"}, (photo,)),
        lambda photo: Filled(at(1), "unit", {"make": "Nonesuch"}, (photo,)),
    ],
    ids=["note", "as found", "as left", "the unit"],
)
def test_an_altered_photo_is_found_whatever_event_names_it(tmp_path, named):
    with Recorder.create(tmp_path / "visit", LIBRARY, opened()) as recorder:
        photo = recorder.keep(b"not really a picture")
        recorder.append(named(photo))
        recorder.append(Signed(at(2), "A. Technician"))
    assert verify(tmp_path / "visit").code == FINE
    (tmp_path / "visit" / keep.FOLDER / photo).write_bytes(b"another picture")
    checked = verify(tmp_path / "visit")
    assert checked.code == DEFECT and "a photo" in " ".join(checked.sentences)


def test_a_lost_tree_text_is_a_defect_and_named(visit):
    folder, _, _ = visit
    file, name = next(iter(opened().files.items()))
    keep.erase(folder, name)
    checked = verify(folder)
    assert checked.code == DEFECT
    assert file in checked.sentences[0]
    with pytest.raises(TrailError, match=file):
        keep.kept_texts(folder, opened().files)


@pytest.mark.parametrize("name", ["", "..", "../../etc/passwd", "a" * 63, "A" * 64, "\0" * 64, "x\n"])
def test_a_hostile_name_reaches_no_file(visit, name):
    folder, _, _ = visit
    with pytest.raises(keep.NotKeptError):
        keep.kept(folder, name)
    with pytest.raises(keep.NotKeptError):
        keep.erase(folder, name)
