"""System and rules to a Report: heaters judged, tanks and relief valves looked at, findings found."""

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from dataclasses import field as field_of

from plumbnet.analysis.observations import (
    PumpUp,
    assumed,
    cold_feeds,
    fills,
    hindered_pumps,
    lows,
    outlets,
    reducers,
    reliefs,
    returns,
    shut_in,
    stores,
    tank_service,
)
from plumbnet.analysis.report_forms import Forms
from plumbnet.analysis.verdict import Case, demand_few_coupled, demand_few_warm_alike, demand_standing_water, judge_of
from plumbnet.layout.model import Boosting, End, Role, System
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import quoted, visible
from plumbnet.network import Network, network_of
from plumbnet.network.piping import Zone
from plumbnet.rules import (
    Accepted,
    Acceptor,
    Claimed,
    Finding,
    Judging,
    OwnAcceptances,
    Profile,
    Rules,
    Severity,
    Word,
    findings_of,
    ruled_by,
    rules_in_words,
    silenced,
    silencer_of,
)
from plumbnet.rules.facts import Facts, HeaterFacts, TankFacts, TapFacts, Verdict


@dataclass(frozen=True, slots=True, repr=False)
class Report(Forms):
    """The answer for one system under rules; `scenario` names the what-if, None for the layout as it is.

    `network` is that of the system, for whoever has more to ask of it. `findings` are those that stand, `accepted`
    those that somebody accepts, `claimed` tells which of those that stand somebody accepts in vain, `idle` are
    acceptances of nothing found. `own_acceptances` is what decides in place of the file's; None where those do. Its
    `repr` is one line.
    """

    system: System
    rules: Rules
    network: Network = field_of(repr=False, compare=False)
    facts: Facts
    findings: tuple[Finding, ...]
    scenario: str | None = None
    accepted: tuple[Accepted, ...] = ()
    claimed: tuple[Claimed, ...] = ()
    idle: tuple[Word, ...] = ()
    own_acceptances: OwnAcceptances | None = None

    @property
    def heaters(self) -> tuple[HeaterFacts, ...]:
        """The answer for every heater, in the order of the file."""
        return self.facts.heaters

    @property
    def profile(self) -> Profile:
        """The one profile that judges all. Raises ValueError where circuits have their own: ask `profile_of`."""
        if not self.rules.is_one:
            raise ValueError("circuits are judged by rules of their own; ask for the profile of a part")
        return self.rules.water

    def profile_of(self, part: str) -> Profile:
        """The profile that judges a part: that of its circuit."""
        return self.rules.for_part(self.facts.circuit_of, part)

    @property
    def is_fine(self) -> bool:
        """Whether no finding of severity error stands."""
        return all(finding.severity is not Severity.ERROR for finding in self.findings)

    @property
    def rests_on_applicant(self) -> bool:
        """Whether a finding of severity error is silenced by nothing but what the file says of itself."""
        errors = (one for one in self.accepted if one.finding.severity is Severity.ERROR)
        return any(one.by is Acceptor.APPLICANT for one in errors)

    def __repr__(self) -> str:
        place = visible(self.system.record.file or self.system.title or "a layout")
        scenario = "" if self.scenario is None else f", scenario {visible(quoted(self.scenario))}"
        counts = Counter(heater.verdict for heater in self.heaters)
        verdicts = ", ".join(f"{counts[one]} {one.value}" for one in Verdict if counts[one]) or "no heater"
        findings = f"{len(self.findings)} finding{'' if len(self.findings) == 1 else 's'}"
        rules = visible(rules_in_words(self.rules.named))
        return f"<Report of {place}, rules {rules}{scenario}: {verdicts}; {findings}>"


def analyse(
    system: System, judging: Judging, *, units: Units | None = None, own: OwnAcceptances | None = None
) -> Report:
    """The report on a system; sentences in it use `units`, or else those of the file.

    What `own` accepts is silenced in place of what the file accepts; None leaves it to the file.
    """
    network, rules = network_of(system), ruled_by(judging)
    facts = facts_of(network, rules, units=units)
    said = silenced(findings_of(facts, rules), silencer_of(system, own))
    return Report(
        system=system,
        rules=rules,
        network=network,
        facts=facts,
        findings=said.standing,
        accepted=said.accepted,
        claimed=said.claimed,
        idle=said.idle,
        own_acceptances=own,
    )


