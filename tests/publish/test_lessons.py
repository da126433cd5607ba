"""Lessons: one for each stitch, every frame the step it names, its words those of the step table."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import pytest
import yaml

from sitegen.check import check_pattern
from sitegen.draw.colour import contrast
from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.model.thread import Tail
from sitegen.publish.lesson_pages import FRAME_ROOM, LARGEST_FRAME, LIST, lesson_address, lesson_view
from sitegen.publish.lessons import (
    FrameChoice,
    Lesson,
    LessonFault,
    chosen_steps,
    frame_title,
    lessons,
    work_sample,
)
from sitegen.publish.table import step_table
from sitegen.publish.theme import theme_folder
from sitegen.publish.words import Words
from sitegen.read.sources import load_pattern
from sitegen.weave import STITCHES
from tests.conftest import Golden
from tests.publish.sample_shop import Built, Outline

ROOT = Path(__file__).parents[2]
THEME = theme_folder("linen", ROOT)
WORDS = Words(THEME, "en")
MADE = lessons(THEME, "en")
SAMPLES = sorted((THEME / "lessons").glob("*.md"))
TAILS = {"join-old": Tail.OLD, "join-new": Tail.NEW, "end": Tail.FIRST}
each_lesson = pytest.mark.parametrize("lesson", MADE, ids=lambda lesson: lesson.plan.name)


def test_there_is_a_lesson_for_each_stitch() -> None:
    assert sorted(lesson.plan.stitch for lesson in MADE) == sorted(set(STITCHES) - {"none"})


def test_every_sample_is_shown() -> None:
    assert {path.stem for path in SAMPLES} == {name for lesson in MADE for name in lesson.samples}


@pytest.mark.parametrize("file", SAMPLES, ids=lambda file: file.stem)
def test_nothing_is_wrong_with_a_sample(file: Path) -> None:
    sources = load_pattern(file, Shop())
    assert [*sources.problems, *check_pattern(sources.patterns[0], Shop())] == []


def test_frames_are_the_steps_that_they_name(golden: Golden) -> None:
    """The kept list is read by a person: each line says what a frame shows."""
    lines = []
    for lesson in MADE:
        lines.append(f"{lesson.plan.stitch}")
        for frame in lesson.frames:
            path = lesson.samples[frame.choice.sample].path
            for step in frame.steps:
                beads = "".join(path.beads[bead].letter for bead in step.picks)
                where = f"{frame.choice.sample}, {path.parts[step.part].name}, row {step.row}"
                lines.append(f"  {frame.choice.name}: {where}, {step.motion} {beads}".rstrip())
    golden(Path(__file__).parent / "goldens" / "lessons.txt", "\n".join(lines) + "\n")


@each_lesson
def test_a_lesson_has_four_to_eight_frames_of_different_steps(lesson: Lesson) -> None:
    shown = [(frame.choice.sample, step.number) for frame in lesson.frames for step in frame.steps]
    assert 4 <= len(lesson.frames) <= 8
    assert len(set(shown)) == len(shown)


@each_lesson
def test_most_frames_show_the_stitch_itself(lesson: Lesson) -> None:
    own = [
        frame
        for frame in lesson.frames
        if frame.choice.name not in TAILS
        and all(
            lesson.samples[frame.choice.sample].path.parts[step.part].stitch == lesson.plan.stitch
            for step in frame.steps
        )
    ]
    assert len(own) >= 3


@each_lesson
def test_frames_of_thread_ends_weave_them_in(lesson: Lesson) -> None:
    for frame in lesson.frames:
        wanted = TAILS.get(frame.choice.name)
        assert [step.tail for step in frame.steps] == [wanted] * len(frame.steps)


@each_lesson
def test_frames_say_what_the_step_table_says(lesson: Lesson) -> None:
    """Every frame whose step has a row of the table to itself has exactly its sentences and beads."""
    compared = 0
    for name, sample in lesson.samples.items():
        shop = Shop(working_length_mm=lesson.plan.working_mm)
        measures = measure(sample.path, sample.pattern, shop)
        table = step_table(sample.path, sample.pattern, shop, measures, WORDS)
        rows = {
            row.first_step: row
            for section in table
            for row in section.rows
            if row.first_step == row.last_step
        }
        for frame in lesson.frames:
            row = rows.get(frame.steps[0].number)
            if frame.choice.sample == name and row is not None and len(frame.steps) == 1:
                assert frame.sentences == row.sentences
                assert frame.pick_up == row.pick_up
                compared += 1
    assert compared


def test_a_frame_that_names_no_step_is_told() -> None:
    sample = work_sample(THEME / "lessons" / "ladder.md", 1600, WORDS)
    for choice in (
        FrameChoice("next", "ladder", "brick-next"),
        FrameChoice("next", "ladder", "ladder-next", nth=99),
        FrameChoice("next", "ladder", "ladder-next", row=2),
        FrameChoice("next", "ladder", "ladder-next", part=2),
    ):
        with pytest.raises(LessonFault):
            chosen_steps(choice, sample.path)


def test_names_in_a_sample_are_words_of_the_language() -> None:
    """The same beads and steps; colours and parts, also where a part hangs from another, are called anew."""
    german = Words(THEME, "de")
    made = work_sample(THEME / "lessons" / "fringe.md", 190, german)
    own = work_sample(THEME / "lessons" / "fringe.md", 190, WORDS)
    assert [colour.name for colour in own.pattern.colours] == ["blue", "straw", "leaf green"]
    assert [colour.name for colour in made.pattern.colours] == ["Blau", "Strohgelb", "Blattgrün"]
    assert [part.name for part in made.path.parts] == ["Leiste", "Probe"]
    hang = made.pattern.parts[1].hang
    assert hang is not None and hang.part == "Leiste"
    assert made.path.beads == own.path.beads
    assert [step.motion for step in made.path.steps] == [step.motion for step in own.path.steps]


def test_every_name_in_the_samples_has_its_german_word() -> None:
    german = Words(THEME, "de")
    patterns = [load_pattern(file, Shop()).patterns[0] for file in SAMPLES]
    names = {colour.name for pattern in patterns for colour in pattern.colours}
    names |= {part.name for pattern in patterns for part in pattern.parts}
    messages = yaml.safe_load((THEME / "strings" / "de" / "lessons.yaml").read_text(encoding="utf-8"))
    assert {key for key in messages if key.startswith("sample.")} == {f"sample.{name}" for name in names}
    assert all(german.term("sample", name) != name for name in names)


def test_a_sample_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    text = (THEME / "lessons" / "ladder.md").read_text(encoding="utf-8")
    broken = tmp_path / "broken.md"
    broken.write_text(text.replace("makes: one piece", "makes: a mess"), encoding="utf-8")
    with pytest.raises(LessonFault, match=r"broken\.md cannot be read"):
        work_sample(broken, 1600, WORDS)
    broken.write_text(text.replace("```chart Sample\n", "```chart Sample\nA A\n"), encoding="utf-8")
    with pytest.raises(LessonFault, match=r"broken\.md cannot be woven"):
        work_sample(broken, 1600, WORDS)


@each_lesson
def test_beads_keep_their_size_through_a_lesson(lesson: Lesson) -> None:
    """All drawings at one scale; only one that would not fit its place is smaller."""
    view = lesson_view(MADE, MADE.index(lesson), (), Shop(), WORDS)
    scales = []
    for frame, shown in zip(lesson.frames, view.frames, strict=True):
        width = re.search(r'width="([\d.]+)mm"', shown.figure.svg)
        assert width
        scale = float(width[1]) / frame.drawing.width_mm
        assert scale <= LARGEST_FRAME + 0.01
        assert float(width[1]) <= FRAME_ROOM[0] + 0.1
        scales.append(scale)
    usual = max(scales)
    smaller = [scale for scale in scales if scale < usual - 0.02]
    assert all(scale < 0.6 * LARGEST_FRAME for scale in smaller)
    assert len(smaller) <= 2


def test_a_letter_has_one_colour_in_all_samples() -> None:
    colours: dict[str, set[str]] = {}
    for lesson in MADE:
        for sample in lesson.samples.values():
            for colour in sample.pattern.colours:
                colours.setdefault(colour.letter, set()).add(colour.hex)
    assert all(len(found) == 1 for found in colours.values())
    assert len({next(iter(found)) for found in colours.values()}) == len(colours)


def lesson_keys() -> set[str]:
    files = (THEME / "strings" / "en").glob("lessons*.yaml")
    found = [key for file in files for key in yaml.safe_load(file.read_text(encoding="utf-8"))]
    assert len(found) == len(set(found))
    return set(found)


def test_no_word_of_the_lessons_lies_unused() -> None:
    files = [*(THEME / "templates").glob("*.html"), *(ROOT / "sitegen" / "publish").glob("*.py")]
    named = {
        key
        for file in files
        for key in re.findall(r"""["'](lessons?\.[a-z-]+)["']""", file.read_text(encoding="utf-8"))
    }
    for lesson in MADE:
        plan = lesson.plan
        named |= {f"lessons.group-{plan.group}"}
        named |= {f"lesson.{plan.name}.{part}" for part in ("title", "is", "good")}
        for number in (1, 2, 3):
            named |= {f"lesson.{plan.name}.fault-{number}", f"lesson.{plan.name}.cure-{number}"}
        for frame in plan.frames:
            own = f"lesson.{plan.name}.{frame.name}"
            named |= {own, f"{own}.title"}
            if not WORDS.has(own):
                named.add(f"lesson.say.{frame.name}")
            if not WORDS.has(f"{own}.title"):
                named.add(f"lesson.frame.{frame.name}")
    assert lesson_keys() - named == set()


