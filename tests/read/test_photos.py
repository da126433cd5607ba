"""Photos: where they stand in a source, which files are taken, and what becomes of their pixels."""

from __future__ import annotations

import os
import struct
import zlib
from pathlib import Path

import pytest
from coloraide import Color
from PIL import Image, ImageCms, ImageFile

from sitegen.model.photo import BODY_ROOM_MM, Photo
from sitegen.model.source import Aside, ChartHere, Prose
from sitegen.read.body import Body, read_body
from sitegen.read.faults import Faults
from sitegen.read.photo_file import PhotoRefused, picture, upright_size
from sitegen.read.photos import PhotoChanged, photo_bytes
from sitegen.read.sources import Sources, load_shop
from tests.read.pictures import CORNERS, corners, display_p3, quarters, saved
from tests.read.samples import REED

PHOTO = '\n![A *fan* on linen](fan.png "Held flat")\n'


def body(text: str) -> tuple[Body, list[tuple[str, str]]]:
    faults = Faults()
    made = read_body(text, "f", 1, ("Fan",), faults)
    return made, [(problem.code, str(problem.where)) for problem in faults.problems]


def shop(root: Path, data: bytes, text: str = PHOTO, name: str = "fan.png") -> Sources:
    """A shop of one pattern that ends with the text, and a file beside it."""
    (root / "reed.md").write_text(REED + text)
    (root / name).parent.mkdir(parents=True, exist_ok=True)
    (root / name).write_bytes(data)
    return load_shop(root)


def told(sources: Sources) -> list[str]:
    return [problem.code for problem in sources.problems]


def test_a_photo_parts_the_text() -> None:
    made, problems = body('One\n\n![A *fan*\non linen](a/fan.jpg "Held flat")\n\nTwo\n')
    assert problems == []
    assert made.blocks == (Prose("One"), Photo("a/fan.jpg", "A fan on linen", "Held flat"), Prose("Two"))


@pytest.mark.parametrize(
    ("written", "file"),
    [("<my fan.jpg>", "my fan.jpg"), ("my%20fan.jpg", "my fan.jpg"), ("fächer.jpg", "fächer.jpg")],
)
def test_names_of_files(written: str, file: str) -> None:
    made, problems = body(f"![Fan]({written})")
    assert problems == []
    assert made.blocks == (Photo(file, "Fan"),)


def test_lines_of_colons_and_fences_end_its_paragraph() -> None:
    made, problems = body("![Fan](fan.jpg)\n::: note\nFlat.\n:::\n![Fan](fan.jpg)\n```chart Fan\nA\n```\n")
    assert problems == []
    photo = Photo("fan.jpg", "Fan")
    assert made.blocks == (photo, Aside("note", "Flat."), photo, ChartHere("Fan"))


@pytest.mark.parametrize(
    "text", ["`![Fan](fan.jpg)`", "    ![Fan](fan.jpg)", "```\n![Fan](my fan.jpg)\n```", "\\![Fan](fan.jpg)"]
)
def test_code_and_escaped_signs_are_words(text: str) -> None:
    made, problems = body(text)
    assert problems == []
    assert [type(block) for block in made.blocks] == [Prose]


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("A\n\nB ![Fan](fan.jpg)", ("photo-place", "f:3:3")),
        ("> ![Fan](fan.jpg)", ("photo-place", "f:1:3")),
        ("![Fan](fan.jpg) ![Fan](fan.jpg)", ("photo-place", "f:1:1")),
        ("[![Fan](fan.jpg)](https://example.org)", ("photo-place", "f:1:2")),
        ("![ ](fan.jpg)", ("photo-alt", "f:1:1")),
        ("![Fan]()", ("photo-form", "f:1:1")),
        ("![Fan](my fan.jpg)", ("photo-form", "f:1:1")),
        (f"![{'a' * 301}](fan.jpg)", ("text-long", "f:1:1")),
    ],
)
def test_where_a_photo_cannot_stand(text: str, problem: tuple[str, str]) -> None:
    assert body(text)[1] == [problem]


def test_what_is_known_of_a_photo(tmp_path: Path) -> None:
    data = saved(quarters(640, 480))
    sources = shop(tmp_path, data, PHOTO + "\n![Again](./fan.png)\n")
    assert told(sources) == []
    first, second = sources.patterns[0].photos
    assert (first.alt, first.caption, first.width, first.height) == ("A fan on linen", "Held flat", 640, 480)
    assert first.digest == second.digest
    assert photo_bytes(first) == data
    (tmp_path / "fan.png").write_bytes(saved(quarters(64, 64)))
    with pytest.raises(PhotoChanged):
        photo_bytes(first)


