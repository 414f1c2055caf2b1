"""The text of a plain (unquoted) scalar to the value it stands for."""

import re

from plumbnet.layout.yaml.node import Plain

_NUMBER = re.compile(r"[-+]?(?:[0-9]+(\.[0-9]*)?|(\.[0-9]+))([eE][-+]?[0-9]+)?")  # YAML 1.2.2, section 10.3.2
_LONGEST_WHOLE = 30  # characters; a longer whole number is read as a floating-point one
_LONGEST_NUMBER = 1_000  # characters; anything longer is no number anybody meant

WORDS: dict[str, Plain] = {
    **dict.fromkeys(("", "~", "null", "Null", "NULL")),
    **dict.fromkeys(("true", "True", "TRUE"), True),
    **dict.fromkeys(("false", "False", "FALSE"), False),
    **{sign + word: float(sign + "inf") for sign in ("", "+", "-") for word in (".inf", ".Inf", ".INF")},
    **dict.fromkeys((".nan", ".NaN", ".NAN"), float("nan")),
}
"""The plain scalars that are no text and no number (YAML 1.2.2, section 10.3.2)."""


def resolved(text: str) -> Plain:
    """The number that a plain scalar is, or the text itself.

    >>> resolved("1e3"), resolved("-2"), resolved("1:30"), resolved("50 gal")
    (1000.0, -2, '1:30', '50 gal')
    """
    if len(text) > _LONGEST_NUMBER:
        return text
    number = _NUMBER.fullmatch(text)
    if number is None:
        return text
    if number.lastindex is None and len(text) <= _LONGEST_WHOLE:
        return int(text)
    return float(text)


class ScalarValues(dict[str, Plain]):
    """The value of each plain scalar met so far, so that equal ones are worked out once and share it."""

    def __missing__(self, text: str) -> Plain:
        value = self[text] = resolved(text)
        return value
