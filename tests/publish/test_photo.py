"""Photos on pages and sheets: their sizes, their bytes, where they are shown and where they are not."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from pathlib import Path

import page as validation
import pdfplumber
import pikepdf
import pytest
from PIL import Image

from sitegen.build import build
from sitegen.model.photo import Photo
from sitegen.publish.photo import MOST_PRINT_BYTES, MOST_WEB_BYTES, Developed, develop, in_print, on_page
from sitegen.publish.printing import PrintFault, PrintJob, print_sheets
from sitegen.publish.theme import BUNDLED
from sitegen.read.sources import load_shop
from tests.publish.sample_shop import FREE, PRICED, SHOP, Built, Outline
from tests.read.pictures import CORNERS, corners, display_p3, quarters, saved

LINEN = next(place / "linen" for place in BUNDLED if (place / "linen").is_dir())
REMARK = b"taken on the kitchen table"
PLACE = {1: "N", 2: (52.0, 31.0, 12.0), 3: "E", 4: (13.0, 24.0, 18.0)}
"""EXIF GPS tags: latitude and longitude with their halves of the globe."""
LEAD = 'photo: {file: on-linen.jpg, alt: "Two fans <on> linen", caption: As worn.}\n'


def crowded(image: Image.Image) -> bytes:
    """A JPEG as a phone writes it: on its side, in wide colours, with its place, its maker and a remark."""
    exif = Image.Exif()
    exif[274], exif[271], exif[315] = 6, "Maker of phones", "Oona at home"
    exif.get_ifd(0x8825).update(PLACE)
    sideways = image.transpose(Image.Transpose.ROTATE_90)
    xmp = b"<x:xmpmeta>Oona at home</x:xmpmeta>"
    return saved(sideways, "JPEG", exif=exif, comment=REMARK, icc_profile=display_p3(), xmp=xmp, quality=95)


def photo_of(root: Path, data: bytes, lead: bool = False) -> Photo:
    """The photo of a little shop."""
    text = FREE.replace("colourways:", f"{LEAD}colourways:") if lead else FREE + "\n![Fan](on-linen.jpg)\n"
    (root / "on-linen.jpg").write_bytes(data)
    (root / "reed-pair.md").write_text(text, encoding="utf-8")
    (photo,) = load_shop(root).patterns[0].photos
    return photo


@pytest.fixture(scope="module")
def lead(tmp_path_factory: pytest.TempPathFactory) -> Developed:
    return develop(photo_of(tmp_path_factory.mktemp("lead"), crowded(quarters(2400, 1800)), lead=True))


@pytest.fixture(scope="module")
def shown(tmp_path_factory: pytest.TempPathFactory) -> Built:
    """A free pattern in other colours too and a priced one, each with a lead photo and one in the text."""
    root = tmp_path_factory.mktemp("shop")
    held = "\n![Held flat](held.png)\n"
    (root / "shop.yaml").write_text(SHOP, encoding="utf-8")
    free, priced = (
        FREE.replace("colourways:", f"{LEAD}colourways:"),
        PRICED.replace("colours:", f"{LEAD}colours:"),
    )
    (root / "reed-pair.md").write_text(free + held, encoding="utf-8")
    (root / "pebble-charm.md").write_text(priced + held, encoding="utf-8")
    (root / "on-linen.jpg").write_bytes(crowded(quarters(2400, 1800)))
    (root / "held.png").write_bytes(saved(quarters(900, 1200)))
    result = build(root, processes=1)
    assert result.files, result.problems
    return Built(root, result)


def test_sizes_for_the_web(lead: Developed) -> None:
    assert [(size.width, size.height) for size in lead.web] == [(480, 360), (960, 720), (1600, 1200)]
    for size in lead.web:
        with Image.open(io.BytesIO(size.data)) as image:
            assert (image.format, image.mode, image.size) == ("JPEG", "RGB", (size.width, size.height))


def test_print_has_300_dots_to_the_inch(lead: Developed) -> None:
    """170 mm are 6.69 in; 300 dots to the inch are 2008."""
    assert (lead.paper.width, lead.paper.height) == (2008, 1506)


@pytest.mark.parametrize(("width", "height", "wanted"), [(300, 200, [300]), (1200, 900, [480, 960, 1200])])
def test_nothing_is_made_larger(tmp_path: Path, width: int, height: int, wanted: list[int]) -> None:
    made = develop(photo_of(tmp_path, saved(quarters(width, height))))
    assert [size.width for size in made.web] == wanted
    assert made.paper.width <= width


def test_a_tall_photo_is_bounded_too(tmp_path: Path) -> None:
    made = develop(photo_of(tmp_path, saved(quarters(500, 6000))))
    assert max(size.height for size in made.web) <= 2 * 500


def test_upright_in_the_colours_of_srgb_at_every_size(lead: Developed) -> None:
    """The colours' values are the matter of the reader's test; here red must grow and places hold."""
    for size in (*lead.web, lead.paper):
        with Image.open(io.BytesIO(size.data)) as image:
            seen = corners(image)
        assert seen[0][0] > CORNERS[0][0] + 5, "red reaches farther in sRGB"
        order = [max(range(3), key=lambda channel: seen[corner][channel]) for corner in range(3)]
        assert order == [0, 1, 2]


def test_no_word_of_the_photo_s_file_is_left(lead: Developed) -> None:
    """Every marker of the JPEGs, byte by byte (ISO/IEC 10918-1, B.1): no APPn but JFIF's, no remark."""
    for size in (*lead.web, lead.paper):
        assert markers(size.data) <= {0xE0, 0xDB, 0xC0, 0xC2, 0xC4, 0xDA, 0xDD}
        for words in (b"Exif", b"GPS", b"ICC_PROFILE", b"xmpmeta", b"Oona", b"phones", REMARK):
            assert words not in size.data


