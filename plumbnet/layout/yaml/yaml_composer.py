"""The events of a YAML parser to one tree of nodes, within limits that hold while reading."""

from typing import Final, NoReturn, Protocol

from yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    Event,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
    StreamEndEvent,
)

from plumbnet.layout.yaml.fault import Fault, quoted
from plumbnet.layout.yaml.node import YamlNode
from plumbnet.layout.yaml.open_collections import MERGE, Anchored, OpenList, OpenMapping
from plumbnet.layout.yaml.plain_scalar import WORDS, ScalarValues

MAX_DEPTH: Final = 40
"""Deepest nesting of mappings and lists."""
MAX_NODES: Final = 1_000_000
"""Most keys, values, mappings and lists, each alias counted with all it stands for."""
MAX_FAULTS: Final = 1_000
"""Faults after which reading stops."""

_SPLIT = "split the layout"
_UNMARKED = Fault(0, 0, "the YAML parser does not tell where it is")


class Events(Protocol):
    """What is used of a PyYAML loader."""

    def get_event(self) -> Event:
        """The next event of the text."""

    def dispose(self) -> None:
        """Let go of the parser."""


class Refused(Exception):
    """Reading cannot go on; `fault` says why."""

    def __init__(self, fault: Fault) -> None:
        super().__init__(fault)
        self.fault = fault


