"""Layouts to learn from, which come with the program: what stands in `systems/` where it was written."""

from collections.abc import Iterator
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

_ENDING = ".yaml"


def _folder() -> Traversable:
    """An installed program has them among its data, a checkout beside it."""
    packed = files("plumbnet") / "data" / "examples"
    return packed if packed.is_dir() else Path(__file__).parents[3] / "systems"


def _files() -> Iterator[Traversable]:
    return (path for path in _folder().iterdir() if path.name.endswith(_ENDING))


def example_names() -> tuple[str, ...]:
    """Their names, in the order of the alphabet."""
    return tuple(sorted(path.name.removesuffix(_ENDING) for path in _files()))


def example_bytes(name: str) -> bytes:
    """The file of that name. Raises KeyError where there is none."""
    for path in _files():
        if path.name == f"{name}{_ENDING}":
            return path.read_bytes()
    raise KeyError(name)
