"""Each caution is told with what it is about alone, and every word of the table is one of the trade."""

from __future__ import annotations

from dataclasses import fields

import pytest
import yaml

from sitegen.check.stitch import STITCHES
from sitegen.publish.theme import BUNDLED
from sitegen.trade.beads import bead_kind, bead_kind_names
from sitegen.trade.cautions import ANY, Uses, cautions_for, limits
from sitegen.trade.figures import table
from sitegen.trade.findings import finding_names
from sitegen.trade.threads import thread_materials

GENERAL = ("children", "light", "selling")
LINEN = next(place / "linen" for place in BUNDLED if (place / "linen").is_dir())
SHAPES = {kind.shape for name in bead_kind_names() if (kind := bead_kind(name))}
KNOWN = {
    "threads": set(thread_materials()),
    "findings": set(finding_names()),
    "shapes": SHAPES,
    "stitches": set(STITCHES),
}
TOLD = [
    (Uses(), ()),
    (Uses(threads=frozenset({"nylon"})), ("needle", "thread-nylon")),
    (Uses(threads=frozenset({"polyester"})), ("needle", "thread-polyester")),
    (Uses(threads=frozenset({"braided"})), ("needle", "thread-braided")),
    (Uses(threads=frozenset({"wire"})), ("thread-wire", "eyes", "metal")),
    (Uses(findings=frozenset({"crimp tube"})), ("eyes", "crimp", "metal")),
    (Uses(findings=frozenset({"toggle clasp"})), ("eyes", "metal")),
    (Uses(findings=frozenset({"ear clip"})), ("eyes", "metal")),
    (Uses(findings=frozenset({"ear wire"})), ("eyes", "metal", "piercing")),
    (Uses(findings=frozenset({"ear post"})), ("eyes", "metal", "piercing")),
    (Uses(shapes=frozenset({"round", "cylinder", "drop"})), ()),
    (Uses(shapes=frozenset({"round", "bicone"})), ("crystal",)),
    (Uses(shapes=frozenset({"faceted"})), ("crystal",)),
    (Uses(stitches=frozenset({"brick", "fringe", "strung"})), ()),
    (Uses(stitches=frozenset({"brick", "loom"})), ("loom",)),
]


@pytest.mark.parametrize(("uses", "told"), TOLD, ids=lambda value: str(value)[:60])
def test_a_caution_is_told_with_what_it_is_about_alone(uses: Uses, told: tuple[str, ...]) -> None:
    assert cautions_for(uses) == (*told, *GENERAL)


def test_every_caution_is_among_the_examples() -> None:
    assert {name for _, told in TOLD for name in told} | set(GENERAL) == set(table("cautions")["cautions"])


def test_every_trigger_is_a_word_of_the_trade() -> None:
    assert set(KNOWN) == {field.name for field in fields(Uses)}
    for name, entry in table("cautions")["cautions"].items():
        for kind, words in entry.get("when", {}).items():
            assert words == ANY or set(words) <= KNOWN[kind], (name, kind)


def test_every_thread_has_a_caution_of_its_own() -> None:
    assert {f"thread-{name}" for name in thread_materials()} <= set(table("cautions")["cautions"])


def test_every_caution_has_its_words_and_no_words_lie_idle() -> None:
    messages = yaml.safe_load((LINEN / "strings" / "en" / "cautions.yaml").read_text(encoding="utf-8"))
    names = table("cautions")["cautions"]
    assert set(messages) == {
        "caution.heading",
        *(f"caution.{name}.{part}" for name in names for part in ("label", "text")),
    }


def test_limits_are_those_of_the_law() -> None:
    """REACH annex XVII, entry 27 for nickel: http://lamez.teg.co.uk/nickel/reach-17-27.htm; entry 23 for
    cadmium: https://echa.europa.eu/support/qas-support/browse/-/qa/70Qx/view/ids/158; entry 63 for lead:
    https://www.intertek.com.cn/Readingen_itemid_10428.html. Directive 69/493/EEC for crystal:
    https://gov.si/en/topics/crystal-glass-products. Section 101 of the CPSIA for children:
    https://cpsc.gov/Business--Manufacturing/Business-Education/Lead, guidance for small entities.
    """
    law = {"nickel": 0.5, "nickel_piercing": 0.2, "cadmium": 0.01, "lead": 0.05}
    assert dict(limits()) == law | {"crystal": 24, "child_lead": 100, "child_age": 12}
