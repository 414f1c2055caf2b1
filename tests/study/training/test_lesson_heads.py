from plumbnet.study.training.lesson_heads import known_lessons


def test_lesson_says_what_it_is_and_how_long_it_takes() -> None:
    head = known_lessons()["check-and-meter"]
    assert (head.title, head.minutes, head.questions) == ("The check valve and the meter", 15, 7)
    assert head.note.endswith(".")
