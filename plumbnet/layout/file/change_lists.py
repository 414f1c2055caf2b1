"""The `change` lists of a layout and of its assemblies, made in their order once all is written out."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from pydantic import ValidationError

from plumbnet.layout.assemblies import ToldOnce, WrittenChange
from plumbnet.layout.edits import ChangeError, change_fields, with_changes
from plumbnet.layout.model import Change, Mistake, System, mistakes

_FOR_SCENARIOS = ("fail", "draw")
_HERE = "here use set, insert, add, remove, close or open"
_MOST_TRIES = 20
"""Wrong entries after which the others are not tried any more: each costs all that stand before it once again."""


@dataclass(slots=True)
class ChangeLists:
    """Makes the changes that a layout is written with; what is wrong with an entry is told once."""

    told: ToldOnce
    _entries: dict[int, Change | None] = field(default_factory=dict)

    def made(self, system: System, changes: Sequence[WrittenChange]) -> System:
        """The system with all changes made, less those that cannot be."""
        wanted = [(one, change) for one in changes if (change := self._change(one)) is not None]
        for _ in range(_MOST_TRIES):
            try:
                return with_changes(system, [change for _, change in wanted])
            except ChangeError as error:
                at = error.mistakes[0].path[0]
                wrong = wanted[at if isinstance(at, int) else 0][0]
                self._refuse(wrong, error, [one for one, _ in wanted if one.value is wrong.value])
                wanted = [(one, change) for one, change in wanted if one.value is not wrong.value]
        return system

    def _refuse(self, wrong: WrittenChange, error: ChangeError, alike: Sequence[WrittenChange]) -> None:
        for one in alike:
            for mistake in error.mistakes:
                path = (*one.at.path, *mistake.path[1:])
                text = mistake.text
                if one.where is not None and wrong.where is not None:
                    text = text.replace(wrong.where.prefix, one.where.prefix)
                own = Mistake(path, text, mistake.hint, mistake.at_key, mistake.meant)
                self.told.tell(one.at.source, own, one.where)

    def _change(self, written: WrittenChange) -> Change | None:
        """The change of an entry, its part named in full; None, and told, where it is none."""
        key = id(written.value)
        if key not in self._entries:
            self._entries[key] = self._read(written)
        change = self._entries[key]
        return None if change is None else _inside(change, "" if written.where is None else written.where.prefix)

    def _read(self, written: WrittenChange) -> Change | None:
        value, at = written.value, written.at
        wrong = next((one for one in _FOR_SCENARIOS if isinstance(value, dict) and one in value), None)
        if wrong is not None:
            mistake = Mistake((*at.path, wrong), f"{wrong} is for scenarios; {_HERE}", at_key=True)
            self.told.tell(at.source, mistake, written.where)
            return None
        try:
            return Change.model_validate(value)
        except ValidationError as error:
            for one in mistakes(error, what="a change", model=Change):
                self.told.tell(at.source, one.under(*at.path), written.where)
            return None


def _inside(change: Change, prefix: str) -> Change:
    """A change in an assembly as one of the layout."""
    if not prefix:
        return change
    about: object = change_fields(change)[change.action]
    if isinstance(about, Mapping):
        return Change.model_validate({change.action: {**about, "part": f"{prefix}{about['part']}"}})
    return Change.model_validate({change.action: f"{prefix}{about}"})
