"""Who accepts what, as JSON has it; tests/cli/test_acceptance_options.py shows whole documents."""

from plumbnet.report.formats.acceptance_fields import own_fields
from plumbnet.rules.accepting.own_acceptances import OwnAcceptances


def test_list_that_is_none_has_no_name() -> None:
    assert own_fields(None) is None
    assert own_fields(OwnAcceptances()) == {"file": None, "sha256": None}
    assert own_fields(OwnAcceptances("own.yaml", "ab")) == {"file": "own.yaml", "sha256": "ab"}