def test_the_lead_photo(tmp_path: Path) -> None:
    header = "photo: {file: on/linen.jpg, alt: Two fans, caption: Life size}\n"
    text = REED.replace("parts:\n", f"{header}parts:\n", 1)
    (tmp_path / "on").mkdir()
    (tmp_path / "on" / "linen.jpg").write_bytes(saved(quarters(640, 480), "JPEG"))
    (tmp_path / "reed.md").write_text(text)
    photo = load_shop(tmp_path).patterns[0].photo
    assert photo == Photo(
        "on/linen.jpg",
        "Two fans",
        "Life size",
        lead=True,
        digest=photo.digest if photo else "",
        width=640,
        height=480,
    )


def test_links_stay_in_the_shop(tmp_path: Path) -> None:
    root, data = tmp_path / "shop", saved(quarters())
    (tmp_path / "secret.png").write_bytes(data)
    root.mkdir()
    assert told(shop(root, data, name="other.png")) == ["photo-missing"]
    (root / "fan.png").symlink_to("other.png")
    assert told(load_shop(root)) == []
    (root / "fan.png").unlink()
    (root / "fan.png").symlink_to(tmp_path / "secret.png")
    assert told(load_shop(root)) == ["photo-outside"]
    (root / "fan.png").unlink()
    (root / "fan.png").symlink_to("fan.png")
    assert told(load_shop(root)) == ["photo-outside"]
    (root / "away").symlink_to(tmp_path)
    (root / "reed.md").write_text(REED + "\n![Fan](away/secret.png)\n")
    assert told(load_shop(root)) == ["photo-outside"]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes on this system")
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "fan.png")
    (tmp_path / "reed.md").write_text(REED + PHOTO)
    assert told(load_shop(tmp_path)) == ["photo-unreadable"]


@pytest.mark.parametrize("name", ["Fan.png", "FAN.PNG"])
def test_capitals_count_on_every_computer(tmp_path: Path, name: str) -> None:
    assert told(shop(tmp_path, saved(quarters()), name=name)) == ["photo-case"]


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b"", "photo-format"),
        (saved(quarters(), "GIF"), "photo-format"),
        (saved(quarters(), "TIFF"), "photo-format"),
        (saved(quarters(), "AVIF"), "photo-format"),
        (saved(Image.new("I;16", (8, 8))), "photo-format"),
        (saved(quarters())[:120], "photo-unreadable"),
        (saved(quarters(), "JPEG", icc_profile=b"no profile"), "photo-unreadable"),
        (saved(quarters(), "JPEG", icc_profile=display_p3()[:300]), "photo-unreadable"),
        (saved(Image.new("1", (7200, 7000))), "photo-large"),
        (b"\0" * 40_000_001, "photo-large"),
    ],
)
def test_files_that_are_refused(data: bytes, code: str) -> None:
    with pytest.raises(PhotoRefused) as refused:
        upright_size(data)
    assert refused.value.code == code


