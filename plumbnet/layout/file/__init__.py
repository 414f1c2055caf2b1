"""A layout file as a whole: its text to a system, or to every fault of the file at once."""

from plumbnet.layout.file.declared_reading import DeclaredFile, read_declared
from plumbnet.layout.file.document import Document, RunWithPipe
from plumbnet.layout.file.loader import read_system

__all__ = ["DeclaredFile", "Document", "RunWithPipe", "read_declared", "read_system"]
