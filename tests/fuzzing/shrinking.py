"""An input that fails to a shorter one that fails alike: lines, then ever smaller stretches, are left out."""

from collections.abc import Callable

_MOST_TRIES = 400


def shrunk(data: bytes, fails: Callable[[bytes], bool]) -> bytes:
    """A part of the data for which `fails` still holds; the data itself where none is found.

    >>> shrunk(b"one\\ntwo\\nthree\\n", lambda data: b"w" in data)
    b'w'
    """
    tries = _MOST_TRIES
    size = max(1, len(data) // 2)
    while size and tries:
        start = 0
        while start < len(data) and tries:
            shorter = data[:start] + data[start + size :]
            tries -= 1
            if shorter and fails(shorter):
                data = shorter
            else:
                start += size
        size //= 2
    return data
