"""Photos made small for a report. What a camera wrote beside the picture (place, owner) does not come
along."""

from __future__ import annotations

from assistant.report.drawing import ready
from assistant.report.story import Photo

LONGEST = 1000
QUALITY = 80


def picture(photo: Photo):
    """The photo as a QImage with no side over LONGEST pixels, turned as the camera was held; None where it
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
    if size.isValid() and max(size.width(), size.height()) > LONGEST:
        reader.setScaledSize(size.scaled(QSize(LONGEST, LONGEST), Qt.AspectRatioMode.KeepAspectRatio))
    found = reader.read()
    if found.isNull():
        return None
    if max(found.width(), found.height()) > LONGEST:
        found = found.scaled(
            QSize(LONGEST, LONGEST),
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
