"""What an author declares: a part or instance of a body, and the bodies, which are the layout and its assemblies."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from plumbnet.layout.assemblies.labels import Labels
from plumbnet.layout.assemblies.wrong import Wrong, meant
from plumbnet.layout.model import Path
from plumbnet.layout.yaml import Plain


@dataclass(frozen=True, slots=True)
class WrittenAt:
    """Where something stands: the number of a file, 0 for the layout itself, and the path to it in there."""

    source: int
    path: Path

    def under(self, *steps: str | int) -> "WrittenAt":
        """A place further in."""
        return WrittenAt(self.source, (*self.path, *steps))


@dataclass(frozen=True, slots=True, eq=False)
class Definition:
    """A part, or an instance, as a body declares it: `labels` where it has `times`, `use` the name of its assembly.

    `fields` are its values as written, less `use`, `times` and `each`; of what is `faulty` nothing is written out.
    """

    name: str
    at: WrittenAt
    fields: Mapping[str, Plain]
    use: str | None = None
    labels: Labels | None = None
    each: Mapping[str, Mapping[str, Plain]] = field(default_factory=dict)
    faulty: bool = False

    @property
    def kind(self) -> str:
        """Its kind, as written; "" for an instance."""
        kind = self.fields.get("kind")
        return kind if isinstance(kind, str) else ""

    @property
    def all_labels(self) -> tuple[str | None, ...]:
        """A label for each that it stands for; None for the one without a number."""
        return (None,) if self.labels is None else self.labels

    def named(self, label: str | None) -> str:
        """The name of one that it stands for."""
        return self.name if label is None else f"{self.name}/{label}"


@dataclass(frozen=True, slots=True, eq=False)
class AssemblyBody:
    """An assembly, or the layout itself, whose name is "": parts, ports, runs and changes as they are written.

    `ports` says at which part or port inside each port is, `port_paths` where that is written.
    """

    name: str
    at: WrittenAt
    parts: Mapping[str, Definition] = field(default_factory=dict)
    ports: Mapping[str, str] = field(default_factory=dict)
    port_places: Mapping[str, WrittenAt] = field(default_factory=dict)
    runs: tuple[Plain, ...] = ()
    change: tuple[Plain, ...] = ()

    def part(self, name: str) -> Definition:
        """What it declares by that name. Raises Wrong."""
        found = self.parts.get(name)
        if found is None:
            raise Wrong(f"no part is named {name}{meant(name, self.parts)}")
        return found
