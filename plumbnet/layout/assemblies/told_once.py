"""What is wrong in an assembly, told once for all its instances: the first of them, how many more, who asked for it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from plumbnet.layout.assemblies.definition import WrittenAt
from plumbnet.layout.model import Mistake, Stop
from plumbnet.layout.yaml import MAX_FAULTS, YamlNode


@dataclass(frozen=True, slots=True)
class Where:
    """An instance that is written out: its assembly, its full name, where it was asked for."""

    assembly: str
    instance: str
    asked: WrittenAt

    @property
    def prefix(self) -> str:
        """What stands before the name of a part inside."""
        return f"{self.instance}/"


@dataclass(frozen=True, slots=True)
class TextSource:
    """A file from which something is read: its name, and its top."""

    file: str
    root: YamlNode

    def line(self, place: WrittenAt) -> int:
        """The line of a place in it: that of the key, where it has one."""
        *outer, last = place.path or ("",)
        node = self.root.at(*outer)
        keys = node.keys or {}
        return keys[last][0] if isinstance(last, str) and last in keys else self.root.at(*place.path).line


@dataclass(slots=True)
class UseCount:
    """How often an assembly is instanced: the first instance, how many there are."""

    first: Where
    count: int = 1


@dataclass(slots=True)
class _Told:
    mistake: Mistake
    stop: Stop | None
    assembly: str
    first: Where | None
    last: Where | None
    count: int


@dataclass(slots=True)
class ToldOnce:
    """Collects mistakes; equal ones at one place count as one. `uses` has how often each assembly is instanced."""

    sources: Sequence[TextSource]
    uses: dict[str, UseCount] = field(default_factory=dict)
    _told: dict[tuple[object, ...], _Told] = field(default_factory=dict)

    def __bool__(self) -> bool:
        return bool(self._told)

    def tell(self, source: int, mistake: Mistake, where: Where | None = None, stop: Stop | None = None) -> None:
        """A mistake, its path counted from the top of its file; names inside the instance lose what is before them."""
        if where is not None:
            mistake = replace(mistake, text=mistake.text.replace(where.prefix, ""))
        self._keep(source, mistake, where.assembly if where else "", where, stop)

    def tell_of(
        self, assembly: str, place: WrittenAt, text: str, *, at_key: bool = False, stop: Stop | None = None
    ) -> None:
        """What is wrong with an assembly whatever becomes of it; "" is the layout."""
        self._keep(place.source, Mistake(place.path, text, at_key=at_key), assembly, None, stop)

    def _keep(self, source: int, mistake: Mistake, assembly: str, where: Where | None, stop: Stop | None) -> None:
        key = (source, mistake.path, mistake.at_key, mistake.text, stop.offset if stop else -1)
        told = self._told.get(key)
        if told is None:
            if len(self._told) <= MAX_FAULTS:
                self._told[key] = _Told(mistake, stop, assembly, where, where, 1)
        elif where is not None and where != told.last:
            told.last = where
            told.count += 1

    def all(self) -> Iterator[tuple[int, Mistake, Stop | None]]:
        """Every mistake with the number of its file, and the stop of the run that it is about."""
        for (source, *_), told in self._told.items():
            if isinstance(source, int):
                yield source, self._with_tail(source, told), told.stop

    def _with_tail(self, source: int, told: _Told) -> Mistake:
        first, count = told.first, told.count
        if first is None:
            use = self.uses.get(told.assembly)
            if use is None:
                return told.mistake
            first, count = use.first, use.count
        more = f" and {count - 1:,} more" if count > 1 else ""
        line = self.sources[first.asked.source].line(first.asked)
        other = f" of {self.sources[first.asked.source].file}" if first.asked.source != source else ""
        tail = f" (assembly {first.assembly}, as {first.instance}{more}, asked for in line {line}{other})"
        return replace(told.mistake, text=f"{told.mistake}{tail}", hint="", meant=("", ()))
