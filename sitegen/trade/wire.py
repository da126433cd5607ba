"""American wire gauge -> millimetres, and the sizes of a ring made of such wire.

The gauge is the geometric series of ASTM B258: number 36 is 0.0050 in, number 0000 is 0.4600 in,
39 steps apart.
"""

from __future__ import annotations

import math

_NUMBER_36_MM = 0.127
_RATIO = 92.0
_STEPS = 39


def wire_mm(awg: float) -> float:
    """Wire diameter in mm; gauges 0, 00, 000 and 0000 are 0, -1, -2 and -3."""
    return _NUMBER_36_MM * math.pow(_RATIO, (36 - awg) / _STEPS)


def ring_inner_mm(outer_mm: float, awg: float) -> float:
    """Inside diameter of a round ring known by its outside diameter: less two wires."""
    return outer_mm - 2 * wire_mm(awg)
