"""All that assemblies come to, to typed parts and pipes: what is equal is read once, and told once if wrong."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace

from pydantic import ValidationError

from plumbnet.layout.assemblies import (
    PlannedChain,
    TextSource,
    ToldOnce,
    Where,
    WrittenAt,
    WrittenOut,
    WrittenPart,
    written_out,
)
from plumbnet.layout.edits import unknown_kind
from plumbnet.layout.file.document import RunWithPipe
from plumbnet.layout.file.layout_draft import LayoutDraft, NoVolume, chain_volume_m3
from plumbnet.layout.model import (
    KINDS,
    Assembled,
    End,
    Joint,
    Mistake,
    Part,
    Pipe,
    Stop,
    crowded,
    indoors,
    joints_between,
    make_part,
    mistakes,
    with_article,
)
from plumbnet.layout.yaml import nearest, quoted

_Told = tuple[WrittenAt, Mistake]
"""What is wrong, and the place it is at."""


@dataclass(slots=True)
class _Missing:
    """A field that a part inside an assembly lacks: of the first instance, and of how many."""

    instance: str
    count: int = 0


@dataclass(frozen=True, slots=True)
class _Laid:
    """What a chain says of its pipe, shared out to the pipes of the chain."""

    volume_m3: float
    length_m: float | None
    tube: str | None


@dataclass(slots=True)
class AssembledReader:
    """Reads a layout with assemblies into `draft`; what is wrong goes to `told`."""

    sources: Sequence[TextSource]
    draft: LayoutDraft
    told: ToldOnce
    out: WrittenOut = field(default_factory=WrittenOut)
    lines: dict[str, int] = field(default_factory=dict)
    _parts: dict[int, Part | list[_Told]] = field(default_factory=dict)
    _pipes: dict[int, _Laid | list[_Told]] = field(default_factory=dict)
    _joints: dict[int, list[Joint]] = field(default_factory=dict)
    _line_of: dict[int, int] = field(default_factory=dict)
    _lacking: dict[tuple[int, str], str] = field(default_factory=dict)
    _missing: dict[tuple[WrittenAt, str, WrittenAt], _Missing] = field(default_factory=dict)
    _complained: set[tuple[WrittenAt, str, int]] = field(default_factory=set)

    def read(self) -> None:
        """All parts, then all pipes."""
        out = written_out(self.sources, self.draft.units, self.told)
        if out is None:
            return
        self.out = out
        for name, part, where in out.parts:
            self._place(name, part, where)
        self._tell_missing()
        for chain, where in out.chains:
            self._lay(chain, where)

    def assembled(self) -> dict[str, Assembled]:
        """The instances of assemblies."""
        return {
            name: Assembled(one.where.assembly, self._asked(one.where), one.height)
            for name, one in self.out.instances.items()
        }

    def _place(self, name: str, written: WrittenPart, where: Where | None) -> None:
        key = id(written)
        if key not in self._parts:
            self._parts[key] = self._made(written)
        part = self._parts[key]
        if isinstance(part, Part):
            line = self.lines[name] = self._line(written.at, where)
            self.draft.place(name, part, {"kind": written.kind, **written.fields}, line)
            return
        self.out.faulty.add(name)
        for place, mistake in part:
            lacking = self._lacking.get((id(written), mistake.text))
            if lacking is None or where is None:
                self.told.tell(place.source, mistake, where)
            else:
                found = self._missing.setdefault((place, lacking, where.asked), _Missing(where.instance))
                found.count += 1

    def _made(self, written: WrittenPart) -> Part | list[_Told]:
        """The part, or what is wrong with it, each with its place."""
        kind, at = written.kind, written.at
        if not isinstance(kind, str) or kind not in KINDS:
            unknown = unknown_kind(kind)
            return [(at, unknown.under(*at.path))]
        try:
            return make_part(kind, written.fields, self.draft.units)
        except ValidationError as error:
            what = f"{at.path[-1]}, {with_article(kind)},"
            found = [self._placed(written, one) for one in mistakes(error, what=what, model=KINDS[kind])]
            for one in error.errors(include_url=False):
                if one["type"] == "missing" and len(one["loc"]) == 1:
                    lacking = str(one["loc"][0])
                    self._lacking[id(written), f"{what} needs {quoted(lacking)}"] = lacking
            return found

    @staticmethod
    def _placed(written: WrittenPart, mistake: Mistake) -> _Told:
        """A mistake at the value it is about, wherever that was given."""
        first, *rest = mistake.path or ("",)
        place = written.places.get(str(first))
        if place is None:
            return written.at, mistake.under(*written.at.path)
        shared = [step for step in rest if place.path[-1] != step]
        return place, replace(mistake, path=(*place.path, *shared))

    def _tell_missing(self) -> None:
        for (at, field_name, asked), lacking in self._missing.items():
            more = f" and {lacking.count - 1:,} more: their" if lacking.count > 1 else ": its"
            line = self.sources[at.source].line(at)
            other = f" of {self.sources[at.source].file}" if at.source != asked.source else ""
            text = f"{lacking.instance}{more} {at.path[-1]} needs {field_name}"
            advice = f"say it in the assembly (line {line}{other}) or in each"
            self.told.tell(asked.source, Mistake(asked.path, text, advice, at_key=True))

    def _line(self, at: WrittenAt, where: Where | None) -> int:
        """The line of a place in the layout itself: of what stands in another file, that which asked for it."""
        if at.source:
            return 0 if where is None else self._asked(where)
        key = id(at)
        if key not in self._line_of:
            self._line_of[key] = self.sources[0].line(at)
        return self._line_of[key]

    def _asked(self, where: Where) -> int:
        if where.asked.source == 0:
            return self._line(where.asked, None)
        around = where.instance.rpartition("/")[0]
        while where.asked.source and around:
            if around in self.out.instances:
                where = self.out.instances[around].where
            around = around.rpartition("/")[0]
        return self._line(where.asked, None)

    def _lay(self, chain: PlannedChain, where: Where | None) -> None:
        """The pipes of a chain between the ports of its parts."""
        laid = self._laid(chain, where)
        if laid is None:
            return
        prefix = "" if where is None else where.prefix
        line, asked = self._line(chain.at, where), 0 if where is None else self._asked(where)
        draft = self.draft
        known = self._joints.get(id(chain))
        for joint in self._looked_for(chain, prefix, where) if known is None else known:
            start, end = joint.start, joint.end
            if known is not None and prefix:
                start, end = End(prefix + start.part, start.port), End(prefix + end.part, end.port)
            if not self.out.faulty.isdisjoint((start.part, end.part)):
                continue  # told at the part
            pipe = Pipe(start, end, laid.volume_m3, laid.length_m, laid.tube, line, asked)
            if draft.is_crowded(start) or draft.is_crowded(end):
                self._look_for_crowded(chain, where, replace(joint, start=start, end=end))
            draft.lay(pipe)

    def _look_for_crowded(self, chain: PlannedChain, where: Where | None, joint: Joint) -> None:
        """Tell of ports that have their pipe already."""
        for text, hint, stop in crowded(joint, self.draft.taken, self.draft.parts):
            self._complain(chain, where, stop, self._in_instance(joint, where, text), hint)

    def _laid(self, chain: PlannedChain, where: Where | None) -> _Laid | None:
        if not chain.fields:
            return _NOTHING_KNOWN
        key = id(chain)
        if key not in self._pipes:
            self._pipes[key] = self._of_pipe(chain)
        found = self._pipes[key]
        if isinstance(found, _Laid):
            return found
        for place, mistake in found:
            self.told.tell(place.source, mistake, where)
        return None

    def _of_pipe(self, chain: PlannedChain) -> _Laid | list[_Told]:
        at = chain.at

        def place(mistake: Mistake) -> _Told:
            first, *rest = mistake.path or ("",)
            return at, replace(mistake, path=(*at.path, *chain.places.get(str(first), (first,)), *rest))

        try:
            run = RunWithPipe.model_validate({"path": "", **chain.fields}, context={"units": self.draft.units})
            volume_m3 = chain_volume_m3(run)
        except ValidationError as error:
            return [place(one) for one in mistakes(error, what="a run", model=RunWithPipe)]
        except NoVolume as error:
            return [place(Mistake(("pipe",), str(error), error.hint))]
        count = len(chain.stops) - 1
        return _Laid(volume_m3 / count, None if run.length_m is None else run.length_m / count, run.pipe)

    def _looked_for(self, chain: PlannedChain, prefix: str, where: Where | None) -> list[Joint]:
        """The joints of a chain in one instance; those of others lie alike, where the kinds decide on the ports."""
        draft, told = self.draft, len(self._complained)

        def complain(stop: Stop, text: str, hint: str, known: Iterable[str]) -> None:
            self._complain(chain, where, stop, text, nearest(stop.name, known) or hint)

        stops = [replace(stop, name=prefix + stop.name) for stop in chain.stops]
        faulty = {stop.name for stop in stops if self._is_faulty(stop.name)}
        joints = joints_between(stops, draft.known(), complain, faulty=faulty, passes=chain.passes)
        found = [indoors(draft.instances, one) for one in joints]
        parts = [draft.parts.get(stop.name) for stop in stops]
        is_alike = all(part is not None and part.ports_are_of_its_kind for part in parts)
        if is_alike and len(self._complained) == told:
            self._joints[id(chain)] = [_without(one, len(prefix)) for one in found]
        return found

    def _is_faulty(self, name: str) -> bool:
        """Whether a part, or an instance that it is in, could not be read."""
        while name and name not in self.out.faulty:
            name = name.rpartition("/")[0]
        return bool(name)

    def _complain(self, chain: PlannedChain, where: Where | None, stop: Stop, text: str, hint: str) -> None:
        """What is wrong at a stop of a run, once for each instance that the run stands in."""
        key = (chain.at, "" if where is None else where.instance, stop.offset)
        if key not in self._complained:
            self._complained.add(key)
            at = chain.path_at
            self.told.tell(at.source, Mistake(at.path, text, hint), where, stop)

    def _in_instance(self, joint: Joint, where: Where | None, text: str) -> str:
        """That a port has its pipe already, where it is inside an instance and the pipe comes from outside."""
        for end in (joint.start, joint.end):
            port = f"{end.part}.{end.port}"
            around = self._around(end.part)
            if around and (where is None or where.instance != around) and text.startswith(f"{port} already has its"):
                rest = text.partition("pipe, ")[2]
                return f"{port.removeprefix(f'{around}/')} of {around} has its pipe {rest}"
        return text

    def _around(self, part: str) -> str:
        around = part.rpartition("/")[0]
        while around and around not in self.out.instances:
            around = around.rpartition("/")[0]
        return around


_NOTHING_KNOWN = _Laid(0.0, None, None)


def _without(joint: Joint, length: int) -> Joint:
    """A joint with names that count from the instance on."""
    start, end = (End(one.part[length:], one.port) for one in (joint.start, joint.end))
    near, far = (replace(one, name=one.name[length:]) for one in (joint.near, joint.far))
    return Joint(start, end, near, far)
