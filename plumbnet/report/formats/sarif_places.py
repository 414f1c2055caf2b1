"""Where something stands, as SARIF says it: a file by its URI reference, a line, columns."""

import sys
from pathlib import PurePath
from typing import Final
from urllib.parse import quote

from plumbnet.report.formats.part_lists import Json

BASE: Final = "SRCROOT"
"""What relative names are relative to."""


def uri(file: str) -> str:
    """The name of a file as a URI reference, bytes that a URI cannot hold percent-encoded.

    An absolute name is a file URI, any other one relative to the folder in which the program was run.

    >>> uri("plans/bakery #2.yaml")
    'plans/bakery%20%232.yaml'
    """
    path = PurePath(file)
    if path.is_absolute():
        return path.as_uri()
    return quote(path.as_posix(), errors=sys.getfilesystemencodeerrors())


def place_of(file: str, line: int, column: int = 0, width: int = 0) -> Json:
    """Where something stands: the whole line where no column is known, the file where no line is."""
    physical: Json = {"artifactLocation": location_of(file)}
    if column:
        physical["region"] = {"startLine": line, "startColumn": column, "endColumn": column + width}
    elif line:
        physical["region"] = {"startLine": line}
    return {"physicalLocation": physical}


def location_of(file: str) -> Json:
    """The file itself."""
    return {"uri": uri(file)} if PurePath(file).is_absolute() else {"uri": uri(file), "uriBaseId": BASE}
