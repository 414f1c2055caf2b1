"""Layout text to a System, or to every fault of the file at once."""

import hashlib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import get_args

from pydantic import ValidationError

from plumbnet.discover import discover
from plumbnet.layout.assemblies import ASSEMBLIES, CHANGE, TextSource, ToldOnce, has_assemblies
from plumbnet.layout.edits import unknown_kind
from plumbnet.layout.file.assembled_reader import AssembledReader
from plumbnet.layout.file.assembly_files import Shelf
from plumbnet.layout.file.change_lists import ChangeLists
from plumbnet.layout.file.document import FORMAT, Document, RunWithPipe
from plumbnet.layout.file.fault_collector import FaultCollector
from plumbnet.layout.file.layout_draft import LayoutDraft, NoVolume, chain_volume_m3
from plumbnet.layout.file.named_rules import named_rules, rules_places
from plumbnet.layout.file.scenario_reader import ScenarioReader, added_names
from plumbnet.layout.file.selected_acceptances import single_acceptances
from plumbnet.layout.model import (
    ARROW,
    KINDS,
    MOST_PIPES,
    MOST_PIPES_OF_RUN,
    NAME,
    NAME_ADVICE,
    AssemblyFile,
    Mistake,
    Part,
    Path,
    Pipe,
    Record,
    Stop,
    System,
    crowded,
    indoors,
    joints,
    kinds,
    make_part,
    of_no_part,
    run_stops,
    shown_value,
    with_article,
)
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import Fault, LayoutError, Plain, Refused, decode, parse_yaml, quoted, split_lines

discover(kinds)


def read_system(data: bytes, *, file: str, shelf: Sequence[AssemblyFile] = ()) -> System:
    """The system that the bytes of a layout file describe; `file` names it in messages, `shelf` brings assemblies.

    Raises LayoutError with every fault found. Scenarios are tried once all else is right: one that cannot be made is
    kept apart, with its faults, and stops nothing.
    """
    faults: list[Fault] = []
    others = Shelf.of(shelf)
    text = decode(data, faults)
    root = None if text is None else parse_yaml(text, faults)
    if text is not None and root is not None:
        record = Record(file=file, sha256=hashlib.sha256(data).hexdigest(), text=text, shelf=tuple(shelf))
        lines, apart = split_lines(text), list[Fault]()
        scenarios = ScenarioReader(FaultCollector(root, apart, lines))
        try:
            system = _Reader(FaultCollector(root, faults, lines), record, scenarios, others).system()
        except Refused as refused:
            raise LayoutError(file, [*faults, *apart, refused.fault], text) from refused
        if system is not None and not faults:
            return system
        faults += apart
    elsewhere = others.error()
    if elsewhere is not None and not faults:
        raise elsewhere
    raise LayoutError(file, faults, text or "", elsewhere)


