"""Step diagrams: the new beads, the thread that adds them, and which way up the work is held."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from sitegen.draw.chart import chart
from sitegen.draw.finished import finished
from sitegen.draw.pens import BoundsPen
from sitegen.draw.step import StepArtist
from tests.draw.say import SAY


def letters(drawing):
    return "".join(mark[2] for name, values in drawing.calls if name == "letters" for mark in values[0])


def groups(drawing):
    return [values[0] for name, values in drawing.calls if name == "begin"]


def all_drawings(pattern, path):
    yield finished(path, pattern, SAY)
    for part in range(len(path.parts)):
        yield chart(path, pattern, part, SAY)
    for step in path.steps:
        yield StepArtist(path, pattern, SAY).draw(step.number, step.number, f"Step {step.number}")


def test_new_beads_carry_their_letters(kelp, diamond):
    for pattern, path in (kelp, diamond):
        for step in path.steps:
            drawing = StepArtist(path, pattern, SAY).draw(step.number, step.number, "Step")
            assert sorted(letters(drawing)) == sorted(path.beads[bead].letter for bead in step.picks)
            assert "thread" in groups(drawing)


def test_the_bridge_shows_where_the_needle_goes_under_one(kelp):
    pattern, path = kelp
    for step in path.steps:
        drawn = "bridges" in groups(StepArtist(path, pattern, SAY).draw(step.number, step.number, "Step"))
        assert drawn == (step.motion.startswith("brick") or step.motion == "ladder-back")


def group(drawing, kind):
    """The calls inside the first group of a kind, groups in it included."""
    calls, depth = [], 0
    for name, values in drawing.calls:
        if depth:
            depth += {"begin": 1, "end": -1}.get(name, 0)
            if not depth:
                return calls
            calls.append((name, values))
        elif name == "begin" and values[0] == kind:
            depth = 1
    return calls


def every_step(pattern, path):
    artist = StepArtist(path, pattern, SAY)
    for step in path.steps:
        yield step, artist.draw(step.number, step.number, "Step")


def test_the_thread_is_one_path_with_arrows_and_ends_apart(kelp, diamond):
    """What plays a step in time relies on these groups."""
    for pattern, path in (kelp, diamond):
        for _, drawing in every_step(pattern, path):
            assert [name for name, _ in group(drawing, "thread-line")] == ["shapes"]
            inside = [values[0] for name, values in group(drawing, "thread") if name == "begin"]
            assert inside == ["thread-ground", "thread-line", "arrows", "ends"]
            assert len(group(drawing, "ends")) == 2


def test_new_beads_are_drawn_one_by_one_in_order(kelp):
    pattern, path = kelp
    for step, drawing in every_step(pattern, path):
        new = [values[1] for name, values in drawing.calls if name == "begin" and values[0] == "beads-new"]
        assert [data["place"] for data in new] == [str(place + 1) for place in range(len(step.picks))]
        assert [data["letter"] for data in new] == [path.beads[bead].letter for bead in step.picks]


def test_thread_in_a_bead_is_broken_and_thread_beside_it_is_whole(kelp):
    """Strokes stop at the mouths of the bead: no stroke leads from outside into it."""
    pattern, path = kelp
    step = next(step for step in path.steps if step.motion == "ladder-first")
    drawing = StepArtist(path, pattern, SAY).draw(step.number, step.number, "Step")
    ((_, (strokes, _)),) = group(drawing, "thread-line")
    curved = [stroke for stroke in strokes if any(len(segment) == 6 for segment in stroke.segments)]
    short = [stroke for stroke in strokes if all(len(segment) == 2 for segment in stroke.segments)]
    assert curved
    assert len(short) > len(curved)


def numbers(drawing):
    return [int(values[1]["place"]) for name, values in group(drawing, "order") if name == "begin"]


def test_few_places_are_all_numbered_in_order_of_passing(kelp):
    pattern, path = kelp
    first = next(step for step in path.steps if step.motion == "ladder-first")
    drawing = StepArtist(path, pattern, SAY).draw(first.number, first.number, "Step")
    assert numbers(drawing) == [1, 2, 3, 4]


def test_of_a_long_way_the_first_and_last_places_and_its_turns_are_numbered(kelp):
    """A strand turns at its last three beads, which are left; then it goes back up and into the next."""
    pattern, path = kelp
    strand = next(step for step in path.steps if step.motion == "strand")
    count = len(strand.picks)
    drawing = StepArtist(path, pattern, SAY).draw(strand.number, strand.number, "Step")
    shown = numbers(drawing)
    assert shown == sorted(shown)
    assert {1, 2, 3} <= set(shown)
    assert any(count - 3 < number <= count for number in shown)
    assert max(shown) == strand.past_move - strand.first_move
    assert len(shown) < count


def test_turned_work_is_drawn_upside_down(diamond):
    """Row 10 hangs below the middle row; held turned, its beads are drawn above."""
    pattern, path = diamond
    step = next(step for step in path.steps if step.turned and step.motion == "brick-first")
    drawing = StepArtist(path, pattern, SAY).draw(step.number, step.number, "Step")
    there, new = {}, {}
    kind = ""
    for name, values in drawing.calls:
        if name == "begin":
            kind = values[0]
        if name == "shapes" and kind.startswith("beads"):
            (new if kind == "beads-new" else there).update({o.start: o.start[1] for o in values[0]})
    assert max(new.values()) < min(there.values())


def test_nothing_is_drawn_outside_the_box(kelp, diamond):
    for pattern, path in (kelp, diamond):
        for drawing in all_drawings(pattern, path):
            bounds = BoundsPen()
            drawing.play(bounds)
            assert bounds.left >= drawing.left
            assert bounds.top >= drawing.top
            assert bounds.right <= drawing.left + drawing.width_mm
            assert bounds.bottom <= drawing.top + drawing.height_mm


def test_every_svg_says_what_it_shows_and_uses_plain_values(kelp, diamond):
    for pattern, path in (kelp, diamond):
        for number, drawing in enumerate(all_drawings(pattern, path)):
            text = drawing.svg(f"d{number}")
            root = ElementTree.fromstring(text)
            title, description = root[0], root[1]
            assert title.tag.endswith("title")
            assert title.text
            assert description.tag.endswith("desc")
            assert description.text
            assert root.get("aria-labelledby") == f"d{number}-t d{number}-d"
            assert not re.search(r"style=|class=|var\(|currentColor|nan|inf|calc", text)
            for paint in re.findall(r'(?<!-)(?:fill|stroke)="([^"]*)"', text):
                assert re.fullmatch(r"none|#[0-9a-f]{6}", paint)


def test_scale_changes_the_size_but_not_the_drawing(kelp):
    pattern, path = kelp
    drawing = finished(path, pattern, SAY)
    small, large = drawing.svg("a", 1), drawing.svg("a", 2)
    assert re.sub(r' (width|height)="[^"]*mm"', "", small) == re.sub(r' (width|height)="[^"]*mm"', "", large)
    assert f'width="{float(re.search(r"width=.([0-9.]+)mm", small).group(1)) * 2:.10g}' in large


@pytest.mark.parametrize("pieces", [1, 2])
def test_a_pair_is_drawn_twice(kelp, diamond, pieces):
    pattern, path = (diamond, kelp)[pieces - 1]
    assert groups(finished(path, pattern, SAY)).count("piece") == pieces
