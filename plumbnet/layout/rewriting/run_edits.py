"""The runs of a layout file with pipes changed: each run is left as it is, edited at its place, or cut in several."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from plumbnet.layout.model import Pipe, System, run_stops
from plumbnet.layout.rewriting.run_texts import OldPath, Wholes, old_path, path_text, pipe_fields, segments
from plumbnet.layout.rewriting.text_edits import with_fields, with_item, with_value, without_value
from plumbnet.layout.rewriting.text_places import Unwritable
from plumbnet.layout.yaml import Plain, parse_yaml


@dataclass(frozen=True, slots=True)
class Run:
    """A run of the file: its number, what is written there, and its pipes."""

    number: int
    written: Plain
    pipes: tuple[Pipe, ...]

    @property
    def path(self) -> str:
        """Its path, as written."""
        path = self.written["path"] if isinstance(self.written, dict) else self.written
        return str(path)


def runs_of(text: str, system: System) -> list[Run]:
    """The runs of a file, each with its pipes, which stand in the order of the file behind what comes with parts."""
    node = parse_yaml(text, [])
    written = node.value.get("runs") if node is not None and isinstance(node.value, dict) else None
    found = [Run(number, one, ()) for number, one in enumerate(written if isinstance(written, list) else [])]
    counts = [len(run_stops(run.path)) - 1 for run in found]
    at, runs = len(system.pipes) - sum(counts), []
    for run, count in zip(found, counts, strict=True):
        runs.append(replace(run, pipes=system.pipes[at : at + count]))
        at += count
    return runs


def with_pipes(text: str, system: System, after: System, exchanged: Mapping[int, Sequence[Pipe]]) -> str:
    """The text with pipes of its runs exchanged for others, each for some, one or none.

    `exchanged` names them by their `id`; `system` is what the text says now, `after` what it is to say. Raises
    Unwritable where no run would be left.
    """
    for run in reversed(runs_of(text, system)):
        if any(id(pipe) in exchanged for pipe in run.pipes):
            pipes = [new for pipe in run.pipes for new in exchanged.get(id(pipe), (pipe,))]
            text = _rewritten_run(text, system, after, run, pipes)
    return text


def _rewritten_run(text: str, system: System, after: System, run: Run, pipes: Sequence[Pipe]) -> str:
    old, whole = old_path(Wholes(system), run.path, run.pipes), Wholes(after)
    at = ("runs", run.number)
    found = [_fields(after, whole, old, each) for each in segments(whole, pipes)]
    if not found:
        return without_value(text, at)
    first, *more = found
    for each in reversed(more):
        text = with_item(text, ("runs",), run.number, _run_value(each))
    if isinstance(run.written, dict):
        fields = first if more or _sums(run.pipes) != _sums(pipes) else {**run.written, "path": first["path"]}
        return with_fields(text, at, run.written, fields)
    return with_value(text, at, _run_value(first))


def _fields(after: System, whole: Wholes, old: OldPath, pipes: Sequence[Pipe]) -> dict[str, object]:
    return {"path": path_text(whole, pipes, old), **pipe_fields(after, pipes)}


def _run_value(fields: Mapping[str, object]) -> object:
    return fields["path"] if fields.keys() == {"path"} else dict(fields)


def _sums(pipes: Sequence[Pipe]) -> tuple[str, str]:
    return f"{sum(pipe.volume_m3 for pipe in pipes):.9g}", f"{sum(pipe.length_m or 0.0 for pipe in pipes):.9g}"


def joint_of(system: System, at: int, halves: Sequence[Pipe]) -> Iterator[Pipe]:
    """The two halves of a pipe in the direction in which its run was written."""
    pipe = system.pipes[at]
    if halves[0].start == pipe.start:
        yield from halves
    else:
        yield from (replace(half, start=half.end, end=half.start) for half in reversed(halves))


def demand_run(runs: Sequence[Run], pipe: Pipe) -> None:
    """Raises Unwritable for a pipe that no run of the file lays."""
    if not any(pipe is own for run in runs for own in run.pipes):
        raise Unwritable(f"the pipe {pipe.name} comes with a part and is laid by no run")
