"""Messages: excerpts, carets, order, and nothing that steers a terminal."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from sitegen.check.tell import tell
from sitegen.model.codes import CODES
from sitegen.model.location import Location
from sitegen.model.problem import Problem, Severity

PRICE = {"value": "4,50"}


def lines(problem: Problem, text: str) -> list[str]:
    return tell([problem], {problem.where.file: text}).split("\n")


def test_a_message() -> None:
    text = "title: A\nmirror: yes\n"
    problem = Problem("yes-or-no", Location("a.md", 2, 9, 3), {"value": "yes"})
    assert tell([problem], {"a.md": text}) == (
        "a.md:2:9: fault yes-or-no\n"
        "    2 | mirror: yes\n"
        "      |         ^^^\n"
        "  `yes` is neither `true` nor `false`.\n"
        "  remedy: Write `true` or `false`.\n"
        "\n"
        "1 fault in 1 file.\n"
    )


def test_nothing_to_tell() -> None:
    assert tell([], {"a.md": "x"}) == ""


def test_order_and_doubles() -> None:
    places = [("b.md", 1, 1), ("a.md", 10, 1), ("a.md", 9, 5), ("a.md", 9, 1), ("a.md", 9, 1)]
    told = tell([Problem("price", Location(*place), PRICE) for place in places], {})
    heads = [line.split(": ")[0] for line in told.split("\n") if ": fault" in line]
    assert heads == ["a.md:9:1", "a.md:9:5", "a.md:10:1", "b.md:1:1"]
    assert told.endswith("4 faults in 2 files.\n")


def test_advice_is_counted_apart() -> None:
    where = Location("a.md", 1, 1)
    advice = Problem("letter-unused", where, {"letter": "X"})
    assert tell([advice], {}).endswith("1 piece of advice in 1 file.\n")
    both = tell([advice, Problem("price", where, PRICE)], {})
    assert both.endswith("1 fault and 1 piece of advice in 1 file.\n")


def test_a_place_that_is_a_whole_file() -> None:
    told = tell([Problem("file-too-large", Location("a.md", 0, 0, 0), {"most": "1 MB"})], {})
    assert told.startswith("a.md: fault file-too-large\n  This file is larger than 1 MB.\n")


def under(text: str, column: int, length: int) -> tuple[str, str]:
    """The shown line and the caret line, both without the gutter."""
    shown = lines(Problem("price", Location("f", 1, column, length), PRICE), text)
    return shown[1][8:], shown[2][8:]


def test_carets_stand_under_wide_signs_and_tabs() -> None:
    assert under("色: 藍色 x", 4, 2) == ("色: 藍色 x", "    ^^^^")
    assert under("a\tb", 3, 1) == ("a    b", "     ^")
    assert under("a\tb", 2, 1) == ("a    b", " ^^^^")
    assert under("e\u0301 x", 4, 1) == ("e\u0301 x", "  ^")


def test_a_caret_may_stand_behind_the_line() -> None:
    assert under("ab", 3, 1) == ("ab", "  ^")
    assert under("", 1, 1) == ("", "^")


def test_long_lines_are_cut_around_the_caret() -> None:
    shown, caret = under("x" * 500 + "HERE" + "x" * 500, 501, 4)
    start = caret.index("^")
    assert shown[start : start + 4] == "HERE"
    assert len(shown) <= 102
    assert shown.startswith("…")
    assert shown.endswith("…")


def test_thousands_of_problems_in_a_huge_line_are_no_danger() -> None:
    text = "<b> " * 200_000
    problems = [Problem("html-shown", Location("f", 1, 4 * n + 1, 3), {"tag": "<b>"}) for n in range(200_000)]
    told = tell(problems, {"f": text})
    assert told.count(": advice html-shown") == 1_000
    assert "199000 more are not shown" in told


def test_nothing_steers_the_terminal() -> None:
    text = "price: \x1b[31mred\x1b[0m\u202e\u200b"
    problem = Problem("price", Location("f", 1, 8, 3), {"value": "\x1b[2J\n\u202e" + "y" * 1000})
    told = tell([problem], {"f": text})
    assert all(sign.isprintable() or sign == "\n" for sign in told)
    assert max(len(line) for line in told.split("\n")) < 300


def test_colour_only_when_asked() -> None:
    problem = Problem("price", Location("f", 1, 1, 5), PRICE)
    painted = tell([problem], {"f": "price: 4,50"}, colour=True)
    assert "\x1b[1;31mfault\x1b[0m" in painted
    assert "\x1b" not in tell([problem], {"f": "price: 4,50"})


@given(st.text(max_size=60), st.integers(0, 80), st.integers(0, 80), st.integers(0, 3))
def test_any_place_can_be_told(text: str, column: int, length: int, line: int) -> None:
    told = tell([Problem("price", Location("f", line, column, length), PRICE)], {"f": text})
    assert told.endswith("1 fault in 1 file.\n")


def test_every_code_can_be_said() -> None:
    for code, entry in CODES.items():
        assert code == code.lower()
        assert entry.severity in Severity
        assert entry.message.endswith(".")
        assert entry.remedy.endswith((".", "}")) or "```" in entry.remedy or "example" in entry.remedy
