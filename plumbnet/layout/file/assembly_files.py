"""Files that bring assemblies to a layout: what is in each, and what is wrong with it, told as its own."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from plumbnet.layout.assemblies import ASSEMBLIES, TextSource
from plumbnet.layout.file.document import FORMAT
from plumbnet.layout.file.fault_collector import FaultCollector
from plumbnet.layout.model import AssemblyFile, Mistake, Stop, shown_value
from plumbnet.layout.yaml import Fault, LayoutError, YamlNode, decode, nearest, parse_yaml, quoted, split_lines

_KEYS = ("plumbnet", "title", ASSEMBLIES)


@dataclass(slots=True)
class Shelf:
    """The files as they are read, each with the faults found in it."""

    files: Sequence[AssemblyFile]
    read: list[tuple[FaultCollector, str]] = field(default_factory=list)

    @classmethod
    def of(cls, files: Sequence[AssemblyFile]) -> "Shelf":
        """The files read. Raises LayoutError for one that cannot be followed."""
        shelf = cls(files)
        for file in files:
            faults: list[Fault] = []
            text = decode(file.data, faults)
            root = None if text is None else parse_yaml(text, faults)
            if text is None or root is None or faults:
                raise LayoutError(file.file, faults, text or "")
            collector = FaultCollector(root, faults, split_lines(text))
            _look_at_top(root, collector)
            if faults:
                raise LayoutError(file.file, faults, text)
            shelf.read.append((collector, text))
        return shelf

    def sources(self) -> list[TextSource]:
        """What is in the files."""
        return [TextSource(file.file, told.root) for file, (told, _) in zip(self.files, self.read, strict=True)]

    def tell(self, number: int, mistake: Mistake, stop: Stop | None) -> None:
        """What is wrong in one of the files."""
        collector, _ = self.read[number]
        if stop is None:
            collector.tell(mistake)
        else:
            collector.tell_of_stop(mistake, stop)

    def error(self) -> LayoutError | None:
        """What is wrong with the files, if anything is."""
        found: LayoutError | None = None
        for file, (told, text) in zip(self.files, self.read, strict=True):
            if told.faults:
                found = LayoutError(file.file, told.faults, text, found)
        return found


def _look_at_top(root: YamlNode, told: FaultCollector) -> None:
    """Tell of what is no file of assemblies."""
    top = root.value
    if not isinstance(top, dict) or ASSEMBLIES not in top:
        told.tell(
            Mistake((), "a file of assemblies is a mapping with the key assemblies", "for example assemblies: {}")
        )
        return
    version = top.get("plumbnet", FORMAT)
    if version != FORMAT or isinstance(version, bool):
        text = f"this program reads format {FORMAT} of the file, not {shown_value(version)}"
        told.tell(Mistake(("plumbnet",), text, f"write plumbnet: {FORMAT}"))
    for key in top:
        if key not in _KEYS:
            hint = nearest(key, _KEYS) or f"its fields are {', '.join(_KEYS)}"
            told.tell(Mistake((key,), f"a file of assemblies has no field {quoted(key)}", hint, at_key=True))