def facts_of(network: Network, judging: Judging, *, units: Units | None = None) -> Facts:
    """All that is to be known of a system before findings are written on it; sentences use `units` or the file's.

    Raises Unanswerable for a heater of which nothing can be computed.
    """
    demand_standing_water(network)
    demand_few_warm_alike(network)
    judge = judge_of(network, judging)
    demand_few_coupled(network, judge.neighbourhoods)
    heaters = judge.heaters()
    hot = network.sides.hot
    system = network.piping.system
    profiles = judge.rules.profiles
    keeps_growth = any(profile.way_back.value == "supply-pipe" for profile in profiles)
    asks_of_stores = any(profile.vacuum_relief.is_asked or profile.least_stored is not None for profile in profiles)
    asks_of_feeds = any(profile.check_at_heater.is_asked for profile in profiles)
    return Facts(
        system=system,
        units=units or system.units,
        heaters=heaters,
        tanks=tuple(_tanks(network, _method_charges(judge.cases))),
        reliefs=tuple(reliefs(network, Role.SAFETY_RELIEF)),
        expansion_reliefs=tuple(reliefs(network, Role.EXPANSION_RELIEF)),
        reducers=tuple(reducers(network)),
        returns=tuple(returns(network, heaters)) if keeps_growth else (),
        taps=tuple(_taps(network)),
        stores=tuple(stores(network, hot)) if asks_of_stores else (),
        tank_service=tuple(tank_service(network)),
        hot_side_checks=tuple(_hot_side_checks(network, hot)),
        idle_pumps=tuple(name for name in network.circulation.idle if not _lifts(system, name)),
        circulators=tuple(_circulators(system)),
        unreached=tuple(_unreached(network)),
        pumped=tuple(PumpUp(network, judge.limits, judge.neighbourhoods).found()),
        hindered_pumps=tuple(hindered_pumps(network)),
        lows=tuple(lows(network)),
        outlets=tuple(outlets(network)),
        shut_in=tuple(shut_in(network, heaters)),
        feeds=tuple(cold_feeds(network, hot)) if asks_of_feeds else (),
        fills=tuple(fills(network)),
        assumed=assumed(network, hot),
        circuit_of=network.circuits.of,
    )


def _method_charges(cases: Iterable[Case]) -> dict[str, float]:
    """What the sizing methods of heaters charge the tanks to that serve them, where that is not the line pressure."""
    charges = ((tank, case.tank.method_charge_pa(tank)) for case in cases if case.share for tank in case.share.tanks)
    return {tank: charge_pa for tank, charge_pa in charges if charge_pa is not None}


def _tanks(network: Network, method_charges: Mapping[str, float]) -> Iterator[TankFacts]:
    heated_zones = sorted({network.zoning.zone_of[heated.inlet] for heated in network.heated})
    reached, drawn = set(network.reach(tuple(heated_zones), math.inf)), _drawn(network)
    for name, part in network.piping.system.parts.items():
        cushion = part.cushion()
        if cushion is None:
            continue
        node = next(network.piping.nodes_of(name))
        zone, head_pa = network.zoning.zone_of[node], network.piping.heads_pa[node]
        static_pa, cut_in_pa = network.standing.static_pa[zone], network.standing.cut_in_pa[zone]
        yield TankFacts(
            name=name,
            precharge_pa=cushion.precharge_pa,
            static_pa=None if static_pa is None else static_pa - head_pa,
            cut_in_pa=None if cut_in_pa is None else cut_in_pa - head_pa,
            is_waterlogged=not cushion.is_sound,
            reached=zone in reached,
            on_hot_side=network.sides.hangs_hot(node) and _leads_to(drawn, network, zone),
            stopped_by=() if zone in reached else _between(network, zone, reached),
            method_charge_pa=method_charges.get(name),
        )


def _leads_to(drawn: frozenset[Zone], network: Network, zone: Zone) -> bool:
    """Whether water of a zone can come to where people draw it; that of a heating circuit cannot."""
    return not drawn.isdisjoint(network.reach((zone,), math.inf))


def _drawn(network: Network) -> frozenset[Zone]:
    """Zones in which people draw water."""
    piping = network.piping
    ends = (End(name, port) for name, part in piping.system.parts.items() for port in part.draws_at())
    return frozenset(network.zoning.zone_of[piping.node_of[end]] for end in ends)


def _between(network: Network, zone: Zone, reached: set[Zone]) -> tuple[str, ...]:
    """Devices that part a zone from those that heated water reaches."""
    parting = {crossing.part for crossing in network.zoning.into.get(zone, ()) if crossing.near in reached}
    return tuple(sorted(parting))


def _hot_side_checks(network: Network, hot: frozenset[int]) -> Iterator[str]:
    for gate in network.piping.gates:
        if gate.start in hot and network.piping.system.parts[gate.part].is_check:
            yield gate.part


def _circulators(system: System) -> Iterator[str]:
    """Pumps that run and drive water round, less the boosters, which are there to lift it."""
    yield from (name for name, part in system.parts.items() if part.driven() is not None and not _lifts(system, name))


def _lifts(system: System, name: str) -> bool:
    return any(isinstance(passage, Boosting) for passage in system.parts[name].passages())


def _taps(network: Network) -> Iterator[TapFacts]:
    """Every place where people draw water, with the highest that stands at one of its connections."""
    highest: dict[str, float | None] = {
        name: None for name, part in network.piping.system.parts.items() if part.draws_at()
    }
    for zone, fixtures in network.draws.items():
        for head_pa, name in fixtures:
            stands_pa, before_pa = network.standing.at(zone) - head_pa, highest[name]
            highest[name] = stands_pa if before_pa is None else max(before_pa, stands_pa)
    parts = network.piping.system.parts
    yield from (TapFacts(name, static_pa, parts[name].draws_outdoors()) for name, static_pa in highest.items())


def _unreached(network: Network) -> Iterator[str]:
    """Parts with a pipe in which no water stands, less the device that keeps the water away."""
    piping, static_pa, zone_of = network.piping, network.standing.static_pa, network.zoning.zone_of
    dry = {piping.ports[node].part for ends in piping.pipes for node in ends if static_pa[zone_of[node]] is None}
    borders = {
        gate.part
        for gate in piping.gates
        if (static_pa[zone_of[gate.start]] is None) != (static_pa[zone_of[gate.end]] is None)
    }
    yield from (name for name in piping.system.parts if name in dry - borders)
