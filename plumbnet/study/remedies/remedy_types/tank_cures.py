"""The tanks that are there: charged right, exchanged where worn out, exchanged for larger ones."""

import math
from collections.abc import Iterator

from plumbnet.analysis.required_tank import usual_charge_pa
from plumbnet.layout.edits import HIGHEST_WRITTEN_PA, change_of, pressure_text, volume_text
from plumbnet.layout.model import Cushion
from plumbnet.layout.units import PRESSURE, VOLUME, parse_measure
from plumbnet.physics.fluids import ATMOSPHERE_PA
from plumbnet.physics.vessels import Tank
from plumbnet.rules import listed
from plumbnet.rules.facts import HeaterFacts, TankFacts
from plumbnet.study.remedies.candidate import Candidate, Effort
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.trial_sizes import TrialDuty, sizes_to_try, uptake_m3


def recharge(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Charge a tank to the line pressure where it hangs; one alone if that is enough, else all of them."""
    tanks = [tank for tank in reached_tanks(scene, heater) if not tank.is_waterlogged and is_charged_wrong(scene, tank)]
    groups = [[tank] for tank in tanks] + ([tanks] if len(tanks) > 1 else [])
    for group in groups:
        names = listed([tank.name for tank in group])
        charges = ", ".join(dict.fromkeys(scene.report.facts.pressure(wanted_charge_pa(tank)) for tank in group))
        yield Candidate(
            Effort.RECHARGE,
            f"keep {names}",
            f"charge {names} to {charges}, shut off from the line and empty of water",
            tuple(change_of("set", {"part": tank.name, **_charged(scene, tank)}) for tank in group),
        )


def exchange(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Exchange a waterlogged tank for a sound one: of the same size, or of the next that does."""
    for tank in reached_tanks(scene, heater):
        if tank.is_waterlogged:
            yield _exchanged(scene, tank, Effort.EXCHANGE_TANK, None)
            for size_m3 in _larger(scene, heater, tank):
                yield _exchanged(scene, tank, Effort.EXCHANGE_TANK, size_m3)


def enlarge(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Exchange a sound tank that takes too little for the next size that does."""
    for tank in reached_tanks(scene, heater):
        if not tank.is_waterlogged:
            for size_m3 in _larger(scene, heater, tank):
                yield _exchanged(scene, tank, Effort.ENLARGE, size_m3)


def wanted_charge_pa(tank: TankFacts) -> float:
    """The charge a tank ought to have, gauge at the tank: the line pressure, or on a well just below the cut-in."""
    return usual_charge_pa(tank.static_pa or 0.0, tank.cut_in_pa)


def cushion_of(scene: RemedyContext, name: str) -> Cushion:
    """What a tank is made of. Raises TypeError for a part that is no tank."""
    cushion = scene.system.parts[name].cushion()
    if cushion is None:
        raise TypeError(f"{name} is no expansion tank")
    return cushion


def reached_tanks(scene: RemedyContext, heater: HeaterFacts) -> Iterator[TankFacts]:
    """Tanks under pressure that water of the heater can come to."""
    network = scene.network
    reached = network.reach(scene.zones_of(heater.name), math.inf)
    for tank in scene.report.facts.tanks:
        zone = network.zoning.zone_of[next(network.piping.nodes_of(tank.name))]
        if tank.static_pa is not None and zone in reached:
            yield tank


def is_charged_wrong(scene: RemedyContext, tank: TankFacts) -> bool:
    """Whether the charge reads otherwise on a gauge than it ought to."""
    return pressure_text(scene.system, wanted_charge_pa(tank)) != pressure_text(scene.system, tank.precharge_pa)


def _charged(scene: RemedyContext, tank: TankFacts) -> dict[str, str]:
    return {"precharge": pressure_text(scene.system, wanted_charge_pa(tank))}


def _larger(scene: RemedyContext, heater: HeaterFacts, tank: TankFacts) -> Iterator[float]:
    """Sizes above the tank's own that take what it takes now and what is short."""
    cushion = cushion_of(scene, tank.name)
    limit_pa = scene.limit_at_pa(heater, next(scene.network.piping.nodes_of(tank.name)))
    static_pa = tank.static_pa or 0.0
    takes_m3 = uptake_m3(_as_it_is(cushion, static_pa), limit_pa) if cushion.is_sound else 0.0
    if wanted_charge_pa(tank) > HIGHEST_WRITTEN_PA:
        return
    charge = parse_measure(_charged(scene, tank)["precharge"], PRESSURE, scene.system.units)
    least_m3 = TrialDuty(heater.short_m3 + takes_m3, static_pa, limit_pa).least_m3(charge)
    if least_m3 is None:
        return
    if cushion.acceptance_m3:
        least_m3 = max(least_m3, (heater.short_m3 + takes_m3) * cushion.volume_m3 / cushion.acceptance_m3)
    for sizes in sizes_to_try(least_m3, scene.sizes_m3):
        if len(sizes) == 1 and sizes[0] > cushion.volume_m3:
            yield sizes[0]


def _as_it_is(cushion: Cushion, static_pa: float) -> Tank:
    """The tank at its own height."""
    return Tank(
        cushion.volume_m3, cushion.precharge_pa + ATMOSPHERE_PA, static_pa + ATMOSPHERE_PA, cushion.acceptance_m3
    )


def _exchanged(scene: RemedyContext, tank: TankFacts, effort: Effort, size_m3: float | None) -> Candidate:
    """A tank exchanged for a sound one; the membrane of a larger one lets in a like share of its volume."""
    facts, cushion = scene.report.facts, cushion_of(scene, tank.name)
    fields: dict[str, object] = {"part": tank.name, **_charged(scene, tank)}
    size = "a sound one of the same size"
    if not cushion.is_sound:
        fields["state"] = "sound"
    if size_m3 is not None:
        fields["volume"] = volume_text(scene.system, size_m3)
        size = f"one of {facts.volume(parse_measure(str(fields['volume']), VOLUME, scene.system.units))}"
        if cushion.acceptance_m3 is not None:
            acceptance_m3 = cushion.acceptance_m3 * size_m3 / cushion.volume_m3
            fields["acceptance"] = volume_text(scene.system, acceptance_m3)
            size = f"{size} that takes up to {facts.volume(acceptance_m3)}"
    charge = facts.pressure(wanted_charge_pa(tank))
    return Candidate(
        effort,
        f"keep {tank.name}",
        f"exchange {tank.name} for {size}, charged to {charge}",
        (change_of("set", fields),),
        why=f"where {tank.name} hangs already",
        size_m3=size_m3 or cushion.volume_m3,
    )
