"""Ways through beads: shortest, hidden, and named from the nearer side."""

from __future__ import annotations

from sitegen.model.thread import MoveKind

FRINGE = """  - name: Fringe
    stitch: fringe
    hang: {from: Piece, edge: bottom}
    strands: [4D, 5D, 4D, 4D]
"""


def test_from_the_top_to_the_foot_along_the_edge(sample, woven):
    path = woven(sample("   D\n  D D\n D D D\nD D D D", parts=FRINGE))
    way = next(step for step in path.steps if step.motion == "travel")
    moves = path.moves[way.first_move : way.past_move]
    rows = [path.beads[move.bead].row for move in moves]
    assert rows in ([3, 2, 1], [4, 3, 2, 1])
    assert all(move.kind is MoveKind.THROUGH for move in moves)
    places = {path.beads[move.bead].place for move in moves}
    assert places == {1} or len(places) == len(rows)


def test_a_way_never_goes_through_strands(sample, woven):
    two = FRINGE + FRINGE.replace("Fringe", "Back").replace("bottom", "top").replace(
        "[4D, 5D, 4D, 4D]", "[4D]"
    )
    path = woven(sample("   D\n  D D\n D D D\nD D D D", parts=two))
    way = [step for step in path.steps if step.motion == "travel"][-1]
    parts = {path.beads[move.bead].part for move in path.moves[way.first_move : way.past_move]}
    assert parts == {0}
