"""A page of HTML as a test reads it: its elements, their attributes and words, and whether its tags are balanced."""

from dataclasses import dataclass, field
from html.parser import HTMLParser

VOID = frozenset({"meta", "br", "link", "img", "hr", "input"})


@dataclass
class Element:
    """An element with its attributes, the words in it and below, and the element it stands in."""

    tag: str
    attributes: dict[str, str]
    parent: "Element | None" = None
    words: str = ""

    def inside(self, tag: str) -> bool:
        """Whether an element of that tag is round it."""
        return self.parent is not None and (self.parent.tag == tag or self.parent.inside(tag))


@dataclass
class Reading(HTMLParser):
    """Reads a page; `faults` are tags that do not match."""

    text: str
    elements: list[Element] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)
    _open: list[Element] = field(default_factory=list)

    def __post_init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.feed(self.text)
        self.close()
        self.faults += [f"<{each.tag}> stays open" for each in self._open]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = [name for name, _ in attrs]
        self.faults += [f"{name} twice in <{tag}>" for name in set(names) if names.count(name) > 1]
        element = Element(tag, {name: value or "" for name, value in attrs}, self._open[-1] if self._open else None)
        self.elements.append(element)
        if tag not in VOID:
            self._open.append(element)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self._open.pop()

    def handle_endtag(self, tag: str) -> None:
        if not self._open or self._open[-1].tag != tag:
            self.faults.append(f"</{tag}> in {[each.tag for each in self._open]}")
            return
        self._open.pop()

    def handle_data(self, data: str) -> None:
        for each in self._open:
            each.words += data

    def all(self, *tags: str) -> list[Element]:
        """The elements of some tags, in order."""
        return [each for each in self.elements if each.tag in tags]
