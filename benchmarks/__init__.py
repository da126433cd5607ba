"""Timings of the work, as ratios to a floor measured in the same run."""