class YamlComposer:
    """One pass over the events of a text; holds what is open."""

    def __init__(self, events: Events, faults: list[Fault]) -> None:
        self.events = events
        self.faults = faults
        self.room = MAX_FAULTS
        self.documents = OpenList(1, 1)
        self.top: OpenList | OpenMapping = self.documents
        self.opened: list[OpenList | OpenMapping] = []
        self.anchors: dict[str, Anchored] = {}
        self.dropped: list[tuple[OpenMapping, str]] = []
        self.plain = ScalarValues(WORDS)
        self.count = 0

    def document(self) -> YamlNode:
        """The one document of the text. Raises Refused where there is none or it cannot be followed."""
        try:
            self._read()
        finally:
            self.events.dispose()
        for mapping, key in self.dropped:
            mapping.drop(key)
        if not self.documents.items:
            raise Refused(Fault(0, 0, "there is nothing in this file"))
        return self.documents.items[0]

    def _read(self) -> None:
        """Follow all events; scalars, nearly all there is, are handled here without a call for each."""
        next_event = self.events.get_event
        plain = self.plain
        while True:
            event = next_event()
            if type(event) is not ScalarEvent:
                if type(event) is StreamEndEvent:
                    return
                self._structure(event)
                continue
            start, end = event.start_mark, event.end_mark
            if start is None or end is None:
                raise Refused(_UNMARKED)
            line, column = start.line + 1, start.column + 1
            top = self.top
            self.count += 1
            if event.tag is not None or event.anchor is not None or self.count > MAX_NODES:
                self._check(event)
            text = event.value
            if top.wants_key:
                if text in top.keys or (text == MERGE and not event.style):
                    self._odd_key(text, line, column)
                top.name(text, line, column)
                continue
            width = (end.line == start.line and end.column - start.column) or 1
            top.add(YamlNode(text if event.style else plain[text], line, column, None, None, width))

    def _structure(self, event: Event) -> None:
        """Follow an event that is no scalar."""
        if isinstance(event, MappingEndEvent | SequenceEndEvent):
            self._close()
        elif isinstance(event, MappingStartEvent | SequenceStartEvent):
            self._open(event)
        elif isinstance(event, AliasEvent):
            self._alias(event)
        elif isinstance(event, DocumentStartEvent) and self.documents.items:
            self._refuse(event, "a second document begins here", "keep one layout to a file")

    def _open(self, event: MappingStartEvent | SequenceStartEvent) -> None:
        self.count += 1
        self._check(event)
        if self.top.wants_key:
            self._refuse(event, "a mapping or a list cannot be a key", "put the key in quotes")
        if len(self.opened) == MAX_DEPTH:
            self._refuse(event, f"this is nested deeper than {MAX_DEPTH} levels")
        opened = (OpenMapping if isinstance(event, MappingStartEvent) else OpenList)(*_place(event))
        if event.anchor is not None:
            opened.anchored = self.anchors[event.anchor] = Anchored(opened.node, 1 - self.count)
        self.top.add(opened.node)
        self.opened.append(self.top)
        self.top = opened

    def _close(self) -> None:
        if isinstance(self.top, OpenMapping) and MERGE in self.top.merging:
            self._merge(self.top)
        if self.top.anchored is not None:
            self.top.anchored.size += self.count
        self.top = self.opened.pop()

    def _merge(self, mapping: OpenMapping) -> None:
        """Write out what a merge key of a mapping refers to; pass over one that refers to no mapping."""
        node = mapping.items[MERGE]
        others = node.items if isinstance(node.items, list) else [node]
        if all(isinstance(one.value, dict) and isinstance(one.items, dict) for one in others):
            self.count += sum(len(one.items or ()) for one in others)
            if self.count > MAX_NODES:
                raise Refused(Fault(node.line, node.column, f"the file holds more than {MAX_NODES:,} values", _SPLIT))
            mapping.merge(others)
            return
        text = 'a merge key "<<" stands for a mapping that bears an anchor, or a list of them'
        self._fault(*mapping.keys[MERGE], text, "write <<: *name", len(MERGE))
        self.dropped.append((mapping, MERGE))

    def _alias(self, event: AliasEvent) -> None:
        name = event.anchor or ""
        anchored = self.anchors.get(name)
        if anchored is None:
            self._refuse(event, f"no anchor {quoted('&' + name)} stands before this alias")
        if anchored.size < 1:
            self._refuse(event, f"the alias {quoted('*' + name)} stands inside what it stands for")
        if self.top.wants_key:
            self._refuse(event, "an alias cannot be a key", "write the key out")
        self.count += anchored.size
        self._check(event)
        node = anchored.node
        self.top.add(YamlNode(node.value, *_place(event), node.items, node.keys, len(name) + 1))

    def _check(self, event: ScalarEvent | MappingStartEvent | SequenceStartEvent | AliasEvent) -> None:
        """Stop where the file is too large; pass over a tag with a fault; keep what an anchor names."""
        if self.count > MAX_NODES:
            self._refuse(event, f"the file holds more than {MAX_NODES:,} values", _SPLIT)
        if isinstance(event, AliasEvent):
            return
        if event.tag is not None:
            text = 'a tag (a word that begins with "!") has no meaning here'
            self._fault(*_place(event), text, "remove it, or put the value in quotes")
        if isinstance(event, ScalarEvent) and event.anchor is not None:
            value = event.value if event.style else self.plain[event.value]
            self.anchors[event.anchor] = Anchored(YamlNode(value, *_place(event)), 1)

    def _odd_key(self, key: str, line: int, column: int) -> None:
        """Pass over a key that was there before; remember a merge key until its mapping ends."""
        if key in self.top.keys:
            first = f"the first is in line {self.top.keys[key][0]}"
            self._fault(line, column, f"the key {quoted(key)} is written a second time", first, len(key))
        elif isinstance(self.top, OpenMapping):
            self.top.merging.add(key)

    def _fault(self, line: int, column: int, text: str, hint: str, width: int = 1) -> None:
        self.faults.append(Fault(line, column, text, hint, width))
        self.room -= 1
        if not self.room:
            raise Refused(Fault(line, column, "reading stops here", "there are too many faults before"))

    def _refuse(self, event: Event, text: str, hint: str = "") -> NoReturn:
        raise Refused(Fault(*_place(event), text, hint))


def _place(event: Event) -> tuple[int, int]:
    """Line and column at which the event begins."""
    mark = event.start_mark
    if mark is None:
        raise Refused(_UNMARKED)
    return mark.line + 1, mark.column + 1
