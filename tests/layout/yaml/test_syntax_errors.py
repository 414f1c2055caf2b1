"""What is said of a text that is no YAML: one fault, in plain words, at the place an author would look."""

import pytest
import yaml

from plumbnet.layout.yaml import source
from plumbnet.layout.yaml.fault import Fault
from plumbnet.layout.yaml.source import parse_yaml
from plumbnet.layout.yaml.syntax_errors import syntax_fault

TAB = ("a tab stands where only spaces may", "indent with spaces")
INDENTED = ("this line is indented deeper than the line it follows", "line up keys that belong together")
COLON = ("a second colon followed by a space stands in this line", "put the value in quotes")
NO_KEY = ("this line is not indented like the keys it belongs to", "line it up with them")
BEHIND = ("something stands behind the end of the value", "put the whole value in quotes")
NO_ENTRY = ("this line stands among list entries and is none", 'begin it with "- " or line it up with its key')
OPEN_QUOTE = ("this quotation mark is never closed", "close it on the same line")
ESCAPE = ("the backslash begins an escape that YAML does not know", "use single quotes, or write it twice")
NAMELESS = ('"&" and "*" begin the name of an anchor or alias, and none follows', "put the value in quotes")
END = ("something stands behind the end of the layout", "a file holds one mapping of keys and values")
DASHES = ("a list entry stands among keys", "indent the list under its key")
BLOCK = ('the text of a block begins on the line after "|" or ">"', "put text with such a sign in quotes")
PERCENT = ('a line that begins with "%" has no meaning here', "remove it, or put the text in quotes")
OPEN_END = ("the file ends where a value is wanted", "a bracket may be left open")

CASES = [
    ("parts:\n\ttee: 1", 2, 1, TAB),
    ("a: 1\n\tb: 2", 2, 1, TAB),
    ("a: 1\nb:2\nc: 3", 2, 2, ("a space is missing after this colon", 'write "b: "')),
    ("a: 1\nbc\nd: 3", 2, 1, ("this line is no key with a colon", 'write "key: value"')),
    ("note: see: there", 1, 10, COLON),
    ("a: 1\n  b: 2", 2, 4, INDENTED),
    ("x" * 1100 + ": 1", 1, 1101, ("the key that ends here is longer than 1,024 characters", "shorten it")),
    (" " + "x" * 1100 + ": 1", 1, 1102, ("the key that ends here is longer than 1,024 characters", "shorten it")),
    ("a\nb: c", 2, 2, ("no key can end at this colon", "a colon may be missing in the line above")),
    ("a:\n   b: 1\n  c: 2", 3, 3, NO_KEY),
    ("note: 'it's'", 1, 11, BEHIND),
    ('note: "3" pipe', 1, 11, BEHIND),
    ("a: b\n- c", 2, 1, DASHES),
    ("- a\nb: 1", 2, 1, NO_ENTRY),
    ("a: {b: 1\n", 1, 4, ('the bracket "{" is never closed', 'close it with "}"')),
    ("a: [1, 2", 1, 4, ('the bracket "[" is never closed', 'close it with "]"')),
    ("a: [1, 2\nb: 3", 2, 2, ('"," or "]" is missing here', 'the bracket "[" stands in line 1, column 4')),
    ("{a: 1 b: 2}", 1, 8, ('"," or "}" is missing here', 'the bracket "{" stands in line 1, column 1')),
    ("a: 1\nb: [1,", 2, 7, OPEN_END),
    ("a: 1\nb: [1,\n\n", 2, 7, OPEN_END),
    ('a: "b\nc: d', 1, 4, OPEN_QUOTE),
    ("a: 'b\n--- c", 1, 4, OPEN_QUOTE),
    ('a: "C:\\path"', 1, 7, ESCAPE),
    ('a: "\\x4"', 1, 7, ESCAPE),
    ('a: "\\udc00"', 1, 7, ESCAPE),
    ("a: @b", 1, 4, ('a value cannot begin with "@"', "put it in quotes")),
    ("a: `b", 1, 4, ('a value cannot begin with "`"', "put it in quotes")),
    ("a: %b", 1, 4, ('a value cannot begin with "%"', "put it in quotes")),
    ("a: * b", 1, 4, NAMELESS),
    ("a: & b", 1, 4, NAMELESS),
    ("a: - b", 1, 4, ('a list entry "- " cannot begin here', "begin it on a line of its own")),
    ("a: [1,,2]", 1, 7, ('a value is missing before ","', "put text with brackets or commas in quotes")),
    ("{a: b}}", 1, 7, END),
    ("a: |b", 1, 5, BLOCK),
    ("a: >1 b", 1, 7, BLOCK),
    ("a: !x!y b", 1, 4, ('a tag (a word that begins with "!") has no meaning here', "put the value in quotes")),
    ("%YAML 2.0\n---\na: 1", 1, 1, PERCENT),
    ("%WATER\n---\na: 1", 1, 1, PERCENT),
    ("[" * 1100, 1, 1001, ("brackets are nested too deeply", "")),
]


@pytest.mark.parametrize(("text", "line", "column", "said"), CASES, ids=[text[:20] for text, *_ in CASES])
def test_syntax_error_is_said_in_plain_words(text: str, line: int, column: int, said: tuple[str, str]) -> None:
    faults: list[Fault] = []
    assert parse_yaml(text, faults) is None
    (fault,) = faults
    assert (fault.line, fault.column, fault.text, fault.hint) == (line, column, *said)


ALIKE = [case for case in CASES if case[0][:2] not in {"%W", "[["} and "udc00" not in case[0]]


@pytest.mark.parametrize(("text", "line", "column", "said"), ALIKE, ids=[text[:20] for text, *_ in ALIKE])
def test_parser_without_its_c_part_is_understood_too(
    text: str, line: int, column: int, said: tuple[str, str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(source, "_LOADER", yaml.SafeLoader)
    faults: list[Fault] = []
    assert parse_yaml(text, faults) is None
    assert faults[0].line == line
    assert abs(faults[0].column - column) <= 1
    if said not in {NO_ENTRY, TAB}:  # the two parsers see these differently
        assert faults[0].text == said[0]


def test_complaint_nobody_foresaw_is_passed_on() -> None:
    assert syntax_fault(yaml.MarkedYAMLError(problem="odd"), "a: b\n") == Fault(1, 5, "this is not YAML: odd")
    assert syntax_fault(yaml.YAMLError("odd"), "") == Fault(0, 0, "this is not YAML: odd")
