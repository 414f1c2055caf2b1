"""Mistakes in a layout file, each with its place, to one text that shows where and what would be right."""

import difflib
import re
import string
import unicodedata
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

MOST_SHOWN = 50
"""Faults written out in full; the rest are only counted."""

_WINDOW = 100  # columns of a long line that are shown round the caret
_LONGEST_WORD = 60  # characters quoted of what the author wrote, and the longest word a name is looked for
_FEW = 1_000  # words that are worth comparing one by one
_MOST_LIKE = 8  # close names that are looked at
_WORD = re.compile("[a-z]{3,}")
_ALIKE = 0.5  # of difflib, from 0 to 1: "mixer" and "mixing" are, "balancing" and "mixing" are not
_LETTERS = string.ascii_lowercase + string.digits + "_-./"
_LINE_BREAK = re.compile("\r\n|[\r\n\x85\u2028\u2029]")  # YAML 1.1, section 4.2; str.splitlines knows others


@dataclass(frozen=True, slots=True, order=True)
class Fault:
    """One mistake: where it stands, what is wrong, what would be right.

    `line` and `column` count characters from 1; line 0 means the file as a whole. `text` and `hint` may quote
    the file as it is: whoever shows them passes them through `visible`.

    >>> Fault(3, 5, 'unknown kind "tea"', 'did you mean "tee"?').sentence
    'unknown kind "tea": did you mean "tee"?'
    """

    line: int
    column: int
    text: str
    hint: str = ""
    width: int = 1

    @property
    def sentence(self) -> str:
        """Text and hint in one, a question behind a colon, advice behind a semicolon."""
        if not self.hint:
            return self.text
        return f"{self.text}{': ' if self.hint.endswith('?') else '; '}{self.hint}"


class LayoutError(Exception):
    """Every mistake of one file; `str()` shows each under its line of the file.

    `faults` are sorted by place and free of duplicates; `lines` is the text of the file as YAML counts lines,
    empty where the file is no text. `because` tells of another file on which this one rests, and is shown below.
    """

    def __init__(
        self, file: str, faults: Iterable[Fault], source: str = "", because: "LayoutError | None" = None
    ) -> None:
        self.file = file
        self.faults = tuple(sorted(set(faults)))
        self.lines = split_lines(source) if source else ()
        self.because = because
        super().__init__(file, self.faults, source, because)

    def __str__(self) -> str:
        shown = [line for fault in self.faults[:MOST_SHOWN] for line in self._shown(fault)]
        left = len(self.faults) - MOST_SHOWN
        more = [f"and {left} more"] if left > 0 else []
        return "\n".join([*shown, *more, *([] if self.because is None else [str(self.because)])])

    def _shown(self, fault: Fault) -> Iterator[str]:
        place = f"{self.file}:{fault.line}:{fault.column}" if fault.line else self.file
        yield f"{visible(place)}: {visible(fault.sentence)}"
        if 0 < fault.line <= len(self.lines):
            number = f"  {fault.line} | "
            excerpt, caret = _excerpt(self.lines[fault.line - 1], max(fault.column, 1) - 1, fault.width)
            yield (number + excerpt).rstrip()
            yield f"{'| ':>{len(number)}}{caret}"


def split_lines(text: str) -> tuple[str, ...]:
    """The lines of a text as YAML counts them; `str.splitlines` also breaks at characters YAML refuses."""
    return tuple(_LINE_BREAK.split(text))


def end_of(lines: Sequence[str]) -> tuple[int, int]:
    """Line and column behind the last character that is no space.

    >>> end_of(("plumbnet: 1", "---  ", ""))
    (2, 4)
    """
    written = [number for number, line in enumerate(lines, 1) if line.strip()] or [1]
    return written[-1], len(lines[written[-1] - 1].rstrip()) + 1


def visible(text: str) -> str:
    r"""The text with everything that does not print written as a backslash escape.

    Control characters, terminal sequences, marks that turn the reading direction, odd spaces, lone surrogates:
    what `str.isprintable` denies (Unicode categories C and Z but for the space; bidirectional controls are Cf).

    >>> print(visible("clear \x1b[2J, turned \u202e, 140 °F"))
    clear \x1b[2J, turned \u202e, 140 °F
    """
    if text.isprintable():
        return text
    return "".join(c if c.isprintable() else c.encode("unicode_escape").decode("ascii") for c in text)


