"""Acceptances whose names may select many parts to one for each of them."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from plumbnet.layout.assemblies import Wrong
from plumbnet.layout.edits import selected_parts
from plumbnet.layout.model import Acceptance, Mistake, System


@dataclass(frozen=True, slots=True)
class SingleAcceptances:
    """Acceptances of single parts, the place of each, and what is wrong with the names."""

    accept: tuple[Acceptance, ...]
    places: tuple[tuple[int, int], ...]
    mistakes: tuple[Mistake, ...]


def single_acceptances(system: System, added: Collection[str]) -> SingleAcceptances:
    """What a layout accepts, part by part; of several parts that one finding is about each name may stand for many.

    `added` are names of parts that only a scenario brings in.
    """
    accept: list[Acceptance] = []
    places: list[tuple[int, int]] = []
    mistakes: list[Mistake] = []
    for index, (one, place) in enumerate(zip(system.accept, system.record.accept_at, strict=True)):
        try:
            found = tuple(_single(system, one, added))
        except Wrong as wrong:
            mistakes.append(Mistake((index, *wrong.path), wrong.text))
            continue
        accept += found
        places += [place] * len(found)
    return SingleAcceptances(tuple(accept), tuple(places), tuple(mistakes))


def _single(system: System, acceptance: Acceptance, added: Collection[str]) -> Iterator[Acceptance]:
    """One for each part. Raises Wrong."""
    if acceptance.part:
        for name in _selected(system, acceptance.part, added, "part"):
            yield acceptance.model_copy(update={"part": name})
    else:
        lists = [_selected(system, name, added, "parts", number) for number, name in enumerate(acceptance.parts)]
        yield acceptance.model_copy(update={"parts": tuple(name for names in lists for name in names)})


def _selected(system: System, name: str, added: Collection[str], *path: str | int) -> tuple[str, ...]:
    if name in added:
        return (name,)
    try:
        return selected_parts(system, name)
    except Wrong as wrong:
        raise Wrong(wrong.text, path) from None