@each_lesson
def test_a_lesson_says_what_goes_wrong_and_why(lesson: Lesson) -> None:
    view = lesson_view(MADE, MADE.index(lesson), (), Shop(), WORDS)
    assert len(view.faults) >= 2
    assert all(fault.label and fault.value for fault in view.faults)
    assert all(frame.about and frame.title and frame.sentences for frame in view.frames)
    titles = [frame_title(lesson.plan, frame.choice, WORDS) for frame in lesson.frames]
    assert len(set(titles)) == len(titles)


def test_tools_come_with_their_cautions() -> None:
    for place, lesson in enumerate(MADE):
        labels = {one.label for one in lesson_view(MADE, place, (), Shop(), WORDS).cautions}
        assert {"Needles", "Cutting nylon", "Small parts", "Light and rest", "For others"} <= labels
        metal = any(sample.path.findings for sample in lesson.samples.values())
        assert ({"Pliers and eyes", "Metals on the skin"} <= labels) == metal
        assert ({"Crimps", "Cutting wire"} <= labels) == (lesson.plan.stitch == "strung")
        assert ("The loom" in labels) == (lesson.plan.stitch == "loom")


@pytest.fixture(scope="module")
def pages(built: Built) -> dict[str, Outline]:
    names = [LIST, *(lesson_address(lesson.plan.name) for lesson in MADE)]
    return {name: Outline((built.site / name).read_text(encoding="utf-8")) for name in names}


