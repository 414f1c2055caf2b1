"""Tasks for apprentices: a layout made from a seed, a what-if, a question about it, and what the engine answers."""

from plumbnet.study.exercise.answer import LETTERS, Blank, Choice, Judged, Measure
from plumbnet.study.exercise.exercise import Exercise, Origin
from plumbnet.study.exercise.generator import NoMore, exercises, questions_of
from plumbnet.study.exercise.level import LEVELS
from plumbnet.study.exercise.question import QUESTIONS, Asked, Question, World
from plumbnet.study.exercise.walk_choice import answer_walks

__all__ = [
    "LETTERS",
    "LEVELS",
    "QUESTIONS",
    "Asked",
    "Blank",
    "Choice",
    "Exercise",
    "Judged",
    "Measure",
    "NoMore",
    "Origin",
    "Question",
    "World",
    "answer_walks",
    "exercises",
    "questions_of",
]
