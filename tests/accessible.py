"""What axe-core finds wrong with a page for somebody who sees little, hears it read, or has no mouse.

`npm install --prefix build/npm axe-core` brings it; without it the tests that ask are skipped.
"""

from pathlib import Path

import pytest
from playwright.sync_api import Page

_AXE = Path(__file__).parents[1] / "build" / "npm" / "node_modules" / "axe-core" / "axe.min.js"
_GRAVE = {"serious", "critical"}


def complaints(page: Page) -> list[str]:
    """What is serious, as the rule and the first elements that break it."""
    if not _AXE.is_file():
        pytest.skip("no axe-core: npm install --prefix build/npm axe-core")
    page.evaluate(_AXE.read_text(encoding="utf-8"))
    found = page.evaluate("axe.run()")
    assert found["passes"]
    return [
        f"{one['id']}: {[node['target'] for node in one['nodes']][:3]}"
        for one in found["violations"]
        if one["impact"] in _GRAVE
    ]
