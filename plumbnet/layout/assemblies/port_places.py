"""The ports of an assembly to the parts inside at which they are, through as many assemblies as it takes."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from plumbnet.layout.assemblies.definition import AssemblyBody, Definition
from plumbnet.layout.assemblies.labels import say_which, selected
from plumbnet.layout.assemblies.wrong import Wrong, meant
from plumbnet.layout.model import KINDS

IN = "in"
"""The port at which a run enters an instance that names none."""


@dataclass(slots=True)
class PortPlaces:
    """Where the ports of assemblies are: the part, named from the assembly on, and its own port."""

    assemblies: Mapping[str, AssemblyBody]
    _found: dict[tuple[str, str], tuple[str, str | None]] = field(default_factory=dict)

    def of(self, assembly: str, port: str) -> tuple[str, str | None]:
        """The place of a port that the assembly has. Raises Wrong."""
        key = (assembly, port)
        if key not in self._found:
            self._found[key] = self._look(assembly, port)
        return self._found[key]

    def _look(self, assembly: str, port: str) -> tuple[str, str | None]:
        body = self.assemblies[assembly]
        target = body.ports[port]
        name, word, inner = split_target(target)
        definition = body.part(name)
        labels = labels_named(definition, word)
        if len(labels) > 1:
            raise Wrong(f"port {port} of {assembly} is {target}, which is {len(labels)} places; a port is one")
        full = definition.named(labels[0])
        if definition.use is None:
            return (f"{full}/{word}" if word and definition.labels is None else full), inner
        have = self.assemblies[definition.use].ports
        if (inner or IN) not in have:
            raise Wrong(f"{name} has no port {inner or IN}; it has {', '.join(have)}{meant(inner or IN, have)}")
        deeper, its = self.of(definition.use, inner or IN)
        return f"{full}/{deeper}", its


def split_target(target: str) -> tuple[str, str | None, str | None]:
    """Name, selecting word and port of what a port is at."""
    place, _, port = target.partition(".")
    name, _, word = place.partition("/")
    return name, word or None, port or None


def labels_named(definition: Definition, word: str | None) -> tuple[str | None, ...]:
    """The labels that a name with a selecting word stands for. Raises Wrong."""
    if definition.labels is not None:
        if word is None:
            raise Wrong(say_which(definition.name, definition.labels))
        return selected(definition.name, word, definition.labels)
    if word is not None and not _opens(definition, word):
        raise Wrong(f"{definition.name} is one part, without times; write {definition.name}")
    return (None,)


def _opens(definition: Definition, word: str) -> bool:
    """Whether a part has another of that name inside, which its kind brings along."""
    if definition.faulty or word in definition.fields:
        return True
    kind = KINDS.get(definition.kind)
    return kind is not None and kind.opens_into is not None and word in kind.opens_into.parts
