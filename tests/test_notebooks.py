"""Every notebook runs wherever it is put, shows what is stored in it, and has a board that answers."""

import re
from pathlib import Path

import pytest
from notebook_running import BOARD, NOTEBOOKS, Cell, Notebook, code, read, run_in_turn, stored, text, with_cells

import plumbnet

TOUCHED = {
    "1-the-check-valve": ("check", "stuck open", "heater: open\n"),
    "2-the-reducer-and-its-bypass": ("reducer", "bypass stuck shut", "heater: trapped\n"),
    "3-loops-and-tankless-heaters": ("pump", "off", "heater: on-demand\n"),
    "4-sizing-for-a-school": (
        "lab-heater/relief",
        "plugged",
        "heater-1   : controlled\nheater-2   : controlled\ngym-heater : on-demand\nlab-heater : sealed\n",
    ),
}
"""What is touched on each board, and what the next cell says then."""
TOUCH = """
told = board.asked.reply({{"view": 1, "id": 1, "ask": "board", "state": "", "heater": ""}})["answer"]
at, one = next((at, one) for at, one in enumerate(told["touchables"]) if one["name"] == {name!r})
option = [each["words"] for each in one["options"]].index({words!r})
board.asked.reply({{"view": 1, "id": 2, "ask": "answer", "state": f"{{at}}-{{option}}", "heater": ""}})
"""
"""What the page asks when a part is touched."""
SVG = "image/svg+xml"
SIZE = 250_000


def forms(cell: Cell) -> list[list[str]]:
    """In which forms a cell shows its pictures."""
    return [sorted(output.data) for output in cell.outputs if "data" in output]


def test_notebooks_show_what_is_stored_wherever_they_are_and_their_boards_answer(tmp_path: Path) -> None:
    # In one test: two kernels that start at once may pick the same port.
    for path, done in zip(NOTEBOOKS, run_in_turn([touching(path) for path in NOTEBOOKS], tmp_path), strict=True):
        assert_ran_as_stored(path, done)


def touching(path: Path) -> Notebook:
    """A notebook with two cells more: its board is touched, and the board's own report is asked once more."""
    name, words, _ = TOUCHED[path.stem]
    notebook = read(path)
    made = next(cell.source for cell in code(notebook) if "board.report" in cell.source)
    return with_cells(notebook, TOUCH.format(name=name, words=words), made)


def assert_ran_as_stored(path: Path, done: Notebook) -> None:
    notebook = read(path)
    touched = done.cells.pop()
    done.cells.pop()
    assert text(touched) == TOUCHED[path.stem][2]
    fresh = stored(done)
    assert [text(cell) for cell in code(fresh)] == [text(cell) for cell in code(notebook)]
    assert [forms(cell) for cell in code(fresh)] == [forms(cell) for cell in code(notebook)]


def test_every_notebook_has_a_board_and_its_answer() -> None:
    assert [path.stem for path in NOTEBOOKS] == sorted(TOUCHED)


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_notebook_reads_without_being_run(path: Path) -> None:
    notebook = read(path)
    cells = code(notebook)
    pictures = [output for cell in cells for output in cell.outputs if SVG in output.get("data", {})]
    assert pictures
    assert sum(bool(text(cell)) for cell in cells) >= 2
    assert all(cell.outputs == [] for cell in cells if BOARD in cell.metadata.get("tags", []))
    assert path.stat().st_size < SIZE


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_notebook_needs_nothing_but_what_the_package_offers(path: Path) -> None:
    source = "\n".join(cell.source for cell in code(read(path)))
    imports = [line for line in source.splitlines() if "import" in line.split()]
    assert "import plumbnet" in imports
    assert [line for line in imports if line != "import plumbnet"] == []
    assert set(re.findall(r"plumbnet\.(\w+)", source)) <= set(plumbnet.__all__)


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_notebook_is_short_and_begins_with_the_caution(path: Path) -> None:
    first, *cells = read(path).cells
    assert "never plug, cap or remove one" in " ".join(first.source.split())
    assert "Lantern Falls and everything in it is invented" in first.source
    assert len(cells) <= 20
    assert sum(len(cell.source.splitlines()) for cell in cells) <= 120
