"""Exercises over days and in a class: what was answered, what is to be asked again, who held which belief."""

from plumbnet.study.training.class_table import BeliefRow, Holding, class_rows
from plumbnet.study.training.lesson_heads import LessonHead, known_lessons
from plumbnet.study.training.posed_exercise import PosedExercise, taking_turns
from plumbnet.study.training.question_file import OwnQuestions, questions_at
from plumbnet.study.training.question_form import QUESTIONS_KEY, holds_questions
from plumbnet.study.training.question_schema import questions_schema
from plumbnet.study.training.repetition import Due, asked_again, due_on, next_day
from plumbnet.study.training.results_file import (
    RESULTS_KEY,
    AnswerGiven,
    Dealt,
    Held,
    Results,
    Sitting,
    TryGiven,
    read_results,
    results_at,
    results_text,
    with_answer,
)
from plumbnet.study.training.shipped_lessons import lesson_bytes, lesson_names, questions_bytes

__all__ = [
    "QUESTIONS_KEY",
    "RESULTS_KEY",
    "AnswerGiven",
    "BeliefRow",
    "Dealt",
    "Due",
    "Held",
    "Holding",
    "LessonHead",
    "OwnQuestions",
    "PosedExercise",
    "Results",
    "Sitting",
    "TryGiven",
    "asked_again",
    "class_rows",
    "due_on",
    "holds_questions",
    "known_lessons",
    "lesson_bytes",
    "lesson_names",
    "next_day",
    "questions_at",
    "questions_bytes",
    "questions_schema",
    "read_results",
    "results_at",
    "results_text",
    "taking_turns",
    "with_answer",
]
