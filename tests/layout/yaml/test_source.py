"""Bytes to text to nodes: places, values, and texts that mean harm."""

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from plumbnet.layout.yaml import source
from plumbnet.layout.yaml.fault import Fault, LayoutError
from plumbnet.layout.yaml.node import YamlNode
from plumbnet.layout.yaml.source import MAX_BYTES, decode, parse_yaml

BAKERY = """\
plumbnet: 1
parts:
  street: {kind: main, pressure: 62 psi}
  stop: valve
runs:
  - street -> stop
  - path: "stop -> sink"
    length: 30.5
"""


def read(text: str) -> YamlNode:
    faults: list[Fault] = []
    node = parse_yaml(text, faults)
    assert faults == []
    assert node is not None
    return node


def refused(text: str) -> str:
    faults: list[Fault] = []
    assert parse_yaml(text, faults) is None
    return str(LayoutError("f", faults, text))


def undecodable(data: bytes) -> Fault:
    faults: list[Fault] = []
    assert decode(data, faults) is None
    (fault,) = faults
    return fault


def place(node: YamlNode) -> tuple[int, int, int]:
    return node.line, node.column, node.width


def test_values_are_plain() -> None:
    assert read(BAKERY).value == {
        "plumbnet": 1,
        "parts": {"street": {"kind": "main", "pressure": "62 psi"}, "stop": "valve"},
        "runs": ["street -> stop", {"path": "stop -> sink", "length": 30.5}],
    }


def test_every_value_knows_its_place() -> None:
    node = read(BAKERY)
    assert place(node) == (1, 1, 1)
    assert place(node.at("parts", "street")) == (3, 11, 1)
    assert place(node.at("parts", "street", "pressure")) == (3, 34, 6)
    assert place(node.at("runs", 1)) == (7, 5, 1)
    assert place(node.at("runs", 1, "path")) == (7, 11, 14)
    assert place(node.at("runs", 1, "length")) == (8, 13, 4)


def test_every_key_knows_its_place() -> None:
    node = read(BAKERY)
    assert node.keys == {"plumbnet": (1, 1), "parts": (2, 1), "runs": (5, 1)}
    assert node.at("parts", "street").keys == {"kind": (3, 12), "pressure": (3, 24)}
    assert node.at("runs").keys is None
    assert node.at("runs", 0).keys is None


def test_containers_share_the_values_of_their_children() -> None:
    node = read(BAKERY)
    assert isinstance(node.value, dict)
    assert node.value["parts"] is node.at("parts").value


def test_scalar_over_several_lines_is_one_wide() -> None:
    assert place(read("a: b\n  c\n").at("a")) == (1, 4, 1)
    assert read("a: |\n  b\n  c\n").value == {"a": "b\nc\n"}


def test_value_left_out_is_one_wide() -> None:
    assert place(read("a:\nb: 1\n").at("a")) == (1, 3, 1)


def test_quoted_scalars_are_text() -> None:
    assert read("['1', \"true\", '', '~', 1, true, ~]").value == ["1", "true", "", "~", 1, True, None]


def test_keys_are_text() -> None:
    assert read("1: a\ntrue: b\n~: c\n1.50: d\n").value == {"1": "a", "true": "b", "~": "c", "1.50": "d"}


def test_column_counts_characters() -> None:
    assert place(read("{湯: 沸, °F: e\u0301, x: y}").at("x")) == (1, 19, 1)


def test_windows_line_ends_change_nothing() -> None:
    unix, windows = read(BAKERY), read(BAKERY.replace("\n", "\r\n"))
    assert unix == windows


def test_byte_order_mark_is_passed_over() -> None:
    faults: list[Fault] = []
    assert decode(b"\xef\xbb\xbf" + BAKERY.encode(), faults) == BAKERY
    assert decode(BAKERY.encode(), faults) == BAKERY
    assert faults == []


def test_byte_that_is_no_utf8_is_shown_with_its_place() -> None:
    wanted = Fault(2, 4, "the byte 0xFC is not UTF-8", "save the file in the encoding UTF-8")
    assert undecodable("a: é\nb: ".encode() + b"\xfcber") == wanted
    assert undecodable(b"\xef\xbb\xbf" + "a: é\nb: ".encode() + b"\xfcber") == wanted


