"""Text of a source -> Pattern or Shop, and the problems met on the way."""
