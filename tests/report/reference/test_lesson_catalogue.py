from plumbnet.report.reference.lesson_catalogue import lessons_text
from plumbnet.study.training.lesson_heads import LessonHead


def test_every_lesson_stands_by_its_name_with_what_it_takes() -> None:
    text = lessons_text({"a": LessonHead("Meters", "What they do.", 15, 7), "b": LessonHead("Pumps", "", None, 5)})
    assert "Meters. What they do.  15 min, 7 questions\n" in text
    assert "Pumps" in text
    assert "  5 questions\n" in text
