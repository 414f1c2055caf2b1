"""The values of a file to the bodies in it: the layout's own parts and its assemblies, with what is wrong told."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from plumbnet.layout.assemblies.definition import Body, Definition, Place
from plumbnet.layout.assemblies.differing import ELEVATION, Taking, one_of, refuse_uneven, taking_of
from plumbnet.layout.assemblies.labels import RESERVED, Labels, labels_of
from plumbnet.layout.assemblies.told_once import ToldOnce
from plumbnet.layout.assemblies.wrong import Wrong, meant, shortened
from plumbnet.layout.model import NAME, NAME_ADVICE, shown_value, with_article
from plumbnet.layout.units import LENGTH, QuantityError, Units, counted_on
from plumbnet.layout.yaml import Plain, quoted

ASSEMBLIES, CHANGE = "assemblies", "change"
_KEYS = ("ports", "parts", "runs", CHANGE, "note")
_OF_INSTANCE = frozenset({"use", "times", "each", "elevation"})
_NEVER = ("use", "times", "kind")
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

    def body(self, name: str, value: Mapping[str, Plain], at: Place) -> Body:
        """An assembly, or the layout itself where the name is ""."""
        parts = value.get("parts")
        ports, places = self._ports(name, value.get("ports"), at.under("ports")) if name else ({}, {})
        return Body(
            name=name,
            at=at,
            parts=dict(self._definitions(name, parts if isinstance(parts, dict) else {}, at.under("parts"))),
            ports=ports,
            port_places=places,
            runs=self._list(name, value, "runs", at),
            change=self._list(name, value, CHANGE, at),
        )

    def assembly(self, name: str, value: Plain, at: Place) -> Body:
        """An assembly with its keys looked at."""
        if not NAME.fullmatch(name):
            self._tell(name, at, f"{quoted(name)} is no name for an assembly; {NAME_ADVICE}", at_key=True)
        if not isinstance(value, dict):
            self._tell(name, at, f"an assembly is a mapping of ports, parts and runs, not {shown_value(value)}")
            return Body(name, at)
        for key in value:
            if key not in _KEYS:
                text = f"{shortened(key)} is no key of an assembly; use {', '.join(_KEYS)}"
                self._tell(name, at.under(key), text, at_key=True)
        if not value.get("ports"):
            self._tell(name, at, f"assembly {name} has no ports, so nothing can be joined to it", at_key=True)
        if not isinstance(value.get("parts", {}), dict):
            self._tell(name, at.under("parts"), f"parts: a mapping is wanted here, not {shown_value(value['parts'])}")
        if not isinstance(value.get("note", ""), str):
            self._tell(name, at.under("note"), f"note: a text is wanted here, not {shown_value(value['note'])}")
        return self.body(name, value, at)

    def _tell(self, body: str, place: Place, text: str, *, at_key: bool = False) -> None:
        self.told.tell_of(body, place, text, at_key=at_key)

    def _list(self, name: str, value: Mapping[str, Plain], key: str, at: Place) -> tuple[Plain, ...]:
        written = value.get(key, [])
        if isinstance(written, list):
            return tuple(written)
        if name or key == CHANGE:
            self._tell(name, at.under(key), f"{key}: a list is wanted here, not {shown_value(written)}")
        return ()

    def _ports(self, name: str, value: Plain, at: Place) -> tuple[dict[str, str], dict[str, Place]]:
        """Ports by name, and where each is written; a list says that each bears the name of a part inside."""
        pairs: Iterator[tuple[Plain, Plain, Place]]
        if isinstance(value, dict):
            pairs = ((port, target, at.under(port)) for port, target in value.items())
        elif isinstance(value, list):
            pairs = ((port, port, at.under(index)) for index, port in enumerate(value))
        else:
            if value:
                self._tell(name, at, f"ports: a list or a mapping is wanted here, not {shown_value(value)}")
            return {}, {}
        ports: dict[str, str] = {}
        places: dict[str, Place] = {}
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

    def _definitions(self, body: str, parts: Mapping[str, Plain], at: Place) -> Iterator[tuple[str, Definition]]:
        for name, value in parts.items():
            place = at.under(name)
            try:
                yield name, self._definition(name, value, place)
            except Wrong as wrong:
                at_key = wrong.at_key or not wrong.path
                self._tell(body, place.under(*wrong.path), wrong.text, at_key=at_key)
                yield name, self._faulty(name, value, place)

    def _faulty(self, name: str, value: Plain, place: Place) -> Definition:
        """A definition of which nothing is written out, with as much of it as can be read, for those that name it."""
        fields = value if isinstance(value, dict) else {}
        use = fields.get("use")
        try:
            labels = labels_of(fields["times"]) if "times" in fields else None
        except Wrong:
            labels = None
        used = use if isinstance(use, str) and use in self.known else None
        return Definition(name, place, {}, used, labels, faulty=True)

    def _definition(self, name: str, value: Plain, place: Place) -> Definition:
        if name in RESERVED:
            raise Wrong(f'"{name}" is no name for a part; {", ".join(RESERVED)} select instances or close a port')
        if not NAME.fullmatch(name):
            raise Wrong(f"{quoted(name)} is no name for a part; {NAME_ADVICE}")
        if isinstance(value, str):
            return Definition(name, place, {"kind": value})
        if not isinstance(value, dict):
            raise Wrong(
                f"a part is a kind or a mapping with a kind, not {shown_value(value)}; for example {name}: valve"
            )
        labels = None
        if "times" in value:
            try:
                labels = labels_of(value["times"])
            except Wrong as wrong:
                raise Wrong(wrong.text, ("times",)) from None
        if "use" in value:
            return self._instance(name, value, labels, place)
        if "kind" not in value:
            raise Wrong(f"{name} needs kind or use")
        if "each" in value:
            raise Wrong(f"each gives values to the parts of an assembly, and {name} is a part", ("each",), at_key=True)
        fields = {key: own for key, own in value.items() if key != "times"}
        kind = value["kind"] if isinstance(value["kind"], str) else ""
        for key, own in fields.items():
            if key != "kind":
                self._share_out(own, labels, ELEVATION if key == "elevation" else taking_of(kind, key), (key,))
        return Definition(name, place, fields, labels=labels)

    def _instance(self, name: str, value: dict[str, Plain], labels: Labels | None, place: Place) -> Definition:
        use = value["use"]
        if "kind" in value:
            raise Wrong(
                f"{name} has both use and kind; an instance is of an assembly, and a part of a kind",
                ("kind",),
                at_key=True,
            )
        if not isinstance(use, str) or use not in self.known:
            text = shortened(use) if isinstance(use, str) else shown_value(use)
            raise Wrong(f"no assembly is named {text}{meant(text, self.known)}", ("use",))
        odd = next((key for key in value if key not in _OF_INSTANCE), None)
        if odd is not None:
            text = f"{shortened(odd)} is no field of an instance; say it of a part inside: each: {{PART: {{{shortened(odd)}: ...}}}}"
            raise Wrong(text, (odd,), at_key=True)
        fields = {key: own for key, own in value.items() if key == "elevation"}
        self._look_at_elevation(fields, labels, ())
        each = self._each(use, value.get("each", {}), labels)
        return Definition(name, place, fields, use, labels, each)

    def _look_at_elevation(self, fields: Mapping[str, Plain], labels: Labels | None, path: tuple[str, ...]) -> None:
        """Raises Wrong for heights of instances that cannot be shared out, or are no heights."""
        if "elevation" not in fields:
            return
        value, at = fields["elevation"], (*path, "elevation")
        self._share_out(value, labels, ELEVATION, at)
        for k in range(len(value) if isinstance(value, list) else 1):
            own, inside = one_of(value, k, ELEVATION, self.units)
            try:
                counted_on(own if isinstance(own, str | int | float) else "", 0, 1, LENGTH, self.units)
            except QuantityError as error:
                raise Wrong(f"elevation: {error}", (*at, *inside)) from None

    def _share_out(self, value: Plain, labels: Labels | None, taking: Taking, path: tuple[str, ...]) -> None:
        try:
            refuse_uneven(value, None if labels is None else len(labels), taking, self.units)
        except Wrong as wrong:
            raise Wrong(wrong.text, (*path, *wrong.path)) from None

    def _each(self, use: str, value: Plain, labels: Labels | None) -> dict[str, Mapping[str, Plain]]:
        """What an instance gives the parts inside. Raises Wrong."""
        if not isinstance(value, dict):
            raise Wrong("each is a mapping of parts inside, each with its values", ("each",))
        assembly = self.known[use]
        parts = assembly.get("parts") if isinstance(assembly, dict) else None
        inside = parts if isinstance(parts, dict) else {}
        found: dict[str, Mapping[str, Plain]] = {}
        for name, fields in value.items():
            path = ("each", name)
            if name not in inside:
                text = f"assembly {use} has no part {shortened(name)}{meant(name, inside)}"
                raise Wrong(text, path, at_key=True)
            if not isinstance(fields, dict):
                raise Wrong(f"{name}: a mapping of values is wanted here, not {shown_value(fields)}", path)
            self._look_at_each(name, inside[name], fields, labels, path)
            found[name] = fields
        return found

    def _look_at_each(
        self, name: str, inside: Plain, fields: Mapping[str, Plain], labels: Labels | None, path: tuple[str, ...]
    ) -> None:
        never = next((key for key in fields if key in _NEVER), None)
        if never is not None:
            raise Wrong(f"each cannot change {never} of {name}; write another assembly", (*path, never), at_key=True)
        written = {"kind": inside} if isinstance(inside, str) else inside if isinstance(inside, dict) else {}
        use, kind = written.get("use"), written.get("kind")
        if isinstance(use, str) and use in self.known:
            odd = next((key for key in fields if key not in {"each", "elevation"}), None)
            if odd is not None:
                text = f"{shortened(odd)} is no field of an instance; say it of a part inside: each: {{PART: {{{shortened(odd)}: ...}}}}"
                raise Wrong(text, (*path, odd), at_key=True)
            self._look_at_elevation(fields, labels, path)
            try:
                self._each(use, fields.get("each", {}), labels)
            except Wrong as wrong:
                raise Wrong(wrong.text, (*path, *wrong.path), at_key=wrong.at_key) from None
            return
        if "each" in fields:
            article = with_article(kind) if isinstance(kind, str) else "a part"
            raise Wrong(f"each gives values to the parts of an assembly, and {name} is {article}", (*path, "each"))
        for key, own in fields.items():
            taking = ELEVATION if key == "elevation" else taking_of(kind if isinstance(kind, str) else "", key)
            taking = Taking(f"{name} {taking.what}", taking.dimension, taking.inside, taking.is_list)
            self._share_out(own, labels, taking, (*path, key))
