"""The bytes of a photo -> its picture: upright, in sRGB, with nothing that stood beside the pixels."""

from __future__ import annotations

import io
import struct
import warnings
import zlib
from collections.abc import Iterator, Mapping
from contextlib import contextmanager

from PIL import Image, ImageCms, ImageFile, ImageOps, UnidentifiedImageError

from sitegen.model.numbers import plain

MOST_BYTES = 40_000_000
"""Size of one photo's file."""
MOST_PIXELS = 50_000_000
"""Width by height of one photo."""

_FORMATS = ("JPEG", "PNG", "WEBP")
_MODES = frozenset({"1", "L", "LA", "P", "PA", "RGB", "RGBA", "CMYK"})
"""Kinds of pixels that are turned into 8-bit RGB without loss of meaning."""
_CLEAR = frozenset({"LA", "PA", "RGBA"})
_HEIC = frozenset({b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1"})
"""Brands of HEIC files: ISO/IEC 23008-12, annex B, and its `mif1` and `msf1`. From memory."""
_BROKEN = (
    *(OSError, SyntaxError, ValueError, TypeError, LookupError, ArithmeticError, EOFError),
    *(MemoryError, Warning, struct.error, zlib.error, ImageCms.PyCMSError),
)
"""What the picture library raises at files that are not what they should be."""
_SRGB = ImageCms.createProfile("sRGB")


class PhotoRefused(Exception):
    """A file that no picture can be made of: the code of the problem, and what fills its sentences."""

    def __init__(self, code: str, values: Mapping[str, object]) -> None:
        super().__init__(code)
        self.code, self.values = code, values


def upright_size(data: bytes) -> tuple[int, int]:
    """Width and height in pixels as the photo stands upright; reads all of it to see that it is whole.

    Raises PhotoRefused.
    """
    with _opened(data) as image:
        width, height = image.size
        sideways = image.getexif().get(0x0112, 1) in (5, 6, 7, 8)
        _fresh(image, room=1)
    return (height, width) if sideways else (width, height)


def picture(data: bytes, room: int) -> Image.Image:
    """The upright picture in 8-bit sRGB; clear places become white. Raises PhotoRefused.

    It may be smaller than the photo, but is at least twice `room` pixels both ways if the photo is.
    """
    with _opened(data) as image:
        return _fresh(image, room)


@contextmanager
def _opened(data: bytes) -> Iterator[Image.Image]:
    """The picture in the file, not yet decoded; whatever goes wrong with it is told as a refusal."""
    if len(data) > MOST_BYTES:
        size = f"more than {MOST_BYTES // 1_000_000} MB"
        raise PhotoRefused("photo-large", {"size": size, "most": f"{MOST_BYTES // 1_000_000} MB"})
    if data[4:8] == b"ftyp" and data[8:12] in _HEIC:
        raise PhotoRefused("photo-heic", {})
    try:
        with _strictly(), Image.open(io.BytesIO(data), formats=_FORMATS) as image:
            _look_over(image)
            yield image
    except Image.DecompressionBombError:
        raise _too_large("hundreds of millions of pixels") from None
    except UnidentifiedImageError:
        raise PhotoRefused("photo-format", {"found": "its content is neither JPEG, PNG nor WebP"}) from None
    except _BROKEN:
        raise PhotoRefused("photo-unreadable", {"reason": "the file is damaged or cut short"}) from None


@contextmanager
def _strictly() -> Iterator[None]:
    """Any doubt of the picture library is an error; the PDF engine has told it to take files cut short."""
    lenient = ImageFile.LOAD_TRUNCATED_IMAGES
    ImageFile.LOAD_TRUNCATED_IMAGES = False
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            warnings.simplefilter("ignore", Image.DecompressionBombWarning)  # our own limit is lower
            yield
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = lenient


def _too_large(size: str) -> PhotoRefused:
    return PhotoRefused("photo-large", {"size": size, "most": f"{plain(MOST_PIXELS / 1e6, 1)} million"})


def _look_over(image: Image.Image) -> None:
    pixels = image.width * image.height
    if pixels > MOST_PIXELS:
        raise _too_large(f"{plain(pixels / 1e6, 1)} million pixels")
    if image.format in ("PNG", "WEBP") and getattr(image, "is_animated", False):
        raise PhotoRefused("photo-format", {"found": "it holds several pictures, as an animation does"})
    if image.mode not in _MODES:
        raise PhotoRefused("photo-format", {"found": f"its pixels are of a rare kind ({image.mode})"})


def _fresh(image: Image.Image, room: int) -> Image.Image:
    """A new picture of the same pixels: what stood beside them stays behind."""
    profile = image.info.get("icc_profile")
    clear = "transparency" in image.info or image.mode in _CLEAR
    image.draft(None, (2 * room, 2 * room))
    turned = ImageOps.exif_transpose(image)
    alpha = turned.convert("RGBA").getchannel("A") if clear else None
    colours = _in_srgb(turned, profile)
    fresh = Image.new("RGB", colours.size, (255, 255, 255))
    fresh.paste(colours, mask=alpha)
    return fresh


def _in_srgb(image: Image.Image, profile: bytes | None) -> Image.Image:
    """The colours as sRGB shows them; without a profile they are taken for sRGB."""
    if not profile:
        return image.convert("RGB")
    own = ImageCms.ImageCmsProfile(io.BytesIO(profile))
    space = own.profile.xcolor_space.strip()
    mode = {"GRAY": "L", "CMYK": "CMYK"}.get(space, "RGB")
    changed = ImageCms.profileToProfile(
        image.convert(mode), own, _SRGB, ImageCms.Intent.RELATIVE_COLORIMETRIC, "RGB"
    )
    assert changed is not None
    return changed
