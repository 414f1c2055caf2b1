"""The bytes of layouts to bytes that are nearly one: cut, spliced, doubled, with odd words set in."""

import re
from collections.abc import Callable, Sequence
from random import Random
from typing import Final

from fuzzing.odd import BYTES, CONTROLS, NAMES, NUMBERS, TOKENS, UNITS, WORDS

ENCODINGS: Final = ("utf-16", "utf-16-be", "utf-32", "latin-1", "cp1252", "utf-7")
_WORD = re.compile(rb"[A-Za-z0-9_.%/-]+")
_NUMBER = re.compile(rb"[0-9][0-9.,]*")
_NAME = re.compile(rb"(?m)^  ([a-z][\w-]*):")


def mutated(random: Random, layouts: Sequence[bytes]) -> bytes:
    """One of the layouts after a few random changes, most of them small enough that the reader gets far."""
    data = random.choice(layouts)
    for _ in range(random.choice((1, 1, 1, 2, 2, 3, 6))):
        data = random.choice(CHANGES)(random, data, layouts)
    return data


def _cut(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    start, end = _span(random, data)
    return data[:start] + data[end:]


def _cut_line(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    lines = data.splitlines(keepends=True)
    if lines:
        del lines[random.randrange(len(lines))]
    return b"".join(lines)


def _shorten(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    return data[: random.randrange(len(data) + 1)]


def _double(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    start, end = _span(random, data)
    return data[:end] + data[start:end] * random.choice((1, 1, 1, 2, 30)) + data[end:]


def _double_line(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    lines = data.splitlines(keepends=True)
    if lines:
        lines.insert(random.randrange(len(lines) + 1), random.choice(lines))
    return b"".join(lines)


def _swap_lines(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    lines = data.splitlines(keepends=True)
    if lines:
        one, other = random.randrange(len(lines)), random.randrange(len(lines))
        lines[one], lines[other] = lines[other], lines[one]
    return b"".join(lines)


def _splice(random: Random, data: bytes, layouts: Sequence[bytes]) -> bytes:
    other = random.choice(layouts)
    start, end = _span(random, other)
    at = random.randrange(len(data) + 1)
    return data[:at] + other[start:end] + data[at:]


def _flip(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    if not data:
        return data
    at = random.randrange(len(data))
    return data[:at] + bytes([data[at] ^ 1 << random.randrange(8)]) + data[at + 1 :]


def _set_in(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    at = random.randrange(len(data) + 1)
    word = random.choice(random.choice((TOKENS, TOKENS, NAMES, CONTROLS, WORDS))).encode("utf-8", "surrogatepass")
    return data[:at] + (random.choice(BYTES) if random.random() < 0.1 else word) + data[at:]


def _exchange_word(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    pool = random.choice((TOKENS, NAMES, WORDS, NUMBERS, UNITS))
    return _exchanged(random, data, _WORD, random.choice(pool))


def _exchange_number(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    magnitude = f"{random.choice(('', '-'))}{random.uniform(0.1, 10) * 10 ** random.randrange(-9, 12):.6g}"
    return _exchanged(random, data, _NUMBER, random.choice((magnitude, magnitude, random.choice(NUMBERS))))


def _exchange_by_own(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    words = _WORD.findall(data)
    return _exchanged(random, data, _WORD, random.choice(words).decode()) if words else data


def _rename(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    """A part by an odd name wherever it is named, so that the reader follows."""
    names = _NAME.findall(data)
    if not names:
        return data
    new = random.choice(NAMES).encode()
    return re.sub(rb"(?<![\w-])" + re.escape(random.choice(names)) + rb"(?![\w-])", lambda _: new, data)


def _end_lines(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    return data.replace(b"\n", random.choice((b"\r\n", b"\r", b"\n\n", "\x85".encode(), "\u2028".encode())))


def _encode(random: Random, data: bytes, _layouts: Sequence[bytes]) -> bytes:
    if random.random() < 0.5:
        return b"\xef\xbb\xbf" + data
    return data.decode("utf-8", "replace").encode(random.choice(ENCODINGS), "replace")


Changing = Callable[[Random, bytes, Sequence[bytes]], bytes]
CHANGES: Final[tuple[Changing, ...]] = (
    *(_exchange_number, _exchange_number, _exchange_number, _exchange_word, _exchange_word),
    *(_exchange_by_own, _exchange_by_own, _rename, _rename, _set_in, _set_in, _cut, _cut_line, _cut_line),
    *(_double, _double_line, _swap_lines, _splice, _flip, _shorten, _end_lines, _encode),
)


def _span(random: Random, data: bytes) -> tuple[int, int]:
    """A stretch of the data, short more often than not."""
    start = random.randrange(len(data) + 1)
    return start, min(len(data), start + random.choice((1, 2, 5, 20, 100)))


def _exchanged(random: Random, data: bytes, pattern: re.Pattern[bytes], word: str) -> bytes:
    found = list(pattern.finditer(data))
    if not found:
        return data
    one = random.choice(found)
    return data[: one.start()] + word.encode("utf-8", "surrogatepass") + data[one.end() :]
