"""A worksheet or a key to what the PDF library sets on paper: its words, in the sizes of a sheet for a class."""

from collections.abc import Iterator, Sequence

from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.platypus import Flowable, Table, TableStyle
from reportlab.platypus import Paragraph as Text

from plumbnet.report.page import BOLD, FAINT, INK, PLAIN, lettered
from plumbnet.report.trace import ShortTrace
from plumbnet.report.worksheets.worksheet_content import HEIGHTS, Key, Line, Option, Worksheet

BODY = ParagraphStyle("sheet", fontName=PLAIN, fontSize=10.0, leading=13.5, textColor=INK, spaceAfter=4.0)
SMALL = ParagraphStyle("small print", BODY, fontSize=7.0, leading=8.8, textColor=FAINT)
_HEAD = ParagraphStyle("sheet head", BODY, fontName=BOLD, fontSize=13.0, leading=16.0, spaceAfter=1.0)
_WRITTEN = ParagraphStyle("written on", BODY, spaceBefore=4.0, spaceAfter=6.0)
_TIGHT = ParagraphStyle("tight", BODY, fontSize=8.5, leading=10.6, spaceAfter=2.0)
_KEY_HEAD = ParagraphStyle("key head", _HEAD, fontSize=11.0, leading=14.0)
_ANSWER = ParagraphStyle("answer", BODY, fontSize=9.0, leading=11.5, spaceAfter=1.0)
_REASON = ParagraphStyle("reason", BODY, fontSize=8.0, leading=10.2, spaceAfter=2.0)
_TRIED = ParagraphStyle(
    "tried", _REASON, fontSize=7.5, leading=9.4, leftIndent=14.0, bulletFontSize=7.5, spaceAfter=0.0
)
_BOX = TableStyle([
    ("BOX", (0, 0), (-1, -1), 0.8, INK),
    ("LEFTPADDING", (0, 0), (-1, -1), 8.0),
    ("RIGHTPADDING", (0, 0), (-1, -1), 8.0),
    ("TOPPADDING", (0, 0), (-1, -1), 5.0),
    ("BOTTOMPADDING", (0, 0), (-1, -1), 6.0),
])  # fmt: skip
_PLAIN_GRID = TableStyle([
    ("VALIGN", (0, 0), (-1, -1), "TOP"),
    ("LEFTPADDING", (0, 0), (-1, -1), 0.0),
    ("RIGHTPADDING", (0, 0), (-1, -1), 6.0),
    ("TOPPADDING", (0, 0), (-1, -1), 0.0),
    ("BOTTOMPADDING", (0, 0), (-1, -1), 0.0),
])  # fmt: skip
_PADDING = 16.0
_SQUARE = "\u2610"


def sheet_head(sheet: Worksheet) -> list[Flowable]:
    """What stands above the picture: which sheet it is, and where the apprentice signs."""
    signed = f"Name: {'_' * 42} &nbsp; Date: {'_' * 16}"
    title = f"Worksheet {sheet.number}: {sheet.place}"
    return [Text(lettered(title), _HEAD), Text(lettered(sheet.about), SMALL), Text(signed, _WRITTEN)]


def sheet_task(sheet: Worksheet, width: float, *, is_tight: bool = False) -> list[Flowable]:
    """What stands below the picture: the task in its box, and in small print what no picture shows.

    Where it `is_tight` the words are smaller, which leaves more of a sheet that lies across to the picture.
    """
    body = _TIGHT if is_tight else BODY
    task: list[Flowable] = []
    if sheet.supposed:
        task.append(_labelled("Suppose", f"{sheet.supposed}.", body))
    task.append(_labelled("Question", sheet.prompt, body))
    for line in sheet.lines:
        task += _blank(line, width - _PADDING, body)
    small = [HEIGHTS]
    if sheet.tubes:
        small.append(f"Pipes: {'; '.join(sheet.tubes)}.")
    if sheet.assumed:
        small.append(f"Where nothing is said: {'; '.join(sheet.assumed)}.")
    box = Table([[task]], colWidths=[width], style=_BOX, spaceBefore=6.0, spaceAfter=4.0)
    return [box, *(Text(lettered(words), SMALL) for words in small)]


def sheet_words(sheet: Worksheet) -> list[Flowable]:
    """The piping in words, where no picture of it could be read."""
    parts = "; ".join(" ".join([f"{names} ({kind})", fields]).rstrip() for names, kind, fields in sheet.parts)
    return [_labelled("Parts", f"{parts}.", SMALL), _labelled("Water flows", f"{'; '.join(sheet.runs)}.", SMALL)]


def _labelled(label: str, words: str, style: ParagraphStyle) -> Text:
    return Text(f"<b>{label}:</b> {lettered(words)}", style)


def _blank(line: Line, width: float, body: ParagraphStyle) -> Iterator[Flowable]:
    if not line.options:
        yield Text(f"{lettered(line.prompt)} {'_' * 16} {lettered(line.unit)}", _WRITTEN)
        return
    yield Text(lettered(line.prompt), body)
    option_style = ParagraphStyle("option", body, leftIndent=14.0, bulletFontName=PLAIN, spaceAfter=1.0)
    if any(option.meaning for option in line.options):
        yield from (_option(option, option_style) for option in line.options)
        return
    widest = max(stringWidth(f"a) {option.word}", PLAIN, body.fontSize) for option in line.options) + 36.0
    count = max(1, min(len(line.options), int(width // widest), 5))
    rows = -(-len(line.options) // count)
    cells = [
        [
            _option(line.options[at], option_style) if at < len(line.options) else ""
            for at in range(row, rows * count, rows)
        ]
        for row in range(rows)
    ]
    yield Table(cells, colWidths=[width / count] * count, style=_PLAIN_GRID)


def _option(option: Option, style: ParagraphStyle) -> Text:
    told = f"{option.word}: {option.meaning}" if option.meaning else option.word
    return Text(lettered(f"{option.letter}) {told}"), style, bulletText=_SQUARE)


def key_head(key: Key) -> list[Flowable]:
    """The answers to a worksheet, and the reason."""
    answers = [Text(f"{lettered(prompt)} <b>{lettered(answer)}</b>", _ANSWER) for prompt, answer in key.answers]
    reasons = [Text(lettered(reason), _REASON) for reason in key.because]
    return [Text(lettered(f"Key to worksheet {key.number}: {key.place}"), _KEY_HEAD), *answers, *reasons]


def key_traces(traces: Sequence[ShortTrace]) -> list[Flowable]:
    """What the water of each heater tries, and what comes of it."""
    return [piece for trace in traces for piece in _trace(trace)]


def _trace(trace: ShortTrace) -> Iterator[Flowable]:
    yield _labelled(trace.heater, trace.cold or "No water reaches it.", _REASON)
    for number, tried in enumerate(trace.tries, 1):
        yield Text(lettered(tried), _TRIED, bulletText=f"{number}.")
    if trace.ends:
        yield Text(lettered(" ".join(trace.ends)), _REASON)


def key_findings(key: Key) -> list[Flowable]:
    """What a check of the layout reports."""
    return [_labelled("A check reports", " ".join(key.findings), SMALL)] if key.findings else []
