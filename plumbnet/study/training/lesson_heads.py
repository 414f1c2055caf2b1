"""What each lesson that comes with the program says of itself."""

from collections.abc import Mapping
from dataclasses import dataclass

from plumbnet.study.training.question_form import declared_questions
from plumbnet.study.training.shipped_lessons import lesson_bytes, lesson_names


@dataclass(frozen=True, slots=True)
class LessonHead:
    """What a file of questions says of itself, and how many it asks; `minutes` None where it does not say."""

    title: str
    note: str
    minutes: int | None
    questions: int


def known_lessons() -> Mapping[str, LessonHead]:
    """What each shipped lesson says of itself, by its name."""
    return {name: _head(name) for name in lesson_names()}


def _head(name: str) -> LessonHead:
    read_file = declared_questions(lesson_bytes(name), name).form
    return LessonHead(read_file.title, read_file.note, read_file.minutes, len(read_file.questions))
