"""The records every stage passes on: plain frozen data, importing nothing above this package."""