def reason_of(error: OSError) -> str:
    """Why a file could not be opened or written, as the end of a sentence.

    >>> reason_of(FileNotFoundError(2, "No such file or directory"))
    'no such file or directory'
    """
    reason = error.strerror or str(error)
    return f"{reason[:1].lower()}{reason[1:]}"


def quoted(text: str) -> str:
    """What the author wrote in double quotes, cut to a length a sentence can bear.

    >>> quoted("chek_valve")
    '"chek_valve"'
    """
    return f'"{text}"' if len(text) <= _LONGEST_WORD else f'"{text[: _LONGEST_WORD - 3]}..."'


def nearest(word: str, known: Iterable[str]) -> str:
    """A question that offers the known word most like the given one, or "" if none is like it.

    Case is passed over. Of two names of several words, words that both have say nothing: one that is left of the first
    must be like one that is left of the second. Among more than 1,000 known words only those one slip away are found,
    since comparing with each would cost more than it helps; 100,000 known words cost about 50 ms.

    >>> nearest("chek_valve", ["tee", "check_valve"])
    'did you mean "check_valve"?'
    >>> nearest("spaceship", ["tee", "check_valve"])
    ''
    >>> nearest("throttling_valve", ["mixing_valve"])  # another sort of valve, not a slip
    ''
    """
    found = nearest_known(word, known)
    return "" if found is None else f"did you mean {quoted(found)}?"


def nearest_known(word: str, known: Iterable[str]) -> str | None:
    """The known word that `nearest` offers; None if none is like the given one."""
    if len(word) > _LONGEST_WORD:
        return None
    folded = {name.casefold(): name for name in sorted(known, reverse=True) if len(name) <= _LONGEST_WORD}
    word = word.casefold()
    candidates = sorted(_slips(word) & folded.keys()) if len(folded) > _FEW else folded
    close = difflib.get_close_matches(word, candidates, n=_MOST_LIKE)
    return next((folded[name] for name in close if _may_be_meant(word, name)), None)


def _may_be_meant(word: str, name: str) -> bool:
    """Whether a word that one has and the other has not is like one that the other has; letters alone count."""
    given, known = (set(_WORD.findall(each)) for each in (word, name))
    rest, other = sorted(given - known), sorted(known - given)
    if not rest or not other:
        return True
    return any(difflib.SequenceMatcher(None, one, two).ratio() >= _ALIKE for one in rest for two in other)


def _slips(word: str) -> set[str]:
    """The word itself and every word that a letter left out, added, changed or swapped makes of it."""
    cuts = [(word[:at], word[at:]) for at in range(len(word) + 1)]
    changed = {head + letter + tail[gone:] for head, tail in cuts for letter in _LETTERS for gone in (0, 1)}
    swapped = {head + tail[1::-1] + tail[2:] for head, tail in cuts if len(tail) > 1}
    return changed | swapped | {head + tail[1:] for head, tail in cuts} | {word}


def _excerpt(line: str, at: int, width: int) -> tuple[str, str]:
    """The line as shown, cut to the window, and the caret line that belongs under it."""
    at = min(at, len(line))
    after = _fitting(line[at : at + _WINDOW], _WINDOW)
    before = _fitting(line[max(at - _WINDOW, 0) : at][::-1], _WINDOW - min(_cells(after), _WINDOW // 2))[::-1]
    after = _fitting(after, _WINDOW - _cells(before))
    head = "..." if len(before) < at else ""
    tail = "..." if at + len(after) < len(line) else ""
    caret = " " * (len(head) + _cells(before)) + "^" + "~" * (_cells(after[:width]) - 1)
    return f"{head}{visible(before)}{visible(after)}{tail}", caret


def _fitting(text: str, room: int) -> str:
    """The longest beginning of the text that fits into so many columns."""
    for length, character in enumerate(text):
        room -= _cells(character)
        if room < 0:
            return text[:length]
    return text


def _cells(text: str) -> int:
    """Columns a terminal gives to the text once it is made visible (Unicode Standard Annex 11)."""
    return sum(map(_cell, visible(text)))


def _cell(character: str) -> int:
    if unicodedata.category(character) in {"Mn", "Me"}:
        return 0
    return 2 if unicodedata.east_asian_width(character) in {"W", "F"} else 1
