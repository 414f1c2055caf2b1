import pytest

from plumbnet.layout.file.loader import read_system
from plumbnet.report.worksheets.worksheet_content import key, line_of, worksheet
from plumbnet.study.exercise.answer import Choice, Measure
from plumbnet.study.exercise.generator import exercises
from plumbnet.study.exercise.level import LEVELS
from plumbnet.study.exercise.walk_choice import answer_walks


@pytest.mark.parametrize("level", sorted(LEVELS))
def test_worksheet_says_all_that_is_needed_and_not_the_answer(level: int) -> None:
    for one in exercises(2, level, 2):
        sheet = worksheet(one)
        assert sheet.place.endswith("Lantern Falls")
        assert {name for names, _, _ in sheet.parts for name in names.split(", ")} == set(one.system.written)
        assert sheet.prompt == one.asked.prompt
        assert not any(reason in str(sheet) for reason in one.asked.because)


def test_key_has_the_answers_the_reason_and_the_way_of_the_water() -> None:
    (one,) = exercises(2, 1, about="stopper")
    found = key(one, answer_walks(one))
    choice = one.asked.blanks[0]
    assert isinstance(choice, Choice)
    assert found.answers == (("It is stopped by", choice.right),)
    assert found.because == one.asked.because
    ((first, *others),) = found.walks
    assert first.startswith("heater is a storage heater")
    assert not any("Local code" in line for line in others)


def test_layout_on_the_key_can_be_read_and_tried() -> None:
    (one,) = exercises(2, 2, about="verdict")
    found = key(one, answer_walks(one))
    assert read_system("\n".join(found.layout).encode(), file=found.file).parts.keys() == one.system.parts.keys()


def test_question_about_all_heaters_is_explained_for_each() -> None:
    (one,) = exercises(2, 4, about="trapped-heaters")
    assert len(key(one, answer_walks(one)).walks) == len(one.report.heaters) > 1


def test_blank_is_a_row_of_lettered_options_or_a_rule_with_its_unit() -> None:
    (one,) = exercises(3, 2, about="tank")
    size, charge = one.asked.blanks
    assert isinstance(size, Choice)
    assert isinstance(charge, Measure)
    options = line_of(size, "us").options
    assert [(option.letter, option.word) for option in options][:2] == [("a", size.options[0]), ("b", size.options[1])]
    assert (line_of(charge, "us").unit, line_of(charge, "metric").unit) == ("psi", "kPa")
