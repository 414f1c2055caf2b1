"""Runs the notebooks as a reader would; `python tests/notebook_running.py` stores what they then show."""

import warnings
from collections.abc import Sequence
from copy import deepcopy
from pathlib import Path
from typing import Any

import nbformat
from nbclient import NotebookClient
from shown import as_kept

FOLDER = Path(__file__).parents[1] / "notebooks"
NOTEBOOKS = sorted(FOLDER.glob("*.ipynb"))
BOARD = "board"
"""Tag of a cell that shows the board, which nothing but a running notebook can show; its output is not stored."""
LONGEST_S = 120
Cell = Any  # nbformat gives its nodes no types
Notebook = Any  # likewise


def read(path: Path) -> Notebook:
    """A notebook as it is stored."""
    return nbformat.read(path, as_version=4)


def with_cells(notebook: Notebook, *more: str) -> Notebook:
    """A copy with `more` cells of code behind its own."""
    copy = deepcopy(notebook)
    for number, source in enumerate(more):
        copy.cells.append(nbformat.v4.new_code_cell(source, id=f"more-{number}"))
    return copy


def run(notebook: Notebook, *, folder: Path = FOLDER) -> Notebook:
    """A copy that was run in a folder."""
    copy = deepcopy(notebook)
    where = {"metadata": {"path": str(folder)}}
    client = NotebookClient(copy, timeout=LONGEST_S, kernel_name="python3", coalesce_streams=True, resources=where)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # of the machinery round the kernel, not of the cells
        return client.execute()


def run_in_turn(notebooks: Sequence[Notebook], folder: Path) -> list[Notebook]:
    """Copies that were run in a folder, one after another; each finds nothing of what the ones before have named."""
    whole = nbformat.v4.new_notebook(metadata=notebooks[0].metadata)
    for number, notebook in enumerate(notebooks):
        whole.cells.append(nbformat.v4.new_code_cell("%reset -f", id=f"reset-{number}"))
        whole.cells += [nbformat.from_dict({**cell, "id": f"{number}-{cell.id}"}) for cell in notebook.cells]
    cells = iter(run(whole, folder=folder).cells)
    done = deepcopy(list(notebooks))
    for notebook in done:
        next(cells)
        for cell in notebook.cells:
            cell.update({**next(cells), "id": cell.id})
    return done


def stored(notebook: Notebook) -> Notebook:
    """A notebook that was run as it is stored: without widgets, counts and times."""
    copy = deepcopy(notebook)
    copy.metadata.pop("widgets", None)
    for cell in code(copy):
        cell.metadata.pop("execution", None)
        cell.execution_count = None
        if BOARD in cell.metadata.get("tags", []):
            cell.outputs = []
        for output in cell.outputs:
            if output.output_type == "stream":
                output.text = as_kept(output.text)
            if "execution_count" in output:
                output.execution_count = None
    return copy


def code(notebook: Notebook) -> list[Cell]:
    """The cells of code."""
    return [cell for cell in notebook.cells if cell.cell_type == "code"]


def text(cell: Cell) -> str:
    """What a cell printed."""
    return "".join(output.text for output in cell.outputs if output.output_type == "stream")


def main() -> None:
    """Run every notebook and store what it shows."""
    for path in NOTEBOOKS:
        shown = nbformat.writes(stored(run(read(path))))
        path.write_text(f"{shown.rstrip()}\n", encoding="utf-8")


if __name__ == "__main__":
    main()
