"""Pattern sources (Markdown with a YAML header) -> a catalogue site and printable PDFs."""

__version__ = "0.1.0"
