"""The wheel in an empty environment: theme, fonts and demo come along, and a new shop builds."""

from __future__ import annotations

import os
import subprocess
import sys
import sysconfig
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]

BUILT = {"harbour-light", "hedge-berry-bracelet", "window-box"}
"""Free and priced, with and without colourways; other tests build the whole demo from the repository."""
BUNDLES = "\nbundles:\n"
"""Begins the last of the demo's shop file."""


def contents(folder: Path) -> dict[str, bytes]:
    """Every file below a folder."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def run(*words: str | Path, cwd: Path) -> str:
    """Run a program without anything of ours in its surroundings; what it printed. Fails with all it said."""
    ours = ("PYTHON", "PIP_", "PYTEST", "SITEGEN")
    kept = {name: value for name, value in os.environ.items() if not name.startswith(ours)}
    done = subprocess.run(
        words, cwd=cwd, env=kept, capture_output=True, text=True, stdin=subprocess.DEVNULL, check=False
    )
    assert done.returncode == 0, f"{words}\n{done.stdout}\n{done.stderr}"
    return done.stdout


@pytest.fixture(scope="module")
def environment(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A new environment that holds the wheel and, borrowed by path, the libraries of this one."""
    place = tmp_path_factory.mktemp("wheel")
    run(sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", place, ROOT, cwd=place)
    (wheel,) = place.glob("sitegen-*.whl")
    run(sys.executable, "-m", "venv", "--without-pip", place / "env", cwd=place)
    python = place / "env" / "bin" / "python"
    pip = (sys.executable, "-m", "pip", "--python", python)
    run(*pip, "install", "--no-deps", "--no-index", "--quiet", wheel, cwd=place)
    where = run(python, "-c", "import sysconfig; print(sysconfig.get_path('purelib'))", cwd=place).strip()
    Path(where, "libraries.pth").write_text(sysconfig.get_path("purelib") + "\n", encoding="utf-8")
    return place / "env"


@pytest.mark.slow
def test_a_shop_starts_and_builds_from_the_wheel(environment: Path, tmp_path: Path) -> None:
    command = environment / "bin" / "sitegen"
    used = run(environment / "bin" / "python", "-c", "import sitegen; print(sitegen.__file__)", cwd=tmp_path)
    assert Path(used.strip()).is_relative_to(environment), "the wheel itself is tested, not the working copy"

    run(command, "start", "shop", cwd=tmp_path)
    shop = tmp_path / "shop"
    assert contents(shop / "content") == contents(ROOT / "content"), "the demo came along whole"
    for path in (shop / "content" / "patterns").iterdir():
        if path.stem.partition(".")[0] not in BUILT:
            path.unlink()
    settings = shop / "content" / "shop.yaml"
    text = settings.read_text(encoding="utf-8")
    assert text.count(BUNDLES) == 1
    settings.write_text(text.partition(BUNDLES)[0], encoding="utf-8")  # they need patterns that are gone
    last_line = run(command, "build", cwd=shop).splitlines()[-1]
    assert last_line == "Open output/site/index.html"

    names = sorted(path.stem for path in (shop / "content" / "patterns").glob("*.md") if "." not in path.stem)
    assert names == sorted(BUILT)
    made = {str(path.relative_to(shop / "output")) for path in (shop / "output").rglob("*") if path.is_file()}
    assert "site/index.html" in made
    for name in names:
        assert any(file.startswith(f"site/patterns/{name}") and file.endswith(".html") for file in made)
        assert {f"desk/{name}.json", f"desk/{name}.txt"} <= made
        papers = sorted(Path(file).name for file in made if file.endswith(".pdf") and f"/{name}" in file)
        assert papers == [f"{name}-{form}.pdf" for form in ("a4", "de-a4", "de-letter", "letter")]
    assert any(file.startswith("for-sale/") for file in made)
    assert any(file.endswith(".woff2") for file in made)
    assert any(file.endswith(".css") for file in made)
