"""A change written into the `change` list of a layout with assemblies, whose parts have no place of their own in it."""

from plumbnet.layout.edits import change_fields
from plumbnet.layout.model import Change, System
from plumbnet.layout.rewriting.text_edits import with_item, with_value
from plumbnet.layout.rewriting.text_places import node_at

_LIST = ("change",)
_OF_FIELDS = frozenset({"close", "open", "set", "fail", "draw"})


def is_assembled(system: System) -> bool:
    """Whether a layout says anything that is written out."""
    return bool(system.groups or system.assembled)


def is_at_its_place(system: System, change: Change) -> bool:
    """Whether a change gives values to a part that stands in the file under its own name, and that no list changes."""
    about = getattr(change, change.action)
    name = about if isinstance(about, str) else about.part
    has_list = node_at(system.record.text, _LIST) is not None
    return change.action in _OF_FIELDS and name in system.record.lines and "/" not in name and not has_list


def with_listed_change(text: str, system: System, change: Change) -> str:
    """The text with a change behind those of its list, or in a list of its own. Raises Unwritable."""
    entry = _outside_scenarios(system, change)
    found = node_at(text, _LIST)
    if found is None or not found.value:
        return with_value(text, _LIST, [entry])
    return with_item(text, _LIST, len(found.value) - 1, entry)


def _outside_scenarios(system: System, change: Change) -> dict[str, object]:
    """A change as a layout may be written with it: what fails or is drawn from has the values that this means."""
    if change.draw is not None:
        return {"set": {"part": change.draw, "drawing": True}}
    if change.fail is None:
        return change_fields(change)
    part = system.parts[change.fail.part]
    how = change.fail.how or part.fails_as or next(iter(part.failures))
    fields = type(part).model_fields
    values = {fields[field].alias or field: value for field, value in part.failures[how].items()}
    return {"set": {"part": change.fail.part, **values}}
