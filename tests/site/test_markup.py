"""HTML, CSS and SVG before checkers from outside: not one error, warning or remark on the whole output."""

from __future__ import annotations

import json
from pathlib import Path

from tests.site.outside import MODULES, OURS, node, nu
from tests.site.places import Site

# A page read from the disk has no origin, so the checker takes `'self'` for nobody and JSON-LD for a script;
# the browser tests count what a browser truly blocks.
NOT_SO = "violates Content Security Policy"

PICTURE = '<svg xmlns="http://www.w3.org/2000/svg"><rekt/></svg>'
FAULTY = """\
<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Faults</title></head>
<body><h1>One</h1><p id="a">Two<p id="a">Three<a href="#a"></a>
<svg viewBox="0 0 9 9" role="img" fil="#fff"><rect width="1" hight="2"/></svg>
<input type="text"></body></html>
"""


def test_the_nu_checker_is_content(site: Site) -> None:
    files = site.files(".html", ".css", ".svg")
    said = [one for one in nu(files) if NOT_SO not in one["message"]]
    assert [f"{site.short(one['url'])}:{one.get('lastLine')}: {one['message']}" for one in said] == []


def test_html_validate_is_content(site: Site, tmp_path: Path) -> None:
    found = html_validate(site.root / "**" / "*.html", tmp_path / "report.json")
    assert [site.short(line) for line in found] == []


def test_the_style_sheets_name_only_what_css_knows(site: Site, tmp_path: Path) -> None:
    found = stylelint(site.root / "**" / "*.css", tmp_path / "report.json")
    assert [site.short(line) for line in found] == []


def test_the_checkers_see_planted_faults(tmp_path: Path) -> None:
    """A checker that finds nothing anywhere would be content with everything."""
    (tmp_path / "faults.html").write_text(FAULTY, encoding="utf-8")
    (tmp_path / "faults.css").write_text("@media (min-widht: 3em) { p { colr: red } }", encoding="utf-8")
    (tmp_path / "faults.svg").write_text(
        '<svg xmlns="http://www.w3.org/2000/svg"><rekt/></svg>', encoding="utf-8"
    )
    seen = [one["message"] for one in nu(sorted(tmp_path.iterdir()))]
    for fault in ("Duplicate ID", "“fil”", "“hight”", "“colr”", "“rekt”"):
        assert any(fault in message for message in seen), fault
    rules = {line.rpartition(" ")[2] for line in html_validate(tmp_path / "*.html", tmp_path / "report")}
    assert {"no-dup-id", "wcag/h30"} <= rules
    rules = {line.rpartition(" ")[2] for line in stylelint(tmp_path / "*.css", tmp_path / "report")}
    assert rules == {"media-feature-name-no-unknown", "property-no-unknown"}


def html_validate(files: Path, report: Path) -> list[str]:
    """Its complaints: file, line, message, rule. `report` is where it writes them meanwhile."""
    program = MODULES / "html-validate" / "bin" / "html-validate.mjs"
    node(program, "--config", OURS / "html-validate.json", "--formatter", f"json={report}", files)
    return [
        f"{file['filePath']}:{one['line']}: {one['message']} {one['ruleId']}"
        for file in json.loads(report.read_text(encoding="utf-8"))
        for one in file["messages"]
    ]


def stylelint(files: Path, report: Path) -> list[str]:
    """Its complaints: file, line, message, rule. `report` is where it writes them meanwhile."""
    program = MODULES / "stylelint" / "bin" / "stylelint.mjs"
    node(program, "--config", OURS / "stylelint.json", "--formatter", "json", "--output-file", report, files)
    return [
        f"{file['source']}:{one['line']}: {one['text']} {one['rule']}"
        for file in json.loads(report.read_text(encoding="utf-8"))
        for one in file["warnings"]
    ]
