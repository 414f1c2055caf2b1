"""What-ifs, comparisons, sweeps and margins for people and for programs."""

from plumbnet.report.studies.change_phrases import all_done_in_words, changes_in_words
from plumbnet.report.studies.difference_report import OTHER, SAME, WORSE, difference_rows, difference_told
from plumbnet.report.studies.exercise_data import exercises_json
from plumbnet.report.studies.margins_data import margins_fields, margins_json
from plumbnet.report.studies.margins_report import margins_blocks, margins_text
from plumbnet.report.studies.sweep_data import sweep_csv, sweep_json
from plumbnet.report.studies.sweep_report import sweep_text
from plumbnet.report.studies.whatif_data import whatifs_json
from plumbnet.report.studies.whatif_report import side_by_side, whatifs_text

__all__ = [
    "OTHER",
    "SAME",
    "WORSE",
    "all_done_in_words",
    "changes_in_words",
    "difference_rows",
    "difference_told",
    "exercises_json",
    "margins_blocks",
    "margins_fields",
    "margins_json",
    "margins_text",
    "side_by_side",
    "sweep_csv",
    "sweep_json",
    "sweep_text",
    "whatifs_json",
    "whatifs_text",
]
