"""A complaint of the YAML parser to one fault in plain words, at the place an author would look."""

import re
from collections.abc import Callable
from typing import Final

import yaml
from yaml.error import Mark

from plumbnet.layout.yaml.fault import Fault, end_of, quoted, split_lines

_LONGEST_KEY = 1024  # characters on one line, YAML 1.1, section 8.1


class _Complaint:
    """Where the parser stopped, where the thing it was reading began, and the line it stopped in."""

    def __init__(self, error: yaml.MarkedYAMLError, text: str) -> None:
        self.problem = error.problem or ""
        self.lines = split_lines(text)
        self.line, self.column = self._place(error.problem_mark or error.context_mark)
        self.start = self._place(error.context_mark or error.problem_mark)
        self.before = self.lines[self.line - 1][: self.column - 1]
        self.character = self.lines[self.line - 1][self.column - 1 : self.column]
        self.ended = not self.character and not "".join(self.lines[self.line :]).strip()

    def _place(self, mark: Mark | None) -> tuple[int, int]:
        """Line and column from 1; a mark behind the last line is drawn back to the end of the text."""
        if mark is None or not any(self.lines[mark.line :]):
            return end_of(self.lines)
        return mark.line + 1, mark.column + 1

    def here(self, text: str, hint: str) -> Fault:
        return Fault(self.line, self.column, text, hint)

    def at_start(self, text: str, hint: str) -> Fault:
        return Fault(*self.start, text, hint)


def syntax_fault(error: yaml.YAMLError, text: str) -> Fault:
    """The fault that the parser's complaint about the text comes down to."""
    if not isinstance(error, yaml.MarkedYAMLError):
        return Fault(0, 0, f"this is not YAML: {error}", "")
    complaint = _Complaint(error, text)
    for pattern, put in _WORDING:
        if pattern.search(complaint.problem):
            return put(complaint)
    return complaint.here(f"this is not YAML: {complaint.problem}", "")


def _no_token(at: _Complaint) -> Fault:
    if at.character == "\t":
        return at.here("a tab stands where only spaces may", "indent with spaces")
    return at.here(f"a value cannot begin with {quoted(at.character)}", "put it in quotes")


def _tab(at: _Complaint) -> Fault:
    return at.here("a tab stands where only spaces may", "indent with spaces")


def _no_colon(at: _Complaint) -> Fault:
    line, column = at.start
    written = at.lines[line - 1][column - 1 :]
    glued = re.match(r"[^\s:]+:(?=\S)", written)
    if glued:
        return Fault(line, column + glued.end() - 1, "a space is missing after this colon", f'write "{glued[0]} "')
    return Fault(line, column, "this line is no key with a colon", 'write "key: value"', len(written))


def _stray_colon(at: _Complaint) -> Fault:
    if re.search(r":\s", at.before):
        return at.here("a second colon followed by a space stands in this line", "put the value in quotes")
    if at.column > _LONGEST_KEY:
        return at.here(f"the key that ends here is longer than {_LONGEST_KEY:,} characters", "shorten it")
    if at.before.startswith(" "):
        return at.here("this line is indented deeper than the line it follows", "line up keys that belong together")
    return at.here("no key can end at this colon", "a colon may be missing in the line above")


def _no_key(at: _Complaint) -> Fault:
    if at.before.strip():
        return at.here("something stands behind the end of the value", "put the whole value in quotes")
    if re.match(r"-(\s|$)", at.lines[at.line - 1].strip()):
        return at.here("a list entry stands among keys", "indent the list under its key")
    return at.here("this line is not indented like the keys it belongs to", "line it up with them")


def _no_dash(at: _Complaint) -> Fault:
    return at.here("this line stands among list entries and is none", 'begin it with "- " or line it up with its key')


def _unclosed_bracket(at: _Complaint) -> Fault:
    line, column = at.start
    bracket = at.lines[line - 1][column - 1 : column]
    closing = "}" if bracket == "{" else "]"
    if at.ended:
        return at.at_start(f'the bracket "{bracket}" is never closed', f'close it with "{closing}"')
    opened = f'the bracket "{bracket}" stands in line {line}, column {column}'
    return at.here(f'"," or "{closing}" is missing here', opened)


def _unclosed_quote(at: _Complaint) -> Fault:
    return at.at_start("this quotation mark is never closed", "close it on the same line")


def _escape(at: _Complaint) -> Fault:
    return at.here("the backslash begins an escape that YAML does not know", "use single quotes, or write it twice")


def _nameless(at: _Complaint) -> Fault:
    return at.at_start('"&" and "*" begin the name of an anchor or alias, and none follows', "put the value in quotes")


def _stray_dash(at: _Complaint) -> Fault:
    return at.here('a list entry "- " cannot begin here', "begin it on a line of its own")


def _no_content(at: _Complaint) -> Fault:
    if at.ended:
        return at.here("the file ends where a value is wanted", "a bracket may be left open")
    return at.here(f"a value is missing before {quoted(at.character)}", "put text with brackets or commas in quotes")


def _block(at: _Complaint) -> Fault:
    return at.here('the text of a block begins on the line after "|" or ">"', "put text with such a sign in quotes")


def _tag(at: _Complaint) -> Fault:
    return at.here('a tag (a word that begins with "!") has no meaning here', "put the value in quotes")


def _directive(at: _Complaint) -> Fault:
    return Fault(at.line, 1, 'a line that begins with "%" has no meaning here', "remove it, or put the text in quotes")


def _too_deep(at: _Complaint) -> Fault:
    return at.here("brackets are nested too deeply", "")


def _after_end(at: _Complaint) -> Fault:
    return at.here("something stands behind the end of the layout", "a file holds one mapping of keys and values")


_WORDING: Final[tuple[tuple[re.Pattern[str], Callable[[_Complaint], Fault]], ...]] = tuple(
    (re.compile(pattern), put)
    for pattern, put in (
        ("cannot start any token", _no_token),
        ("tab character", _tab),
        ("could not find expected ':'", _no_colon),
        ("mapping values are not allowed", _stray_colon),
        ("did not find expected key|expected <block end>", _no_key),
        ("expected '-' indicator", _no_dash),
        ("expected ',' or", _unclosed_bracket),
        ("unexpected end of stream|unexpected document", _unclosed_quote),
        ("escape|hexdecimal", _escape),
        ("alphabetic or numeric character", _nameless),
        ("sequence entries are not allowed", _stray_dash),
        ("comment or line break|a comment or a line break|chomping", _block),
        ("tag handle", _tag),
        ("directive|incompatible YAML", _directive),
        ("nesting depth", _too_deep),
        ("node content", _no_content),
        ("<document start>", _after_end),
    )
)
