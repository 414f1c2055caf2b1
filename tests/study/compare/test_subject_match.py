"""What is said of parts, paired by name and parts."""

from plumbnet.study.compare.subject_match import leading_subject, paired_subjects, whole_subject


def test_all_parts_come_before_the_leading_one() -> None:
    asked = [("a", ("heater", "meter")), ("a", ("heater", "cv"))]
    now = [("a", ("heater", "cv")), ("a", ("heater", "stop"))]
    assert list(paired_subjects(asked, now).items()) == [(1, 0), (0, 1)]


def test_of_several_alike_the_first_goes_with_the_first_and_one_too_many_stays_alone() -> None:
    twice = [("a", ("tank",)), ("a", ("tank",))]
    assert paired_subjects(twice, twice) == {0: 0, 1: 1}
    assert paired_subjects(twice, twice[:1]) == {0: 0}


def test_another_name_or_leading_part_is_no_pair() -> None:
    assert paired_subjects([("a", ("tank",))], [("b", ("tank",)), ("a", ("cv", "tank"))]) == {}


def test_what_is_about_no_part_is_paired_by_its_name() -> None:
    assert paired_subjects([("a", ())], [("a", ("tank",)), ("a", ())]) == {0: 1}


def test_subject_is_told_by_all_its_parts_or_by_the_first() -> None:
    assert whole_subject(("a", ("tank", "cv"))) == ("a", ("tank", "cv"))
    assert leading_subject(("a", ("tank", "cv"))) == ("a", ("tank",))
