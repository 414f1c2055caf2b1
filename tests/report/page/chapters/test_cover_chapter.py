"""The cover: the job, the heaters, what must be done, and who signs."""

from dataclasses import replace

from conftest import system

import plumbnet
from plumbnet.layout.model.job import Job
from plumbnet.report.page.chapters.cover_chapter import TO_WRITE_ON, cover, to_be_done
from plumbnet.report.prose.prose_blocks import Heading, Paragraph, Points, Table

TWO = "street -> cv -> tee -> heater1 -> tee2 -> tap.hot\ntee -> heater2 -> tee2"
RELIEF = "relief: {pressure: 150 psi, temperature: 210 degF}"


def test_job_comes_first_and_lines_for_a_pen_stand_where_nothing_is_known() -> None:
    drawn = replace(system("street -> heater -> tap.hot", heater=RELIEF), job=Job(number="114", author="J. Marsh"))
    job, _, _, done, nothing, signed, lines = cover(plumbnet.check(drawn), reviewer="R. Hale")
    assert job == Table(("job", ""), (("number", "114"), ("author", "J. Marsh")))
    assert (done, nothing) == (
        Heading("What must be done", 3),
        Paragraph("Nothing: no error stands under these rules."),
    )
    assert signed == Heading("Signed", 3)
    assert isinstance(lines, Table)
    assert lines.rows == (
        ("drawn up by", "J. Marsh", TO_WRITE_ON, TO_WRITE_ON, TO_WRITE_ON),
        ("reviewed by", "R. Hale", TO_WRITE_ON, TO_WRITE_ON, TO_WRITE_ON),
    )


def test_what_must_be_done_is_said_once_for_all_that_it_cures() -> None:
    report = plumbnet.check(system(TWO, heater1=RELIEF, heater2=RELIEF))
    (one,) = to_be_done(report)
    assert one.startswith("heater1 and 2: Fit an expansion tank of 8 gal (at least 7.95 gal), charged to 60 psi")
    assert Points((one,)) in list(cover(report))


def test_many_parts_are_named_by_the_first_of_them() -> None:
    taps = {f"tap{letter}": "kind: fixture, elevation: 0 ft" for letter in "abcdefgh"}
    runs = "street -> tee\n" + "\n".join(f"tee -> {name}.cold" for name in taps)
    (one,) = to_be_done(plumbnet.check(system(runs, street="pressure: 95 psi", **taps)))
    assert one.startswith("tapa, tapb, tapc, tapd, tape, tapf and 2 more: Fit a pressure reducer")
