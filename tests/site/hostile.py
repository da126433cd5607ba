"""Texts that try to be more than text, and what is written with them: one place for what the tests try."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping

CALL = "trap()"
"""What a text that comes to life calls."""

MARKUP = (
    "<script>trap()</script>",
    "<ScRiPt>trap()</sCrIpT>",
    "<script src=//evil.example/x.js></script>",
    "</script><script>trap()</script>",
    "</title><script>trap()</script>",
    "</textarea><script>trap()</script>",
    "</style><script>trap()</script>",
    "</template><script>trap()</script>",
    "</noscript><script>trap()</script>",
    "</svg><script>trap()</script>",
    "</desc></title></svg><svg onload=trap()>",
    "<img src=x onerror=trap()>",
    "<img/src=x/onerror=trap()>",
    "<img src=x onerror='trap()'//",
    "<svg onload=trap()>",
    "<svg><animate onbegin=trap() attributeName=x>",
    "<svg><script>trap()</script></svg>",
    "<svg><use href=data:image/svg+xml,x>",
    "<math><mi xlink:href=javascript:trap()>",
    "<iframe srcdoc='<script>trap()</script>'>",
    "<iframe src=javascript:trap()></iframe>",
    "<object data=javascript:trap()></object>",
    "<embed src=javascript:trap()>",
    "<base href=//evil.example/>",
    "<meta http-equiv=refresh content=0;url=//a>",
    "<link rel=stylesheet href=//evil.example>",
    "<style>*{display:none}</style>",
    "<body onload=trap()>",
    "<details open ontoggle=trap()>",
    "<input autofocus onfocus=trap()>",
    "<video><source onerror=trap()></video>",
    "<form action=javascript:trap()><input type=submit>",
    "<a href=javascript:trap()>x</a>",
    "<!-- <script>trap()</script>",
    "--><script>trap()</script>",
    "--!><script>trap()</script>",
    "<![CDATA[<script>trap()</script>]]>",
    "]]><script>trap()</script>",
    "<?xml version='1.0'?><x/>",
    "<!DOCTYPE x [<!ENTITY e SYSTEM 'file:///etc/hosts'>]>",
    "<!ENTITY % p 'x'> %p; &e;",
    "<plaintext>",
    "<xmp><script>trap()</script></xmp>",
    "<div style=width:expression(trap())>",
    "<b",
    "<",
    ">",
    "</",
    "<>",
    "<<script>trap()//<</script>",
)
ATTRIBUTES = (
    '"><script>trap()</script>',
    "'><script>trap()</script>",
    '" onmouseover="trap()',
    "' onmouseover='trap()",
    '" autofocus onfocus=trap() x="',
    "` onerror=trap()",
    '" style="position:fixed;inset:0',
    '" srcset="x 1x" onerror="trap()',
    '" data-step="1" id="text',
    "/ onclick=trap() /",
    '\\" onclick=trap() \\"',
    '"',
    "'",
    "''\"\"``",
)
ENTITIES = (
    "&lt;script&gt;trap()&lt;/script&gt;",
    "&#60;script&#62;trap()&#60;/script&#62;",
    "&#x3c;img src=x onerror=trap()&#x3e;",
    "&amp;lt;b&amp;gt;",
    "&quot; onclick=&quot;trap()",
    "&",
    "&;",
    "&#;",
    "&#x;",
    "&#99999999;",
    "&nosuchentity;",
    "&lt",
    "a&b&c;d",
    "%3Cscript%3Etrap()%3C/script%3E",
)
ADDRESSES = (
    "javascript:trap()",
    "JaVaScRiPt:trap()",
    "java&Tab;script:trap()",
    "javascript&colon;trap()",
    "vbscript:trap()",
    "data:text/html,<script>trap()</script>",
    "data:text/html;base64,PHNjcmlwdD4=",
    "file:///etc/hosts",
    "//evil.example/x",
    "https://evil.example/\"onclick='trap()'",
    "view-source:x",
    "blob:x",
    "[x](javascript:trap())",
    "[x](data:text/html,<script>trap()</script>)",
    "[x](<javascript:trap()>)",
    "[x](&#106;avascript:trap())",
    "[x](shop:../../etc/hosts)",
    "![x](file:///etc/hosts)",
    '[x](https://a.example/ "\\" onclick=trap()")',
    "<javascript:trap()>",
    "[x]: javascript:trap()",
)
PROGRAMS = (
    '"}]}</script><script>trap()</script>',
    '","@type":"Evil","x":"',
    "\\u003cscript\\u003etrap()\\u003c/script\\u003e",
    "\\x3cscript\\x3etrap()",
    "';trap();//",
    '";trap();//',
    "`;trap();`",
    "${trap()}",
    "\\",
    "\\\\",
    "\\n\\0",
    "*/trap()/*",
    "//",
    "__proto__",
    "constructor.prototype",
)
TEMPLATES = (
    "{{ 7*7 }}",
    "{{ view.shop.__class__.__mro__ }}",
    "{% raw %}",
    "{% include 'page.html' %}",
    "{# x",
    "{%",
    "}}",
    "{0}",
    "{title}",
    "{title.__class__.__init__.__globals__}",
    "{count:>99999999}",
    "{step} {part} {progress}",
    "{",
    "}",
    "%s %(x)s %n",
    "$x ${x} $$",
    "#{7*7}",
    "<%= 7*7 %>",
)
STYLES = (
    "}*{background:url(//evil.example)}",
    "red;}body{display:none",
    "url(javascript:trap())",
    "@import '//evil.example';",
    "\\3c script\\3e",
    "/* x",
)
PATHS = (
    "../../etc/passwd",
    "..\\..\\windows",
    "/etc/hosts",
    "..",
    ".",
    "CON",
    "a/b/../../c",
    "~root",
    "%2e%2e%2f",
    "index.html",
    "in-x/../..",
)
FORMULAS = (
    "=1+1",
    '=HYPERLINK("//evil.example","x")',
    "+1+1",
    "-1+1",
    "@SUM(1+1)",
    "=cmd|'/c calc'!A0",
    ";=1+1",
    ",=1+1",
    "| x |",
)
SOURCES = (
    "--- x",
    "- x: y",
    "key: value",
    "# no comment",
    "!!python/object:os.system x",
    "&anchor *alias",
    "<<: *x",
    "[a, b",
    "{a: b",
    "? x",
    "@x",
    "%YAML 1.2",
    "null",
    "true",
    "1e999",
    "::: steps Nowhere",
    "```chart Nowhere",
    "W" * 2000,
    "é " * 1000,
)
STRINGS = (
    *MARKUP,
    *ATTRIBUTES,
    *ENTITIES,
    *ADDRESSES,
    *PROGRAMS,
    *TEMPLATES,
    *STYLES,
    *PATHS,
    *FORMULAS,
    *SOURCES,
)
"""One line each, in letters that the fonts have: they must come out as they stand."""

UNSEEN = (
    "a\0b",
    "a\x01b",
    "a\x08b",
    "a\x0bb",
    "a\x1b[31mb",
    "a\x7fb",
    "a\x85b",
    "a\x9bb",
    "a\u200bb",
    "a\u2028b",
    "a\u202ab",
    "a\u202eb",
    "a\u2066b",
    "a\u2069b",
    "a\u2060b",
    "a\ufeffb",
    "a\ufff9b",
    "a\ufdd0b",
    "a\uffffb",
    "a\U000e0041b",
    "a\U0001fffeb",
)
"""What cannot be seen, or turns what is seen: refused, wherever and however it is written."""

FIELDS = {
    "title": 80,
    "summary": 300,
    "note": 400,
    "corrects": 400,
    "colour": 60,
    "finish": 40,
    "way": 60,
    "swap": 60,
    "part": 60,
    "alt": 300,
    "caption": 300,
    "stock": 60,
}
"""Text fields of a pattern's header -> characters that fit."""
SHOP_FIELDS = {"title": 80, "tagline": 200, "maker": 80, "contact": 200, "licence": 2000, "about": 2000}
PAGE_FIELDS = {"title": 60, "summary": 300}


