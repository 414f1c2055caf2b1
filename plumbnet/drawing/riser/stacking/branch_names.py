"""What branches and shafts are called on paper: their instances, or the fixtures in them."""

from plumbnet.drawing.lettering import name_lines
from plumbnet.drawing.riser.likeness import DrawnShaft, called, range_of
from plumbnet.drawing.riser.structure import Structure

_LONGEST = 24


def branch_called(structure: Structure, number: int) -> str:
    """What a branch is called."""
    members = structure.components[number].members
    return called(members, [name for name in members if structure.building.parts[name].is_use])


def shafts_called(structure: Structure, shaft: DrawnShaft) -> str:
    """A drawn shaft, and all for which it is drawn, by what their branches are called."""
    every = [structure.shafts[place] for place in (shaft.place, *shaft.others)]
    return range_of([branch_called(structure, number) for each in every for number in each.branches])


def caption_lines(structure: Structure, shaft: DrawnShaft) -> tuple[str, ...]:
    """The same in short lines; none for a shaft that only passes."""
    return name_lines(shafts_called(structure, shaft), _LONGEST) if shaft.branches else ()
