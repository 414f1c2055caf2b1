"""What the program prints as it is kept in files, so that they change only where something is said in other words."""

from plumbnet.rules.rule_profile import profile, profile_names

IN_PLACE_OF_A_HASH = "(hash of the profile)"
"""Every clause changes the hash of its profile; tests/report/test_record.py holds reports to the real ones."""


def as_kept(printed: str) -> str:
    """A fixed word in place of the hash of each profile that comes with the program."""
    for name in profile_names():
        printed = printed.replace(profile(name).sha256, IN_PLACE_OF_A_HASH)
    return printed
