"""What the tests of the board's pages open them in."""

from collections.abc import Iterator

import pytest
from browser import browser_in
from playwright.sync_api import Browser, sync_playwright


@pytest.fixture(scope="module")
def browser(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Browser]:
    """One browser for all tests of a file: Debian's, `apt-get install chromium`; without it they are skipped."""
    program = browser_in(tmp_path_factory.mktemp("profile")).program
    with sync_playwright() as playwright:
        options = ["--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--disable-quic"]
        opened = playwright.chromium.launch(executable_path=program, args=options)
        yield opened
        opened.close()
