"""A heater as it is asked about: its facts, the words that hints have of them, and what stands on its water's way."""

from collections.abc import Mapping
from dataclasses import dataclass

from plumbnet.analysis import Report
from plumbnet.layout.model import OneWay, Part, Reducing, Role, Shut
from plumbnet.rules import listed
from plumbnet.rules.facts import Facts, HeaterFacts, RungFacts, TankFacts
from plumbnet.study.beliefs.hint import Hint, told


@dataclass(frozen=True, slots=True)
class AskedHeater:
    """A heater of a report, and what is said of it."""

    report: Report
    heater: HeaterFacts

    @property
    def facts(self) -> Facts:
        """The facts that all is said from."""
        return self.report.facts

    @property
    def parts(self) -> Mapping[str, Part]:
        """The parts of the layout."""
        return self.report.system.parts

    def says(self, name: str, **words: str) -> Hint:
        """The hint of a name with these words and those that every heater has."""
        heater, facts = self.heater, self.facts
        cold = heater.limit_pa if heater.static_pa is None else heater.static_pa
        usual = {
            "heater": heater.name,
            "heaters": listed(sorted({heater.name, *heater.shares_with})),
            "limit": facts.pressure(heater.limit_pa),
            "static": facts.pressure(cold),
            "grown": facts.volume(heater.shared_expansion_m3),
        }
        return told(name, usual | words)

    def says_of(self, name: str, rung: RungFacts, **words: str) -> Hint:
        """The hint of a name about an outlet of the ladder."""
        return self.says(name, outlet=rung.outlet, opens=self.facts.pressure(rung.opens_pa), **words)

    @property
    def relief(self) -> RungFacts | None:
        """The first safety relief valve that opens; None where none does."""
        return next((rung for rung in self.heater.ladder if rung.role is Role.SAFETY_RELIEF), None)

    @property
    def control(self) -> RungFacts | None:
        """The first tank or expansion relief valve that the water comes to."""
        return next((rung for rung in self.heater.ladder if rung.role.is_control), None)

    @property
    def stop(self) -> str | None:
        """A device that stops the water; None where no way is there at all."""
        return next((name for names in self.heater.stopped_by.sets for name in names), None)

    @property
    def leak(self) -> str | None:
        """A check that leaks, somewhere in the layout."""
        found = (name for name, part in self.parts.items() if is_leaking(part))
        return next(found, None)

    @property
    def pump(self) -> str | None:
        """A pump that drives water round through the heater."""
        looped = (name for loop in self.heater.loops for name in loop)
        return next((name for name in looped if name in self.parts and self.parts[name].driven()), None)

    @property
    def lost_tank(self) -> TankFacts | None:
        """The first tank of the layout that does not hold the growth: those cut off first."""
        tanks = [tank for tank in self.facts.tanks if tank.name not in self.heater.tanks] or list(self.facts.tanks)
        return min(tanks, key=lambda tank: not tank.stopped_by, default=None)


def is_leaking(part: Part) -> bool:
    """Whether it is a check that lets water back."""
    return part.is_check and not any(isinstance(passage, OneWay) for passage in part.passages())


def reducing(part: Part) -> Reducing | None:
    """What a part does as a reducer; None where it is none."""
    return next((passage for passage in part.passages() if isinstance(passage, Reducing)), None)


def is_shut(part: Part) -> bool:
    """Whether a valve closes it."""
    return any(isinstance(passage, Shut) for passage in part.passages())


def has_hidden_check(part: Part) -> bool:
    """Whether it has a check that not all makes of it have, as some meters do."""
    return getattr(part, "check", None) is True and part.driven() is None
