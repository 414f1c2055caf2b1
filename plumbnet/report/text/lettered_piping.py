"""A layout as a drawing in letters: from each supply along the pipes, a branch on a line of its own."""

from collections.abc import Iterator

from plumbnet.layout.model import End, Pipe, System

_ALONG = " > "
"""Between two parts, in the direction in which water normally flows."""
_MORE, _LAST, _DOWN, _PAST = "├ ", "└ ", "│ ", "  "


def piping_tree(system: System) -> tuple[str, ...]:
    """The lines of the drawing; every pipe stands in it once, and a part that stands above is named again."""
    return tuple(_Tree(system).lines())


class _Tree:
    """Draws the pipes that leave each part, depth first; a chain of parts goes on in its line."""

    def __init__(self, system: System) -> None:
        self.parts = system.parts
        self.leaving: dict[str, list[Pipe]] = {}
        for pipe in system.pipes:
            self.leaving.setdefault(pipe.start.part, []).append(pipe)
        self.drawn: set[str] = set()

    def lines(self) -> Iterator[str]:
        """From the supplies first, then from wherever no supply leads to."""
        supplies = [name for name, part in self.parts.items() if part.source() is not None]
        for name in (*supplies, *self.leaving):
            if name not in self.drawn and name in self.leaving:
                self.drawn.add(name)
                yield from self._below(*self._along(name, self._named(name)), "")

    def _below(self, name: str, line: str, margin: str) -> Iterator[str]:
        """A line that has come to a part, and all branches below it."""
        yield line
        waiting = self._branches(name, margin)
        while waiting:
            pipe, margin, is_last = waiting.pop()
            beyond, words, is_new = self._met(pipe.end)
            first = f"{margin}{_LAST if is_last else _MORE}{words}"
            end, line = self._along(beyond, first) if is_new else ("", first)
            yield line
            waiting += self._branches(end, margin + (_PAST if is_last else _DOWN))

    def _branches(self, name: str, margin: str) -> list[tuple[Pipe, str, bool]]:
        """The pipes that leave a part, the last first, each with its margin and whether it is the last."""
        pipes = self.leaving.get(name, [])
        return [(pipe, margin, pipe is pipes[-1]) for pipe in reversed(pipes)]

    def _along(self, name: str, line: str) -> tuple[str, str]:
        """The part at which a line ends that goes on as long as one pipe leaves, empty at one that stands above."""
        while len(pipes := self.leaving.get(name, [])) == 1:
            name, words, is_new = self._met(pipes[0].end)
            line += f"{_ALONG}{words}"
            if not is_new:
                return "", line
        return name, line

    def _met(self, end: End) -> tuple[str, str, bool]:
        """The part at the end of a pipe, how it is written, and whether it is met for the first time."""
        is_new = end.part not in self.drawn
        self.drawn.add(end.part)
        part = self.parts[end.part]
        plain = part.is_fitting or end.port in {part.enters_at(), part.leaves_at()} or len(part.port_names()) == 1
        port = "" if plain else f".{end.port}"
        return end.part, self._named(end.part, port) if is_new else f"{end.part}{port} (above)", is_new

    def _named(self, name: str, port: str = "") -> str:
        part = self.parts[name]
        kind = part.kind.replace("_", " ")
        return f"{name}{port}" if part.is_fitting or kind == name else f"{name}{port} ({kind})"
