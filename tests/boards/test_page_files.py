"""The files of the page."""

import base64
import hashlib
import re

import pytest

from plumbnet.boards.page_files import (
    MODULES,
    TASK_MODULES,
    TYPES,
    board_file,
    bundled,
    page_html,
    served_page,
    whole_page,
    whole_tasks,
)
from plumbnet.report.text.heater_text import CAUTION

HOSTILE = '</title><script>alert(1)</script>{{script}}{{data}}"'


def test_files_are_those_of_the_page_and_no_others() -> None:
    for name in (*MODULES, "board.css", "colours.css"):
        assert board_file(name)
        assert name.rpartition(".")[2] in TYPES
    for name in ("board.html", "../__init__.py", "__init__.py", "", "x.mjs"):
        assert board_file(name) is None


DATA = '{"title":"</script><b>{{style}}"}'


@pytest.mark.parametrize(
    "page",
    [served_page(HOSTILE), whole_page(HOSTILE, DATA), whole_tasks(HOSTILE, DATA)],
    ids=["served", "copy", "tasks"],
)
def test_what_the_file_brings_in_is_text(page: str) -> None:
    assert "<script>alert" not in page
    assert page.count("{{script}}{{data}}") >= 1
    assert page.count("</script>") == page.count("<script")
    assert "<b>{{" not in page


@pytest.mark.parametrize("page", [whole_page("A house", "{}"), whole_tasks("Exercises", "{}")], ids=["copy", "tasks"])
def test_copy_lets_run_no_script_and_no_style_but_its_own(page: str) -> None:
    policy = re.search(r'http-equiv="Content-Security-Policy" content="([^"]*)"', page)
    assert policy is not None
    for element in ('script type="module"', "style"):
        content = re.search(rf"<{element}>(.*?)</{element.split()[0]}>", page, re.DOTALL)
        assert content is not None
        digest = base64.b64encode(hashlib.sha256(content[1].encode()).digest()).decode()
        assert f"sha256-{digest}" in policy[1].replace("&#x27;", "'")
    assert "default-src &#x27;none&#x27;" in policy[1]


@pytest.mark.parametrize("modules", [MODULES, TASK_MODULES], ids=["board", "tasks"])
def test_scripts_as_one_import_and_export_nothing_and_clash_in_no_name(modules: tuple[str, ...]) -> None:
    script = bundled(modules)
    assert not re.search(r"^(import|export)\b", script, re.MULTILINE)
    names = re.findall(r"^(?:async )?(?:function|const|class|let) (\w+)", script, re.MULTILINE)
    assert len(names) == len(set(names)) > 10


def test_each_script_stands_behind_those_that_it_imports() -> None:
    for place, name in enumerate(MODULES):
        imported = re.findall(r'^import .* from "./([\w.-]+)";$', board_file(name) or "", re.MULTILINE)
        assert set(imported) <= set(MODULES[:place])


def test_nothing_is_loaded_from_elsewhere() -> None:
    for name in (*MODULES, "board.css", "colours.css"):
        addresses = set(re.findall(r"https?://[^\s\"'`]*", board_file(name) or ""))
        assert addresses <= {"http://www.w3.org/2000/svg"}


def test_caution_stands_on_the_page_and_on_the_copy() -> None:
    for page in (served_page("t"), whole_page("t", "{}"), page_html("t", style="", script="")):
        assert CAUTION in page
