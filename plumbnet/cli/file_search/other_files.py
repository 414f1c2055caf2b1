"""A file found in a folder that is no layout: what it is instead, and whether it was meant for one."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from plumbnet.layout.yaml import Fault, Plain, YamlNode, decode, parse_yaml, quoted
from plumbnet.report.output import FILE_OF_QUESTIONS, FILE_OF_RESULTS, LIST_OF_ACCEPTANCES, NOT_A_LAYOUT, RULE_PROFILE
from plumbnet.rules import OWN_KEY

KEY: Final = "plumbnet"
"""The key at the top of a file that makes it a layout."""
NO_KEY: Final = f"it has no key {KEY} at its top"
EMPTY_FILE: Final = "it is empty"
_LETTERS_WRONG: Final = 2
"""So many letters at the most are wrong in a slip of the key."""
_KEY_IN_TEXT: Final = re.compile(r"""^[{ ]{0,2}(["']?)([^\s"'#:{},\[\]]{1,20})\1 ?:""", re.MULTILINE)
_BODY: Final = frozenset({"parts", "runs"})


@dataclass(frozen=True, slots=True)
class OtherFile:
    """A file that is no layout: of what sort, and why. `is_slip` says that it was meant for one."""

    sort: str
    fault: Fault
    text: str = ""
    is_slip: bool = False


def other_file(data: bytes) -> OtherFile | None:
    """What bytes are that are no layout; None where they are one, or cannot be read and may be meant for one."""
    faults: list[Fault] = []
    text = decode(data, faults)
    root = None if text is None else parse_yaml(text, faults)
    if text is None or root is None:
        return _unreadable(data, text or "", faults[0])
    if isinstance(root.value, dict):
        return None if KEY in root.value else _mapping(root, root.value, text)
    return OtherFile(NOT_A_LAYOUT, Fault(0, 0, EMPTY_FILE if root.value is None else NO_KEY), text)


def _unreadable(data: bytes, text: str, fault: Fault) -> OtherFile | None:
    """A file that is no YAML; None where the key stands in it somewhere, whatever the encoding."""
    if any(KEY.encode(encoding) in data for encoding in ("utf-8", "utf-16-le", "utf-16-be")):
        return None
    if any(_is_slip(found[2]) for found in _KEY_IN_TEXT.finditer(text)):
        return None
    if _is_empty(data):
        return OtherFile(NOT_A_LAYOUT, Fault(0, 0, EMPTY_FILE), text)
    why = Fault(fault.line, fault.column, f"it is no YAML that can be read: {fault.sentence}")
    return OtherFile(NOT_A_LAYOUT, why, text)


def _is_empty(data: bytes) -> bool:
    """Whether nothing stands in a file but comments."""
    return all(line.lstrip()[:1] in {b"", b"#"} for line in data.splitlines())


def _mapping(root: YamlNode, value: dict[str, Plain], text: str) -> OtherFile:
    slip = next(_slips(value), None)
    if slip is not None:
        place = (root.keys or {}).get(slip, (1, 1))
        wrong = f"a layout has the key {quoted(KEY)} at its top, and this file has {quoted(slip)}"
        return OtherFile(NOT_A_LAYOUT, Fault(*place, wrong, f"write {KEY}: 1", len(slip)), text, is_slip=True)
    if OWN_KEY in value:
        return OtherFile(LIST_OF_ACCEPTANCES, Fault(0, 0, "it counts where --own-acceptances names it"), text)
    trained = _of_training(value)
    if trained is not None:
        return OtherFile(*trained, text)
    if "profile" in value:
        return OtherFile(RULE_PROFILE, Fault(0, 0, "it judges where --rules names it"), text)
    if value.keys() >= _BODY:
        return OtherFile(NOT_A_LAYOUT, Fault(0, 0, NO_KEY, f"with {KEY}: 1 its parts and runs would be read"), text)
    return OtherFile(NOT_A_LAYOUT, Fault(0, 0, NO_KEY), text)


def _of_training(value: dict[str, Plain]) -> tuple[str, Fault] | None:
    """What a file is that exercises are asked of, or that keeps their answers; None where it is neither."""
    from plumbnet.study.training import QUESTIONS_KEY, RESULTS_KEY  # noqa: PLC0415  no layout needs it

    if QUESTIONS_KEY in value:
        return FILE_OF_QUESTIONS, Fault(0, 0, "plumbnet exercise --from asks what stands in it")
    if RESULTS_KEY in value:
        return FILE_OF_RESULTS, Fault(0, 0, "plumbnet class reads it")
    return None


def _slips(value: dict[str, Plain]) -> Iterator[str]:
    """Keys that are the key but for its case, or for a letter or two where what stands there looks like a layout."""
    looks_like_it = not _BODY.isdisjoint(value)
    for key, stands in value.items():
        if key.casefold() == KEY or (_is_slip(key) and (looks_like_it or _is_number(stands))):
            yield key


def _is_number(value: Plain) -> bool:
    return isinstance(value, int | float) or (isinstance(value, str) and value.strip().isdigit())


def _is_slip(key: str) -> bool:
    """Whether a word is the key but for its case and a letter or two.

    >>> [_is_slip(word) for word in ("Plumbnet", "plumnet", "plmubnet", "plumb-net", "plumbing", "pipes")]
    [True, True, True, True, False, False]
    """
    return abs(len(key) - len(KEY)) <= _LETTERS_WRONG and _distance(key.casefold(), KEY) <= _LETTERS_WRONG


def _distance(one: str, other: str) -> int:
    """Letters to be put in, taken out or exchanged to make one word of the other (Levenshtein; from memory)."""
    row = list(range(len(other) + 1))
    for count, letter in enumerate(one, 1):
        above, row = row, [count]
        for index, sign in enumerate(other):
            row.append(min(above[index] + (letter != sign), above[index + 1] + 1, row[index] + 1))
    return row[-1]
