"""A number of the layout in, where it came from out: a line of the file, a change to it, a default, a tube table."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import PurePath

from plumbnet.layout.model import Part, Pipe, System, said_of
from plumbnet.layout.units import LENGTH, PASCAL_PER_METRE, PRESSURE, VOLUME, Dimension, Units, show, tube
from plumbnet.layout.units import parse_measure as parse_quantity
from plumbnet.layout.yaml import YamlNode, parse_yaml
from plumbnet.network.loops import Piece

_DIGITS = 6
"""Of a number in a sentence that a reader may work with."""


@dataclass
class Provenance:
    """Where the numbers of a system came from, in words; quantities in `units`."""

    system: System
    units: Units

    def field(self, part: str, *fields: str) -> str:
        """Where a part has its value from, for the first of these fields that its kind knows."""
        known = {info.alias or name for name, info in type(self.system.parts[part]).model_fields.items()}
        name = next((each for each in fields if each in known), None)
        return self._line(self.system.line_of(part)) if name is None else self._field(part, name)

    def piece(self, piece: Piece) -> tuple[str, str]:
        """What holds a piece of heated water, and where its volume comes from."""
        kind, _, number = piece.name.partition(" ")
        if kind == "pipe" and number:
            pipe = self.system.pipes[int(number)]
            return f"pipe {pipe.name}", self.pipe(pipe)
        part, _, port = piece.name.rpartition(".")
        side = port.partition("_")[0]
        name = part if port == side or side not in {"coil", "primary"} else f"{part}, {side}"
        return name, self.field(part, f"{side}_volume", "volume")

    def pipe(self, pipe: Pipe) -> str:
        """Where the water in a pipe comes from: a volume as written, or length and tube."""
        line = self._line(pipe.line)
        if pipe.tube is None or pipe.length_m is None:
            return line
        bore = tube(pipe.tube)
        if abs(bore.volume_m3_per_m * pipe.length_m - pipe.volume_m3) > _SAME * pipe.volume_m3:
            return line  # its author wrote the volume
        length, each = self._length(pipe.length_m), self._each(bore.volume_m3_per_m, VOLUME)
        return f"{line}: {length} at {each}, {bore.material} {bore.size} by {bore.source}"

    def column(self, upper: str, lower: str, head_pa: float) -> str:
        """Where a column of water between two parts comes from."""
        water, each = self._length(abs(head_pa) / PASCAL_PER_METRE), self._each(PASCAL_PER_METRE, PRESSURE)
        return f"computed: {water} of water at {each}, from {upper} down to {lower}"

    def _length(self, length_m: float) -> str:
        return show(length_m, LENGTH, self.units, _DIGITS)

    def _each(self, per_metre: float, dimension: Dimension) -> str:
        """So much for each metre or foot."""
        metres, unit = (_FOOT_M, LENGTH.us) if self.units == "us" else (1.0, LENGTH.metric)
        return f"{show(per_metre * metres, dimension, self.units, _DIGITS)}/{unit}"

    def _field(self, part: str, name: str) -> str:
        owner, _, fixed = (part, "", "") if part in self.system.written else part.rpartition("/")
        path = (fixed, name) if fixed else (name,)
        if fixed and self._is_alone(owner, fixed) and name not in self.system.parts[part].unsaid():
            path = (fixed,)
        written = _at(self.system.written.get(owner), path)
        if written is _NOTHING:
            words = self.system.parts[part].assumed.get(name)
            return f"default: it {words}" if words else f"default{_said(self.system.parts[part], name)}"
        node = self._node(("parts", owner, *path))
        if node is not None and node.value == written:
            return self._line(node.line)
        return self._line(self.system.line_of(part) if "/" in owner else 0)

    def _is_alone(self, owner: str, field: str) -> bool:
        """Whether of what is written inside a part one value stands there by itself, as the pressure of a relief."""
        return not isinstance(self.system.written.get(owner, {}).get(field, {}), Mapping)

    def _line(self, line: int) -> str:
        file = PurePath(self.system.record.file).name
        return f"line {line} of {file}" if line else f"a change to {file}"

    def _node(self, path: tuple[str, ...]) -> YamlNode | None:
        node = self._root
        for key in path:
            if node is None or not isinstance(node.items, dict):
                return None
            node = node.items.get(key)
        return node

    @cached_property
    def _root(self) -> YamlNode | None:
        return parse_yaml(self.system.record.text, [])


_NOTHING = object()
_SAME = 1e-9  # relative: what conversion to SI leaves
_FOOT_M = parse_quantity("1 ft", LENGTH, None)


def _at(value: object, path: tuple[str, ...]) -> object:
    for key in path:
        if not isinstance(value, Mapping) or key not in value:
            return _NOTHING
        value = value[key]
    return value


def _said(part: Part, name: str) -> str:
    """What the declaration says of a field whose default has no words of its own."""
    for field, info in type(part).model_fields.items():
        said = said_of(type(part)).get(field)
        if (info.alias or field) == name and said:
            return f": {said.partition(';')[0].rstrip('.').lower()}"
    return ""