@pytest.mark.parametrize("form", ["JPEG", "PNG", "WEBP"])
def test_a_file_cut_short_is_refused_whatever_others_have_set(
    form: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The PDF engine tells the picture library to take such files, for the whole process."""
    monkeypatch.setattr(ImageFile, "LOAD_TRUNCATED_IMAGES", True)
    data = saved(Image.effect_noise((200, 100), 80).convert("RGB"), form)
    assert upright_size(data) == (200, 100)
    with pytest.raises(PhotoRefused):
        upright_size(data[: len(data) // 2])
    assert ImageFile.LOAD_TRUNCATED_IMAGES


def test_a_picture_of_unheard_of_size_is_called_large() -> None:
    """The header alone says so: 30,000 by 30,000 (PNG specification, 11.2.2)."""
    small = saved(Image.new("RGB", (8, 8)))
    head = small[12:16] + struct.pack(">II", 30_000, 30_000) + small[24:29]
    with pytest.raises(PhotoRefused) as refused:
        upright_size(small[:12] + head + struct.pack(">I", zlib.crc32(head)) + small[33:])
    assert refused.value.code == "photo-large"


# EXIF orientation (EXIF 2.32, tag 274): where the first row and the first column of the file are seen.
TURNS = {
    1: None,
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_90,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_270,
}
"""Orientation -> how a camera that is held so lays an upright scene into its file."""


@pytest.mark.parametrize("form", ["JPEG", "PNG", "WEBP"])
@pytest.mark.parametrize("orientation", TURNS)
def test_every_orientation_comes_out_upright(form: str, orientation: int) -> None:
    scene, turn = quarters(128, 96), TURNS[orientation]
    exif = Image.Exif()
    exif[274] = orientation
    settings = {"quality": 100} if form == "JPEG" else {"lossless": True} if form == "WEBP" else {}
    data = saved(scene if turn is None else scene.transpose(turn), form, exif=exif, **settings)
    assert upright_size(data) == (128, 96)
    seen = picture(data, 1000)
    assert seen.size == (128, 96)
    for colour, wanted in zip(corners(seen), CORNERS, strict=True):
        assert max(abs(a - b) for a, b in zip(colour, wanted, strict=True)) <= 3


@pytest.mark.parametrize("form", ["PNG", "JPEG"])
@pytest.mark.parametrize(
    "shares",
    [(0.2, 0.5, 0.3), (0.8, 0.5, 0.35), (0.5, 0.5, 0.5), (0.9, 0.1, 0.1), (0.1, 0.9, 0.1), (0.95, 0.7, 0.1)],
)
def test_wide_colours_become_those_of_srgb(form: str, shares: tuple[float, ...]) -> None:
    """Against coloraide: channels beyond sRGB are cut off; the slack is for 8 bits, rounded twice."""
    levels = tuple(round(share * 255) for share in shares)
    settings = {"quality": 100, "subsampling": "4:4:4"} if form == "JPEG" else {}
    data = saved(Image.new("RGB", (32, 32), levels), form, icc_profile=display_p3(), **settings)
    wanted = Color("display-p3", [level / 255 for level in levels]).convert("srgb").clip().coords()
    pixel = picture(data, 100).getpixel((9, 9))
    assert isinstance(pixel, tuple)
    slack = 3 if form == "JPEG" else 2
    assert max(abs(a - b * 255) for a, b in zip(pixel, wanted, strict=True)) <= slack
    if shares != (0.5, 0.5, 0.5):
        assert max(abs(a - b) for a, b in zip(pixel, levels, strict=True)) > slack, "the profile counted"


@pytest.mark.parametrize(
    ("image", "colour"),
    [
        (Image.new("L", (8, 8), 120), (120, 120, 120)),
        (Image.new("CMYK", (8, 8), (0, 0, 0, 0)), (255, 255, 255)),
        (Image.new("RGBA", (8, 8), (10, 20, 30, 0)), (255, 255, 255)),
        (Image.new("LA", (8, 8), (0, 0)), (255, 255, 255)),
        (quarters(8, 8).quantize(4), CORNERS[0]),
        (Image.new("1", (8, 8), 1), (255, 255, 255)),
    ],
)
def test_other_kinds_of_pixels(image: Image.Image, colour: tuple[int, ...]) -> None:
    form = "JPEG" if image.mode == "CMYK" else "PNG"
    seen = picture(saved(image, form), 100)
    assert (seen.mode, seen.getpixel((1, 1))) == ("RGB", colour)


def test_a_grey_picture_with_the_profile_of_a_screen() -> None:
    srgb = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    seen = picture(saved(Image.new("L", (8, 8), 120), icc_profile=srgb), 100)
    assert seen.getpixel((1, 1)) == (120, 120, 120)


def test_nothing_but_pixels_is_left() -> None:
    exif = Image.Exif()
    exif[271] = "maker"
    data = saved(quarters(), "JPEG", exif=exif, comment=b"a remark", icc_profile=display_p3(), xmp=b"<x/>")
    assert picture(data, 100).info == {}


def test_a_phone_s_file_of_several_pictures_shows_the_first() -> None:
    data = saved(quarters(), "MPO", save_all=True, append_images=[Image.new("RGB", (64, 48))])
    assert upright_size(data) == (64, 48)
    assert corners(picture(data, 100))[0][0] > 150


def test_print_is_never_coarser_than_is_bearable() -> None:
    """600 pixels at 150 to the inch are 4 in, 101.6 mm; a tall photo is as high as its room."""
    assert Photo("a", "b", width=600, height=400).printed_mm == pytest.approx(101.6)
    assert Photo("a", "b", width=3000, height=2000).printed_mm == BODY_ROOM_MM[0]
    assert Photo("a", "b", width=2000, height=4000).printed_mm == BODY_ROOM_MM[1] / 2
