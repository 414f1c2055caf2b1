"""What every form of output has in common: a file's outcome as text, and by what it was made."""

from plumbnet.report.output.imprint import (
    accepts_line,
    imprint_lines,
    program_build,
    program_line,
    program_version,
    record_blocks,
    record_lines,
    rules_line,
)
from plumbnet.report.output.program_failure import program_failed
from plumbnet.report.output.streamed_json import Array, array, closed_json, fragment, member, opened
from plumbnet.report.output.whole_file import write_whole
from plumbnet.report.output.writer import (
    FILE_OF_QUESTIONS,
    FILE_OF_RESULTS,
    LIST_OF_ACCEPTANCES,
    NOT_A_LAYOUT,
    RULE_PROFILE,
    Fate,
    FileOutcome,
    FilePiece,
    Listing,
    Noted,
    Unread,
    Writer,
    joined_piece,
    unread,
)

__all__ = [
    "FILE_OF_QUESTIONS",
    "FILE_OF_RESULTS",
    "LIST_OF_ACCEPTANCES",
    "NOT_A_LAYOUT",
    "RULE_PROFILE",
    "Array",
    "Fate",
    "FileOutcome",
    "FilePiece",
    "Listing",
    "Noted",
    "Unread",
    "Writer",
    "accepts_line",
    "array",
    "closed_json",
    "fragment",
    "imprint_lines",
    "joined_piece",
    "member",
    "opened",
    "program_build",
    "program_failed",
    "program_line",
    "program_version",
    "record_blocks",
    "record_lines",
    "rules_line",
    "unread",
    "write_whole",
]
