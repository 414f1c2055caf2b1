"""The calculation sheet of one heater: every number with where it came from, every step, the tank, the cautions."""

from plumbnet.analysis.sizing_sheet.sheet_model import Content, Section, Sheet, SheetItem, SheetResult
from plumbnet.analysis.sizing_sheet.sizing_sheet import sheet, sheets

__all__ = ["Content", "Section", "Sheet", "SheetItem", "SheetResult", "sheet", "sheets"]
