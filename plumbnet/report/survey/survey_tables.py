"""The tables of a survey's file, as SQLite is told them; names and meanings are a promise, more columns may come.

Quantities are SI, the unit at the end of the name; pressures are gauge, at the heater's own height. Identifies the
file by its `application_id`, the version of the tables by its `user_version`.
"""

from typing import Final

APPLICATION: Final = int.from_bytes(b"plmb")
"""Tells a survey's file from any other (SQLite file format, section 1.3.15)."""
VERSION: Final = 2

_ANSWER: Final = (
    ("verdict", "TEXT", "open, controlled, trapped, sealed or on-demand"),
    ("static_pa", "REAL", "cold, before it is heated; empty where no water reaches it"),
    ("limit_pa", "REAL", "the highest it may reach"),
    ("limit_by", "TEXT", "what sets the limit"),
    ("settled_pa", "REAL", "when all is hot; empty where nothing holds it"),
    ("cold_k", "REAL", "fill"),
    ("hot_k", "REAL", "highest temperature"),
    ("heated_volume_m3", "REAL", "water that it heats"),
    ("expansion_m3", "REAL", "by which that grows"),
    ("opens_first", "TEXT", "what opens first as the pressure climbs"),
    ("opens_first_pa", "REAL", "and at which pressure"),
    ("stopped_by", "TEXT", "devices that stop its way back"),
    ("short_m3", "REAL", "water that nothing takes up"),
    ("need_tank_m3", "REAL", "smallest tank"),
    ("need_nominal_m3", "REAL", "the next size there is"),
    ("need_precharge_pa", "REAL", "charge of that tank"),
    ("need_at", "TEXT", "where it is connected"),
)
"""Columns of an answer for a heater: name, type, meaning."""


def _answers(prefix: str) -> str:
    return "\n".join(f"  {prefix}{name} {sort}, -- {meaning}" for name, sort, meaning in _ANSWER)


TABLES: Final = (
    """CREATE TABLE survey ( -- what was asked: one row
  plumbnet TEXT NOT NULL, -- version of the program
  rules TEXT, -- rule profile; empty: each file's own
  rules_sha256 TEXT,
  units TEXT, -- of sentences; empty: each file's own
  scenario TEXT, -- name of the scenario supposed, where a file has it
  own_acceptances TEXT, -- the inspector's list that decides; none: no acceptance counts; empty: each file's own do
  own_sha256 TEXT,
  to_each TEXT NOT NULL, -- what was supposed of every part of a kind, as JSON
  is_complete INTEGER NOT NULL -- 1 once the last run came to its end
)""",
    """CREATE TABLE file (
  id INTEGER PRIMARY KEY,
  path TEXT NOT NULL UNIQUE, -- as given; a BLOB of its bytes where the name is no Unicode
  sha256 TEXT, -- empty: to be looked at again by the next run
  fate TEXT NOT NULL, -- checked, not understood, or no layout
  is_present INTEGER NOT NULL DEFAULT 1, -- 0: the last complete run did not meet it
  title TEXT,
  rules TEXT, -- rule profile it was judged by
  what_if TEXT, -- made, not touched, or refused; empty where nothing was supposed
  is_worse INTEGER, -- 1: a heater is worse after, or an error is new
  is_better INTEGER
)""",
    f"""CREATE TABLE heater ( -- after_...: the same with the what-if made
  file INTEGER NOT NULL REFERENCES file (id) ON DELETE CASCADE,
  line INTEGER, -- on which it is declared
  name TEXT NOT NULL,
  kind TEXT NOT NULL,
{_answers("")}
{_answers("after_")}
  is_worse INTEGER, -- 1: verdict worse after, or the limit now passed
  is_better INTEGER
)""",
    """CREATE TABLE finding (
  file INTEGER NOT NULL REFERENCES file (id) ON DELETE CASCADE,
  line INTEGER,
  name TEXT NOT NULL,
  severity TEXT NOT NULL, -- error, warning or note
  parts TEXT NOT NULL,
  clause TEXT,
  clause_verified TEXT, -- true: whoever wrote the profile has read it
  text TEXT NOT NULL,
  advice TEXT,
  reason TEXT, -- not empty: it is accepted, for this reason; it does not count
  accepted_by TEXT, -- applicant or inspector
  accepted_line INTEGER, -- on which that stands, in the file or in the inspector's list
  claimed TEXT, -- not empty: the applicant accepts it for this reason, and it counts all the same
  stands_as TEXT, -- why
  stands_before INTEGER NOT NULL,
  stands_after INTEGER
)""",
    """CREATE TABLE note ( -- what is to be known of a file that is no layout
  file INTEGER NOT NULL REFERENCES file (id) ON DELETE CASCADE,
  sort TEXT NOT NULL, -- not a layout, rule profile, or list of acceptances
  line INTEGER,
  column INTEGER,
  text TEXT NOT NULL
)""",
    """CREATE TABLE error ( -- why a file was not understood, or the what-if refused
  file INTEGER NOT NULL REFERENCES file (id) ON DELETE CASCADE,
  line INTEGER,
  column INTEGER,
  text TEXT NOT NULL
)""",
    "CREATE INDEX heater_file ON heater (file)",
    "CREATE INDEX finding_file ON finding (file)",
    "CREATE INDEX error_file ON error (file)",
    "CREATE INDEX note_file ON note (file)",
    """CREATE VIEW became_trapped AS -- heaters that the what-if makes trapped or sealed
SELECT path, line, name, kind, verdict, after_verdict, after_stopped_by, after_opens_first, after_opens_first_pa
FROM heater JOIN file ON file.id = heater.file
WHERE is_present AND after_verdict IN ('trapped', 'sealed') AND coalesce(verdict, '') NOT IN ('trapped', 'sealed')
ORDER BY path, line, name""",
    """CREATE VIEW trapped AS -- heaters that are trapped or sealed as the files stand
SELECT path, line, name, kind, verdict, stopped_by, opens_first, opens_first_pa
FROM heater JOIN file ON file.id = heater.file
WHERE is_present AND verdict IN ('trapped', 'sealed')
ORDER BY path, line, name""",
    """CREATE VIEW turned AS -- how many heaters went from which verdict to which
SELECT verdict, after_verdict, count(*) AS heaters
FROM heater JOIN file ON file.id = heater.file
WHERE is_present
GROUP BY verdict, after_verdict""",
)
"""Statements that make the tables, in order."""
