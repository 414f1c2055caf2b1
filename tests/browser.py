"""A browser without a window, for pages that tests open in it.

It is Debian's: `apt-get install chromium`. Tests that need it are skipped where it is not installed.
"""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import Browser, sync_playwright

_NAMES = ("chromium", "chromium-browser")
_OPTIONS = ("--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--disable-quic")


def program() -> str:
    """Where the browser is, or a skipped test that says how to install one."""
    found = next(filter(None, map(shutil.which, _NAMES)), None)
    if found is None:
        pytest.skip("no browser: apt-get install chromium")
    return found


@contextmanager
def started() -> Iterator[Browser]:
    """One browser for as long as the block lasts."""
    where = program()
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=where, args=_OPTIONS)
        yield opened
        opened.close()
