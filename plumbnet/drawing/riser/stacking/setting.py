"""Everything of a riser diagram that is decided before its pipes are drawn: what stands where."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from plumbnet.drawing.riser.likeness import Folding, LevelBreak
from plumbnet.drawing.riser.stacking.bands import Bands, bands_of
from plumbnet.drawing.riser.stacking.branch_names import branch_called
from plumbnet.drawing.riser.stacking.door_block import Detail, Stand, block_of, detail_of
from plumbnet.drawing.riser.stacking.doors import DoorKey, door_key
from plumbnet.drawing.riser.stacking.letter_box import letter_box
from plumbnet.drawing.riser.stacking.riser_columns import home_risers, on_the_right, right_doors
from plumbnet.drawing.riser.structure import Chain, Riser, RiserEnd, Structure
from plumbnet.drawing.symbols import Point
from plumbnet.layout.model import End


@dataclass(slots=True)
class Setting:
    """A building on its way to paper: plants, the stops of branches, details drawn out beside them, heights of levels.

    `right` are the risers that stand right of their branches; `homes` those on which doors sit; `x` that of each riser,
    `corner` the lower left one of each stop, `detail_corner` that of each detail are set as shafts are put in place.
    """

    structure: Structure
    folding: Folding
    breaks: Sequence[LevelBreak]
    plants: Mapping[int, Stand]
    stops: Mapping[int, Stand]
    details: Mapping[int, Detail]
    bands: Bands
    right: frozenset[int]
    homes: Mapping[DoorKey, Riser]
    x: dict[int, float] = field(default_factory=dict)
    corner: dict[int, Point] = field(default_factory=dict)
    detail_corner: dict[int, Point] = field(default_factory=dict)

    def key_of(self, chain: Chain, end: End) -> DoorKey:
        """The door by which an end of a chain joins its component."""
        return door_key(self.structure, self.structure.home[end.part], RiserEnd(chain, end))

    def end_y(self, chain: Chain, end: End) -> float:
        """Height on paper of an end of a chain."""
        component, key = self.structure.home[end.part], self.key_of(chain, end)
        if component.is_plant:
            return self.bands.header[component.number, key][1]
        return self.bands.base[component.level] + self.stops[component.number].ways[key][-1][1]

    def span(self, riser: Riser) -> tuple[float, float]:
        """Upper and lower end of a riser on paper."""
        heights = [self.end_y(chain, end) for chain in riser.chains for end in chain.ends]
        return min(heights), max(heights)


def setting_of(structure: Structure, folding: Folding, breaks: Sequence[LevelBreak]) -> Setting:
    """Plants and branches laid out, and the heights of all levels; plants stand at the left of the shafts."""
    plants = {each.number: block_of(structure, each) for each in structure.plants if each.members}
    details = _details(structure, folding)
    stops: dict[int, Stand] = {}
    right: set[int] = set()
    homes: dict[DoorKey, Riser] = {}
    for shaft in folding.shafts:
        own, seats = on_the_right(structure, shaft), home_risers(structure, shaft)
        right |= own
        homes |= seats
        for number in shaft.branches:
            stops[number] = _stop(structure, folding, number, right_doors(structure, number, seats, own))
    bands = bands_of(structure, list(plants.values()), folding.shafts, stops, breaks, is_below=False)
    return Setting(structure, folding, breaks, plants, stops, details, bands, frozenset(right), homes)


def with_plants_below(setting: Setting) -> Setting | None:
    """The same with the plants below all shafts, nothing put in place yet; None where some stand above the ground."""
    if any(plant.component.level for plant in setting.plants.values()):
        return None
    plants, shafts = list(setting.plants.values()), setting.folding.shafts
    bands = bands_of(setting.structure, plants, shafts, setting.stops, setting.breaks, is_below=True)
    return replace(setting, bands=bands, x={}, corner={}, detail_corner={})


def _details(structure: Structure, folding: Folding) -> dict[int, Detail]:
    """What is drawn out beside the building, for itself and those alike."""
    number, found = len(structure.diagram.links), dict[int, Detail]()
    for fold in folding.folds:
        found[fold.shown] = detail_of(
            structure, structure.components[fold.shown], number, branch_called(structure, fold.shown)
        )
        number += len(found[fold.shown].origins)
    return found


def _stop(structure: Structure, folding: Folding, number: int, right: frozenset[DoorKey]) -> Stand:
    component = structure.components[number]
    laid_out = letter_box if number in folding.fold_of else block_of
    return laid_out(structure, component, right)
