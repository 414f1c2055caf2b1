"""Which profile judges which circuit, and who said so."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import TypeAlias

from plumbnet.layout.model import Circuit
from plumbnet.layout.yaml import nearest, quoted
from plumbnet.network.piping import Circuits, Node
from plumbnet.rules.rule_profile import GENERAL, Profile, profile, profile_at


class RulesFrom(StrEnum):
    """Who named the rules by which a circuit is judged."""

    FILE = "file"
    """The layout itself."""
    COMMAND_LINE = "command line"
    CALL = "call"
    """Another program, or a notebook."""
    DEFAULT = "default"
    """Nobody: general practice."""


ByCircuit: TypeAlias = str | dict[str, str]
"""Something said of the rules: once where it is the same for every circuit, else by the names of the circuits."""


@dataclass(frozen=True, slots=True)
class Rules:
    """The profile that judges drinking water and the one that judges heating circuits; often the same."""

    water: Profile
    heating: Profile
    water_from: RulesFrom = RulesFrom.CALL
    heating_from: RulesFrom = RulesFrom.CALL

    @property
    def is_one(self) -> bool:
        """Whether one profile judges every circuit."""
        return self.water is self.heating or (
            self.water.profile == self.heating.profile and self.water.sha256 == self.heating.sha256
        )

    @property
    def profiles(self) -> tuple[Profile, ...]:
        """The profiles that differ, that for drinking water first."""
        return (self.water,) if self.is_one else (self.water, self.heating)

    def of(self, circuit: Circuit) -> Profile:
        """The profile that judges a circuit."""
        return self.water if circuit is Circuit.WATER or self.is_one else self.heating

    def at(self, circuits: Circuits, node: Node) -> Profile:
        """The profile that judges the water at a node; where one judges all, circuits are not searched for."""
        return self.water if self.is_one else self.of(circuits.at(node))

    def for_part(self, circuit_of: Callable[[str], Circuit], name: str) -> Profile:
        """The profile that judges a part; where one judges all, circuits are not searched for."""
        return self.water if self.is_one else self.of(circuit_of(name))

    def told(self, words: Callable[[Profile], str]) -> ByCircuit:
        """Something of the profiles, once where one judges all."""
        if self.is_one:
            return words(self.water)
        return {circuit.value: words(self.of(circuit)) for circuit in Circuit}

    @property
    def named(self) -> ByCircuit:
        """The names of the profiles."""
        return self.told(lambda profile: profile.profile)

    @property
    def sha256(self) -> ByCircuit:
        """The hashes of the profiles, in hexadecimal."""
        return self.told(lambda profile: profile.sha256)

    @property
    def named_by(self) -> ByCircuit:
        """Who named them."""
        if self.water_from is self.heating_from:
            return self.water_from.value
        return {Circuit.WATER.value: self.water_from.value, Circuit.HEATING.value: self.heating_from.value}

    @property
    def in_full(self) -> str:
        """Titles and names, as a report gives them."""
        return rules_in_words(self.told(lambda profile: profile.in_full))

    @property
    def title(self) -> str:
        """Titles alone."""
        return rules_in_words(self.told(lambda profile: profile.title))


Judging: TypeAlias = Rules | Profile
"""Rules for every circuit, or the one profile that judges all."""


@dataclass(frozen=True, slots=True)
class GivenRules:
    """What somebody asks for in place of what a file names: profiles for some circuits or for all."""

    profiles: Mapping[Circuit, Profile]
    source: RulesFrom = RulesFrom.CALL

    @property
    def whole(self) -> Rules | None:
        """The rules where they are given for every circuit, so that no file has a say."""
        if any(circuit not in self.profiles for circuit in Circuit):
            return None
        return Rules(self.profiles[Circuit.WATER], self.profiles[Circuit.HEATING], self.source, self.source)

    def told(self, words: Callable[[Profile], str]) -> ByCircuit:
        """Something of the profiles that are given."""
        if self.whole is not None:
            return self.whole.told(words)
        return {circuit.value: words(self.profiles[circuit]) for circuit in Circuit if circuit in self.profiles}


RulesArgument: TypeAlias = str | Path | Profile | Rules | GivenRules | Mapping[str, "str | Path | Profile"]
"""Rules as a caller gives them: a profile, its name or its path, or one of these for each circuit."""


class UnknownCircuit(ValueError):
    """No circuit has this name; the message says which there are."""


def given_rules(asked: str | Path | Profile | GivenRules | Mapping[str, str | Path | Profile]) -> GivenRules:
    """The profiles that a caller asks for, read where they are not yet.

    Raises UnknownCircuit; UnknownProfile; LayoutError and OSError for a file.
    """
    if isinstance(asked, GivenRules):
        return asked
    if isinstance(asked, Mapping):
        return GivenRules({circuit_named(name): _profile_of(one) for name, one in asked.items()})
    one = _profile_of(asked)
    return GivenRules(dict.fromkeys(Circuit, one))


def circuit_named(name: str) -> Circuit:
    """The circuit of a name. Raises UnknownCircuit."""
    try:
        return Circuit(name)
    except ValueError:
        known = [circuit.value for circuit in Circuit]
        hint = nearest(name, known)
        there_is = f": {hint}" if hint else f"; there is {' and '.join(known)}"
        raise UnknownCircuit(f"no circuit is called {quoted(name)}{there_is}") from None


def _profile_of(asked: str | Path | Profile) -> Profile:
    return asked if isinstance(asked, Profile) else profile_at(str(asked))


def completed(given: GivenRules, own: Mapping[Circuit, Profile]) -> Rules:
    """Rules as they are given, else as a file names them, else general practice."""

    def chosen(circuit: Circuit) -> tuple[Profile, RulesFrom]:
        if circuit in given.profiles:
            return given.profiles[circuit], given.source
        if circuit in own:
            return own[circuit], RulesFrom.FILE
        return profile(GENERAL), RulesFrom.DEFAULT

    (water, water_from), (heating, heating_from) = chosen(Circuit.WATER), chosen(Circuit.HEATING)
    return Rules(water, heating, water_from, heating_from)


def ruled_by(judging: Judging) -> Rules:
    """Rules as they are; of one profile those by which it judges every circuit."""
    return judging if isinstance(judging, Rules) else Rules(judging, judging)


def rules_in_words(said: ByCircuit) -> str:
    """What is said of the rules in one line.

    >>> rules_in_words("ipc-2021"), rules_in_words({"water": "ipc-2021", "heating": "us-boiler"})
    ('ipc-2021', 'water: ipc-2021; heating: us-boiler')
    """
    return said if isinstance(said, str) else "; ".join(f"{circuit}: {words}" for circuit, words in said.items())
