"""Layout text to a System, or to every fault of the file at once."""

import hashlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace

from pydantic import ValidationError

from plumbnet.discover import discover
from plumbnet.layout import kinds
from plumbnet.layout.apply import ChangeError, with_changes
from plumbnet.layout.build import fixed_to, make_part
from plumbnet.layout.document import Document, RunWithPipe
from plumbnet.layout.fault import Fault, LayoutError, nearest
from plumbnet.layout.part import KINDS, Part
from plumbnet.layout.quantity import Units
from plumbnet.layout.runs import NAME, joints, stops
from plumbnet.layout.source import Node, decode, parse
from plumbnet.layout.system import End, Pipe, Record, System
from plumbnet.layout.tubes import UnknownTube, tube
from plumbnet.layout.wording import faults_of

discover(kinds)


def read_system(data: bytes, *, file: str) -> System:
    """The system that the bytes of a layout file describe; `file` names it in messages.

    Raises LayoutError with every fault found.
    """
    faults: list[Fault] = []
    text = decode(data, faults)
    root = None if text is None else parse(text, faults)
    system = None if root is None else _Reader(root, faults, file).system()
    if faults or system is None:
        raise LayoutError(file, faults, text or "")
    record = replace(system.record, sha256=hashlib.sha256(data).hexdigest())
    return replace(system, record=record)


