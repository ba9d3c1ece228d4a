"""Photos as they are kept: small, upright, and without what the camera wrote beside the picture.

An Exif block is built here by hand as JEITA CP-3451 (Exif 2.3, 2010, section 4.5 and 4.6.6) lays it out: an
APP1 segment with a TIFF header, IFD0 with Orientation (274) and the pointer to the GPS IFD (34853).
"""

import struct

import pytest

from assistant.report.photo import KEPT_LONGEST, MOST_PIXELS, NotAPictureError, for_keeping

pytest.importorskip("PySide6.QtGui")


def encoded(width, height, kind="JPEG", colour=0xFF8040):
    from PySide6.QtCore import QBuffer, QIODevice
    from PySide6.QtGui import QImage

    image = QImage(width, height, QImage.Format.Format_RGB32)
    image.fill(colour)
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    assert image.save(buffer, kind, 90)
    return bytes(buffer.data())


def size(data):
    from PySide6.QtGui import QImage

    image = QImage.fromData(data)
    return image.width(), image.height()


def with_exif(jpeg, orientation):
    """The JPEG with an Exif block: turned as `orientation` says, and taken at 44 degrees north."""
    north = struct.pack(">HHI4s", 1, 2, 2, b"N\0\0\0")
    gps = struct.pack(">H", 2) + north + struct.pack(">HHII", 2, 5, 3, 68) + struct.pack(">I", 0)
    degrees = struct.pack(">6I", 44, 1, 58, 1, 40, 1)
    ifd = struct.pack(">H", 2) + struct.pack(">HHIHH", 274, 3, 1, orientation, 0)
    ifd += struct.pack(">HHII", 34853, 4, 1, 38) + struct.pack(">I", 0)
    tiff = b"MM\0*" + struct.pack(">I", 8) + ifd + gps + degrees
    body = b"Exif\0\0" + tiff
    return jpeg[:2] + b"\xff\xe1" + struct.pack(">H", len(body) + 2) + body + jpeg[2:]


def test_what_the_camera_wrote_beside_it_is_gone_and_the_picture_stands_upright():
    """Orientation 6 is a quarter turn: 200 by 100 becomes 100 by 200."""
    taken = with_exif(encoded(200, 100), 6)
    assert b"Exif" in taken
    kept = for_keeping(taken, "a.jpg")
    assert b"Exif" not in kept and struct.pack(">6I", 44, 1, 58, 1, 40, 1) not in kept
    assert size(kept) == (100, 200)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "BMP"])
def test_a_large_photo_is_made_small(kind):
    """No side over the longest, its shape kept."""
    try:
        data = encoded(3200, 800, kind)
    except AssertionError:
        pytest.fail(f"this Qt writes no {kind}")
    wide, tall = size(for_keeping(data, "a"))
    assert (wide, tall) == (KEPT_LONGEST, KEPT_LONGEST // 4)


def test_a_small_one_stays_as_large_as_it_is():
    assert size(for_keeping(encoded(40, 30, "PNG"), "a.png")) == (40, 30)


@pytest.mark.parametrize(
    "data", [b"", b"not a picture", b"%PDF-1.7\n", b"\xff\xd8\xff\xe0" + b"\0" * 40, b"<svg/>"]
)
@pytest.mark.qt_log_ignore("JPEG")
def test_what_is_no_picture_gets_a_sentence(data):
    with pytest.raises(NotAPictureError, match=r"board\.jpg .*\."):
        for_keeping(data, "board.jpg")


@pytest.mark.parametrize("brand", [b"heic", b"mif1", b"avif"])
def test_a_photo_as_telephones_take_them_is_named_with_what_to_do(brand):
    """The first box of a HEIF file (ISO/IEC 14496-12, 4.3: size, `ftyp`, major brand; from memory)."""
    data = struct.pack(">I", 24) + b"ftyp" + brand + bytes(4) + b"mif1" + brand + b"\0" * 400
    with pytest.raises(NotAPictureError) as caught:
        for_keeping(data, "IMG_0042.HEIC")
    said = str(caught.value)
    assert said.startswith("IMG_0042.HEIC is a photo as some telephones take them (HEIC)")
    assert "Set its camera to JPEG" in said


def test_an_empty_file_is_said_to_be_empty():
    with pytest.raises(NotAPictureError, match=r"board\.jpg is empty: it was not copied whole"):
        for_keeping(b"", "board.jpg")


def test_a_picture_cut_short_is_shown_or_refused_and_nothing_worse():
    whole = encoded(300, 300, "PNG")
    for cut in range(20, len(whole), max(1, len(whole) // 25)):
        try:
            kept = for_keeping(whole[:cut], "a.png")
        except NotAPictureError:
            continue
        assert kept.startswith(b"\xff\xd8")


def test_a_picture_that_claims_to_be_huge_is_not_unpacked():
    """A PNG header (ISO/IEC 15948:2004, 11.2.2) that claims 60,000 by 60,000 points."""
    import zlib

    head = struct.pack(">IIBBBBB", 60_000, 60_000, 8, 2, 0, 0, 0)
    chunk = struct.pack(">I", 13) + b"IHDR" + head + struct.pack(">I", zlib.crc32(b"IHDR" + head))
    assert MOST_PIXELS < 60_000**2
    squeezed = zlib.compress(b"\0" * 100_000)
    data = struct.pack(">I", len(squeezed)) + b"IDAT" + squeezed
    data += struct.pack(">I", zlib.crc32(b"IDAT" + squeezed))
    with pytest.raises(NotAPictureError, match="60000 by 60000"):
        for_keeping(b"\x89PNG\r\n\x1a\n" + chunk + data, "bomb.png")
