"""Worksheets and keys as a page to print, with pictures of the piping."""

from plumbnet.report.worksheets.paper.worksheet_page import worksheets_html
from plumbnet.report.worksheets.paper.worksheet_picture import answer_svg, piping_svg

__all__ = ["answer_svg", "piping_svg", "worksheets_html"]
