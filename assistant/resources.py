"""Finds the trees and resources that come with the program, in a checkout and in an installed wheel alike."""

from __future__ import annotations

from pathlib import Path

from assistant.errors import UserError

PACKAGE = Path(__file__).resolve().parent


def trees_folder() -> Path:
    """The folder with house.yaml and the trees. Raises UserError when the installation lacks it."""
    return _shipped("trees")


def resources_folder() -> Path:
    """The folder with drawings, style and demo visits. Raises UserError when the installation lacks it."""
    return _shipped("resources")


def _shipped(name: str) -> Path:
    checkout = PACKAGE.parent
    # In a checkout the folders lie beside the package, and an edit there counts at once. A wheel carries
    # a copy inside the package; site-packages has no pyproject.toml, so a stranger's folder is not taken.
    if (checkout / "pyproject.toml").is_file() and (checkout / name).is_dir():
        return checkout / name
    carried = PACKAGE / "data" / name
    if carried.is_dir():
        return carried
    raise UserError(f"The folder {name!r} that belongs to Fault Trail is missing; install Fault Trail again.")
