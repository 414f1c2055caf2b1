"""A layout to tables for a spreadsheet: parts, pipes with what they hold, the layout itself, and its tanks."""

import csv
import io
from collections.abc import Iterable, Iterator, Mapping, Sequence

from plumbnet.layout.edits import WRITTEN_DIGITS, change_fields
from plumbnet.layout.model import ARROW, Declared, Part, System
from plumbnet.layout.rewriting import OldPath, Wholes, inline_yaml, path_text, pipe_fields
from plumbnet.layout.tables.cell_values import cell_of, with_comma
from plumbnet.layout.tables.columns import CONTENTS, LAYOUT, PIPE_FIELDS, PIPES, TANKS, is_text_column, part_columns
from plumbnet.layout.tables.tank_schedule import tank_rows
from plumbnet.layout.units import VOLUME, quantity_of, show

PARTS_FILE, PIPES_FILE, LAYOUT_FILE, TANKS_FILE = "parts.csv", "pipes.csv", "layout.csv", "tanks.csv"
_AS_WRITTEN = OldPath({}, {})
_Row = Sequence[str]


def tables_of(system: System, *, semicolons: bool = False) -> dict[str, bytes]:
    """The tables of a layout as CSV files by their names; UTF-8 with its mark, lines end as RFC 4180 has it.

    What an author wrote stands in them as it was written, so that their import is the same layout. With `semicolons`
    they are what a spreadsheet with a decimal comma opens: semicolons between cells, commas in quantities.
    """
    whole = Wholes(system)
    fields = {name: dict(_flat(written)) for name, written in _written(system)}
    columns = [one for one in part_columns() if one == "name" or any(one in own for own in fields.values())]
    columns += dict.fromkeys(one for own in fields.values() for one in own if one not in columns)
    parts = ([name, *(own.get(one, "") for one in columns[1:])] for name, own in fields.items())
    pipes = ([row.get(one, "") for one in (*PIPES, *PIPE_FIELDS, CONTENTS)] for row in _pipe_rows(whole, set(fields)))
    texts = {one for one in columns if is_text_column(one)}
    return {
        PARTS_FILE: _csv(columns, parts, texts, semicolons=semicolons),
        PIPES_FILE: _csv((*PIPES, *PIPE_FIELDS, CONTENTS), pipes, {*PIPES, "pipe"}, semicolons=semicolons),
        LAYOUT_FILE: _csv(LAYOUT, _layout_rows(system), set(LAYOUT), semicolons=semicolons),
        TANKS_FILE: _csv(TANKS, tank_rows(system), {"tank", "connected_at"}, semicolons=semicolons),
    }


def template_tables(*, semicolons: bool = False) -> dict[str, bytes]:
    """Empty tables with every column that may be filled in."""
    layout = [(key, "") for key in ("title", "units", "rules", "job.number", "job.address", "job.author")]
    return {
        PARTS_FILE: _csv(part_columns(), (), set(), semicolons=semicolons),
        PIPES_FILE: _csv((*PIPES, *PIPE_FIELDS), (), set(), semicolons=semicolons),
        LAYOUT_FILE: _csv(LAYOUT, layout, set(), semicolons=semicolons),
    }


_WRITTEN_OUT = "the assemblies are left out, and their parts written out by full names, which import does not take"


def left_out_of_tables(system: System) -> tuple[str, ...]:
    """What of a layout no table holds, in a sentence each."""
    faulty = tuple(f"the scenario {name} cannot be made, and is left out" for name in system.faulty_scenarios)
    return (*faulty, _WRITTEN_OUT) if system.groups or system.assembled else faulty


def _written(system: System) -> Iterator[tuple[str, Mapping[str, object]]]:
    """Each part that stands in the file, with its fields as they were written there."""
    inside = {part: name for name, instance in system.instances.items() for part in instance.parts}
    told = set[str]()
    for name in system.parts:
        owner = inside.get(name)
        if owner is None and name in system.written:
            yield name, system.written[name]
        elif owner is not None and owner not in told:
            told.add(owner)
            yield owner, {"kind": system.instances[owner].whole.kind, **_given(system, system.instances[owner].whole)}


def _given(system: System, whole: Part) -> dict[str, object]:
    """The fields that were given to what opens into several."""
    found: dict[str, object] = {}
    for name, info in type(whole).model_fields.items():
        if name in whole.model_fields_set:
            value, quantity = getattr(whole, name), quantity_of(info)
            is_quantity = isinstance(value, float) and quantity is not None
            found[info.alias or name] = (
                show(value, quantity.dimension, system.units, WRITTEN_DIGITS) if is_quantity and quantity else value
            )
    return found


def _flat(written: Mapping[str, object]) -> Iterator[tuple[str, str]]:
    """Fields as cells, those inside another in columns of their own."""
    for field, value in written.items():
        inner = value if isinstance(value, dict) and all(f"{field}.{one}" in part_columns() for one in value) else {}
        if inner:
            yield from ((f"{field}.{one}", cell_of(own)) for one, own in inner.items())
        else:
            yield field, cell_of(value)


def _pipe_rows(whole: Wholes, names: set[str]) -> Iterator[dict[str, str]]:
    for pipe in whole.system.pipes:
        own = whole.outdoors(pipe)
        if names.issuperset(end.part for end in own.ends) and own.start.part != own.end.part:
            ends = path_text(whole, (own,), _AS_WRITTEN).split(f" {ARROW} ")
            told = {field: cell_of(value) for field, value in pipe_fields(whole.system, (own,)).items()}
            water = {CONTENTS: show(own.volume_m3, VOLUME, whole.system.units, WRITTEN_DIGITS)} if own.volume_m3 else {}
            yield {**dict(zip(PIPES, ends, strict=True)), **told, **water}


def _layout_rows(system: System) -> Iterator[tuple[str, str]]:
    """What is said of the layout as a whole, key and value; scenarios and acceptances as a layout's file has them."""
    rules = system.rules if isinstance(system.rules, Mapping) else {}
    yield "title", cell_of(system.title)
    yield "units", system.units
    yield "rules", system.rules if isinstance(system.rules, str) else ""
    yield from ((f"rules.{circuit.value}", name) for circuit, name in rules.items())
    yield from ((f"job.{field}", cell_of(words)) for field, words in system.job.said())
    if system.tank_sizes_m3:
        sizes = [show(size, VOLUME, system.units, WRITTEN_DIGITS) for size in system.tank_sizes_m3]
        yield "tank_sizes", inline_yaml(sizes)
    for name, scenario in system.scenarios.items():
        made = {"change": [change_fields(change) for change in scenario.change]}
        yield f"scenarios.{name}", inline_yaml({**_fields(scenario), **made})
    if system.accept:
        yield "accept", inline_yaml([_fields(acceptance) for acceptance in system.accept])


def _fields(declared: Declared) -> dict[str, object]:
    return declared.model_dump(mode="json", by_alias=True, exclude_unset=True)


def _csv(columns: Sequence[str], rows: Iterable[_Row], texts: set[str], *, semicolons: bool) -> bytes:
    """A table in CSV; the columns of `texts` hold words, in which no number is written anew."""
    written = io.StringIO()
    writer = csv.writer(written, delimiter=";" if semicolons else ",")
    writer.writerow(columns)
    for row in rows:
        cells = zip(columns, row, strict=True)
        writer.writerow([with_comma(cell) if semicolons and column not in texts else cell for column, cell in cells])
    return written.getvalue().encode("utf-8-sig")
