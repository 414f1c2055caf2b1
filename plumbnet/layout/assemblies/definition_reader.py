"""A part or an instance as an author declares it: `use`, `times` and `each` read, values that differ counted."""

from collections.abc import Mapping
from dataclasses import dataclass

from plumbnet.layout.assemblies.definition import Definition, WrittenAt
from plumbnet.layout.assemblies.differing import ELEVATION, Sharing, one_of, refuse_uneven, taking_of
from plumbnet.layout.assemblies.labels import RESERVED, Labels, labels_of
from plumbnet.layout.assemblies.wrong import Wrong, cut_short, meant
from plumbnet.layout.model import NAME, NAME_ADVICE, shown_value, with_article
from plumbnet.layout.units import LENGTH, QuantityError, Units, stepped
from plumbnet.layout.yaml import Plain, quoted

_OF_INSTANCE = frozenset({"use", "times", "each", "elevation"})
_NEVER = ("use", "times", "kind")


@dataclass(frozen=True, slots=True)
class DefinitionReader:
    """Reads what a body declares; `known` are the assemblies that can be used, as written."""

    units: Units
    known: Mapping[str, Plain]

    def faulty(self, name: str, value: Plain, place: WrittenAt) -> Definition:
        """A definition of which nothing is written out, with as much of it as can be read, for those that name it."""
        fields = value if isinstance(value, dict) else {}
        use = fields.get("use")
        try:
            labels = labels_of(fields["times"]) if "times" in fields else None
        except Wrong:
            labels = None
        used = use if isinstance(use, str) and use in self.known else None
        return Definition(name, place, {}, used, labels, faulty=True)

    def definition(self, name: str, value: Plain, place: WrittenAt) -> Definition:
        """A part or an instance, its values looked at as far as they are shared out. Raises Wrong."""
        if name in RESERVED:
            raise Wrong(f'"{name}" is no name for a part; {", ".join(RESERVED)} select instances or close a port')
        if not NAME.fullmatch(name):
            raise Wrong(f"{quoted(name)} is no name for a part; {NAME_ADVICE}")
        if isinstance(value, str):
            return Definition(name, place, {"kind": value})
        if not isinstance(value, dict):
            text = f"a part is a kind or a mapping with a kind, not {shown_value(value)}"
            raise Wrong(f"{text}; for example {name}: valve")
        labels = _labels(value)
        return self._instance(name, value, labels, place) if "use" in value else self._part(name, value, labels, place)

    def _part(self, name: str, value: dict[str, Plain], labels: Labels | None, place: WrittenAt) -> Definition:
        if "kind" not in value:
            raise Wrong(f"{name} needs kind or use")
        if "each" in value:
            raise Wrong(f"each gives values to the parts of an assembly, and {name} is a part", ("each",), at_key=True)
        kind = value["kind"] if isinstance(value["kind"], str) else ""
        fields = {key: own for key, own in value.items() if key != "times"}
        for key, own in fields.items():
            if key != "kind":
                self._share_out(own, labels, taking_of(kind, key), (key,))
        return Definition(name, place, fields, labels=labels)

    def _instance(self, name: str, value: dict[str, Plain], labels: Labels | None, place: WrittenAt) -> Definition:
        use = value["use"]
        if "kind" in value:
            text = f"{name} has both use and kind; an instance is of an assembly, and a part of a kind"
            raise Wrong(text, ("kind",), at_key=True)
        if not isinstance(use, str) or use not in self.known:
            text = cut_short(use) if isinstance(use, str) else shown_value(use)
            raise Wrong(f"no assembly is named {text}{meant(text, self.known)}", ("use",))
        odd = next((key for key in value if key not in _OF_INSTANCE), None)
        if odd is not None:
            text = _no_field(odd)
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
                stepped(own if isinstance(own, str | int | float) else "", 0, 1, LENGTH, self.units)
            except QuantityError as error:
                raise Wrong(f"elevation: {error}", (*at, *inside)) from None

    def _share_out(self, value: Plain, labels: Labels | None, taking: Sharing, path: tuple[str, ...]) -> None:
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
                text = f"assembly {use} has no part {cut_short(name)}{meant(name, inside)}"
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
                text = _no_field(odd)
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
            taking = taking_of(kind if isinstance(kind, str) else "", key)
            taking = Sharing(f"{name} {taking.what}", taking.dimension, taking.inside, taking.is_list)
            self._share_out(own, labels, taking, (*path, key))


def _labels(value: dict[str, Plain]) -> Labels | None:
    """The labels that `times` gives. Raises Wrong."""
    if "times" not in value:
        return None
    try:
        return labels_of(value["times"])
    except Wrong as wrong:
        raise Wrong(wrong.text, ("times",)) from None


def _no_field(key: str) -> str:
    field = cut_short(key)
    return f"{field} is no field of an instance; say it of a part inside: each: {{PART: {{{field}: ...}}}}"
