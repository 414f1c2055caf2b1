"""Cells of a table to values of a layout and back: numbers with a decimal comma, yes and no, lists, formula signs."""

import re
from collections.abc import Mapping
from typing import Final, Literal, TypeAlias

from plumbnet.layout.rewriting import inline_yaml
from plumbnet.layout.yaml import Fault, Plain, parse_yaml, quoted, resolved

Decimals: TypeAlias = Literal["point", "comma", "unsure"]
"""How the numbers of a table are written; in a workbook or a table with tabs nobody can tell, and what could be either
is refused."""

FORMULA_SIGNS: Final = ("=", "+", "-", "@", "＝", "＋", "－", "＠")
"""How a cell begins that a spreadsheet would take for a formula (common practice)."""
_APOSTROPHE = "'"
_NUMBER = re.compile(
    r"(?P<number>[-+−]?[0-9][0-9., ]*?) ?(?P<unit>[^\W\d_/][^\W\d_/]*(?:[./²³°º%]?[^\W\d_]*)*|[°º%]\w*)?"
)
_EITHER = re.compile(r"[-+−]?[1-9][0-9]{0,2}[.,][0-9]{3}")
_COMMA = re.compile(r"[-+−]?(?:[0-9]{1,3}(?:[. ][0-9]{3})+|[0-9]+)(?:,[0-9]+)?")
_WORDS: Final[Mapping[str, bool]] = {
    **dict.fromkeys(("true", "yes", "wahr", "ja", "vrai", "oui", "verdadero", "vero", "waar"), True),
    **dict.fromkeys(("false", "no", "falsch", "nein", "faux", "non", "falso", "onwaar", "nee"), False),
}
"""How spreadsheets in some languages write a tick or none (from memory)."""


class CellError(ValueError):
    """A cell that cannot be read, in one sentence that says what would be right."""


def plain_cell(text: str) -> str:
    r"""A cell without space round it, without the sign that keeps it from being a formula, its odd spaces plain ones.

    >>> plain_cell(" 4,5\u00a0bar "), plain_cell("'=A1"), plain_cell("Mill  Lane")
    ('4,5 bar', '=A1', 'Mill  Lane')
    """
    text = re.sub(r"[^\S ]+", " ", text).strip()
    return text[1:] if text.startswith(_APOSTROPHE) and text[1:].startswith(FORMULA_SIGNS) else text


def is_bare_number(text: str) -> bool:
    """Whether a cell is a number that no unit follows."""
    found = _NUMBER.fullmatch(text)
    return found is not None and not found["unit"]


def with_point(text: str, decimals: Decimals) -> str:
    """A quantity as the layout's file writes it; what is none stays. Raises CellError for what could be two numbers.

    >>> with_point("1.250,5 l", "comma"), with_point("1,25 bar", "comma"), with_point("1,250 gal", "point")
    ('1250.5 l', '1.25 bar', '1,250 gal')
    """
    found = _NUMBER.fullmatch(text)
    if found is None or decimals == "point":
        return text
    number, rest = found["number"], text[found.end("number") :]
    if _EITHER.fullmatch(number) and not (decimals == "comma" and "," in number):
        whole, part = re.split("[.,]", number)
        either = f"{whole},{part}{rest}" if decimals == "comma" else f"{whole}.{part}0{rest}"
        raise CellError(f"{quoted(text)} may be {whole}{part} or {whole}.{part}; write {whole}{part}{rest} or {either}")
    if decimals == "comma" and _COMMA.fullmatch(number):
        return re.sub("[. ]", "", number).replace(",", ".") + rest
    return text


def with_comma(text: str) -> str:
    """A quantity with a decimal comma; what is none stays.

    >>> with_comma("1,250.5 gal"), with_comma("3/4 in"), with_comma("4.5 bar")
    ('1250,5 gal', '3/4 in', '4,5 bar')
    """
    found = _NUMBER.fullmatch(text)
    if found is None:
        return text
    return found["number"].replace(",", "").replace(".", ",") + text[found.end("number") :]


def value_of(text: str, *, is_text: bool) -> Plain:
    """What a cell says: words, a number, yes or no, or a list or mapping as in a layout. Raises CellError."""
    if text.startswith(("[", "{")) and not is_text:
        return nested_value(text)
    if is_text:
        return text
    said = _WORDS.get(text.casefold())
    return resolved(text) if said is None else said


def nested_value(text: str) -> Plain:
    """A list or mapping written in a cell as in a layout's file. Raises CellError."""
    faults: list[Fault] = []
    node = parse_yaml(text, faults)
    if faults or node is None:
        raise CellError(f"{quoted(text)} is no list or mapping as a layout's file has it; {faults[0].sentence}")
    return node.value


def cell_of(value: object) -> str:
    """A value of a layout as a cell.

    >>> cell_of(True), cell_of(62), cell_of("62 psi"), cell_of(["in", "out"]), cell_of("=A1")
    ('true', '62', '62 psi', '[in, out]', "'=A1")
    """
    if isinstance(value, str):
        text = value
    elif isinstance(value, bool):
        text = str(value).lower()
    else:
        text = inline_yaml(value) if isinstance(value, list | dict) else str(value)
    return _APOSTROPHE + text if text.startswith(FORMULA_SIGNS) and not _NUMBER.fullmatch(text) else text