def markers(data: bytes) -> set[int]:
    """The markers before the first scan's pixels and between scans, but restarts."""
    found, at = set(), 2
    while at < len(data) - 1:
        if data[at] != 0xFF or data[at + 1] in (0x00, 0xFF, *range(0xD0, 0xD8)):
            at += 1
            continue
        if data[at + 1] == 0xD9:
            break
        found.add(data[at + 1])
        at += 2 + int.from_bytes(data[at + 2 : at + 4], "big")
    return found


def test_the_scan_of_markers_finds_what_a_phone_writes() -> None:
    assert {0xE1, 0xE2, 0xFE} <= markers(crowded(quarters()))


def test_bytes_are_capped(tmp_path: Path) -> None:
    """Noise is the hardest picture there is to store."""
    noise = Image.merge("RGB", [Image.effect_noise((2100, 1600), 90) for _ in range(3)])
    made = develop(photo_of(tmp_path, saved(noise, "JPEG", quality=95), lead=True))
    assert [len(size.data) <= MOST_WEB_BYTES[size.width] for size in made.web] == [True] * 3
    assert len(made.paper.data) <= MOST_PRINT_BYTES


def test_names_come_from_the_content(tmp_path: Path) -> None:
    first, same, other = (
        develop(photo_of(tmp_path, data))
        for data in (crowded(quarters(600, 450)), crowded(quarters(600, 450)), saved(quarters(600, 450)))
    )
    assert first.web == same.web
    assert [size.width for size in first.web] == [size.width for size in other.web]
    assert not {size.name for size in other.web} & {size.name for size in first.web}


def test_the_image_of_a_page(lead: Developed) -> None:
    image = str(on_page(lead).image)
    assert 'alt="Two fans &lt;on&gt; linen"' in image
    assert 'width="896" height="672"' in image
    assert "loading" not in image
    assert re.findall(r"(\d+)w", image) == ["480", "960", "1600"]
    text = str(on_page(replace(lead, photo=replace(lead.photo, lead=False))).image)
    assert 'loading="lazy"' in text
    assert 'src="../photo-' in str(on_page(lead, "../").image)


def test_a_free_page_shows_all_photos(shown: Built) -> None:
    page = shown.page("reed-pair")
    assert Outline(page).faults == []
    assert page.count("<img ") == page.count(" alt=")
    assert page.index("Two fans &lt;on&gt; linen") < page.index("Held flat")
    named = set(re.findall(r"photo-[0-9a-f]{12}-\d+\.jpg", page))
    folder = shown.site / "patterns" / "reed-pair"
    assert {path.name for path in folder.glob("photo-*")} == named
    assert len(named) == 3 + 2


def test_a_priced_page_shows_the_lead_photo_alone(shown: Built) -> None:
    page = shown.page("pebble-charm")
    assert "Two fans &lt;on&gt; linen" in page
    assert "Held flat" not in page
    assert len(list((shown.site / "patterns" / "pebble-charm").glob("photo-*"))) == 3


def test_a_page_in_other_colours_shares_the_files(shown: Built) -> None:
    (page,) = (shown.site / "patterns" / "reed-pair").glob("*/index.html")
    text = page.read_text(encoding="utf-8")
    assert "Two fans" not in text, "the lead photo shows the author's own colours"
    sources = re.findall(r'src="(\.\./photo-[^"]+)"', text)
    assert len(sources) == 1
    assert all((page.parent / source).is_file() for source in sources)
    assert not list(page.parent.glob("photo-*"))


@pytest.mark.parametrize("name", ["reed-pair-a4.pdf", "reed-pair-letter.pdf", "pebble-charm-a4.pdf"])
def test_sheets_hold_the_photos_as_they_are(shown: Built, name: str) -> None:
    sheet = next(path for path in shown.pdfs() if path.name == name)
    report = validation.validate_pdf(sheet, profile="ua1")
    assert report.is_compliant, report
    photos = load_shop(shown.root).patterns[0].photos
    wanted = {develop(photo).paper.data for photo in photos}
    with pikepdf.open(sheet) as pdf:
        images = [
            one.read_raw_bytes()
            for one in pdf.objects
            if isinstance(one, pikepdf.Stream) and one.get("/Subtype") == "/Image"
        ]
    assert wanted == set(images)
    with pdfplumber.open(sheet) as pdf:
        sizes = [(one["width"], one["height"]) for page in pdf.pages for one in page.images]
    inch = 72 / 25.4
    assert [size[0] for size in sizes] == pytest.approx([170 * inch, 78.75 * inch], abs=0.05)
    assert [size[1] for size in sizes] == pytest.approx([127.5 * inch, 105 * inch], abs=0.05)


def test_print_takes_no_other_photo(lead: Developed) -> None:
    html = f"<html lang=en><title>x</title><body>{in_print(lead).image}"
    with pytest.raises(PrintFault):
        print_sheets(PrintJob("x", html, (("a4", "x"), ("letter", "y")), LINEN))
