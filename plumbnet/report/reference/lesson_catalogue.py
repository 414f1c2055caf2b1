"""The lessons that come with the program, as one looks them up."""

from typing import TYPE_CHECKING

from plumbnet.report.prose import Paragraph, Table, document_text

if TYPE_CHECKING:  # what is looked up needs no studies
    from collections.abc import Mapping

    from plumbnet.study.training import LessonHead

_HOW = (
    "To be asked here: plumbnet exercise --from NAME --play. With its pictures, by tapping: plumbnet board NAME. "
    "The questions, to be changed: plumbnet lessons NAME > mine.yaml."
)


def lessons_text(lessons: "Mapping[str, LessonHead]") -> str:
    """Every lesson by its name, with what is learned from it and how long it takes; ends with a line break."""
    rows = tuple((name, f"{head.title}. {head.note}", _time(head)) for name, head in lessons.items())
    return document_text([Table(("lesson", "what it is about", "it takes"), rows), Paragraph(_HOW)])


def _time(head: "LessonHead") -> str:
    questions = f"{head.questions} questions"
    return questions if head.minutes is None else f"{head.minutes} min, {questions}"
