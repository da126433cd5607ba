"""A photo of the author's -> JPEGs at sizes for the page and for print, and the image that shows it there."""

from __future__ import annotations

import hashlib
import io
from collections.abc import Iterable
from dataclasses import dataclass

from markupsafe import Markup
from PIL import Image

from sitegen.model.numbers import MM_PER_INCH, plain
from sitegen.model.photo import PRINT_DPI, Photo
from sitegen.read.photo_file import picture
from sitegen.read.photos import photo_bytes

WEB_WIDTHS = (480, 960, 1600)
"""Pixels across, for small screens up to fine ones; a smaller photo stays as it is."""
TALLEST = 2.0
"""Height over width up to which a width of the web is given whole."""
LEAD_PLACE = (896, 680)
"""Room of the lead photo on the page, CSS pixels across and down."""
BODY_PLACE = (640, 600)
NARROW = "58rem"
"""Below this width of the window a page has one column; the style sheet says the same."""
QUALITIES = (86, 80, 74, 68, 60, 50, 40, 25, 10)
"""JPEG quality, from the first wished for down to what fits the bytes."""
MOST_WEB_BYTES = {480: 100_000, 960: 300_000, 1600: 650_000}
MOST_PRINT_BYTES = 1_500_000
"""Most bytes of one picture; own judgement, no source."""
SCHEME = "photo"
"""Addresses in print are `photo:/NAME`: one of the pattern's own photos."""

PhotoFile = tuple[str, bytes]
"""File name and JPEG."""


@dataclass(frozen=True, slots=True)
class Size:
    """One photo at one size."""

    name: str
    """File name, from the photo's fingerprint and the size."""
    width: int
    """Pixels."""
    height: int
    data: bytes
    """A JPEG."""


@dataclass(frozen=True, slots=True)
class Developed:
    """A photo at all sizes that it is shown in."""

    photo: Photo
    web: tuple[Size, ...]
    """From small to large."""
    paper: Size


@dataclass(frozen=True, slots=True)
class PhotoImage:
    """A photo ready to be set: the image, the line under it, and the files that the image names."""

    image: Markup
    caption: str
    files: tuple[PhotoFile, ...]
    language: str
    """Of its words, where it is not that of the page."""


@dataclass(frozen=True, slots=True)
class PhotoBlock:
    """A photo of the author's among the text of the making."""

    photo: PhotoImage
    kind: str = "photo"


def develop(photo: Photo) -> Developed:
    """The photo at its sizes: upright, sRGB, nothing in the files but pixels.

    Raises PhotoChanged where the file is no longer the one that was read.
    """
    width, height = photo.width, photo.height
    widths = [wide for wide in WEB_WIDTHS if wide < width]
    if len(widths) < len(WEB_WIDTHS):
        widths.append(width)
    shapes = dict.fromkeys(_shape(photo, wide, wide * TALLEST) for wide in widths)
    paper = _shape(photo, min(width, round(photo.printed_mm / MM_PER_INCH * PRINT_DPI)), height)
    full = picture(photo_bytes(photo), max(paper[1], *(high for _, high in shapes), paper[0]))
    web = tuple(_size(photo, full, shape, _most_bytes(shape[0])) for shape in shapes)
    return Developed(photo, web, _size(photo, full, paper, MOST_PRINT_BYTES))


def _shape(photo: Photo, wide: float, high: float) -> tuple[int, int]:
    """Pixels both ways of the photo at most so wide and so high."""
    scale = min(1.0, wide / photo.width, high / photo.height)
    return max(1, round(photo.width * scale)), max(1, round(photo.height * scale))


def _most_bytes(width: int) -> int:
    return next((most for wide, most in MOST_WEB_BYTES.items() if width <= wide), MOST_PRINT_BYTES)


def _size(photo: Photo, full: Image.Image, shape: tuple[int, int], most: int) -> Size:
    """The photo at one size, as well as its bytes allow."""
    small = full.resize(shape, Image.Resampling.LANCZOS, reducing_gap=3.0)
    settings = f"{photo.digest} {shape} {most} {QUALITIES}"
    data = b""
    for quality in QUALITIES:
        out = io.BytesIO()
        small.save(out, "JPEG", quality=quality, optimize=True, progressive=True, subsampling="4:4:4")
        data = out.getvalue()
        if len(data) <= most:
            break
    digest = hashlib.sha256(settings.encode()).hexdigest()[:12]
    return Size(f"photo-{digest}-{shape[0]}.jpg", *shape, data)


def on_page(made: Developed, folder: str = "", language: str = "") -> PhotoImage:
    """The photo on a page; `folder` leads from there to its files.

    The lead photo is fetched with the page, any other when the reader comes near it.
    """
    photo = made.photo
    place = LEAD_PLACE if photo.lead else BODY_PLACE
    wide, high = _shape(photo, *place)
    sources = ", ".join(f"{folder}{size.name} {size.width}w" for size in made.web)
    usual = min(made.web, key=lambda size: abs(size.width - wide))
    image = Markup(
        '<img src="{}" srcset="{}" sizes="(min-width: {}) {}px, 90vw" width="{}" height="{}" alt="{}"{}>'
    ).format(
        folder + usual.name,
        sources,
        NARROW,
        wide,
        wide,
        high,
        photo.alt,
        "" if photo.lead else Markup(' loading="lazy" decoding="async"'),
    )
    return PhotoImage(image, photo.caption, tuple((size.name, size.data) for size in made.web), language)


def in_print(made: Developed, language: str = "") -> PhotoImage:
    """The photo on a sheet, as wide as its room and its pixels allow."""
    photo, paper = made.photo, made.paper
    image = Markup('<img src="{}:/{}" alt="{}" style="width: {}mm">').format(
        SCHEME, paper.name, photo.alt, plain(photo.printed_mm)
    )
    return PhotoImage(image, photo.caption, ((paper.name, paper.data),), language)


def files_of(images: Iterable[PhotoImage]) -> tuple[PhotoFile, ...]:
    """The files of several photos, each once."""
    return tuple(dict(file for image in images for file in image.files).items())
