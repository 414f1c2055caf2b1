"""Quantities and changes as an author writes them: in the file's own units, to be read back."""

from collections.abc import Mapping

from plumbnet.layout.model import Change, System
from plumbnet.layout.units import LENGTH, PRESSURE, VOLUME, parse_measure, show, stepped

WRITTEN_DIGITS = 6
"""Digits of a size or a height: more than any tank or tape is made to, and no rounding to be seen."""
_NO_HEIGHT_M = 1e-9
"""What the conversion of units leaves of no height at all."""
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


def height_text(system: System, elevation_m: float, part: str = "") -> Mapping[str, str]:
    """The field for the height above datum of a part of that name; no field at datum itself.

    In an instance of an assembly it counts from the instance's height, as there.
    """
    around = system.instance_around(part)
    lift = None if around is None else system.assembled[around].lift
    own_m = elevation_m if lift is None else elevation_m - parse_measure(lift, LENGTH, system.units)
    return {"elevation": show(own_m, LENGTH, system.units, WRITTEN_DIGITS)} if abs(own_m) > _NO_HEIGHT_M else {}


def fields_inside(system: System, part: str, values: Mapping[str, object]) -> dict[str, object]:
    """Values of a part as they are, its height counted from that of the instance around it, as changes have it."""
    around, own = system.instance_around(part), values.get("elevation")
    lift = None if around is None else system.assembled[around].lift
    if lift is None or isinstance(own, bool) or not isinstance(own, str | int | float):
        return dict(values)
    return {**values, "elevation": stepped(own, lift, -1, LENGTH, system.units)}


def new_name(
    system: System, base: str, suffix: str, *, taken: tuple[str, ...] = (), beside: tuple[str, ...] = ()
) -> str:
    """A name for a new part that no part has: `base-suffix`, or with a number behind it.

    Where `base` is in an instance of an assembly, so is the new part, if all the parts are there that it stands
    `beside`; else it stands outside all instances.

    >>> from plumbnet.layout.model.system import System
    >>> new_name(System({}, ()), "heater", "tank"), new_name(System({}, ()), "heater", "tank", taken=("heater-tank",))
    ('heater-tank', 'heater-tank-2')
    """
    used = {*system.parts, *taken}
    around = system.instance_around(base)
    is_inside = around is not None and all(system.instance_around(one) == around for one in beside)
    inside = f"{around}/" if is_inside else ""
    base = base.removeprefix(inside).replace("/", "-")
    number = 1
    while True:
        ending = f"-{suffix}" if number == 1 else f"-{suffix}-{number}"
        name = inside + base[: MOST_LETTERS - len(ending)].rstrip(" -") + ending
        if name not in used:
            return name
        number += 1


def change_of(action: str, value: object) -> Change:
    """The change of that action, as if it stood in a file."""
    return Change.model_validate({action: value})


def change_fields(change: Change) -> dict[str, object]:
    """A change as the fields of a file, nothing in it that its author left out."""
    return change.model_dump(mode="json", by_alias=True, exclude_unset=True)
