"""Where one tank could serve several heaters: for each zone with a cold pipe the place in it and whom it serves."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from plumbnet.analysis.equilibrium import Share, SharedTanks
from plumbnet.analysis.required_tank import tank_place
from plumbnet.network.loops import HeatedVolume
from plumbnet.network.piping import Zone
from plumbnet.rules.facts import ROUNDING_PA, Verdict
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.tank_joint import TankJoint, joint_at
from plumbnet.study.remedies.trial_sizes import TrialDuty


@dataclass(frozen=True, slots=True)
class TankSite:
    """A place for a tank: the joint, the trapped heaters whose water comes there below the limit, and its base name."""

    zone: Zone
    joint: TankJoint
    serves: frozenset[str]
    base: str


@dataclass
class TankSites:
    """Finds the sites of a layout; each lies in the cold pipe of a heater, behind every device that stops its water.

    Source of that rule: IPC 607.3 and the rule profiles built on it.
    """

    scene: RemedyContext

    @cached_property
    def trapped(self) -> tuple[str, ...]:
        """Heaters that a tank would help, in the order of the file; a sealed one needs more than a tank."""
        return tuple(name for name, heater in self.scene.heaters.items() if heater.verdict is Verdict.TRAPPED)

    def all(self) -> list[TankSite]:
        """The sites, those that serve most first; then by the name of the joint."""
        return sorted(self._found(), key=lambda site: (-len(site.serves), site.joint.at))

    def duty(self, site: TankSite, heaters: frozenset[str]) -> TrialDuty:
        """What a tank at a site has to do to hold those heaters: take what is short, up to the lowest limit."""
        shares: dict[frozenset[Zone], Share] = {}
        lowest_pa = self.scene.limit_pa(site.zone)
        for name in sorted(heaters):
            for zone in self.scene.zones_of(name):
                share = self._settling.shortage(zone, self.scene.limit_pa(zone))
                shares[share.zones] = share
                lowest_pa = min(lowest_pa, self.scene.limit_pa(zone))
        takes_m3 = math.fsum(share.short_m3 for share in shares.values())
        return TrialDuty(
            takes_m3, site.joint.static_pa, lowest_pa - self.scene.network.piping.heads_pa[site.joint.node]
        )

    @cached_property
    def _settling(self) -> SharedTanks:
        return SharedTanks(self.scene.network)

    def _found(self) -> Iterator[TankSite]:
        inlets: dict[Zone, list[HeatedVolume]] = {}
        for heated in self.scene.network.heated:
            inlets.setdefault(self.scene.network.zoning.zone_of[heated.inlet], []).append(heated)
        for zone, beside in inlets.items():
            serves = frozenset(name for name in self.trapped if self._is_served(name, zone))
            joint = self._joint(beside, serves) if serves else None
            if joint is not None:
                base = next((heated.name for heated in beside if heated.name in serves), beside[0].name)
                yield TankSite(zone, joint, serves, base)

    def _is_served(self, heater: str, zone: Zone) -> bool:
        """Whether all water that a heater warms can push into a zone at or below its limit, and leaves a tank room."""
        static_pa = self.scene.network.standing.at(zone)
        for own in self.scene.zones_of(heater):
            limit_pa = self.scene.limit_pa(own)
            if zone not in self.scene.network.reach((own,), limit_pa) or static_pa > limit_pa - ROUNDING_PA:
                return False
        return True

    def _joint(self, beside: list[HeatedVolume], serves: frozenset[str]) -> TankJoint | None:
        """The place for the heaters of a zone that it serves there, or else for the first."""
        heated = next((one for one in beside if one.name in serves), beside[0])
        place = tank_place(self.scene.network, heated, self.scene.report.rules)
        return joint_at(self.scene, place, base=self.scene.network.piping.ports[place.node].part)
