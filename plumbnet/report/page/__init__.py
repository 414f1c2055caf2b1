"""The report to hand over: one page with everything, as HTML or as PDF."""

from plumbnet.report.page.comparison_page import comparison_file
from plumbnet.report.page.notebook_page import system_html
from plumbnet.report.page.page_writer import PAGE_FORMS, page_file

__all__ = ["PAGE_FORMS", "comparison_file", "page_file", "system_html"]
