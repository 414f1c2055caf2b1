"""A layout in words: what each part is and is set to, and the runs that join them."""

from collections.abc import Iterator, Mapping
from itertools import groupby

from plumbnet.layout.model import End, Pipe, System
from plumbnet.layout.units import LENGTH, show


def parts_in_words(system: System) -> Iterator[tuple[str, str, str]]:
    """The parts that the author wrote, those that are alike in one row: their names, their kind, and their fields."""
    alike: dict[tuple[str, str], list[str]] = {}
    for name, fields in system.written.items():
        given = {field: value for field, value in fields.items() if field != "kind"}
        alike.setdefault((system.parts[name].kind.replace("_", " "), fields_in_words(given)), []).append(name)
    for (kind, told), names in alike.items():
        yield ", ".join(names), kind, told


def fields_in_words(fields: Mapping[str, object]) -> str:
    """Fields as the author wrote them, in a row.

    >>> fields_in_words({"volume": "50 gal", "locked": True, "checks": False, "relief": {"pressure": "150 psi"}})
    'volume 50 gal, locked, no checks, relief (pressure 150 psi)'
    """
    return ", ".join(_field(field.replace("_", " "), value) for field, value in fields.items())


def _field(field: str, value: object) -> str:
    if isinstance(value, bool):
        return field if value else f"no {field}"
    if isinstance(value, Mapping):
        return f"{field} ({fields_in_words(value)})"
    return f"{field} {value}"


def runs_in_words(system: System) -> Iterator[str]:
    """Each run of the file, with its pipe; pipes that came with a part are left out."""
    for line, pipes in groupby(system.pipes, key=lambda pipe: pipe.line):
        if line:
            yield _run(system, list(pipes))


def tubes_in_words(system: System) -> Iterator[str]:
    """Each run of the file of which a length is written, with its pipe."""
    for line, pipes in groupby(system.pipes, key=lambda pipe: pipe.line):
        run = list(pipes)
        if line and any(pipe.length_m is not None for pipe in run):
            yield _run(system, run)


def _run(system: System, pipes: list[Pipe]) -> str:
    names = [_end(system, pipes[0].start, leaving=True)]
    names += [_end(system, pipe.end, leaving=pipe is not pipes[-1]) for pipe in pipes]
    path = " → ".join(names)
    lengths = [pipe.length_m for pipe in pipes if pipe.length_m is not None]
    if pipes[0].tube is None or not lengths:
        return path
    return f"{path}, {show(sum(lengths), LENGTH, system.units)} of {pipes[0].tube}"


def _end(system: System, end: End, *, leaving: bool) -> str:
    """A part, with its port where a run would have to name it."""
    part = system.parts[end.part]
    usual = {part.enters_at(), part.leaves_at()} if leaving else {part.enters_at()}
    return end.part if end.port in usual else f"{end.part}.{end.port}"
