"""What all words of reports are made of: blocks of text, phrases, tables, numbers as they are printed."""

from plumbnet.report.prose.acceptance_phrases import (
    accepted_in_words,
    claim_in_words,
    findings_in_short,
    idle_in_words,
    silenced_in_words,
)
from plumbnet.report.prose.equal_instances import EqualFindings, equal_findings, instances_in_short
from plumbnet.report.prose.grouped_findings import alike
from plumbnet.report.prose.name_lists import MANY_NAMES, lists_in_short, long_in_short
from plumbnet.report.prose.name_ranges import MOST_NAMED, NameRange, listed_whole, name_ranges, names_in_short
from plumbnet.report.prose.phrases import (
    driven_round,
    left_as_it_is,
    limit_in_words,
    reached_through,
    settled_in_words,
    spoken,
    tempered,
    where,
)
from plumbnet.report.prose.printed_precision import WrittenStep, at_least, printed_number, written_step
from plumbnet.report.prose.prose_blocks import (
    DOCUMENT_WIDTH,
    Block,
    Heading,
    Lines,
    Paragraph,
    Points,
    Steps,
    Table,
    document_text,
    text_columns,
    to_markdown,
)
from plumbnet.report.prose.verdict_table import TABLE_HEAD, pressure_in_words, table, table_rows
from plumbnet.report.prose.word_colours import PAINTS, Paint, plain

__all__ = [
    "DOCUMENT_WIDTH",
    "MANY_NAMES",
    "MOST_NAMED",
    "PAINTS",
    "TABLE_HEAD",
    "Block",
    "EqualFindings",
    "Heading",
    "Lines",
    "NameRange",
    "Paint",
    "Paragraph",
    "Points",
    "Steps",
    "Table",
    "WrittenStep",
    "accepted_in_words",
    "alike",
    "at_least",
    "claim_in_words",
    "document_text",
    "driven_round",
    "equal_findings",
    "findings_in_short",
    "idle_in_words",
    "instances_in_short",
    "left_as_it_is",
    "limit_in_words",
    "listed_whole",
    "lists_in_short",
    "long_in_short",
    "name_ranges",
    "names_in_short",
    "plain",
    "pressure_in_words",
    "printed_number",
    "reached_through",
    "settled_in_words",
    "silenced_in_words",
    "spoken",
    "table",
    "table_rows",
    "tempered",
    "text_columns",
    "to_markdown",
    "where",
    "written_step",
]
