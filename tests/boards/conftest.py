"""What the tests of the board's pages open them in."""

from collections.abc import Iterator

import pytest
from browser import started
from playwright.sync_api import Browser


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """One browser for all tests of a file: Debian's, `apt-get install chromium`; without it they are skipped."""
    with started() as browser:
        yield browser
