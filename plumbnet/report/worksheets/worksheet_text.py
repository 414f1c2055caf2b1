"""Worksheets and keys as plain text and as Markdown, a page for each."""

from collections.abc import Iterator, Mapping, Sequence

from plumbnet.report.prose import Block, Heading, Lines, Paragraph, Points, Table, document_text, to_markdown
from plumbnet.report.text import CAUTION
from plumbnet.report.worksheets.worksheet_content import RULE, Key, Line, Option, Worksheet

PAGE = "\n---\n\n"
"""Between one page and the next."""


def task_text(sheet: Worksheet) -> str:
    """The task as it is put in a terminal, without the blanks."""
    return document_text(
        [Heading(f"{sheet.number}. {sheet.place}", 1), Paragraph(sheet.about), *_layout(sheet), *_task(sheet)]
    )


def options_text(line: Line) -> str:
    """A blank as it is asked in a terminal: its options, a letter before each, and the words it asks in."""
    if not line.options:
        return f"{line.prompt} ({line.unit}): "
    options = document_text([Lines(tuple(f"  {one.letter}) {_told(one)}" for one in line.options))])
    return f"{options}{line.prompt}: "


def worksheets_markdown(
    sheets: Sequence[Worksheet],
    keys: Sequence[Key] = (),
    pictures: Mapping[int, str] | None = None,
    answers: Mapping[int, str] | None = None,
) -> str:
    """Worksheets, then the keys, as GitHub-flavored Markdown.

    `pictures` are names of files by the number of the worksheet, `answers` those of what stands on the keys.
    """
    pages = [_sheet(sheet, (pictures or {}).get(sheet.number)) for sheet in sheets]
    return PAGE.join([*pages, *(_key(key, (answers or {}).get(key.number)) for key in keys)])


def _sheet(sheet: Worksheet, picture: str | None) -> str:
    head = to_markdown([Heading(f"Worksheet {sheet.number}: {sheet.place}", 1), Paragraph(sheet.about)])
    image = _image(f"The piping of worksheet {sheet.number}", picture)
    blanks = [block for line in sheet.lines for block in _blank(line)]
    name = Paragraph(f"{RULE * 3}  Date: {RULE}", "Name")
    return f"{head}{image}\n{to_markdown([*_layout(sheet), *_task(sheet), *blanks, name, Paragraph(CAUTION)])}"


def _image(words: str, file: str | None) -> str:
    return "" if file is None else f"\n![{words}](<{file}>)\n"


def _layout(sheet: Worksheet) -> Iterator[Block]:
    yield Table(("part", "is a", "with"), sheet.parts)
    yield Paragraph("Water normally flows this way:")
    yield Points(sheet.runs)
    if sheet.assumed:
        yield Paragraph(f"{'; '.join(sheet.assumed)}.", "Where nothing is said")


def _task(sheet: Worksheet) -> Iterator[Block]:
    if sheet.supposed:
        yield Paragraph(f"{sheet.supposed}.", "Suppose")
    yield Paragraph(sheet.prompt, "Question")


def _blank(line: Line) -> Iterator[Block]:
    if not line.options:
        yield Paragraph(f"{line.prompt} {RULE} {line.unit}")
        return
    yield Paragraph(line.prompt)
    yield Points(tuple(f"[ ] {one.letter}) {_told(one)}" for one in line.options))


def _told(option: Option) -> str:
    return f"{option.word}: {option.meaning}" if option.meaning else option.word


def _key(key: Key, picture: str | None) -> str:
    head = to_markdown([Heading(f"Key to worksheet {key.number}: {key.place}", 1)])
    image = _image(f"The piping of worksheet {key.number} with the answer", picture)
    return f"{head}{image}\n{to_markdown(list(_answers(key)))}"


def _answers(key: Key) -> Iterator[Block]:
    yield Points(tuple(f"{prompt} {answer}" for prompt, answer in key.answers))
    yield from map(Paragraph, key.because)
    yield from map(Lines, key.walks)
    if key.findings:
        yield Paragraph("What a check of the layout reports:")
        yield Points(key.findings)
    yield Paragraph(f"The layout, to be saved as {key.file} and tried:")
    yield Lines(key.layout)
    yield Paragraph(CAUTION)
