import pytest

from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.study.training.question_form import declared_questions, holds_questions

FORM = b"plumbnet-questions: 1\nminutes: 20\nquestions: [{layout: no-such.yaml, about: verdict}]\n"


def test_form_is_read_without_its_layouts() -> None:
    read = declared_questions(FORM, "week.yaml")
    form = read.form
    assert (form.minutes, form.note, [one.layout for one in form.questions]) == (20, "", ["no-such.yaml"])
    assert isinstance(read.root.value, dict)
    assert read.text == FORM.decode()


@pytest.mark.parametrize(
    ("data", "told"), [(FORM.replace(b"20", b"0"), "2:10: minutes: "), (b"[1", ""), (b"\xff", ""), (b"- 1", "1:1: ")]
)
def test_what_is_no_such_form_is_refused_at_its_place(data: bytes, told: str) -> None:
    with pytest.raises(LayoutError) as error:
        declared_questions(data, "week.yaml")
    assert told in str(error.value)


def test_key_at_the_top_tells_a_file_of_questions() -> None:
    assert holds_questions(FORM)
    assert not holds_questions(b"plumbnet: 1\n")
