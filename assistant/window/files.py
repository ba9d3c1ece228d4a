"""The few questions that the system itself asks: which pictures, where to save, which printer."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QWidget

PICTURES = "Pictures (*.jpg *.jpeg *.png *.webp *.heic *.tif *.tiff)"
LARGEST_PICTURE = 40_000_000


def pick_pictures(parent: QWidget) -> list[Path]:
    """The picture files a person chose; empty where they changed their mind."""
    chosen, _ = QFileDialog.getOpenFileNames(parent, "Pictures to keep with this visit", "", PICTURES)
    return [Path(path) for path in chosen]


def pick_folder(parent: QWidget, start: str = "") -> Path | None:
    """A folder to save into, or None."""
    chosen = QFileDialog.getExistingDirectory(parent, "Folder to save in", start)
    return Path(chosen) if chosen else None


def pick_file(parent: QWidget, name: str, kind: str) -> Path | None:
    """A file to save as, or None."""
    chosen, _ = QFileDialog.getSaveFileName(parent, "Save as", name, kind)
    return Path(chosen) if chosen else None


def read_picture(path: Path) -> bytes:
    """The bytes of a picture. Raises OSError, or ValueError with a sentence where it can't be kept."""
    size = path.stat().st_size
    if size > LARGEST_PICTURE:
        raise ValueError(
            f"{path.name} has {size // 1_000_000} MB; keep pictures below {LARGEST_PICTURE // 1_000_000} MB."
        )
    if size == 0:
        raise ValueError(f"{path.name} is empty.")
    return path.read_bytes()
