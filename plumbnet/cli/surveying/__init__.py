"""What a survey of many files asks of the command line: what is done to each, and who does the work."""

from plumbnet.cli.surveying.bulk_options import BehindOption, EachOption, supposed_of
from plumbnet.cli.surveying.cluster_workers import cluster
from plumbnet.cli.surveying.survey_jobs import KEPT, OtherVersion, SurveyJob, handed_out

__all__ = ["KEPT", "BehindOption", "EachOption", "OtherVersion", "SurveyJob", "cluster", "handed_out", "supposed_of"]
