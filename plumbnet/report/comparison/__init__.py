"""A layout and its revision as a reviewer reads them: as text, as data, as a page with both pictures."""

from plumbnet.report.comparison.comparison_data import comparison_json
from plumbnet.report.comparison.comparison_page import comparison_file
from plumbnet.report.comparison.comparison_report import comparison_text

__all__ = ["comparison_file", "comparison_json", "comparison_text"]
