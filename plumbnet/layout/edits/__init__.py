"""Changes to a system, made on a copy, taken back, and written as an author would write them."""

from plumbnet.layout.edits.apply import with_changes
from plumbnet.layout.edits.change_text import (
    HIGHEST_WRITTEN_PA,
    WRITTEN_DIGITS,
    change_fields,
    change_of,
    fields_inside,
    height_text,
    new_name,
    pressure_text,
    volume_text,
)
from plumbnet.layout.edits.edit_draft import ChangeError, unknown_kind
from plumbnet.layout.edits.pipe_edits import NO_WAY_THROUGH
from plumbnet.layout.edits.selection import is_selecting, selected_parts, single_changes

__all__ = [
    "HIGHEST_WRITTEN_PA",
    "NO_WAY_THROUGH",
    "WRITTEN_DIGITS",
    "ChangeError",
    "change_fields",
    "change_of",
    "fields_inside",
    "height_text",
    "is_selecting",
    "new_name",
    "pressure_text",
    "selected_parts",
    "single_changes",
    "unknown_kind",
    "volume_text",
    "with_changes",
]
