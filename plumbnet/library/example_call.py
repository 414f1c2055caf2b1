"""A layout to learn from, by its name."""

from plumbnet.api import read_bytes
from plumbnet.layout.authoring import example_bytes, example_names
from plumbnet.layout.model import System
from plumbnet.layout.yaml import Fault, nearest, quoted


class UnknownExample(ValueError):
    """No example has this name; the message says which is near, or which there are."""


def example(name: str) -> System:
    """A layout of Lantern Falls, the invented town, that comes with the program: for lessons and to try things.

    Raises UnknownExample.

    >>> house = example("open-house")
    >>> house.title
    '12 Alder Street, Lantern Falls'
    """
    names = example_names()
    if name not in names:
        hint = nearest(name, names) or f"there is {', '.join(names)}"
        raise UnknownExample(Fault(0, 0, f"no example is called {quoted(name)}", hint).sentence)
    return read_bytes(example_bytes(name), file=f"{name}.yaml")
