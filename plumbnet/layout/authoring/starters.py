"""Commented layouts to begin from, one a file in the data."""

from importlib.resources import files

ENDING = ".yaml"


def starter_names() -> tuple[str, ...]:
    """Names of the starters that come with the program, in the order of the alphabet."""
    folder = files("plumbnet") / "data" / "starters"
    return tuple(sorted(entry.name.removesuffix(ENDING) for entry in folder.iterdir() if entry.name.endswith(ENDING)))


def starter(name: str) -> bytes:
    """The file of that name as it is to be written. Raises KeyError where there is none."""
    if name not in starter_names():
        raise KeyError(name)
    return (files("plumbnet") / "data" / "starters" / f"{name}{ENDING}").read_bytes()
