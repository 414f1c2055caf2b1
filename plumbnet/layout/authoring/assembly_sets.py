"""Sets of assemblies that come with the program, each a file in `data/assemblies/`."""

from importlib.resources import files
from typing import Final

_ENDING: Final = ".yaml"


def shipped_names() -> tuple[str, ...]:
    """The sets, by name."""
    folder = files("plumbnet") / "data" / "assemblies"
    return tuple(sorted(path.name.removesuffix(_ENDING) for path in folder.iterdir() if path.name.endswith(_ENDING)))


def shipped_assemblies(name: str) -> bytes:
    """The file of a set, to be read with a layout that uses what is in it."""
    return (files("plumbnet") / "data" / "assemblies" / f"{name}{_ENDING}").read_bytes()