@dataclass(slots=True)
class _Reader:
    """Walks the top-level fields of a file in order, collecting faults."""

    root: Node
    faults: list[Fault]
    file: str
    units: Units = "us"
    parts: dict[str, Part] = field(default_factory=dict)
    declared: dict[str, Mapping[str, object]] = field(default_factory=dict)
    lines: dict[str, int] = field(default_factory=dict)
    pipes: list[Pipe] = field(default_factory=list)
    taken: dict[End, Pipe] = field(default_factory=dict)
    named: set[str] = field(default_factory=set)
    faulty: set[str] = field(default_factory=set)

    def system(self) -> System | None:
        """The system, or None where the file as a whole has no sense; faults say why."""
        document = self._document()
        if document is None:
            return None
        self.units = document.units
        for name, node in self._entries("parts"):
            self._read_part(name, node)
        for node in self._list("runs"):
            self._read_run(node)
        self._complain_of_unjoined()
        if self.faults:
            return None
        system = System(
            parts=self.parts,
            pipes=tuple(self.pipes),
            title=document.title,
            units=document.units,
            rules=document.rules,
            written=self.declared,
            scenarios=document.scenarios,
            tank_sizes_m3=tuple(sorted(document.tank_sizes)),
            record=Record(file=self.file, lines=self.lines, rules_at=self._place("rules")),
        )
        self._try_scenarios(system)
        return system

    def _document(self) -> Document | None:
        value = self.root.value
        if not isinstance(value, dict):
            self._fault(self.root, "a layout is a mapping", "start it with plumbnet: 1")
            return None
        units = value.get("units")
        try:
            document = Document.model_validate(
                _hollow(value), context={"units": units if units in {"us", "metric"} else "us"}
            )
        except ValidationError as error:
            self.faults.extend(faults_of(error, self.root, what="a layout", model=Document))
            return None
        return document

    def _entries(self, key: str) -> Iterator[tuple[str, Node]]:
        items = self._items(key)
        if isinstance(items, dict):
            yield from items.items()

    def _items(self, key: str) -> dict[str, Node] | list[Node] | None:
        return self.root.at(key).items if key in (self.root.keys or {}) else None

    def _list(self, key: str) -> Iterator[Node]:
        items = self._items(key)
        if isinstance(items, list):
            yield from items

    def _fault(self, node: Node, text: str, hint: str = "", *, offset: int = 0, width: int = 0) -> None:
        self.faults.append(Fault(node.line, node.column + offset, text, hint, width or node.width))

    def _place(self, key: str) -> tuple[int, int]:
        node = self.root.at(key)
        return node.line, node.column

    def _read_part(self, name: str, node: Node) -> None:
        line, column = (self.root.at("parts").keys or {})[name]
        if not NAME.match(name):
            hint = "use letters, digits, _ and -, and start and end with a letter or digit"
            self.faults.append(Fault(line, column, f'"{name}" is no name for a part', hint, max(1, len(name))))
            self.faulty.add(name)
            return
        self.lines[name] = line
        kind_node = node.at("kind") if isinstance(node.value, dict) else node
        values = node.value if isinstance(node.value, dict) else {"kind": node.value}
        part = self._make(name, values, node, kind_node)
        if part is None:
            self.faulty.add(name)
            return
        self.parts[name] = part
        self.declared[name] = values
        fixed, pipes = fixed_to(name, part)
        self.parts.update(fixed)
        self.pipes.extend(pipes)
        for pipe in pipes:
            self.taken[pipe.start] = pipe

    def _make(self, name: str, values: Mapping[str, object], node: Node, kind_node: Node) -> Part | None:
        kind = values.get("kind")
        if "kind" not in values:
            self._fault(node, f'{name} needs a "kind"', f"for example {name}: {{kind: valve}}")
            return None
        if not isinstance(kind, str) or kind not in KINDS:
            hint = nearest(str(kind), KINDS) or "the command plumbnet kinds lists them all"
            self._fault(kind_node, f'unknown kind "{kind}"', hint)
            return None
        try:
            fields = {key: value for key, value in values.items() if key != "kind"}
            return make_part(kind, fields, self.units)
        except ValidationError as error:
            what = f"{name}, a {kind},"
            self.faults.extend(faults_of(error, node, what=what, model=KINDS[kind]))
            return None

    def _read_run(self, node: Node) -> None:
        if isinstance(node.value, str):
            self._join(node, RunWithPipe.model_construct(path=node.value), node)
            return
        if not isinstance(node.value, dict):
            self._fault(node, "a run is text or a mapping with a path", 'write it as "first -> second"')
            return
        try:
            run = RunWithPipe.model_validate(node.value, context={"units": self.units})
        except ValidationError as error:
            self.faults.extend(faults_of(error, node, what="a run", model=RunWithPipe))
            return
        self._join(node, run, node.at("path"))

    def _join(self, node: Node, run: RunWithPipe, path_node: Node) -> None:
        def complain(offset: int, width: int, text: str, hint: str) -> None:
            self._fault(path_node, text, hint, offset=offset, width=width)

        self.named.update(stop.name for stop in stops(run.path))
        pairs = list(joints(run.path, self.parts, complain, faulty=self.faulty))
        volume_m3 = self._volume_m3(node, run)
        for start, end in pairs:
            pipe = Pipe(
                start,
                end,
                volume_m3 / len(pairs),
                None if run.length_m is None else run.length_m / len(pairs),
                run.pipe,
                node.line,
            )
            self._lay(pipe, path_node)

    def _volume_m3(self, node: Node, run: RunWithPipe) -> float:
        """Water in the whole chain: as written, or from pipe and length, or nothing known."""
        if run.pipe is None:
            return run.volume_m3 or 0.0
        try:
            bore = tube(run.pipe)
        except UnknownTube as error:
            self._fault(node.at("pipe"), str(error))
            return 0.0
        if run.volume_m3 is not None:
            return run.volume_m3
        if run.length_m is None:
            self._fault(node.at("pipe"), "a pipe size says nothing without a length", "add length: 10 ft")
            return 0.0
        return bore.volume_m3_per_m * run.length_m

    def _lay(self, pipe: Pipe, node: Node) -> None:
        for end in (pipe.start, pipe.end):
            part = self.parts[end.part]
            other = self.taken.get(end)
            if other is not None and end.port not in part.shared:
                where = f"on line {other.line}" if other.line else "by its own relief valve"
                text = f"{end.part}.{end.port} is taken already {where}"
                self._fault(node, text, "join pipes in a tee")
            self.taken[end] = pipe
        self.pipes.append(pipe)

    def _complain_of_unjoined(self) -> None:
        for name, line in self.lines.items():
            if name not in self.named:
                column = (self.root.at("parts").keys or {})[name][1]
                text = f"no run mentions {name}"
                self.faults.append(Fault(line, column, text, "join it in a run, or take it out", len(name)))

    def _try_scenarios(self, system: System) -> None:
        for name, node in self._entries("scenarios"):
            try:
                with_changes(system, system.scenarios[name].change)
            except ChangeError as error:
                self._fault(node.at("change", error.index), f"scenario {name}: {error}", error.hint)


def _hollow(value: Mapping[str, object]) -> dict[str, object]:
    """The document without what stands inside parts and runs, which is read one by one."""
    hollow = dict(value)
    if isinstance(hollow.get("parts"), dict):
        hollow["parts"] = {}
    if isinstance(hollow.get("runs"), list):
        hollow["runs"] = []
    return hollow
