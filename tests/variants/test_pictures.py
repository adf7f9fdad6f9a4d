"""Pictures good and bad: what cannot be read is a finding, never an exception."""

from __future__ import annotations

import io
import random
import zlib

import numpy as np
import png
import pytest
from PIL import Image

from pegwright.variants import read_picture
from pegwright.variants.pictures import MOST_BYTES


def saved(image: Image.Image, kind: str = "PNG", **more: object) -> bytes:
    into = io.BytesIO()
    image.save(into, kind, **more)
    return into.getvalue()


def codes(data: bytes) -> list[str]:
    return [found.code for found in read_picture(data).findings]


PLAIN = Image.new("RGB", (30, 20), "#34506b")


def test_another_writer_s_picture_is_read_to_the_dot() -> None:
    """Written by pypng, which shares nothing with the reader; linear light as IEC 61966-2-1 has it."""
    rows = np.random.default_rng(1).integers(0, 256, (9, 7, 3))
    into = io.BytesIO()
    png.Writer(7, 9, greyscale=False).write(into, rows.reshape(9, -1).tolist())
    reading = read_picture(into.getvalue())
    assert reading.findings == ()
    assert reading.picture is not None
    v = rows / 255
    expected = np.where(v <= 0.04045, v / 12.92, ((v + 0.055) / 1.055) ** 2.4)
    assert reading.picture.linear == pytest.approx(expected)


@pytest.mark.parametrize("kind", ["PNG", "JPEG", "WEBP", "GIF", "BMP", "TIFF"])
@pytest.mark.parametrize("mode", ["RGB", "L", "1", "P", "CMYK", "RGBA", "LA", "I;16"])
def test_every_kind_and_mode(kind: str, mode: str) -> None:
    if mode == "I;16" and kind in ("WEBP", "GIF"):
        pytest.skip(f"{kind} has 8 bits")
    try:
        data = saved(Image.new("L", (30, 20), 90).convert(mode) if mode != "I;16" else deep(), kind)
    except (OSError, KeyError, ValueError):
        pytest.skip(f"no {kind} holds {mode}")
    reading = read_picture(data)
    assert reading.picture is not None
    assert reading.picture.linear.shape == (20, 30, 3)
    if mode != "1":
        assert reading.picture.linear == pytest.approx(0.102, abs=0.02)  # sRGB 90 by IEC 61966-2-1


def deep() -> Image.Image:
    return Image.fromarray(np.full((20, 30), 90 * 257, dtype=np.uint16))


@pytest.mark.parametrize(
    "data", [b"", b"GIF89a", b"not a picture", b"<svg xmlns='http://www.w3.org/2000/svg'/>"]
)
def test_what_is_no_picture(data: bytes) -> None:
    assert codes(data) == ["picture-unreadable"]
    assert read_picture(data).picture is None


def test_too_large_a_file() -> None:
    assert codes(bytes(MOST_BYTES + 1)) == ["picture-too-large"]


def test_a_small_file_of_a_huge_picture() -> None:
    """A few bytes may say that a million million dots follow: the header is enough to refuse it."""
    huge = bytearray(saved(Image.new("1", (8, 8))))
    huge[16:24] = (40_000).to_bytes(4, "big") * 2
    huge[29:33] = zlib.crc32(bytes(huge[12:29])).to_bytes(4, "big")
    assert codes(bytes(huge)) == ["picture-too-large"]


def test_clear_parts_are_white() -> None:
    image = Image.new("RGBA", (10, 10), (0, 0, 0, 255))
    image.paste((200, 0, 0, 0), (0, 0, 5, 10))
    reading = read_picture(saved(image))
    assert [(f.code, f.facts["share"]) for f in reading.findings] == [("picture-clear-parts", 50)]
    assert reading.picture is not None
    assert reading.picture.linear[:, :5] == pytest.approx(1.0)
    assert reading.picture.linear[:, 5:] == pytest.approx(0.0)


def test_all_clear() -> None:
    assert codes(saved(Image.new("RGBA", (10, 10)))) == ["picture-all-clear"]


def test_moving_pictures() -> None:
    frames = [Image.new("RGB", (10, 10), c) for c in ("#ffffff", "#000000")]
    data = saved(frames[0], "GIF", save_all=True, append_images=frames[1:])
    reading = read_picture(data)
    assert [f.code for f in reading.findings] == ["picture-moves"]
    assert reading.picture is not None
    assert reading.picture.linear == pytest.approx(1.0)


def test_a_camera_held_upright() -> None:
    """Exif orientation 6: the camera was turned, so the picture is taller than the file says."""
    image = Image.new("RGB", (30, 20))
    exif = image.getexif()
    exif[0x0112] = 6
    reading = read_picture(saved(image, "JPEG", exif=exif))
    assert reading.picture is not None
    assert reading.picture.linear.shape == (30, 20, 3)


@pytest.mark.parametrize("kind", ["PNG", "JPEG", "WEBP", "GIF", "TIFF", "BMP"])
def test_spoilt_files_never_raise(kind: str) -> None:
    rng = random.Random(19)
    whole = saved(Image.effect_noise((40, 30), 60).convert("RGB"), kind)
    for _ in range(60):
        data = bytearray(whole[: rng.randrange(1, len(whole) + 1)])
        for _ in range(rng.randrange(1, 9)):
            data[rng.randrange(len(data))] = rng.randrange(256)
        reading = read_picture(bytes(data))
        assert (reading.picture is None) <= bool(reading.findings)
