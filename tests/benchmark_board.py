"""Prints how long the live board takes from a click to the changed picture, median and worst; never fails.

    python tests/benchmark_board.py [LAYOUT ...]

Each part that can be touched is touched in turn, up to fifty of them, the server being warm; left out, a house, a
school of four heaters and a hotel of two hundred rooms. What is wanted: 100 ms for a house, 250 ms for the school, and
a second for a folded room of the hotel. It needs Debian's `chromium`.
"""

import sys
from functools import partial
from pathlib import Path
from statistics import median

from browser import started
from playwright.sync_api import Page
from serving import served

import plumbnet
from plumbnet.boards.live.followed_file import FollowedFile
from plumbnet.boards.one_board import OneBoard

ROOT = Path(__file__).parents[1]
LAYOUTS = (
    "systems/house-with-check.yaml",
    "systems/school-shared-tanks.yaml",
    "systems/buildings/kingfisher-hotel.yaml",
)
MOST = 50
PATIENCE_MS = 120_000
TOUCH = """async (at) => {
  const parts = [...document.querySelectorAll("g.part[role=button]")], before = document.body.dataset.shown;
  const painted = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  const click = (element) => element.dispatchEvent(new MouseEvent("click", {bubbles: true}));
  click(parts[at]);
  const option = document.querySelector("#menu:not([hidden]) button[aria-pressed=false]");
  if (document.querySelector("#menu:not([hidden])") && !option) { return null; }
  const begun = performance.now();
  if (option) { click(option); }
  while (document.body.dataset.shown === before && performance.now() - begun < 60000) { await painted(); }
  await painted();
  return performance.now() - begun;
}"""
"""Touches a part and waits until another state is painted: milliseconds, or nothing where nothing can be chosen."""


def taken_ms(page: Page) -> list[float]:
    """What each touch took, each from the layout as drawn."""
    found = []
    parts = page.locator("g.part[role=button]").count()
    for at in range(0, parts, max(1, parts // MOST)):
        taken = page.evaluate(TOUCH, at)
        if taken is not None:
            found.append(float(taken))
            page.evaluate("document.getElementById('drawn').click()")
            page.wait_for_selector("body[data-shown=drawn]")
    return found[1:]


def _board(layout: Path) -> OneBoard:
    return OneBoard(plumbnet.check(layout))


def main(layouts: list[str]) -> None:
    """Print a line for each layout."""
    with started() as browser:
        for layout in layouts:
            followed = FollowedFile(ROOT / layout, partial(_board, ROOT / layout))
            with served(followed) as server:
                page = browser.new_page(viewport={"width": 1280, "height": 720}, reduced_motion="reduce")
                page.set_default_timeout(PATIENCE_MS)
                page.goto(server.address)
                page.wait_for_selector("body[data-ready]")
                taken = taken_ms(page)
                page.close()
            print(f"{layout}: {len(taken)} touches, median {median(taken):.0f} ms, worst {max(taken):.0f} ms")


if __name__ == "__main__":
    main(sys.argv[1:] or list(LAYOUTS))
