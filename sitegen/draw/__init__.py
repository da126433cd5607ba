"""ThreadPath -> Drawing: recorded pen calls that any pen can play back."""
