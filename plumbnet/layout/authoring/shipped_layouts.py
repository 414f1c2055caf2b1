"""Layouts to learn from, which come with the program: what stands in `systems/` where it was written."""

from importlib.resources import files
from pathlib import Path

from plumbnet.layout.yaml import ShippedFiles


def _examples() -> ShippedFiles:
    """An installed program has them among its data, a checkout beside it."""
    packed = files("plumbnet") / "data" / "examples"
    return ShippedFiles(packed if packed.is_dir() else Path(__file__).parents[3] / "systems")


def example_names() -> tuple[str, ...]:
    """Their names, in the order of the alphabet."""
    return _examples().names()


def example_bytes(name: str) -> bytes:
    """The file of that name. Raises KeyError where there is none."""
    return _examples().read(name)
