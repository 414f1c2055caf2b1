"""Worksheets and keys on paper, and as a page to print, with pictures of the piping."""

from plumbnet.report.worksheets.paper.printed_sheets import worksheets_pdf
from plumbnet.report.worksheets.paper.worksheet_page import worksheets_html
from plumbnet.report.worksheets.paper.worksheet_picture import answer_figure, answer_svg, piping_figure, piping_svg

__all__ = ["answer_figure", "answer_svg", "piping_figure", "piping_svg", "worksheets_html", "worksheets_pdf"]
