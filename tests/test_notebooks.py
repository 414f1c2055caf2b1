"""Every notebook runs from top to bottom, shows what is stored in it, and has a slider that reckons anew."""

import re
from pathlib import Path

import pytest
from notebook_running import NOTEBOOKS, SLIDER, Cell, code, read, run, stored, text

import plumbnet

MOVED = {
    "1-the-check-valve": ("setpoint_f", 100, "100 degF: the water grows by 0.268 gal; trapped"),
    "2-the-reducer-and-its-bypass": ("street_psi", 110, "street 110 psi: trapped; street opens at 110 psi"),
    "3-loops-and-tankless-heaters": ("runs", False, "pump off, 40 ft of return: 0.5 gal heated; on-demand"),
    "4-sizing-for-a-school": (
        "set_kpa",
        300,
        "reducer at 300 kPa: at least 6.27 L, charged to 300 kPa, for lab-heater",
    ),
}
"""What each slider is moved to, and what it says then."""
SVG = "image/svg+xml"
SIZE = 250_000


def forms(cell: Cell) -> list[list[str]]:
    """In which forms a cell shows its pictures."""
    return [sorted(output.data) for output in cell.outputs if "data" in output]


def test_notebooks_show_what_is_stored_and_their_sliders_reckon_anew() -> None:
    for path in NOTEBOOKS:  # in one test: two kernels that start at once may pick the same port
        assert_runs_as_stored(path)


def assert_runs_as_stored(path: Path) -> None:
    name, value, told = MOVED[path.stem]
    move = f"(moved,) = [one for one in slider.kwargs_widgets if one._kwarg == {name!r}]\nmoved.value = {value!r}"
    asked = ("before = slider.result", f"{move}\nprint(slider.result)\nassert slider.result != before")
    notebook = read(path)
    done = run(notebook, *asked)
    moved = done.cells.pop()
    done.cells.pop()
    assert text(moved) == f"{told}\n"
    fresh = stored(done)
    assert [text(cell) for cell in code(fresh)] == [text(cell) for cell in code(notebook)]
    assert [forms(cell) for cell in code(fresh)] == [forms(cell) for cell in code(notebook)]


def test_every_notebook_has_a_slider_and_its_answer() -> None:
    assert [path.stem for path in NOTEBOOKS] == sorted(MOVED)


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_notebook_reads_without_being_run(path: Path) -> None:
    notebook = read(path)
    cells = code(notebook)
    pictures = [output for cell in cells for output in cell.outputs if SVG in output.get("data", {})]
    assert pictures
    assert sum(bool(text(cell)) for cell in cells) >= 2
    assert all(cell.outputs == [] for cell in cells if SLIDER in cell.metadata.get("tags", []))
    assert path.stat().st_size < SIZE


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_notebook_needs_nothing_but_what_the_package_offers(path: Path) -> None:
    source = "\n".join(cell.source for cell in code(read(path)))
    imports = [line for line in source.splitlines() if "import" in line.split()]
    assert "import plumbnet" in imports
    assert [line for line in imports if line != "import plumbnet" and not line.startswith("from ipywidgets ")] == []
    assert set(re.findall(r"plumbnet\.(\w+)", source)) <= set(plumbnet.__all__)


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_notebook_is_short_and_begins_with_the_caution(path: Path) -> None:
    first, *cells = read(path).cells
    assert "never plug, cap or remove one" in " ".join(first.source.split())
    assert "Lantern Falls and everything in it is invented" in first.source
    assert len(cells) <= 20
    assert sum(len(cell.source.splitlines()) for cell in cells) <= 120
