"""What the cover of a submission says of its job."""

import pytest

from plumbnet.layout.file.loader import read_system
from plumbnet.layout.model.job import Job
from plumbnet.layout.yaml import LayoutError

LAYOUT = "plumbnet: 1\njob: {}\nparts: {{street: main, tap: fixture}}\nruns: [street -> tap.cold]\n"


def job(written: str) -> Job:
    text = LAYOUT.format(written).replace("street: main", "street: {kind: main, pressure: 60 psi}")
    return read_system(text.encode(), file="a.yaml").job


def test_job_says_what_its_author_wrote_and_a_whole_number_may_stand_without_quotes() -> None:
    one = job('{number: 114, address: 12 Mill Lane, revision: "1.10", date: 2026-11-30}')
    assert one == Job(number="114", address="12 Mill Lane", revision="1.10", date="2026-11-30")
    assert one.said() == (("number", "114"), ("address", "12 Mill Lane"), ("revision", "1.10"), ("date", "2026-11-30"))
    assert job("{}").said() == ()


@pytest.mark.parametrize(
    ("written", "told"),
    [
        ("{revision: 1.10}", "a.yaml:2:17: revision: a name or text is wanted here, not 1.1; put it in quotes"),
        ("{number: true}", "a.yaml:2:15: number: a name or text is wanted here, not true; put it in quotes"),
        ("{autor: me}", 'a.yaml:2:7: a job has no field "autor": did you mean "author"?'),
    ],
)
def test_what_is_no_text_or_no_field_is_told_where_it_stands(written: str, told: str) -> None:
    with pytest.raises(LayoutError) as caught:
        job(written)
    assert str(caught.value).splitlines()[0] == told
