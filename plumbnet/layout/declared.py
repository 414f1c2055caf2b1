"""What everything has in common that an author declares field by field."""

import re
from typing import ClassVar

from pydantic import BaseModel, ConfigDict

_UNIT_SUFFIX = re.compile(r"_(pa|k|m3|m|w|m3_s)$")


def file_name_of(field: str) -> str:
    """Name of a field in the file: the name in code without its unit.

    >>> file_name_of("coil_volume_m3")
    'coil_volume'
    """
    return _UNIT_SUFFIX.sub("", field)


class Declared(BaseModel):
    """Anything an author declares field by field: frozen, strict, no field that is not known.

    `called` is what a message calls it.
    """

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        strict=True,
        alias_generator=file_name_of,
        use_attribute_docstrings=True,
    )
    called: ClassVar[str] = "this"
