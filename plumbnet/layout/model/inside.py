"""What is inside a part that is written as one and opens into several: parts, runs, and ports to the outside."""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Inner:
    """A part inside: its kind; its fields that the whole gives, by the whole's own; those that are always the same.

    All fields are named as in the file.
    """

    kind: str
    takes: Mapping[str, str] = field(default_factory=dict)
    always: Mapping[str, object] = field(default_factory=dict)

    def written(self, whole: Mapping[str, object]) -> dict[str, object]:
        """The part as its author would have written it, where the whole is written so.

        >>> Inner("relief_valve", takes={"pressure": "set"}).written({"kind": "safety_group", "set": "7 bar"})
        {'kind': 'relief_valve', 'pressure': '7 bar'}
        """
        taken = {"elevation": "elevation", "rating": "rating", **self.takes}
        given = {own: whole[theirs] for own, theirs in taken.items() if theirs in whole}
        return {"kind": self.kind, **self.always, **given}


@dataclass(frozen=True, slots=True)
class Inside:
    """Parts by the last word of their names, runs between them, and the port inside at which each port of the whole is.

    A port is written as in a run: `branch`, or `valve.in`.
    """

    parts: Mapping[str, Inner]
    runs: tuple[str, ...]
    ports: Mapping[str, str]
