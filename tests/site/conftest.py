"""Two finished sites for the checkers, a web host, and a browser."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.publish.sample_shop import Built
from tests.shared import Once, built_demo
from tests.site.host import Host, serve
from tests.site.places import Site


@pytest.fixture(scope="session")
def demo(once: Once) -> Site:
    """The demo shop."""
    return Site(once("demo", built_demo))


@pytest.fixture(scope="session")
def sample(built: Built) -> Site:
    """The small shop of the page tests."""
    return Site(built.site)


DEMO_ALONE = pytest.mark.parametrize("site", ["demo"], indirect=True)
"""For what takes long: the demo has every kind of page that the small shop has."""


@pytest.fixture(scope="session", params=["sample", "demo"])
def site(request: pytest.FixtureRequest) -> Site:
    """Both shops, one after the other."""
    found: Site = request.getfixturevalue(request.param)
    return found


@pytest.fixture(scope="session")
def host(site: Site) -> Iterator[Host]:
    """The site on a web server of this machine."""
    with serve(site) as host:
        yield host
