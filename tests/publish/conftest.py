"""The sample shop, built once for all tests of pages and sheets."""

from __future__ import annotations

import pdfplumber
import pytest

from sitegen.build import build
from tests.publish.sample_shop import Built, write_shop


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Built:
    """The sample shop, built in this process."""
    root = write_shop(tmp_path_factory.mktemp("shop"))
    result = build(root, processes=1)
    assert result.files, result.problems
    return Built(root, result)


@pytest.fixture(scope="session")
def sheet_text(built: Built) -> dict[str, str]:
    """Name of a PDF -> its text."""
    texts = {}
    for path in built.pdfs():
        with pdfplumber.open(path) as pdf:
            texts[path.name] = "\n".join(page.extract_text() for page in pdf.pages)
    return texts