def quoted(text: str) -> str:
    """A text as YAML in double quotes, all but plain letters as escapes where they cannot be typed."""
    told = json.dumps(text, ensure_ascii=False)
    return re.sub("[\\x00-\\x1f\\x7f-\\x9f\\ud800-\\udfff]", lambda found: f"\\x{ord(found[0]):02x}", told)


def fitted(fields: Mapping[str, int], text: str) -> dict[str, str]:
    """The text for each field, as much of it as fits, its blanks even; a last letter tells them apart."""
    letters = zip(fields.items(), "abcdefghijklmnopqrstuvwxyz", strict=False)
    return {name: f"{' '.join(text[: most - 2].split())} {letter}" for (name, most), letter in letters}


def marks(fields: Mapping[str, int], kind: str) -> dict[str, str]:
    """A word for each field that stands nowhere else."""
    return {name: f"Z{kind}{name}z" for name in fields}


def pattern(
    words: Mapping[str, str], name: str, photo: str = "dot.png", body: str = "Plainly.", price: str = "free"
) -> str:
    """The source of a pattern of two beads with these words in its fields; `name` is its key in the stock."""
    given = {name: quoted(text) for name, text in words.items()}
    return f"""\
---
title: {given["title"]}
summary: {given["summary"]}
makes: one piece
price: {price}
piece: charm
revision: 2
revisions:
  - {{number: 2, date: 2026-05-02, note: {given["note"]}, corrects: {given["corrects"]}}}
colours:
  G: {{bead: round 11/0, name: {given["colour"]}, hex: "#3c6b45", finish: {given["finish"]}}}
  S: {{stock: {name}}}
colourways:
  - {{name: {given["way"]}, G: {{name: {given["swap"]}, hex: "#4b2b4f"}}}}
parts:
  - {{name: {given["part"]}, stitch: ladder, rows: [1G 1S]}}
photo: {{file: {quoted(photo)}, alt: {given["alt"]}, caption: {given["caption"]}}}
---
{body}
"""


