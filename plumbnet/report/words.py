"""Small phrases that several reports share: lists of names, where a device sits, what a kind is called."""

from collections.abc import Iterable

from plumbnet.layout.system import Pipe, System


def listed(names: Iterable[str]) -> str:
    """Names as a person lists them.

    >>> listed(["a", "b", "c"])
    'a, b and c'
    """
    *first, last = [*names] or ["nothing"]
    return f"{', '.join(first)} and {last}" if first else last


def spoken(kind: str) -> str:
    """A kind with its article.

    >>> spoken("open_tank")
    'an open tank'
    """
    words = kind.replace("_", " ")
    return f"{'an' if words[0] in 'aeiou' else 'a'} {words}"


def where(system: System, name: str) -> str:
    """A part with the parts that the pipes at it lead to, as "meter (between street and stop)"."""
    near = [pipe.start.part if pipe.end.part == name else pipe.end.part for pipe in _pipes_at(system, name)]
    return f"{name} (between {listed(near)})" if near else name


def _pipes_at(system: System, name: str) -> list[Pipe]:
    return [pipe for pipe in system.pipes if name in (pipe.start.part, pipe.end.part)]
