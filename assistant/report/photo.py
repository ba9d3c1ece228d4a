"""Photos made small for a report. What a camera wrote beside the picture (place, owner) does not come
along."""

from __future__ import annotations

from assistant.errors import UserError
from assistant.report.drawing import ready
from assistant.report.story import Photo

LONGEST = 1000
QUALITY = 80
KEPT_LONGEST, KEPT_QUALITY = 1600, 85
MOST_PIXELS = 120_000_000
"""A picture that claims more is not unpacked: it fills the memory of an old laptop."""

TELEPHONE = (b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1", b"avif")
"""Brands in the first box of a HEIF file (ISO/IEC 23008-12:2022, annexes B and C; from memory)."""


class NotAPictureError(UserError):
    """The file is no picture that can be kept; the text is a sentence for the person."""


def for_keeping(data: bytes, name: str) -> bytes:
    """A photo as it is kept with a visit: a JPEG with no side over KEPT_LONGEST pixels, turned as the camera
    was held, and nothing of what the camera wrote beside it (place, time, owner). Raises NotAPictureError,
    CannotDrawError.
    """
    from PySide6.QtCore import QBuffer, QByteArray, QIODevice
    from PySide6.QtGui import QImageReader

    ready()
    buffer = QBuffer()
    buffer.setData(QByteArray(data))
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(buffer)
    if not reader.canRead():
        raise NotAPictureError(_why_not(data, name))
    size = reader.size()
    if size.isValid() and size.width() * size.height() > MOST_PIXELS:
        raise NotAPictureError(
            f"{name} has {size.width()} by {size.height()} points, too many to open here. Save it smaller."
        )
    found = picture(Photo(name, "", "", data), KEPT_LONGEST)
    if found is None:
        raise NotAPictureError(
            f"{name} is damaged and can't be opened. Take the photo again, or copy it again."
        )
    out = QBuffer()
    out.open(QIODevice.OpenModeFlag.WriteOnly)
    if not found.save(out, "JPEG", KEPT_QUALITY):
        raise NotAPictureError(f"{name} could not be made small enough to keep. Save it as JPEG.")
    return bytes(out.data())


def _why_not(data: bytes, name: str) -> str:
    """The sentence for a file that Qt reads no picture from."""
    if data[4:8] == b"ftyp" and data[8:12] in TELEPHONE:
        return (
            f"{name} is a photo as some telephones take them (HEIC), which can't be opened here. Set "
            "its camera to JPEG, or send the photo to yourself as JPEG."
        )
    if not data:
        return f"{name} is empty: it was not copied whole. Copy it again."
    return f"{name} is no picture that can be kept here. Save it as JPEG or PNG."


def picture(photo: Photo, longest: int = LONGEST):
    """The photo as a QImage with no side over `longest` pixels, turned as the camera was held; None where it
    is gone or no picture. Raises CannotDrawError."""
    ready()
    from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt
    from PySide6.QtGui import QImage, QImageReader, QPainter

    if photo.data is None:
        return None
    buffer = QBuffer()
    buffer.setData(QByteArray(photo.data))
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(buffer)
    reader.setAutoTransform(True)
    size = reader.size()
    if size.isValid() and max(size.width(), size.height()) > longest:
        reader.setScaledSize(size.scaled(QSize(longest, longest), Qt.AspectRatioMode.KeepAspectRatio))
    found = reader.read()
    if found.isNull():
        return None
    if max(found.width(), found.height()) > longest:
        found = found.scaled(
            QSize(longest, longest),
            Qt.AspectRatioMode.KeepAspectRatio,
            Qt.TransformationMode.SmoothTransformation,
        )
    plain = QImage(found.size(), QImage.Format.Format_RGB32)  # a new picture: no transparency, no text keys
    plain.fill(Qt.GlobalColor.white)
    painter = QPainter(plain)
    painter.drawImage(0, 0, found)
    painter.end()
    return plain


def shrink(photo: Photo) -> bytes | None:
    """The photo as a small JPEG; None where it is gone or no picture. Raises CannotDrawError."""
    from PySide6.QtCore import QBuffer, QIODevice

    found = picture(photo)
    if found is None:
        return None
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    return bytes(buffer.data()) if found.save(buffer, "JPEG", QUALITY) else None
