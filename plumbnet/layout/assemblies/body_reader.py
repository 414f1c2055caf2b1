"""The values of a file to the bodies in it: the layout's own parts and its assemblies, with what is wrong told."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from plumbnet.layout.assemblies.definition import AssemblyBody, Definition, WrittenAt
from plumbnet.layout.assemblies.definition_reader import DefinitionReader
from plumbnet.layout.assemblies.told_once import ToldOnce
from plumbnet.layout.assemblies.wrong import Wrong, cut_short
from plumbnet.layout.model import NAME, NAME_ADVICE, shown_value
from plumbnet.layout.units import Units
from plumbnet.layout.yaml import Plain, quoted

ASSEMBLIES, CHANGE = "assemblies", "change"
_KEYS = ("ports", "parts", "runs", CHANGE, "note")
_PORT = re.compile(r"\w(?:[\w-]{0,58}\w)?")
_TARGET = re.compile(r"[^/.]+(?:/[^/.]+)?(?:\.\w[\w-]*)?")


def has_assemblies(value: Mapping[str, Plain]) -> bool:
    """Whether a layout says anything that has to be written out."""
    if ASSEMBLIES in value or CHANGE in value:
        return True
    parts = value.get("parts")
    return isinstance(parts, dict) and any(
        isinstance(part, dict) and ("times" in part or "use" in part or "each" in part) for part in parts.values()
    )


@dataclass(slots=True)
class BodyReader:
    """Reads bodies; `known` has the assemblies that can be used, once `assemblies` has found their names."""

    told: ToldOnce
    units: Units
    known: dict[str, Plain]

    def body(self, name: str, value: Mapping[str, Plain], at: WrittenAt) -> AssemblyBody:
        """An assembly, or the layout itself where the name is ""."""
        parts = value.get("parts")
        ports, places = self._ports(name, value.get("ports"), at.under("ports")) if name else ({}, {})
        return AssemblyBody(
            name=name,
            at=at,
            parts=dict(self._definitions(name, parts if isinstance(parts, dict) else {}, at.under("parts"))),
            ports=ports,
            port_places=places,
            runs=self._list(name, value, "runs", at),
            change=self._list(name, value, CHANGE, at),
        )

    def assembly(self, name: str, value: Plain, at: WrittenAt) -> AssemblyBody:
        """An assembly with its keys looked at."""
        if not NAME.fullmatch(name):
            self._tell(name, at, f"{quoted(name)} is no name for an assembly; {NAME_ADVICE}", at_key=True)
        if not isinstance(value, dict):
            self._tell(name, at, f"an assembly is a mapping of ports, parts and runs, not {shown_value(value)}")
            return AssemblyBody(name, at)
        for key in value:
            if key not in _KEYS:
                text = f"{cut_short(key)} is no key of an assembly; use {', '.join(_KEYS)}"
                self._tell(name, at.under(key), text, at_key=True)
        if not value.get("ports"):
            self._tell(name, at, f"assembly {name} has no ports, so nothing can be joined to it", at_key=True)
        if not isinstance(value.get("parts", {}), dict):
            self._tell(name, at.under("parts"), f"parts: a mapping is wanted here, not {shown_value(value['parts'])}")
        if not isinstance(value.get("note", ""), str):
            self._tell(name, at.under("note"), f"note: a text is wanted here, not {shown_value(value['note'])}")
        return self.body(name, value, at)

    def _tell(self, body: str, place: WrittenAt, text: str, *, at_key: bool = False) -> None:
        self.told.tell_of(body, place, text, at_key=at_key)

    def _list(self, name: str, value: Mapping[str, Plain], key: str, at: WrittenAt) -> tuple[Plain, ...]:
        written = value.get(key, [])
        if isinstance(written, list):
            return tuple(written)
        if name:
            self._tell(name, at.under(key), f"{key}: a list is wanted here, not {shown_value(written)}")
        return ()

    def _ports(self, name: str, value: Plain, at: WrittenAt) -> tuple[dict[str, str], dict[str, WrittenAt]]:
        """Ports by name, and where each is written; a list says that each bears the name of a part inside."""
        pairs: Iterator[tuple[Plain, Plain, WrittenAt]]
        if isinstance(value, dict):
            pairs = ((port, target, at.under(port)) for port, target in value.items())
        elif isinstance(value, list):
            pairs = ((port, port, at.under(index)) for index, port in enumerate(value))
        else:
            if value:
                self._tell(name, at, f"ports: a list or a mapping is wanted here, not {shown_value(value)}")
            return {}, {}
        ports: dict[str, str] = {}
        places: dict[str, WrittenAt] = {}
        for port, target, place in pairs:
            if not isinstance(port, str) or not _PORT.fullmatch(port) or not isinstance(target, str):
                self._tell(name, place, "a port is a name, and the part inside at which it is, as hot: stop.in")
            elif port in ports:
                self._tell(name, place, f"the port {port} is named a second time")
            elif not _TARGET.fullmatch(target):
                self._tell(name, place, f"port {port}: {quoted(target)} is no port of a part inside, as stop.in")
            else:
                ports[port], places[port] = target, place
        return ports, places

    def _definitions(self, body: str, parts: Mapping[str, Plain], at: WrittenAt) -> Iterator[tuple[str, Definition]]:
        definitions = DefinitionReader(self.units, self.known)
        for name, value in parts.items():
            place = at.under(name)
            try:
                yield name, definitions.definition(name, value, place)
            except Wrong as wrong:
                at_key = wrong.at_key or not wrong.path
                self._tell(body, place.under(*wrong.path), wrong.text, at_key=at_key)
                yield name, definitions.faulty(name, value, place)
