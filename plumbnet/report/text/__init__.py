"""Reports on the terminal: heater by heater the verdict first, then why, then what to do."""

from plumbnet.report.text.applied_report import applied_text
from plumbnet.report.text.file_sums import NO_LAYOUT, counted
from plumbnet.report.text.findings_text import WIDTH, clause_in_words
from plumbnet.report.text.heater_text import CAUTION, report_text, settles, story
from plumbnet.report.text.layout_text import parts_in_words, runs_in_words, tubes_in_words
from plumbnet.report.text.lettered_piping import piping_tree
from plumbnet.report.text.remedies_report import (
    MOST_REMEDIES,
    NONE_FOUND,
    RELIEF_FIRST,
    list_title,
    not_looked_for,
    not_searched,
    remedies_section,
    remedies_text,
    remedy_outcome,
    remedy_place,
)
from plumbnet.report.text.text_writers import LineWriter, TextWriter
from plumbnet.report.text.together_report import ALL_TOGETHER, chosen_in_words, events_in_words, outcomes_in_words

__all__ = [
    "ALL_TOGETHER",
    "CAUTION",
    "MOST_REMEDIES",
    "NONE_FOUND",
    "NO_LAYOUT",
    "RELIEF_FIRST",
    "WIDTH",
    "LineWriter",
    "TextWriter",
    "applied_text",
    "chosen_in_words",
    "clause_in_words",
    "counted",
    "events_in_words",
    "list_title",
    "not_looked_for",
    "not_searched",
    "outcomes_in_words",
    "parts_in_words",
    "piping_tree",
    "remedies_section",
    "remedies_text",
    "remedy_outcome",
    "remedy_place",
    "report_text",
    "runs_in_words",
    "settles",
    "story",
    "tubes_in_words",
]
