"""State, county and town: profiles that extend files."""

import hashlib
from collections.abc import Callable
from pathlib import Path

import pytest

import plumbnet
from plumbnet.layout.yaml.fault import LayoutError
from plumbnet.rules.profile_base import MOST_FILES, is_file, source_of
from plumbnet.rules.rule_profile import profile, profile_at, read_profile

STATE = (
    "profile: state\ntitle: State\nextends: ipc-2021\n"
    "charge_tolerance: {value: 3 psi, clause: State 4, verified: true}\n"
)
COUNTY = "profile: county\ntitle: County\nextends: ../state.yaml\nnote: Ask the county.\n"
TOWN = (
    "profile: town\ntitle: Town\nextends: counties/county.yaml\n"
    "distribution_limit: {value: 70 psi, clause: Town 12, verified: true}\n"
)
Chain = Callable[..., Path]


@pytest.fixture
def chain(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Chain:
    """Writes the three files, some of them otherwise, and gives the way to the town's."""

    def written(state: str = STATE, county: str = COUNTY, town: str = TOWN) -> Path:
        (tmp_path / "counties").mkdir(exist_ok=True)
        (tmp_path / "state.yaml").write_text(state, encoding="utf-8")
        (tmp_path / "counties" / "county.yaml").write_text(county, encoding="utf-8")
        (tmp_path / "town.yaml").write_text(town, encoding="utf-8")
        return Path("town.yaml")

    monkeypatch.chdir(tmp_path)
    return written


def refused(path: Path) -> str:
    with pytest.raises(LayoutError) as caught:
        profile_at(str(path))
    return str(caught.value)


def test_town_takes_over_what_county_and_state_and_code_write_each_file_seen_from_its_own_folder(chain: Chain) -> None:
    town = profile_at(str(chain()))
    assert town.distribution_limit.clause == "Town 12"
    assert town.charge_tolerance.clause == "State 4"
    assert town.bypass == profile("ipc-2021").bypass
    assert (town.title, town.note) == ("Town", "")
    depths = [town.source.depth_of(name) for name in ("distribution_limit", "charge_tolerance", "bypass")]
    assert depths == [0, 2, 3]
    assert town.source.deepest == 4


def test_hash_covers_the_bytes_of_every_file(chain: Chain) -> None:
    def both(text: str, below: str) -> str:
        return hashlib.sha256((hashlib.sha256(text.encode()).hexdigest() + below).encode()).hexdigest()

    town = profile_at(str(chain()))
    assert town.sha256 == both(TOWN, both(COUNTY, both(STATE, profile("ipc-2021").sha256)))
    assert profile_at(str(chain(state=f"{STATE}# an office moved\n"))).sha256 != town.sha256


def test_circle_is_told_where_each_file_extends_the_next(chain: Chain) -> None:
    assert refused(chain(state=STATE.replace("ipc-2021", "town.yaml"))) == (
        'town.yaml:3:10: "counties/county.yaml", which this profile extends, has faults\n'
        "  3 | extends: counties/county.yaml\n"
        "    |          ^~~~~~~~~~~~~~~~~~~~\n"
        'counties/county.yaml:3:10: "../state.yaml", which this profile extends, has faults\n'
        "  3 | extends: ../state.yaml\n"
        "    |          ^~~~~~~~~~~~~\n"
        "counties/../state.yaml:3:10: profiles extend one another in a circle: "
        "town.yaml, then county.yaml, then state.yaml, then town.yaml\n"
        "  3 | extends: town.yaml\n"
        "    |          ^~~~~~~~~"
    )


def test_profile_that_extends_itself_is_a_circle(chain: Chain) -> None:
    said = refused(chain(town=TOWN.replace("counties/county.yaml", "./town.yaml")))
    assert said.splitlines()[0] == "town.yaml:3:10: profiles extend one another in a circle: town.yaml, then town.yaml"


def test_file_that_is_not_there_is_told_at_the_line_that_names_it(chain: Chain) -> None:
    said = refused(chain(town=TOWN.replace("county.yaml", "borough.yaml")))
    assert said == (
        'town.yaml:3:10: "counties/borough.yaml", which this profile extends, cannot be read: '
        "no such file or directory\n"
        "  3 | extends: counties/borough.yaml\n"
        "    |          ^~~~~~~~~~~~~~~~~~~~~"
    )
    nul = TOWN.replace("counties/county.yaml", '"a\\0.yaml"')
    assert "which this profile extends, cannot be read: no file can be called so" in refused(chain(town=nul))
    assert "cannot be read: is a directory" in refused(chain(town=TOWN.replace("/county.yaml", "/")))


def test_faults_of_a_file_that_is_extended_are_shown_in_both_files(chain: Chain) -> None:
    assert refused(chain(county=COUNTY.replace("note:", "not:"))) == (
        'town.yaml:3:10: "counties/county.yaml", which this profile extends, has faults\n'
        "  3 | extends: counties/county.yaml\n"
        "    |          ^~~~~~~~~~~~~~~~~~~~\n"
        'counties/county.yaml:4:1: a rule profile has no field "not": did you mean "note"?\n'
        "  4 | not: Ask the county.\n"
        "    | ^~~"
    )
    unread = refused(chain(county="\x00"))
    assert unread.splitlines()[0].endswith("which this profile extends, has faults")
    assert unread.splitlines()[3].startswith("counties/county.yaml:1:1: ")


def test_files_extend_one_another_to_a_depth_that_nobody_needs(tmp_path: Path) -> None:
    def write(count: int) -> Path:
        for number in range(count):
            base = "general" if number == count - 1 else f"{number + 1}.yaml"
            text = f"profile: p\ntitle: P\nextends: {base}\n"
            (tmp_path / f"{number}.yaml").write_text(text, encoding="utf-8")
        return tmp_path / "0.yaml"

    assert profile_at(str(write(MOST_FILES))).source.deepest == MOST_FILES
    said = refused(write(MOST_FILES + 1))
    assert "more than 16 files extend one another here; write what differs into fewer\n" in said


def test_only_a_profile_that_stands_in_a_file_reads_another(chain: Chain) -> None:
    chain()
    with pytest.raises(LayoutError) as caught:
        read_profile(TOWN.encode(), file="town.yaml")
    assert str(caught.value).splitlines()[0] == (
        'town.yaml:3:10: "counties/county.yaml" is a file, and only a profile that is read from a file extends '
        "another file"
    )


def test_submitted_layout_never_makes_the_program_read_a_file(chain: Chain) -> None:
    chain()
    for rules in ("town.yaml", "{water: town.yaml}", "{heating: ./town.yaml}"):
        layout = f"plumbnet: 1\nrules: {rules}\nparts: {{street: {{kind: main, pressure: 4 bar}}, tap: fixture}}\n"
        with pytest.raises(LayoutError, match=r'no rule profile is called ".*town.yaml"; there is as-nzs'):
            plumbnet.check(f"{layout}runs: [street -> tap.cold]\n".encode())


def test_file_goes_by_a_folder_or_an_ending() -> None:
    assert [name for name in ("town", "town.yaml", "town.yml", "a/b", "a\\b") if not is_file(name)] == ["town"]


def test_note_of_a_profile_that_is_extended_is_not_taken_over() -> None:
    base = source_of({"note": "theirs", "title": "T", "findings": {"a": 1}}, b"1", None)
    own = source_of({"title": "O", "findings": {"b": 2}}, b"2", base)
    assert own.fields == {"title": "O", "findings": {"a": 1, "b": 2}}
    assert own.depths == {"note": 1, "title": 0, "findings": 0, "findings/a": 1, "findings/b": 0}
    assert source_of("no mapping", b"", base).fields == "no mapping"
