from plumbnet.report.reference.belief_catalogue import beliefs_text
from plumbnet.study.beliefs.belief_file import known_beliefs


def test_every_belief_stands_by_its_name() -> None:
    text = beliefs_text(known_beliefs())
    for name, one in known_beliefs().items():
        assert f"\n{name} " in f"\n{text}"
        assert one.holds in text
