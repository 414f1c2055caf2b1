"""A comparison to the letters by which its two pictures mark what was added, removed, changed or named anew."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from plumbnet.drawing import name_lines
from plumbnet.drawing.items import Letters
from plumbnet.layout.model import System
from plumbnet.study.compare import Comparison, Revision

ADDED, REMOVED, CHANGED, RENAMED = "A", "R", "C", "N"
LETTERS: Mapping[str, str] = {
    ADDED: "added by the revision",
    REMOVED: "removed by the revision",
    CHANGED: "changed by the revision",
    RENAMED: "has another name",
}
"""What the letters stand for, in the order of the legend."""


@dataclass(frozen=True, slots=True)
class RevisionLetters:
    """What is marked in one of the two pictures: letters, and lines of words beside what has another name there.

    `side` is what its title ends with.
    """

    letters: Letters = field(default_factory=Letters)
    words: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    side: str = ""


def letters_before(compared: Comparison) -> RevisionLetters:
    """What is marked in the picture of the earlier layout: what is gone, changed, or called otherwise now."""
    revision = compared.revision
    then = dict(zip(compared.told_before.system.parts, compared.before.system.parts, strict=True))
    removed = {then[one.name] for one in revision.parts.removed}
    changed = {then[name] for name in _changed(revision, compared.told_before.system)}
    renamed = {one.before: name_lines(f"now {one.after}") for one in revision.renamed}
    items = _items(compared.before.system, ((REMOVED, removed), (RENAMED, renamed.keys()), (CHANGED, changed)))
    links = {place: REMOVED for one in revision.pipes.removed for place in one.places}
    links |= {one.places[0]: CHANGED for one in revision.pipes.altered}
    return RevisionLetters(Letters(items, _apart(compared.before.system, links, removed)), renamed, ": before")


def letters_after(compared: Comparison) -> RevisionLetters:
    """What is marked in the picture of the later layout: what is new, changed, or was called otherwise."""
    revision = compared.revision
    added = {one.name for one in revision.parts.added}
    changed = set(_changed(revision, compared.after.system))
    renamed = {one.after: name_lines(f"was {one.before}") for one in revision.renamed}
    items = _items(compared.after.system, ((ADDED, added), (RENAMED, renamed.keys()), (CHANGED, changed)))
    links = {place: ADDED for one in revision.pipes.added for place in one.places}
    links |= {one.places[1]: CHANGED for one in revision.pipes.altered}
    return RevisionLetters(Letters(items, _apart(compared.after.system, links, added)), renamed, ": after")


def _changed(revision: Revision, system: System) -> Iterator[str]:
    """The parts with other values; where only those of what comes fixed to one are others, that."""
    for one in revision.parts.altered:
        owners = {f"{one.name}/{each.field.partition('.')[0]}" for each in one.fields}
        yield from sorted(name if name in system.parts else one.name for name in owners)


def _items(system: System, marked: Sequence[tuple[str, Collection[str]]]) -> dict[str, str]:
    """The letters of each part that has any, in the order of the file."""
    found = ((name, "".join(letter for letter, names in marked if name in names)) for name in system.parts)
    return {name: letters for name, letters in found if letters}


def _apart(system: System, links: Mapping[int, str], parts: set[str]) -> dict[int, str]:
    """The marked pipes but for those of marked parts, which come and go with them."""
    return {
        place: letter
        for place, letter in sorted(links.items())
        if all(end.part not in parts for end in system.pipes[place].ends)
    }
