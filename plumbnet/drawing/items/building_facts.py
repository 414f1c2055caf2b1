"""What a riser diagram is read from beyond items and links: heights as written, what is equipment, what is told."""

from collections.abc import Mapping
from dataclasses import dataclass

from plumbnet.layout.units import Units


@dataclass(frozen=True, slots=True)
class PartFacts:
    """What tells where a part belongs in a building, and from which others it differs.

    `likeness` says all but its name and height: kind, fields, and whatever is found of it; parts of other likeness are
    never drawn as one. `height_m` is as its author wrote it, None where it was left out. Equipment supplies, heats,
    stores, drives, reduces or takes up water; a use draws it; a head heats or supplies, a source supplies; a part that
    `is_divided` joins its pipes for use only, so that each of its ports is an end of its own. `is_limit`: it sets the
    limit of a heater.
    """

    likeness: str
    height_m: float | None = None
    is_equipment: bool = False
    is_use: bool = False
    is_source: bool = False
    is_head: bool = False
    is_divided: bool = False
    is_limit: bool = False


@dataclass(frozen=True, slots=True)
class BuildingFacts:
    """Facts of every part by name, the likeness of each pipe by the number of its link, and the units of heights."""

    parts: Mapping[str, PartFacts]
    pipes: tuple[str, ...]
    units: Units
    is_wanted: bool | None = None
    """Whether a riser diagram is asked for; None where the building decides."""
