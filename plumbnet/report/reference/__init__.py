"""The kinds of part, the tubes, the assemblies, rule profiles, findings and beliefs, as one looks them up."""

from plumbnet.report.reference.assembly_catalogue import assemblies_text
from plumbnet.report.reference.belief_catalogue import beliefs_text
from plumbnet.report.reference.kind_catalogue import kind_text, kinds_text, schema_text
from plumbnet.report.reference.rulebook import finding_text, findings_text, profile_text, profiles_text
from plumbnet.report.reference.tube_catalogue import tube_names, tube_text, tubes_text

__all__ = [
    "assemblies_text",
    "beliefs_text",
    "finding_text",
    "findings_text",
    "kind_text",
    "kinds_text",
    "profile_text",
    "profiles_text",
    "schema_text",
    "tube_names",
    "tube_text",
    "tubes_text",
]