def test_file_in_utf16_is_refused() -> None:
    wanted = Fault(1, 1, "the byte 0xFF is not UTF-8", "save the file in the encoding UTF-8")
    assert undecodable(BAKERY.encode("utf-16")) == wanted


def test_largest_file_is_read_and_a_larger_one_refused() -> None:
    faults: list[Fault] = []
    assert decode(b" " * MAX_BYTES, faults) is not None
    assert undecodable(b" " * (MAX_BYTES + 1)) == Fault(0, 0, "the file is larger than 16 MiB", "split the layout")


@pytest.mark.parametrize(
    ("character", "name"),
    [
        ("\x00", "U+0000"),
        ("\x1b", "U+001B"),
        ("\x7f", "U+007F"),
        ("\x9b", "U+009B"),
        ("\ufffe", "U+FFFE"),
        ("\ud800", "U+D800"),
    ],
)
def test_control_characters_are_refused_with_their_place(character: str, name: str) -> None:
    faults: list[Fault] = []
    assert parse_yaml(f"a: 1\r\nb: x{character}", faults) is None
    assert faults == [Fault(2, 5, f"the character {name} cannot stand in a YAML file", "remove it")]


def test_right_to_left_override_reaches_no_terminal() -> None:
    assert read("a: x\u202ey").value == {"a": "x\u202ey"}
    assert "\u202e" not in refused("\u202ea: [")


def test_tag_lines_are_refused_however_many() -> None:
    many = "".join(f"%TAG !a{n}! x\n" for n in range(100_000)) + "---\na: 1"
    assert refused(many) == "f:1:1: a %TAG line has no meaning here; remove it\n  1 | %TAG !a0! x\n    | ^~~~"
    assert "a %TAG line" in refused("# x\r%TAG ! x\r---\ra")
    assert read("a: '%TAG'\nb: x %TAG\n").value == {"a": "%TAG", "b": "x %TAG"}


@pytest.mark.parametrize(
    "value", ["x" * 10 * 2**20, "1" * 10 * 2**20, "0." + "1" * 10 * 2**20], ids=["word", "digits", "decimals"]
)
def test_line_of_ten_megabytes_is_read(value: str) -> None:
    assert read(f"a: {value}").value == {"a": value}


def test_number_of_ten_thousand_digits_is_text() -> None:
    assert read("a: " + "1" * 10_000).value == {"a": "1" * 10_000}


def test_parser_without_its_c_part_reads_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    fast = read(BAKERY)
    monkeypatch.setattr(source, "_LOADER", yaml.SafeLoader)
    assert read(BAKERY) == fast


WORDS = st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs", "Cn", "Co"]), max_size=8)
DOCUMENTS = st.recursive(
    WORDS, lambda inner: st.lists(inner, max_size=4) | st.dictionaries(WORDS, inner, max_size=4), max_leaves=12
)


@given(DOCUMENTS)
def test_plain_documents_are_read_as_yaml_reads_them(document: object) -> None:
    text = yaml.safe_dump(document, default_style='"', allow_unicode=True)
    faults: list[Fault] = []
    node = parse_yaml(text, faults)
    if faults:
        assert "<<" in text
    else:
        assert node is not None
        assert node.value == document == yaml.safe_load(text)


@given(st.text())
def test_random_text_raises_nothing(text: str) -> None:
    faults: list[Fault] = []
    node = parse_yaml(text, faults)
    assert node is not None or faults
    assert isinstance(str(LayoutError("f", faults, text)), str)


@given(st.lists(st.sampled_from([*"ab:-?[]{},#&*!|>'\"%@`\n\t <~1.", ": ", "\n  ", "- ", "&a ", "*a", "<<", "---\n"])))
def test_random_yaml_raises_nothing_and_places_are_in_the_file(pieces: list[str]) -> None:
    text = "".join(pieces)
    faults: list[Fault] = []
    node = parse_yaml(text, faults)
    assert node is not None or faults
    lines = text.split("\n")
    for fault in faults:
        assert fault.line == 0 or 1 <= fault.column <= len(lines[fault.line - 1]) + 1


@given(st.binary())
def test_random_bytes_raise_nothing(data: bytes) -> None:
    faults: list[Fault] = []
    text = decode(data, faults)
    assert (text is None) == bool(faults)
