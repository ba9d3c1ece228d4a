"""What a visit keeps beside its trail: tree texts, photos and the person's data, each named by its SHA-256.

The trail holds only the hash, so that a customer can be erased and the chain stays whole. A person's data
carry a random salt: without it a name and an address could be guessed back from the hash.
"""

from __future__ import annotations

import hashlib
import json
import re
import secrets
from pathlib import Path

from assistant.trail.error import TrailError, not_read, not_saved
from assistant.trail.files import DISK, Files, write_whole

FOLDER = "kept"
_NAME = re.compile("[0-9a-f]{64}")


class NotKeptError(TrailError):
    """The file was erased or lost: only its hash is left."""


class NotAsKeptError(TrailError):
    """The file is there but is not what was kept."""


def sha256(data: bytes) -> str:
    """The name that `data` is kept under."""
    return hashlib.sha256(data).hexdigest()


def keep(folder: Path, data: bytes, files: Files = DISK) -> str:
    """Keeps `data` with the visit, synced; its hash. Raises TrailError when the disk doesn't take it."""
    name = sha256(data)
    try:
        place = folder / FOLDER
        if not files.is_folder(place):
            files.make_folder(place)
            files.sync_folder(folder)
        if name not in files.names(place) or sha256(files.read(place / name)) != name:
            write_whole(files, place / name, data)
    except OSError as problem:
        raise not_saved(problem, folder) from problem
    return name


def kept(folder: Path, name: str, files: Files = DISK) -> bytes:
    """What was kept under this hash, verified. Raises NotKeptError, NotAsKeptError or TrailError."""
    if not _NAME.fullmatch(name):
        raise NotKeptError(f"'{name[:80]}' is no name of a kept file.")
    try:
        data = files.read(folder / FOLDER / name)
    except FileNotFoundError as problem:
        raise NotKeptError(f"The kept file {name[:12]} is not there: it was erased or lost.") from problem
    except OSError as problem:
        raise not_read(problem, folder / FOLDER / name) from problem
    if sha256(data) != name:
        raise NotAsKeptError(f"The kept file {name[:12]} was altered after it was kept.")
    return data


def erase(folder: Path, name: str, files: Files = DISK) -> None:
    """Removes a kept file for good; the trail keeps its hash. Nothing happens where it is gone already."""
    if not _NAME.fullmatch(name):
        raise NotKeptError(f"'{name[:80]}' is no name of a kept file.")
    try:
        files.remove(folder / FOLDER / name)
        files.sync_folder(folder / FOLDER)
    except FileNotFoundError:
        return
    except OSError as problem:
        raise TrailError(f"{folder / FOLDER / name} could not be erased ({problem.strerror}).") from problem


def keep_person(folder: Path, person: dict[str, str], files: Files = DISK) -> str:
    """Keeps name, address and the like in a file that can be erased; its hash is for the Person event."""
    data = json.dumps({"person": person, "salt": secrets.token_hex(16)}, sort_keys=True, ensure_ascii=True)
    return keep(folder, data.encode("ascii"), files)


def person(folder: Path, name: str, files: Files = DISK) -> dict[str, str] | None:
    """The person's data; None where they were erased. Raises NotAsKeptError where they were altered."""
    try:
        found = json.loads(kept(folder, name, files))
    except NotKeptError:
        return None
    except ValueError as problem:
        raise NotAsKeptError(f"The person's data {name[:12]} can't be read.") from problem
    inside = found.get("person") if isinstance(found, dict) else None
    if not isinstance(inside, dict):
        raise NotAsKeptError(f"The person's data {name[:12]} can't be read.")
    return {str(key): str(value) for key, value in inside.items()}


def kept_texts(folder: Path, hashes: dict[str, str], files: Files = DISK) -> dict[str, bytes]:
    """The tree texts that a visit was begun with: file -> text. Raises TrailError naming the one that is
    gone."""
    return {file: _tree_text(folder, file, name, files) for file, name in hashes.items()}


def _tree_text(folder: Path, file: str, name: str, files: Files) -> bytes:
    try:
        return kept(folder, name, files)
    except TrailError as problem:
        raise type(problem)(
            f"{file}: {problem} The visit can't be walked on; its trail can be read."
        ) from problem
