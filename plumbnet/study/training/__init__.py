"""Exercises over days and in a class: what was answered, what is to be asked again, who held which belief."""

from plumbnet.study.training.class_table import BeliefRow, Holding, class_rows
from plumbnet.study.training.posed_exercise import PosedExercise, taking_turns
from plumbnet.study.training.question_file import QUESTIONS_KEY, OwnQuestions, holds_questions, questions_at
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

__all__ = [
    "QUESTIONS_KEY",
    "RESULTS_KEY",
    "AnswerGiven",
    "BeliefRow",
    "Dealt",
    "Due",
    "Held",
    "Holding",
    "OwnQuestions",
    "PosedExercise",
    "Results",
    "Sitting",
    "TryGiven",
    "asked_again",
    "class_rows",
    "due_on",
    "holds_questions",
    "next_day",
    "questions_at",
    "read_results",
    "results_at",
    "results_text",
    "taking_turns",
    "with_answer",
]
