"""A survey of many layouts: its file of results, its sums, and how people and programs see them."""

from plumbnet.report.survey.survey_book import Book
from plumbnet.report.survey.survey_data import survey_json
from plumbnet.report.survey.survey_entry import SurveyEntry, WhatIfFate, answered, noted_entry, refused_entry
from plumbnet.report.survey.survey_file import Unusable
from plumbnet.report.survey.survey_query import SurveyQuery
from plumbnet.report.survey.survey_report import survey_text
from plumbnet.report.survey.survey_sums import SurveySums, sums

__all__ = [
    "Book",
    "SurveyEntry",
    "SurveyQuery",
    "SurveySums",
    "Unusable",
    "WhatIfFate",
    "answered",
    "noted_entry",
    "refused_entry",
    "sums",
    "survey_json",
    "survey_text",
]
