"""Commented layouts to begin from, one a file in the data."""

from plumbnet.layout.yaml import shipped_in


def starter_names() -> tuple[str, ...]:
    """Names of the starters that come with the program, in the order of the alphabet."""
    return shipped_in("starters").names()


def starter(name: str) -> bytes:
    """The file of that name as it is to be written. Raises KeyError where there is none."""
    return shipped_in("starters").read(name)
