"""A number of a part that nobody knows exactly, as its kind declares it."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Stray:
    """A field, by its name in code, whose value drifts, is read off a gauge, or was never measured.

    `together` says that more of it is only ever worse, or only ever better, for anything that is judged, and so for all
    such fields of its dimension: then several may be tried at once.
    """

    field: str
    together: bool = False
