"""A run of a body to the chains of single parts that it stands for, the same for every instance of the body."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from plumbnet.layout.assemblies.definition import AssemblyBody, Definition, WrittenAt
from plumbnet.layout.assemblies.differing import OF_RUN, Sharing, differs, one_of, refuse_uneven
from plumbnet.layout.assemblies.labels import CAPPED, EACH, NEXT
from plumbnet.layout.assemblies.port_places import IN, PortPlaces, labels_named
from plumbnet.layout.assemblies.wrong import Wrong, meant
from plumbnet.layout.model import ARROW, MOST_PIPES, MOST_PIPES_OF_RUN, Path, Stop, run_stops
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import Plain

OUT = "out"
_SHARED = frozenset({"length", "volume"})


@dataclass(frozen=True, slots=True, eq=False)
class PlannedChain:
    """Parts, named from their body on, that pipes join one after the other, and what is written of the pipe.

    `passes` says that the run has come to the first of them through another chain and goes on behind it. `places` has
    where values stand that are not the same for all.
    """

    stops: tuple[Stop, ...]
    fields: Mapping[str, Plain]
    at: WrittenAt
    path_at: WrittenAt
    passes: bool = False
    places: Mapping[str, Path] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class _Named:
    """A stop of a run as written: its text, what it names of the body, and the labels that it stands for."""

    stop: Stop
    text: str
    definition: Definition
    word: str | None
    labels: tuple[str | None, ...]

    @property
    def is_many(self) -> bool:
        """Whether the run takes it as one with one."""
        return len(self.labels) > 1 or self.word in {EACH, NEXT}

    @property
    def inner(self) -> str:
        """The part inside that is named behind it, for what a kind opens into."""
        return f"/{self.word}" if self.word and self.definition.labels is None else ""


@dataclass(frozen=True, slots=True)
class _Run:
    """A run as a whole: its stops, the labels at each, what is written of its pipe, and where it stands."""

    named: Sequence[_Named]
    chosen: Sequence[Sequence[str | None]]
    fields: Mapping[str, Plain]
    at: WrittenAt
    path_at: WrittenAt

    def values(self, i: int, takings: Mapping[str, Sharing], units: Units) -> tuple[dict[str, Plain], dict[str, Path]]:
        """What one chain of many gets, and where each value stands."""
        own = {key: one_of(value, i, takings[key], units) for key, value in self.fields.items()}
        return {key: value for key, (value, _) in own.items()}, {key: (key, *path) for key, (_, path) in own.items()}

    def refuse_shared(self, one: _Named) -> None:
        """Raises Wrong where a length would have to be shared out before and behind an instance."""
        if _SHARED & self.fields.keys():
            text = f"length and volume cannot be shared out before and behind {one.definition.name}"
            raise Wrong(f"{text}; end the run there and begin another", stop=one.stop)


@dataclass(slots=True)
class RunPlanner:
    """Plans the runs of one body; `joined` collects the ports of instances that have been reached."""

    body: AssemblyBody
    places: PortPlaces
    units: Units
    pipes: int = 0
    joined: set[tuple[str, str]] = field(default_factory=set)
    named: set[str] = field(default_factory=set)

    def chains(self, run: Plain, at: WrittenAt) -> Iterator[PlannedChain]:
        """The chains of a run. Raises Wrong."""
        fields = dict(run) if isinstance(run, dict) else {}
        path = fields.pop("path", None) if isinstance(run, dict) else run
        if not isinstance(path, str):
            raise Wrong('a run is a text or a mapping with a path; write it as "first -> second"')
        path_at = at.under("path") if isinstance(run, dict) else at
        if path.count(ARROW) > MOST_PIPES_OF_RUN:
            raise Wrong(f"this run has more than {MOST_PIPES_OF_RUN:,} pipes; write it as several")
        stops = run_stops(path)
        texts = [piece.strip() for piece in path.split(ARROW)]
        if texts[-1] == CAPPED and len(texts) > 1:
            self._cap([self._stop(*pair) for pair in zip(stops[:-1], texts[:-1], strict=True)])
            return
        named = [self._stop(*pair) for pair in zip(stops, texts, strict=True)]
        if len(named) == 1:
            raise Wrong('a run joins at least two parts; write it as "first -> second"')
        chosen = _chosen(named)
        pieces = list(_pieces(named))
        _refuse_unequal(pieces, named, fields)
        self.pipes += sum((end - begin) * (len(chosen[many[0]]) if many else 1) for begin, end, many in pieces)
        if self.pipes > MOST_PIPES:
            raise Wrong(f"up to here the runs have more than {MOST_PIPES:,} pipes; split the layout")
        whole = _Run(named, chosen, fields, at, path_at)
        for begin, end, many in pieces:
            yield from self._piece(range(begin, end + 1), many, whole)

    def _cap(self, named: Sequence[_Named]) -> None:
        """A port of instances that is closed. Raises Wrong."""
        one = named[-1]
        if one.definition.faulty:
            return
        if len(named) > 1 or one.definition.use is None:
            raise Wrong("capped closes the port of an instance and stands behind it alone, as rooms/last.up -> capped")
        for label in one.labels:
            self._inside(one, label, one.stop.port or IN)

    def _stop(self, stop: Stop, text: str) -> _Named:
        """What one stop names. Raises Wrong."""
        name, *words = stop.name.split("/")
        if not stop.name:
            raise Wrong("a part is missing here; write a name on each side of every ->", stop=stop)
        word = words[0] if words else None
        try:
            definition = self.body.part(name)
            reaches = len(words) > 1 or (word is not None and definition.use and definition.labels is None)
            labels = (None,) if reaches else labels_named(definition, word)
        except Wrong as wrong:
            raise Wrong(wrong.text, stop=stop) from None
        if reaches:
            text = f'"{text}" reaches inside an instance; give the assembly a port for it, and join that'
            raise Wrong(text, stop=stop)
        self.named.add(name)
        return _Named(stop, text, definition, word, labels)

    def _piece(self, places: range, many: Sequence[int], run: _Run) -> Iterator[PlannedChain]:
        """The chains of one stretch of a run, one for each of the many in it. Raises Wrong."""
        counts = {len(run.chosen[k]) for k in many}
        if len(counts) > 1:
            stands = (f"{run.named[k].text} stands for {len(run.chosen[k])}" for k in many if run.named[k].word != NEXT)
            raise Wrong(f"a run takes its instances one with one, but {' and '.join(stands)}")
        count = counts.pop() if counts else None
        takings = {key: OF_RUN.get(key, Sharing(key)) for key in run.fields}
        for key, value in run.fields.items():
            try:
                refuse_uneven(value, count, takings[key], self.units)
            except Wrong as wrong:
                raise Wrong(wrong.text, (key, *wrong.path)) from None
        same = not any(differs(value, takings[key]) for key, value in run.fields.items())
        passes = places.start > 0 and run.named[places.start].definition.use is None
        for i in range(count or 1):
            pipe, where = (run.fields, {}) if same else run.values(i, takings, self.units)
            for index, stops in enumerate(self._stretches(places, i, many, run)):
                yield PlannedChain(stops, pipe, run.at, run.path_at, passes and index == 0, where)

    def _stretches(self, places: range, i: int, many: Sequence[int], run: _Run) -> Iterator[tuple[Stop, ...]]:
        """The stops of one chain, cut where it passes an instance that is named without a port. Raises Wrong."""
        stops: list[Stop] = []
        for k in places:
            one = run.named[k]
            label = run.chosen[k][i if k in many else 0]
            if one.definition.use is None:
                stops.append(replace(one.stop, name=one.definition.named(label) + one.inner))
            elif one.stop.port is not None or k == places[-1]:
                stops.append(self._inside(one, label, one.stop.port or IN))
            else:
                if k > places[0]:
                    run.refuse_shared(one)
                    yield (*stops, self._inside(one, label, IN))
                stops = [self._inside(one, label, OUT)]
        if len(stops) > 1:
            yield tuple(stops)

    def _inside(self, one: _Named, label: str | None, port: str) -> Stop:
        """The part and port that a stop at an instance really is. Raises Wrong."""
        definition = one.definition
        have = self.places.assemblies[definition.use or ""].ports
        if port not in have:
            if one.stop.port is None:
                example = f"name one, as {one.text}.{next(iter(have), '')}"
                text = f"a run past {definition.name} needs its port {port}; it has {', '.join(have)}"
                raise Wrong(f"{text}: {example}", stop=one.stop)
            text = f"{definition.name} has no port {port}; it has {', '.join(have)}{meant(port, have)}"
            raise Wrong(text, stop=one.stop)
        full = definition.named(label)
        self.joined.add((full, port))
        name, inner = self.places.of(definition.use or "", port)
        return replace(one.stop, name=f"{full}/{name}", port=inner)


def _chosen(named: Sequence[_Named]) -> list[Sequence[str | None]]:
    """The labels at each stop, where a `next` stands less the one that has none. Raises Wrong."""
    chosen: list[Sequence[str | None]] = [one.labels for one in named]
    for k, one in enumerate(named):
        if one.word != NEXT:
            continue
        name = one.definition.name
        before = next((j for j in range(k - 1, -1, -1) if named[j].definition is one.definition), None)
        if before is None or len(named[before].labels) < len((EACH, NEXT)) or named[before].word == NEXT:
            text = f"{name}/next needs {name}/each or a range of two or more before it in the same run"
            raise Wrong(text, stop=one.stop)
        chosen[before], chosen[k] = named[before].labels[:-1], named[before].labels[1:]
    return chosen


def _pieces(named: Sequence[_Named]) -> Iterator[tuple[int, int, list[int]]]:
    """Stretches from single part to single part, with the many in each; those without a many are one."""
    begin, plain = 0, None
    for k in range(1, len(named)):
        if named[k].is_many and k < len(named) - 1:
            continue
        many = [at for at in range(begin, k + 1) if named[at].is_many]
        if many:
            if plain is not None:
                yield plain, begin, []
                plain = None
            yield begin, k, many
        elif plain is None:
            plain = begin
        begin = k
    if plain is not None:
        yield plain, begin, []


def _refuse_unequal(
    pieces: Sequence[tuple[int, int, list[int]]], named: Sequence[_Named], fields: Mapping[str, Plain]
) -> None:
    """Raises Wrong where values stand for a run whose arrows are not there equally often."""
    if len(pieces) == 1 or not (
        _SHARED & fields.keys() or any(isinstance(one, list | dict) for one in fields.values())
    ):
        return
    once = next((piece for piece in pieces if not piece[2]), pieces[0])
    often = next(piece for piece in reversed(pieces) if piece[2])
    texts = [f" {ARROW} ".join(named[k].text for k in range(begin, end + 1)) for begin, end, _ in (once, often)]
    advice = "give each with its length, volume or values a run of its own"
    raise Wrong(f"{' and '.join(texts)} are not there equally often; {advice}")
