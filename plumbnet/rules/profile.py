"""A rule profile read from data: every value with its clause, and whether that clause was seen."""

from functools import lru_cache
from importlib.resources import files
from typing import Annotated, ClassVar

from pydantic import ValidationError

from plumbnet.layout import wording
from plumbnet.layout.declared import Declared
from plumbnet.layout.fault import Fault, LayoutError, nearest, quoted
from plumbnet.layout.kinds.heat import SizingMethod
from plumbnet.layout.quantity import PRESSURE, Fraction, Quantity, Temperature
from plumbnet.layout.source import decode, parse

GENERAL = "general"


class UnknownProfile(ValueError):
    """No rule profile has this name; the message says which do."""


class Ruling(Declared):
    """Where a rule stands; `verified` says that the clause was read, not recalled."""

    called: ClassVar[str] = "a ruling"

    clause: str
    """Document, edition and clause, or "common practice"."""
    verified: bool
    """Whether the text was seen by whoever wrote the profile."""


class PressureRuling(Ruling):
    """A pressure that a rule sets, gauge, in pascal."""

    value_pa: Annotated[float, Quantity(PRESSURE, at_least=0.0)]
    """The pressure."""


class TemperatureRuling(Ruling):
    """A temperature that a rule sets, in kelvin."""

    value_k: Temperature
    """The temperature."""


class FractionRuling(Ruling):
    """A share that a rule sets, from 0 to 1."""

    value: Fraction
    """The share."""


class SizingRuling(Ruling):
    """The method by which a rule sizes expansion tanks."""

    value: SizingMethod
    """Name of the method."""


class Profile(Declared):
    """The rules of one code, or of general practice."""

    profile: str
    """Name of the profile."""
    title: str
    """What it stands for, in words."""
    distribution_limit: PressureRuling
    """Highest pressure where people draw water."""
    relief_share: FractionRuling
    """Share of a safety relief valve's set pressure that the system may come up to."""
    relief_temperature: TemperatureRuling
    """Highest temperature at which a safety relief valve may open."""
    charge_tolerance: PressureRuling
    """How far a tank's charge may differ from the line pressure at the tank."""
    sizing: SizingRuling = SizingRuling(value="membrane", clause="common practice", verified=False)
    """Method by which an expansion tank is sized where its heater names none."""
    findings: dict[str, Ruling]
    """The clause behind a finding, by its name."""


def profile_names() -> tuple[str, ...]:
    """Names of the profiles that come with the program."""
    folder = files("plumbnet") / "data" / "profiles"
    return tuple(sorted(entry.name.removesuffix(".yaml") for entry in folder.iterdir() if entry.name.endswith(".yaml")))


@lru_cache
def profile(name: str) -> Profile:
    """The rule profile of that name. Raises UnknownProfile."""
    if name not in profile_names():
        hint = nearest(name, profile_names()) or f"there is {', '.join(profile_names())}"
        raise UnknownProfile(f"no rule profile is called {quoted(name)}{':' if hint.endswith('?') else ';'} {hint}")
    path = files("plumbnet") / "data" / "profiles" / f"{name}.yaml"
    return read_profile(path.read_bytes(), file=path.name)


def read_profile(data: bytes, *, file: str) -> Profile:
    """The rule profile that the bytes of a file describe; bare numbers count as US units.

    Raises LayoutError with every fault of the file, as a layout does.
    """
    faults: list[Fault] = []
    text = decode(data, faults)
    root = None if text is None else parse(text, faults)
    if root is not None and not faults:
        try:
            return Profile.model_validate(root.value, context={"units": "us"})
        except ValidationError as error:
            faults.extend(wording.faults(error, root, what="a rule profile", model=Profile))
    raise LayoutError(file, faults, text or "")
