"""A seed and a number to one input, always the same: a text that is nearly a layout, or a layout that is odd."""

from functools import cache
from pathlib import Path
from random import Random

from fuzzing.structure import generated
from fuzzing.text import mutated

TESTS = Path(__file__).parents[1]
_TOO_LARGE = frozenset({"kingfisher-hotel", "assembly-too-large", "assembly-too-many-pipes"})
_STRUCTURE_IN = 25  # one input in so many is a structure; they take far longer and get far deeper


def input_of(seed: int, number: int) -> bytes:
    """The input of that number."""
    random = Random(f"{seed}:{number}")
    return generated(random) if number % _STRUCTURE_IN == 0 else mutated(random, layouts())


@cache
def layouts() -> tuple[bytes, ...]:
    """Layouts to begin with: those that are shown, with and without assemblies, and those that are wrong.

    The largest are left out: a hotel takes longer than any answer to an odd file may, and so does what is too large.
    """
    systems, faults = TESTS.parent / "systems", TESTS / "faults"
    found = [
        *sorted(systems.glob("*.yaml")),
        *sorted((systems / "buildings").glob("*.yaml")),
        *sorted(faults.glob("*.yaml")),
    ]
    return tuple(path.read_bytes() for path in found if path.stem not in _TOO_LARGE)
