"""Rooms of the drawing have doors: what one needs of another it asks for there, and gets what is offered."""

import ast
from pathlib import Path

import pytest

DRAWING = Path(__file__).parents[2] / "plumbnet" / "drawing"
ROOMS = sorted(path.parent.name for path in DRAWING.glob("*/__init__.py"))


def imports(module: Path) -> list[tuple[str, ...]]:
    """What a module imports of the drawing, as the names below `plumbnet.drawing`."""
    tree = ast.parse(module.read_text(encoding="utf-8"))
    nodes = [node for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)]
    names = [(node.module or "").split(".") for node in nodes]
    return [tuple(name[2:]) for name in names if name[:2] == ["plumbnet", "drawing"]]


@pytest.mark.parametrize("room", ROOMS)
def test_rooms_are_entered_by_their_doors(room: str) -> None:
    others = [path for path in DRAWING.parent.rglob("*.py") if path.parent != DRAWING / room]
    past = [path.name for path in others for name in imports(path) if name[:1] == (room,) and len(name) > 1]
    assert past == []


@pytest.mark.parametrize("room", ROOMS)
def test_room_has_more_than_one_module_and_not_too_many(room: str) -> None:
    assert 1 < len(list((DRAWING / room).glob("*.py"))) - 1 <= 15


def test_drawing_itself_only_tells_its_words() -> None:
    assert imports(DRAWING / "__init__.py") == []
    assert ROOMS == ["columns", "ink", "items", "routing", "symbols"]
