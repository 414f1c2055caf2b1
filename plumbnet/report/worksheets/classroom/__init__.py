"""What a trainer reads of a class: who held which belief, in words, in a table, and as a page."""

from plumbnet.report.worksheets.classroom.class_blocks import class_text
from plumbnet.report.worksheets.classroom.class_sheet import class_page
from plumbnet.report.worksheets.classroom.class_table_cells import class_csv

__all__ = ["class_csv", "class_page", "class_text"]