@dataclass(slots=True)
class _Reader:
    """Walks the top-level fields of a file in order, collecting faults."""

    told: FaultCollector
    record: Record
    scenarios: ScenarioReader
    shelf: Shelf
    units: Units = "us"
    draft: LayoutDraft = field(default_factory=LayoutDraft)
    declared: tuple[str, ...] = ()
    named: set[str] = field(default_factory=set)
    faulty: set[str] = field(default_factory=set)

    def system(self) -> System | None:
        """The system, or None where faults stand in its way."""
        value = self.told.root.value
        if not isinstance(value, dict):
            self.told.tell(Mistake((), "a layout is a mapping of fields", f"begin it with plumbnet: {FORMAT}"))
            return None
        version = value.get("plumbnet", FORMAT)
        if version != FORMAT or isinstance(version, bool):
            text = f"this program reads format {FORMAT} of the file, not {shown_value(version)}"
            self.told.tell(Mistake(("plumbnet",), text, f"write plumbnet: {FORMAT}"))
            return None
        self.units = next((known for known in get_args(Units) if known == value.get("units")), "us")
        self.scenarios.units = self.draft.units = self.units
        self.scenarios.read_all(value.get("scenarios"))
        document = self._document(value)
        if has_assemblies(value):
            return self._assembled(document)
        self._read_parts(value.get("parts"))
        self._read_runs(value.get("runs"))
        if self.told.faults or document is None:
            return None
        system = self._system(document)
        self._look_for_accepted(system)
        return self.scenarios.tried_on(system)

    def _assembled(self, document: Document | None) -> System | None:
        """The system of a layout with assemblies: all written out, then changed as it says."""
        sources = [TextSource(self.record.file, self.told.root), *self.shelf.sources()]
        reader = AssembledReader(sources, self.draft, ToldOnce(sources))
        reader.read()
        system = None
        if not reader.told and not self.told.faults and document is not None:
            system = replace(self._system(document), assembled=reader.assembled(), groups=reader.out.groups)
            system = replace(system, record=replace(system.record, lines=reader.lines))
            system = ChangeLists(reader.told).made(system, reader.out.changes)
        for source, mistake, stop in reader.told.all():
            if source:
                self.shelf.tell(source - 1, mistake, stop)
            elif stop is None:
                self.told.tell(mistake)
            else:
                self.told.tell_of_stop(mistake, stop)
        if system is None or reader.told:
            return None
        accepted = single_acceptances(system, added_names(self.scenarios.read))
        for mistake in accepted.mistakes:
            self.told.tell(mistake.under("accept"))
        record = replace(system.record, accept_at=accepted.places)
        return self.scenarios.tried_on(replace(system, accept=accepted.accept, record=record))

    def _document(self, value: Mapping[str, Plain]) -> Document | None:
        """The top-level fields, less what stands inside parts, runs and scenarios, which is read one by one."""
        hollow = dict(value)
        for key in ("parts", "runs", "scenarios", ASSEMBLIES, CHANGE):
            inside = value.get(key)
            if isinstance(inside, dict | list):
                hollow[key] = type(inside)()
        hollow["rules"] = named_rules(value.get("rules"), self.told.tell)
        try:
            return Document.model_validate(hollow, context={"units": self.units})
        except ValidationError as error:
            self.told.tell_invalid(error, (), what="a layout", model=Document)
            return None

    def _system(self, document: Document) -> System:
        accepted = [self.told.root.at("accept", index, "finding") for index in range(len(document.accept))]
        return System(
            parts=self.draft.parts,
            pipes=tuple(self.draft.pipes),
            title=document.title,
            units=document.units,
            rules=document.rules,
            written=self.draft.written,
            accept=document.accept,
            job=document.job,
            tank_sizes_m3=tuple(sorted(document.tank_sizes)),
            instances=self.draft.instances,
            record=replace(
                self.record,
                lines=self._lines(),
                rules_at=rules_places(document.rules, self.told.root),
                accept_at=tuple((node.line, node.column) for node in accepted),
            ),
        )

    def _lines(self) -> dict[str, int]:
        """The line on which each part is declared."""
        keys = self.told.root.at("parts").keys or {}
        return {name: line for name, (line, _) in keys.items()}

    def _read_parts(self, parts: Plain) -> None:
        if not isinstance(parts, dict):
            return
        self.declared = tuple(parts)
        if not parts:
            self.told.tell(Mistake(("parts",), "a layout has at least one part", "for example street: {kind: main}"))
        for name, value in parts.items():
            part = self._part(name, value)
            if part is None:
                self.faulty.add(name)
                continue
            written = value if isinstance(value, dict) else {"kind": value}
            self.draft.place(name, part, written, self.told.root.at("parts", name).line)

    def _part(self, name: str, value: Plain) -> Part | None:
        at = ("parts", name)
        if not NAME.fullmatch(name):
            self.told.tell(Mistake(at, f"{quoted(name)} is no name for a part", NAME_ADVICE, at_key=True))
            return None
        if not isinstance(value, dict | str):
            text = f"a part is a kind or a mapping with a kind, not {shown_value(value)}"
            self.told.tell(Mistake(at, text, f"for example {name}: valve"))
            return None
        fields = dict(value) if isinstance(value, dict) else {"kind": value}
        if "kind" not in fields:
            self.told.tell(Mistake(at, f'{name} needs "kind"', "for example kind: valve", at_key=True))
            return None
        kind = fields.pop("kind")
        if not isinstance(kind, str) or kind not in KINDS:
            self.told.tell(unknown_kind(kind).under(*at))
            return None
        try:
            return make_part(kind, fields, self.units)
        except ValidationError as error:
            self.told.tell_invalid(error, at, what=f"{name}, {with_article(kind)},", model=KINDS[kind])
            return None

    def _read_runs(self, runs: Plain) -> None:
        if not isinstance(runs, list) or not self.declared:
            return
        for index, value in enumerate(runs):
            at: Path = ("runs", index)
            path = value.get("path") if isinstance(value, dict) else value
            if isinstance(path, str):
                self._refuse_above(MOST_PIPES_OF_RUN, path.count(ARROW), at, "this run has", "write it as several")
                self.named.update(stop.name for stop in run_stops(path))
            if isinstance(value, str):
                self._join(RunWithPipe(path=value), at, at)
            elif isinstance(value, dict):
                self._read_mapping(value, at)
            else:
                text = f"a run is a text or a mapping with a path, not {shown_value(value)}"
                self.told.tell(Mistake(at, text, 'write it as "first -> second"'))
        for name in self.declared:
            if name not in self.named and NAME.fullmatch(name):
                text = f"no run mentions {name}"
                self.told.tell(Mistake(("parts", name), text, "join it in a run, or take it out", at_key=True))

    def _read_mapping(self, value: Mapping[str, Plain], at: Path) -> None:
        try:
            run = RunWithPipe.model_validate(value, context={"units": self.units})
        except ValidationError as error:
            self.told.tell_invalid(error, at, what="a run", model=RunWithPipe)
            return
        self._join(run, at, (*at, "path"))

    def _join(self, run: RunWithPipe, at: Path, path: Path) -> None:
        def complain(stop: Stop, text: str, hint: str, known: Iterable[str]) -> None:
            self.told.tell_of_stop(Mistake(path, text, hint, meant=(stop.name, known)), stop)

        draft = self.draft
        found = [indoors(draft.instances, one) for one in joints(run.path, draft.known(), complain, faulty=self.faulty)]
        length_m = None if run.length_m is None else run.length_m / max(1, len(found))
        volume_m3 = self._volume_m3(run, (*at, "pipe")) / max(1, len(found))
        line = self.told.root.at(*at).line
        for joint in found:
            pipe = Pipe(joint.start, joint.end, volume_m3, length_m, run.pipe, line)
            for text, hint, stop in crowded(joint, draft.taken, draft.parts):
                complain(stop, text, hint, ())
            draft.lay(pipe)
        self._refuse_above(MOST_PIPES, len(draft.pipes), at, "up to here the runs have", "split the layout")

    def _refuse_above(self, most: int, count: int, at: Path, text: str, hint: str) -> None:
        if count > most:
            raise Refused(Mistake(at, f"{text} more than {most:,} pipes", hint).fault(self.told.root))

    def _volume_m3(self, run: RunWithPipe, at: Path) -> float:
        """Water in the whole chain; nothing where that cannot be told."""
        try:
            return chain_volume_m3(run)
        except NoVolume as error:
            self.told.tell(Mistake(at, str(error), error.hint))
            return 0.0

    def _look_for_accepted(self, system: System) -> None:
        """A part that an acceptance names must be there, if only in a scenario."""
        for mistake in of_no_part(system.accept, {*system.parts, *added_names(self.scenarios.read)}):
            self.told.tell(mistake.under("accept"))
