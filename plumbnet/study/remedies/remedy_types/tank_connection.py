"""A tank joined to the heater's water: one that is cut off moved there, or a new one added."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from plumbnet.analysis.required_tank import place_named
from plumbnet.layout.edits import change_of, height_text, new_name, pressure_text, volume_text
from plumbnet.layout.model import Change
from plumbnet.layout.units import PRESSURE, parse_measure
from plumbnet.rules.facts import HeaterFacts, Need, TankFacts
from plumbnet.study.remedies.candidate import Candidate, Effort
from plumbnet.study.remedies.remedy_context import RemedyContext
from plumbnet.study.remedies.remedy_types.valve_cures import can_be_opened
from plumbnet.study.remedies.tank_joint import TankJoint, joint_at, tank_joints
from plumbnet.study.remedies.trial_sizes import sizes_to_try


def move(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Move a sound tank that no heated water reaches to the heater's cold pipe; a well's tank stays with its pump."""
    for tank in scene.report.facts.tanks:
        if not _is_out_of_place(scene, tank):
            continue
        for joint in tank_joints(scene, heater):
            fields = {
                **{key: value for key, value in scene.system.written[tank.name].items() if key != "elevation"},
                **height_text(scene.system, joint.elevation_m, tank.name),
                "part": tank.name,
                "precharge": joint.charge,
                "run": f"{joint.at} -> {tank.name}",
            }
            yield Candidate(
                Effort.MOVE,
                f"move {tank.name}",
                f"move {tank.name} to the heater's side, {joint.where}, and charge it to {_charge(scene, joint)}",
                (change_of("remove", tank.name), *joint.makes, change_of("add", fields)),
                why=joint.why,
            )


def add_tank(scene: RemedyContext, heater: HeaterFacts) -> Iterator[Candidate]:
    """Add the tank that the heater needs where it is needed, or larger ones, or several where no size does.

    Where that place offers no joint, in the heater's cold pipe instead.
    """
    need = heater.need
    if need is None or need.tank_m3 is None:
        return
    least_m3 = max(need.tank_m3, need.asked_m3 or 0.0)
    for joint in _wanted_joints(scene, heater, need):
        for sizes in sizes_to_try(least_m3, scene.sizes_m3):
            yield Candidate(
                Effort.ADD,
                "add",
                f"fit {tanks_in_words(scene, sizes)}, charged to {_charge(scene, joint)}, {joint.where}",
                (*joint.makes, *added(scene, joint, heater.name, sizes)),
                why=joint.why,
                size_m3=math.fsum(sizes),
            )


def _wanted_joints(scene: RemedyContext, heater: HeaterFacts, need: Need) -> Iterator[TankJoint]:
    """The joint where the tank is needed, charged as it is to be, then those of the heater."""
    place = place_named(scene.network, need.at, need.why)
    wanted = None if place is None else joint_at(scene, place, base=heater.name)
    charge = pressure_text(scene.system, need.precharge_pa)
    for joint in [*([] if wanted is None else [wanted]), *tank_joints(scene, heater)]:
        yield replace(joint, charge=charge) if place is not None and joint.node == place.node else joint


def added(
    scene: RemedyContext, joint: TankJoint, base: str, sizes_m3: Sequence[float], *, taken: tuple[str, ...] = ()
) -> Iterator[Change]:
    """The changes that hang new tanks of those sizes on a joint, called after `base`; names in `taken` are not used."""
    for size_m3 in sizes_m3:
        name = new_name(scene.system, base, "tank", taken=taken, beside=(joint.at,))
        taken = (*taken, name)
        fields = {
            "part": name,
            "kind": "expansion_tank",
            "volume": volume_text(scene.system, size_m3),
            "precharge": joint.charge,
            **height_text(scene.system, joint.elevation_m, name),
            "run": f"{joint.at} -> {name}",
        }
        yield change_of("add", fields)


def _is_out_of_place(scene: RemedyContext, tank: TankFacts) -> bool:
    """Whether a sound tank serves nothing where it hangs, and no valve has only to be opened."""
    serves = tank.reached or tank.is_waterlogged or tank.serves_a_pump
    return not serves and not any(can_be_opened(scene.system.parts[name]) for name in tank.stopped_by)


def tanks_in_words(scene: RemedyContext, sizes_m3: Sequence[float]) -> str:
    """One tank with its size, or how many of it."""
    size = scene.report.facts.volume(sizes_m3[0])
    return f"an expansion tank of {size}" if len(sizes_m3) == 1 else f"{len(sizes_m3)} expansion tanks of {size} each"


def _charge(scene: RemedyContext, joint: TankJoint) -> str:
    return scene.report.facts.pressure(parse_measure(joint.charge, PRESSURE, scene.system.units))
