"""The bytes of a file to nodes that know line and column, and mistakes to faults that show where they stand.

Knows nothing of plumbing: limits of size, the parser's complaints in plain words, and what a plain scalar means.
"""

from plumbnet.layout.yaml.fault import (
    MOST_SHOWN,
    Fault,
    LayoutError,
    end_of,
    nearest,
    nearest_known,
    quoted,
    reason_of,
    split_lines,
    visible,
)
from plumbnet.layout.yaml.limited_read import bytes_from, bytes_of
from plumbnet.layout.yaml.node import Plain, YamlNode
from plumbnet.layout.yaml.plain_scalar import resolved
from plumbnet.layout.yaml.shipped_files import ShippedFiles, shipped_in
from plumbnet.layout.yaml.source import MAX_BYTES, decode, parse_yaml
from plumbnet.layout.yaml.yaml_composer import MAX_FAULTS, Refused

__all__ = [
    "MAX_BYTES",
    "MAX_FAULTS",
    "MOST_SHOWN",
    "Fault",
    "LayoutError",
    "Plain",
    "Refused",
    "ShippedFiles",
    "YamlNode",
    "bytes_from",
    "bytes_of",
    "decode",
    "end_of",
    "nearest",
    "nearest_known",
    "parse_yaml",
    "quoted",
    "reason_of",
    "resolved",
    "shipped_in",
    "split_lines",
    "visible",
]