def shop(words: Mapping[str, str], stock: Mapping[str, str]) -> str:
    """A shop file with these words in its fields, and beads of the stock by key and name."""
    lines = [f"{name}: {quoted(text)}" for name, text in words.items()]
    lines += ["address: https://beads.example/shop", "stock:"]
    lines += [
        f'  {key}: {{bead: round 11/0, name: {quoted(name)}, hex: "#eeeeee"}}' for key, name in stock.items()
    ]
    return "\n".join(lines) + "\n"


def page(words: Mapping[str, str]) -> str:
    """The source of a page of the shop's own."""
    lines = [f"{name}: {quoted(text)}" for name, text in words.items()]
    return "\n".join(["---", *lines, "shown: head", "---", "Plainly.", ""])


def code(text: str) -> str:
    """The text as code in Markdown, where it stands as it is."""
    fence = "`" * (1 + max((len(run) for run in re.findall("`+", text)), default=0))
    return f"{fence} {text} {fence}"


def markdown(text: str) -> list[str]:
    """The text in every place that Markdown has."""
    return [
        text,
        f"- {text}",
        f"> {text}",
        f"### {text}",
        f"**{text}** *{text}*",
        f"[{text}](https://a.example/)",
        f"[x]({text})",
        f"[x](<{text}>)",
        f'[x](https://a.example/ "{text}")',
        f"[x]\n\n[x]: {text}",
        f"<{text}>",
        f"| a |\n|---|\n| {text} |",
        f"~~~ {text}\n{text}\n~~~",
        code(text),
    ]


def batches(most: int) -> list[str]:
    """All strings in order, several together where they fit into `most` characters."""
    made = [""]
    for text in STRINGS:
        joined = f"{made[-1]} {text}" if made[-1] else text
        made[-1:] = [joined] if len(joined) <= most else [made[-1], text]
    return [text for text in made if text]
