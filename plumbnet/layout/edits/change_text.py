"""Quantities and changes as an author writes them: in the file's own units, to be read back."""

from collections.abc import Mapping

from plumbnet.layout.model import Change, System
from plumbnet.layout.units import LENGTH, PRESSURE, VOLUME, show

WRITTEN_DIGITS = 6
"""Digits of a size or a height: more than any tank or tape is made to, and no rounding to be seen."""
MOST_LETTERS = 60
"""Length of a part's name that the file format reads."""
HIGHEST_WRITTEN_PA = 10e6
"""A hundred bar: no tank is charged and no reducer set to more, and a file may still say it."""


def pressure_text(system: System, pressure_pa: float) -> str:
    """A gauge pressure as a gauge is read, to 0.1 psi or 1 kPa."""
    return show(pressure_pa, PRESSURE, system.units)


def volume_text(system: System, volume_m3: float) -> str:
    """A volume in the units of the file."""
    return show(volume_m3, VOLUME, system.units, WRITTEN_DIGITS)


def height_text(system: System, elevation_m: float) -> Mapping[str, str]:
    """The field for a part's height above datum; no field at datum itself."""
    return {"elevation": show(elevation_m, LENGTH, system.units, WRITTEN_DIGITS)} if elevation_m else {}


def new_name(system: System, base: str, suffix: str, *, taken: tuple[str, ...] = ()) -> str:
    """A name for a new part that no part has: `base-suffix`, or with a number behind it.

    >>> from plumbnet.layout.model.system import System
    >>> new_name(System({}, ()), "heater", "tank"), new_name(System({}, ()), "heater", "tank", taken=("heater-tank",))
    ('heater-tank', 'heater-tank-2')
    """
    used = {*system.parts, *taken}
    number = 1
    while True:
        ending = f"-{suffix}" if number == 1 else f"-{suffix}-{number}"
        name = base[: MOST_LETTERS - len(ending)].rstrip(" -") + ending
        if name not in used:
            return name
        number += 1


def change_of(action: str, value: object) -> Change:
    """The change of that action, as if it stood in a file."""
    return Change.model_validate({action: value})


def change_fields(change: Change) -> dict[str, object]:
    """A change as the fields of a file, nothing in it that its author left out."""
    return change.model_dump(mode="json", by_alias=True, exclude_unset=True)
