"""The words drawings are described in: the bundled theme's, in English."""

from __future__ import annotations

from pathlib import Path

from sitegen.publish.words import Words

SAY = Words(Path(__file__).parents[2] / "themes" / "linen", "en").text
