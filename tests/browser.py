"""A page opened in a browser without a window: what it becomes, what it complains of, how it prints.

The browser is Debian's: `apt-get install chromium`. Tests that need it are skipped where it is not installed.
"""

import base64
import hashlib
import re
import shutil
import subprocess
from dataclasses import dataclass
from pathlib import Path

import pytest

_NAMES = ("chromium", "chromium-browser")
_QUIET = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
    "--hide-scrollbars",
    "--virtual-time-budget=2000",
    "--enable-logging=stderr",
)
PATIENCE_S = 120


@dataclass(frozen=True)
class Opened:
    """What a page has become, as HTML, and what the browser's console says."""

    html: str
    console: list[str]


@dataclass(frozen=True)
class Browser:
    """The browser, with a profile of its own in `folder`."""

    program: str
    folder: Path

    def opened(self, html: str, *more: str) -> Opened:
        """The page, once its script has run."""
        run = self._run(html, "--dump-dom", *more)
        return Opened(run.stdout, re.findall(r"CONSOLE[^\n]*", run.stderr))

    def printed(self, html: str) -> bytes:
        """The page as it is printed, as PDF."""
        out = self.folder / "out.pdf"
        self._run(html, f"--print-to-pdf={out}", "--no-pdf-header-footer")
        return out.read_bytes()

    def _run(self, html: str, *options: str) -> "subprocess.CompletedProcess[str]":
        page = self.folder / "page.html"
        page.write_text(html, encoding="utf-8")
        profile = f"--user-data-dir={self.folder / 'profile'}"
        command = [self.program, *_QUIET, profile, *options, page.as_uri()]
        return subprocess.run(command, capture_output=True, text=True, check=True, timeout=PATIENCE_S)  # noqa: S603  # ours


def browser_in(folder: Path) -> Browser:
    """The browser, or a skipped test that says how to install one."""
    program = next(filter(None, map(shutil.which, _NAMES)), None)
    if program is None:
        pytest.skip("no browser: apt-get install chromium")
    return Browser(program, folder)


def with_script(html: str, script: str) -> str:
    """The page with one more script at its end, which its policy lets run."""
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    allowed = html.replace("script-src '", f"script-src 'sha256-{digest}' '", 1)
    return allowed.replace("</body>", f"<script>{script}</script></body>")
