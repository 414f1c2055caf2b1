"""The files that arguments stand for, what those are that turn out to be no layouts, and what layouts may use."""

from plumbnet.cli.file_search.file_targets import (
    ENDINGS,
    STANDARD_INPUT,
    STANDARD_INPUT_NAME,
    Target,
    file_size,
    targets,
)
from plumbnet.cli.file_search.named_assemblies import SHELF, use_assemblies
from plumbnet.cli.file_search.other_files import KEY, OtherFile, other_file

__all__ = [
    "ENDINGS",
    "KEY",
    "SHELF",
    "STANDARD_INPUT",
    "STANDARD_INPUT_NAME",
    "OtherFile",
    "Target",
    "file_size",
    "other_file",
    "targets",
    "use_assemblies",
]
