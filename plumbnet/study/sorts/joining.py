"""A tank joined to the heater's water: one that is cut off moved there, or a new one added."""

from collections.abc import Iterator, Sequence

from plumbnet.layout.change import Change
from plumbnet.layout.quantity import PRESSURE, parse
from plumbnet.rules.facts import HeaterFacts, TankFacts
from plumbnet.study import written
from plumbnet.study.candidate import Candidate, Effort
from plumbnet.study.joint import Joint, joints
from plumbnet.study.scene import Scene
from plumbnet.study.sizing import Duty, sizes_to_try
from plumbnet.study.sorts.valves import can_be_opened


def move(scene: Scene, heater: HeaterFacts) -> Iterator[Candidate]:
    """Move a sound tank that no heated water reaches to the heater's cold pipe; a well's tank stays with its pump."""
    for tank in scene.report.facts.tanks:
        if not _is_out_of_place(scene, tank):
            continue
        for joint in joints(scene, heater):
            fields = {
                **{key: value for key, value in scene.system.written[tank.name].items() if key != "elevation"},
                **written.height(scene.system, joint.elevation_m),
                "part": tank.name,
                "precharge": joint.charge,
                "run": f"{joint.at} -> {tank.name}",
            }
            yield Candidate(
                Effort.MOVE,
                f"move {tank.name}",
                f"move {tank.name} to the heater's side, {joint.where}, and charge it to {_charge(scene, joint)}",
                (written.change("remove", tank.name), *joint.makes, written.change("add", fields)),
            )


def add(scene: Scene, heater: HeaterFacts) -> Iterator[Candidate]:
    """Add a tank to the heater's cold pipe: the smallest size that takes what is short, or several where none does."""
    if heater.short_m3 <= 0.0:
        return
    for joint in joints(scene, heater):
        duty = Duty(heater.short_m3, joint.static_pa, scene.limit_at_pa(heater, joint.node))
        least_m3 = duty.least_m3(joint.charge_pa(scene.system))
        for sizes in () if least_m3 is None else sizes_to_try(least_m3, scene.sizes_m3):
            yield Candidate(
                Effort.ADD,
                "add",
                f"fit {tanks_in_words(scene, sizes)}, charged to {_charge(scene, joint)}, {joint.where}",
                (*joint.makes, *added(scene, joint, heater.name, sizes)),
            )


def added(
    scene: Scene, joint: Joint, base: str, sizes_m3: Sequence[float], *, taken: tuple[str, ...] = ()
) -> Iterator[Change]:
    """The changes that hang new tanks of those sizes on a joint, called after `base`; names in `taken` are not used."""
    for size_m3 in sizes_m3:
        name = written.new_name(scene.system, base, "tank", taken=taken)
        taken = (*taken, name)
        fields = {
            "part": name,
            "kind": "expansion_tank",
            "volume": written.volume(scene.system, size_m3),
            "precharge": joint.charge,
            **written.height(scene.system, joint.elevation_m),
            "run": f"{joint.at} -> {name}",
        }
        yield written.change("add", fields)


def _is_out_of_place(scene: Scene, tank: TankFacts) -> bool:
    """Whether a sound tank serves nothing where it hangs, and no valve has only to be opened."""
    serves = tank.reached or tank.is_waterlogged or tank.serves_a_pump
    return not serves and not any(can_be_opened(scene.system.parts[name]) for name in tank.stopped_by)


def tanks_in_words(scene: Scene, sizes_m3: Sequence[float]) -> str:
    """One tank with its size, or how many of it."""
    size = scene.report.facts.volume(sizes_m3[0])
    return f"an expansion tank of {size}" if len(sizes_m3) == 1 else f"{len(sizes_m3)} expansion tanks of {size} each"


def _charge(scene: Scene, joint: Joint) -> str:
    return scene.report.facts.pressure(parse(joint.charge, PRESSURE, scene.system.units))
