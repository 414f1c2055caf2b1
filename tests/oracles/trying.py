"""The tank that a report says is needed, put into a real copy of the layout by the format's own changes."""

from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.model.change import Change
from plumbnet.layout.model.system import End, Pipe, System
from plumbnet.rules.facts.tank_facts import Need

TRIED, TEE = "tank that is tried", "tee for it"


def with_tank(system: System, need: Need, volume_m3: float) -> System:
    """The layout with a tank of that size at the place and height that are named, charged as is said."""
    if need.at in system.parts:
        place, elevation_m, changes = _port(system, need.at), system.parts[need.at].elevation_m, []
    else:
        pipe = _pipe(system, need.at)
        inlets = [end.part for end in pipe.ends if end in _inlets(system)]
        place, elevation_m = TEE, system.parts[(inlets or [pipe.end.part])[0]].elevation_m
        between = [f"{end.part}.{end.port}" for end in pipe.ends]
        insert = {"part": TEE, "kind": "tee", "between": between, "elevation": f"{elevation_m!r} m"}
        changes = [Change.model_validate({"insert": insert})]
    tank = {
        "part": TRIED,
        "kind": "expansion_tank",
        "volume": f"{volume_m3 * 1000.0!r} L",
        "precharge": f"{need.precharge_pa / 1000.0!r} kPa",
        "elevation": f"{elevation_m!r} m",
        "run": f"{place} -> {TRIED}",
    }
    return with_changes(system, [*changes, Change.model_validate({"add": tank})])


def _inlets(system: System) -> set[End]:
    heats = ((name, part.heat()) for name, part in system.parts.items())
    return {End(name, heat.inlet) for name, heat in heats if heat is not None}


def _port(system: System, part: str) -> str:
    heat = system.parts[part].heat()
    return part if heat is None else f"{part}.{heat.inlet}"


def _pipe(system: System, name: str) -> Pipe:
    inlets = _inlets(system)
    named = [pipe for pipe in system.pipes if pipe.name == name]
    return min(named, key=lambda pipe: not inlets & set(pipe.ends))
