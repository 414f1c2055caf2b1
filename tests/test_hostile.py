"""Files that mean harm, one by one: each is refused calmly or read, in little time and memory."""

import os
import resource
import subprocess
import sys
import time
from pathlib import Path

import pytest

import plumbnet
from plumbnet.layout.yaml import yaml_composer
from plumbnet.layout.yaml.fault import LayoutError

LAYOUT = "plumbnet: 1\ntitle: House\nparts: {street: {kind: main, pressure: 60 psi}, t: tee}\nruns: [street -> t]\n"
MIB = 2**20
BOMB = "a: &a [x,x,x,x,x,x,x,x,x]\n" + "".join(
    f"{chr(98 + n)}: &{chr(98 + n)} [{','.join([f'*{chr(97 + n)}'] * 9)}]\n" for n in range(12)
)


def titled(value: str) -> bytes:
    return LAYOUT.replace("House", value).encode()


def with_pressure(value: str) -> bytes:
    return LAYOUT.replace("60 psi", value).encode()


def named(name: str) -> bytes:
    return LAYOUT.replace("t: tee", f"{name}: tee").replace("-> t]", f"-> {name}]").encode()


REFUSED = {
    "alias bomb": (BOMB.encode(), "the file holds more than"),
    "anchor in itself": (b"a: &a [*a]", "stands inside what it stands for"),
    "100,000 brackets": (b"[" * 100_000, "nested too deeply"),
    "100,000 mappings": (b"{a: " * 100_000, "deeper than 40 levels"),
    "100,000 dashes": (b"- " * 100_000, "deeper than 40 levels"),
    "1e400": (with_pressure("1e400"), "is a finite number"),
    "100,000 digits": (with_pressure("9" * 100_000), "is too long for a pressure"),
    "hexadecimal": (with_pressure("0x3C"), "unknown unit"),
    "sexagesimal": (with_pressure("1:00"), "unknown unit"),
    "control character": (titled("a\x1b[2J"), "U+001B cannot stand"),
    "NUL": (titled("a\x00"), "U+0000 cannot stand"),
    "override in a name": (named('"t\u202eeet"'), "is no name for a part"),
    "long name": (named("t" * 1_000), "is no name for a part"),
    "UTF-16": (LAYOUT.encode("utf-16"), "is not UTF-8"),
    "Latin-1": (titled("Straße").decode().encode("latin-1"), "is not UTF-8"),
    "lone surrogate": (b"a: \xed\xa0\x80", "is not UTF-8"),
    "empty": (b"", "there is nothing in this file"),
    "too large": (b"#" * (17 * MIB), "the file is larger than 16 MiB"),
    "key twice": (LAYOUT.replace("t: tee", "t: tee, t: tee").encode(), "is written a second time"),
    "merge key": (b"a: &a {b: 1}\nc: {<<: *a}\n" + LAYOUT.encode(), 'a layout has no field "a"'),
    "tag": (titled("!!python/object/apply:os.system [exit]"), 'a tag (a word that begins with "!")'),
    "two documents": (LAYOUT.encode() + b"---\na: 1\n", "a second document begins here"),
    "boolean of YAML 1.1": (LAYOUT.replace("t: tee", "t: {kind: meter, check: yes}").encode(), "yes"),
    "lists without end": (b"plumbnet: 1\nparts: [" + b"[]," * 200_000 + b"]\n", "more than 100,000 values"),
    "run of 10 MiB": (LAYOUT.replace("-> t]", "-> t" * 2_000_000 + "]").encode(), "more than 10,000 pipes"),
}
READ = {
    "byte order mark": b"\xef\xbb\xbf" + LAYOUT.encode(),
    "CRLF": LAYOUT.replace("\n", "\r\n").encode(),
    "CR": LAYOUT.replace("\n", "\r").encode(),
    "line of 10 MiB": titled("x" * 10 * MIB),
    "comment of 10 MiB": LAYOUT.encode() + b"# " + b"x" * 10 * MIB,
    "name from right to left": named("שלום"),
    "name no": named("no"),
    "override in a title": titled('"a\u202eb"'),
}


@pytest.mark.parametrize("case", REFUSED)
def test_hostile_file_is_refused_calmly_and_soon(case: str, monkeypatch: pytest.MonkeyPatch) -> None:
    assert yaml_composer.MAX_NODES == 1_000_000
    if case == "lists without end":  # a million take ten times as long, and no other way
        monkeypatch.setattr(yaml_composer, "MAX_NODES", 100_000)
    data, said = REFUSED[case]
    start = time.process_time()
    with pytest.raises(LayoutError) as caught:
        plumbnet.read_bytes(data, file="f.yaml")
    told = str(caught.value)
    assert said in told
    assert told.startswith("f.yaml")
    assert len(told) < 30_000
    assert all(character.isprintable() or character == "\n" for character in told)
    assert time.process_time() - start < 10  # 2 s on a machine with nothing else to do


@pytest.mark.parametrize("case", READ)
def test_odd_file_is_read(case: str) -> None:
    assert plumbnet.check(plumbnet.read_bytes(READ[case])).heaters == ()


def limited(*arguments: str) -> "subprocess.CompletedProcess[str]":
    """The program in a process that may hold 500 MiB of its own and work for 20 s, its own start counted."""

    def limit() -> None:
        resource.setrlimit(resource.RLIMIT_DATA, (500 * MIB, 500 * MIB))
        resource.setrlimit(resource.RLIMIT_CPU, (20, 20))

    command = [sys.executable, "-m", "plumbnet", "check", *arguments]
    return subprocess.run(command, capture_output=True, text=True, preexec_fn=limit, check=False, timeout=120)  # noqa: S603  ours


@pytest.mark.skipif(sys.platform != "linux", reason="limits and devices of Linux")
def test_files_that_are_none_are_told_and_nothing_hangs(tmp_path: Path) -> None:
    (tmp_path / "self.yaml").symlink_to("self.yaml")
    (tmp_path / "zero.yaml").symlink_to("/dev/zero")
    (tmp_path / "good.yaml").write_text(LAYOUT, encoding="utf-8")
    (tmp_path / "link.yaml").symlink_to("good.yaml")
    (tmp_path / "bomb.yaml").write_text(f"plumbnet: 1\n{BOMB}", encoding="utf-8")
    os.mkfifo(tmp_path / "pipe.yaml")
    names = [str(tmp_path / f"{name}.yaml") for name in ("self", "zero", "pipe", "bomb", "good", "link")]
    result = limited(*names, "--format", "csv", "--jobs", "1")
    assert result.returncode == 2
    assert "Traceback" not in result.stderr + result.stdout
    told = result.stdout + result.stderr
    for said in ("symbolic links", "larger than 16 MiB", "there is nothing in this file", "the file holds more than"):
        assert said in told
