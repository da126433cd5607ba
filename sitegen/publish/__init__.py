"""(Pattern, ThreadPath, Measures, Shop) -> pages, printed sheets and reports: one product a file."""
