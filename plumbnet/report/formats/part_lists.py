"""What a report tells of one heater or finding to the same with long lists of parts by reference.

Of heaters that share their water each is told with all the others, so that whole lists grow with their square.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

Json: TypeAlias = dict[str, object]

MOST_NAMES = 32
"""Parts, or places, that a list holds; of a longer one the first so many."""
ABBREVIATED = (
    f"lists of more than {MOST_NAMES} hold their first {MOST_NAMES} here: beside one of parts its name with _list says "
    "which of part_lists, counted from 0, is the whole (of those that share water with it a heater itself among them), "
    "beside one of lists of parts its name with _lists does, and beside ways and places its name with _more says how "
    "many are left out"
)
_OTHERS = "shares_with"
_COUNTED = frozenset({"way", "broken"})
"""Lists that hardly two heaters have in common: what is left out of them is counted alone."""


@dataclass
class PartLists:
    """The long lists of one report, each kept once."""

    numbers: dict[tuple[str, ...], int] = field(default_factory=dict)
    is_counted: bool = False
    """Whether something was left out that no list here has."""

    @property
    def fields(self) -> Json:
        """What a report has beside the rest where a list was too long; nothing where none was."""
        if not self.numbers and not self.is_counted:
            return {}
        return {"lists_abbreviated": ABBREVIATED, "part_lists": [list(names) for names in self.numbers]}

    def in_short(self, fields: Mapping[str, object]) -> Json:
        """What is told of one thing, with what is told in it, its long lists in short."""
        own = fields.get("name")
        return {
            name: value
            for key, each in fields.items()
            for name, value in self._told(key, each, own if isinstance(own, str) else "")
        }

    def _told(self, key: str, value: object, own: str) -> Iterator[tuple[str, object]]:
        if isinstance(value, dict):
            yield key, self.in_short(value)
        elif not isinstance(value, list | tuple) or not value:
            yield key, value
        elif len(value) > MOST_NAMES and (key in _COUNTED or all(isinstance(each, str) for each in value)):
            yield key, [self._each(one) for one in value[:MOST_NAMES]]
            yield self._rest(key, value, own)
        elif isinstance(value[0], str):
            yield key, value
        else:
            yield key, [self._each(one) for one in value]
            if any(map(_is_long, value)):
                yield f"{key}_lists", [self._number(one) if _is_long(one) else None for one in value]

    def _each(self, one: object) -> object:
        if isinstance(one, dict):
            return self.in_short(one)
        return one[:MOST_NAMES] if _is_long(one) and isinstance(one, list) else one

    def _rest(self, key: str, value: Sequence[object], own: str) -> tuple[str, object]:
        """Where the whole list is to be found, or how much of it is not."""
        if key in _COUNTED:
            self.is_counted = True
            return f"{key}_more", len(value) - MOST_NAMES
        names = [str(one) for one in value]
        return f"{key}_list", self._number(sorted((*names, own)) if key == _OTHERS else names)

    def _number(self, names: Sequence[str]) -> int:
        return self.numbers.setdefault(tuple(names), len(self.numbers))


def _is_long(value: object) -> bool:
    return isinstance(value, list) and len(value) > MOST_NAMES and all(isinstance(each, str) for each in value)
