"""What writers are handed of a file."""

from forms import renamed, trapped

from plumbnet.study.remedies.checked_file import Checked


def test_file_is_called_by_its_name_and_known_by_the_hash_of_its_bytes() -> None:
    report = renamed(trapped(), file="house.yaml")
    assert Checked(report).file == "house.yaml"
    assert Checked(report).sha256 == report.system.record.sha256
    assert len(report.system.record.sha256) == 64
