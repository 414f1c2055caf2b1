"""What is wrong with an assembly or what asks for one, in one sentence, raised where it is found."""

import difflib
from collections.abc import Iterable

from plumbnet.layout.model import Stop
from plumbnet.layout.yaml import nearest_known

_ALIKE = 0.5  # of difflib: numbers of rooms are short words
_FEW = 1_000
_LONGEST = 60


class Wrong(ValueError):
    """One mistake as a sentence; `path` leads from what is read to the value that is meant, `stop` is that of a run."""

    def __init__(
        self, text: str, path: tuple[str | int, ...] = (), *, at_key: bool = False, stop: Stop | None = None
    ) -> None:
        super().__init__(text)
        self.text = text
        self.path = path
        self.at_key = at_key
        self.stop = stop


def meant(word: str, known: Iterable[str]) -> str:
    """The end of a sentence that offers the known word most like the given one; "" where none is like it.

    >>> meant("tapp", ["tap", "tee"]), meant("171", ["101", "110"])
    ('; did you mean tap?', '; did you mean 110?')
    """
    names = list(known)
    found = nearest_known(word, names)
    if found is None and len(names) <= _FEW and len(word) <= _LONGEST:
        found = next(iter(difflib.get_close_matches(word, names, 1, _ALIKE)), None)
    return "" if found is None else f"; did you mean {found}?"


def cut_short(text: str) -> str:
    """What the author wrote, cut to a length that a sentence can bear."""
    return text if len(text) <= _LONGEST else f"{text[: _LONGEST - 3]}..."
