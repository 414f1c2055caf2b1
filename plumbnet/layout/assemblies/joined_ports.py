"""What of a body is joined: every port of its instances, every part by a run, its own ports at what is there."""

from collections.abc import Sequence

from plumbnet.layout.assemblies.definition import AssemblyBody, Definition
from plumbnet.layout.assemblies.labels import EACH, span
from plumbnet.layout.assemblies.port_places import IN, labels_named, split_target
from plumbnet.layout.assemblies.run_plan import PlannedChain, RunPlanner
from plumbnet.layout.assemblies.told_once import ToldOnce
from plumbnet.layout.assemblies.wrong import Wrong, meant
from plumbnet.layout.model import KINDS, listed_names, with_article

_FEW = 3  # labels that are told


def hand_on(planner: RunPlanner, told: ToldOnce) -> None:
    """Look at the ports of an assembly; those of instances inside count as joined, for they are joined further out."""
    body = planner.body
    for port, target in body.ports.items():
        try:
            planner.places.of(body.name, port)
            name, word, inner = split_target(target)
            definition = body.part(name)
            planner.named.add(name)
            if definition.use is None:
                _demand_port(definition, port, inner)
            else:
                label = labels_named(definition, word)[0]
                planner.joined.add((definition.named(label), inner or IN))
        except Wrong as wrong:
            told.tell_of(body.name, body.port_places[port], wrong.text)


def _demand_port(definition: Definition, port: str, inner: str | None) -> None:
    """Raises Wrong where a port of an assembly is at a part that does not have it, or has several."""
    kind = KINDS.get(definition.kind)
    if kind is None or not kind.ports_are_of_its_kind:
        return
    name, ports = definition.name, kind.ports
    if inner is not None and inner not in ports:
        text = f"{name}, {with_article(kind.kind)}, has no port {inner}"
        raise Wrong(f"{text}{meant(inner, ports) or f'; it has {listed_names(ports)}'}")
    if inner is None and len(ports) > 1:
        text = f"port {port}: {name}, {with_article(kind.kind)}, has the ports {listed_names(ports)}"
        raise Wrong(f"{text}; name one, for example {name}.{ports[0]}")


def look_for_unjoined(planner: RunPlanner, chains: Sequence[PlannedChain], told: ToldOnce) -> None:
    """Tell of ports of instances that nothing is joined to, and of parts that no run mentions."""
    body, reached = planner.body, {stop.name for chain in chains for stop in chain.stops}
    for definition in body.parts.values():
        if definition.faulty:
            continue
        if definition.use is None:
            _tell_unmentioned(body, definition, planner, reached, told)
            continue
        for port in planner.places.assemblies[definition.use].ports:
            bare = [label for label in definition.all_labels if (definition.named(label), port) not in planner.joined]
            if bare:
                told.tell_of(body.name, definition.at, _unjoined(definition, port, bare), at_key=True)


def _tell_unmentioned(
    body: AssemblyBody, definition: Definition, planner: RunPlanner, reached: set[str], told: ToldOnce
) -> None:
    if definition.name not in planner.named:
        left = definition.name
    elif definition.labels is None:
        return
    else:
        at_ports = {split_target(target)[0] for target in body.ports.values()}
        bare = [label for label in definition.labels if definition.named(label) not in reached]
        if not bare or definition.name in at_ports:
            return
        word = span(bare, definition.labels)
        if word is None:
            text = f"no run mentions {len(bare)} of {definition.name} ({_listed(bare)})"
            told.tell_of(body.name, definition.at, f"{text}; join them in a run, or take them out", at_key=True)
            return
        left = f"{definition.name}/{word}"
    told.tell_of(body.name, definition.at, f"no run mentions {left}; join it in a run, or take it out", at_key=True)


def _listed(labels: Sequence[str]) -> str:
    """The first few labels."""
    return ", ".join(labels) if len(labels) <= _FEW else f"{', '.join(labels[:_FEW])}, ..."


def _unjoined(definition: Definition, port: str, bare: Sequence[str | None]) -> str:
    name = definition.name
    labels = [label for label in bare if label is not None]
    if not labels or definition.labels is None:
        said, close = name, name
    elif (word := span(labels, definition.labels)) is not None:
        close = f"{name}/{word}"
        said = f"any {name}" if word == EACH else close
    else:
        close = f"{name}/{labels[0]}"
        said = f"{len(labels)} of {name} ({_listed(labels)})"
    return f"nothing is joined to {port} of {said}; join it, or close it with a run: {close}.{port} -> capped"
