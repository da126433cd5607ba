"""What the sheets of the sample shop say."""

from __future__ import annotations

import pdfplumber
import pytest

from tests.publish.listed_shop import Listed, make_listed
from tests.publish.sample_shop import Built


@pytest.fixture(scope="session")
def listed_shop(tmp_path_factory: pytest.TempPathFactory) -> Listed:
    """The shop whose patterns share beads, and its site."""
    return make_listed(tmp_path_factory.mktemp("list"))


@pytest.fixture(scope="session")
def sheet_text(built: Built) -> dict[str, str]:
    """Name of a PDF -> its text."""
    texts = {}
    for path in built.pdfs():
        with pdfplumber.open(path) as pdf:
            texts[path.name] = "\n".join(page.extract_text() for page in pdf.pages)
    return texts
