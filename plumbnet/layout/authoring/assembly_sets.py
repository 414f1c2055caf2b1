"""Sets of assemblies that come with the program, each a file in `data/assemblies/`."""

from plumbnet.layout.yaml import shipped_in


def shipped_names() -> tuple[str, ...]:
    """The sets, by name."""
    return shipped_in("assemblies").names()


def shipped_assemblies(name: str) -> bytes:
    """The file of a set, to be read with a layout that uses what is in it. Raises KeyError where there is none."""
    return shipped_in("assemblies").read(name)