def test_pages_are_sound_and_lead_somewhere(built: Built, pages: dict[str, Outline]) -> None:
    for name, page in pages.items():
        assert page.faults == [], name
        assert len(page.ids) == len(set(page.ids)), name
        assert page.headings[0] == 1
        assert all(after <= before + 1 for before, after in pairwise(page.headings)), name
        for address in page.addresses:
            if address.startswith("#"):
                assert address[1:] in page.ids
            elif not address.startswith("https://"):
                assert ((built.site / name).parent / address).resolve().is_file(), (name, address)


def test_pages_lead_from_stitch_to_stitch_and_back(pages: dict[str, Outline]) -> None:
    names = [lesson_address(lesson.plan.name) for lesson in MADE]
    for before, after in pairwise(names):
        assert f"../../{after}" in pages[before].addresses
        assert f"../../{before}" in pages[after].addresses
    assert {f"../{name}" for name in names} <= set(pages[LIST].addresses)


def test_patterns_and_lessons_lead_to_each_other(built: Built, pages: dict[str, Outline]) -> None:
    front = Outline((built.site / "index.html").read_text(encoding="utf-8"))
    assert LIST in front.addresses
    taught = {"reed-pair": {"brick", "fringe"}, "pebble-charm": {"brick"}}
    for pattern, stitches in taught.items():
        links = set(Outline(built.page(pattern)).addresses)
        for lesson in MADE:
            name = lesson.plan.name
            assert (f"../../{lesson_address(name)}" in links) == (name in stitches)
            back = f"../../patterns/{pattern}/index.html" in pages[lesson_address(name)].addresses
            assert back == (name in stitches)


def test_letters_stand_out_from_their_chips(built: Built) -> None:
    """WCAG 2.2, 1.4.3: at least 4.5:1."""
    style = (built.site / "techniques" / "colours.css").read_text(encoding="utf-8")
    chips = re.findall(r"background: (#\w{6}); color: (#\w{6});", style)
    assert len(chips) == 4
    assert all(contrast(fill, ink) >= 4.5 for fill, ink in chips)
