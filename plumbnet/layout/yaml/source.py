"""The bytes of a YAML file to nodes that know their line and column."""

import codecs
import re
from collections.abc import Callable
from typing import Final

import yaml

from plumbnet.layout.yaml.fault import Fault, split_lines
from plumbnet.layout.yaml.node import Plain, YamlNode
from plumbnet.layout.yaml.syntax_errors import syntax_fault
from plumbnet.layout.yaml.yaml_composer import MAX_DEPTH, MAX_FAULTS, MAX_NODES, Events, Refused, YamlComposer

__all__ = ["MAX_BYTES", "MAX_DEPTH", "MAX_FAULTS", "MAX_NODES", "Plain", "YamlNode", "decode", "parse_yaml"]

MAX_BYTES: Final = 16 * 2**20
"""Largest file that is read."""

_UNREADABLE = re.compile("[^\t\n\r -~\x85\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")  # YAML 1.1, section 4.1.1
_TAG_LINE = re.compile("(?:^|(?<=[\r\x85\u2028\u2029]))\ufeff?%TAG", re.MULTILINE)
_LOADER: Callable[[str], Events] = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


def decode(data: bytes, faults: list[Fault]) -> str | None:
    r"""The text of a UTF-8 file, without its byte order mark; None, and a fault, where it has none.

    >>> decode(b"\xef\xbb\xbfplumbnet: 1", [])
    'plumbnet: 1'
    """
    if len(data) > MAX_BYTES:
        faults.append(Fault(0, 0, f"the file is larger than {MAX_BYTES // 2**20} MiB", "split the layout"))
        return None
    data = data.removeprefix(codecs.BOM_UTF8)
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as error:
        wrong = f"the byte 0x{data[error.start]:02X} is not UTF-8"
        place = _place(data[: error.start].decode("utf-8"))
        faults.append(Fault(*place, wrong, "save the file in the encoding UTF-8"))
        return None


def parse_yaml(text: str, faults: list[Fault]) -> YamlNode | None:
    """The file's one document as nodes; None where the text cannot be followed to its end.

    What can be passed over, such as a key written twice, is added to `faults` and reading goes on; only a node
    read without new faults holds what the author meant. Plain scalars follow the YAML 1.2 core schema without
    its octal and hexadecimal numbers; quoted ones are text. Cost is linear in the text.

    >>> parse_yaml("heater: {volume: 50 gal, tilt: 1e3}", []).value
    {'heater': {'volume': '50 gal', 'tilt': 1000.0}}
    """
    if bad := _UNREADABLE.search(text):
        wrong = f"the character U+{ord(bad[0]):04X} cannot stand in a YAML file"
        faults.append(Fault(*_place(text[: bad.start()]), wrong, "remove it"))
        return None
    if directive := _TAG_LINE.search(text):  # the C parser takes quadratic time over many of them
        faults.append(Fault(*_place(text[: directive.start()]), "a %TAG line has no meaning here", "remove it", 4))
        return None
    try:
        return YamlComposer(_LOADER(text), faults).document()
    except Refused as refused:
        faults.append(refused.fault)
    except yaml.YAMLError as error:
        faults.append(syntax_fault(error, text))
    return None


def _place(before: str) -> tuple[int, int]:
    """Line and column of the character that follows."""
    lines = split_lines(before)
    return len(lines), len(lines[-1]) + 1
