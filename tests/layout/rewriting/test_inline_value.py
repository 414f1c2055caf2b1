"""Values in one line of YAML, read back as what they are."""

import pytest

from plumbnet.layout.rewriting.inline_value import inline_yaml
from plumbnet.layout.yaml import parse_yaml


@pytest.mark.parametrize(
    "value",
    ["62 psi", "on", "1e3", "0815", "null", "a: b", "say # this", 4, 2.5, True, None, [1, "b"], {"k": {"x": "y"}}],
)
def test_value_reads_back_as_itself(value: object) -> None:
    for text in (f"key: {inline_yaml(value)}", f"{{key: {inline_yaml(value)}}}"):
        node = parse_yaml(text, [])
        assert node is not None
        assert node.value == {"key": value}


def test_long_text_stays_in_one_line() -> None:
    assert "\n" not in inline_yaml("word " * 200 + "end")
