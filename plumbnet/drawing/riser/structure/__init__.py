"""A diagram to the structure of its building: levels, plants, branches, risers, shafts; whatever the names are."""

from plumbnet.drawing.riser.structure.building_structure import LEAST_PARTS, Structure, chains_in, structure_of
from plumbnet.drawing.riser.structure.components import Component, RiserEnd
from plumbnet.drawing.riser.structure.riser_chains import Chain
from plumbnet.drawing.riser.structure.shafts import Riser, Shaft

__all__ = ["LEAST_PARTS", "Chain", "Component", "Riser", "RiserEnd", "Shaft", "Structure", "chains_in", "structure_of"]
