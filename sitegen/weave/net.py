"""A drawn net -> netting, flat: a string of beads, then nets of three, five or seven into the nets before.

Mechanics: a net is an odd number of beads between two joins; the middle bead of each is where the next row
is joined. The first row is strung. Each row begins at the edge bead the row before ended with, so that no
thread shows at the edge, and ends with half a net; at the last edge bead the needle turns and goes back to
the last join. The first bead is passed twice, so that nothing slides off.
Openwork: the legs of the nets lie on one pass between two joins, as in all netting.
Common practice, no source; proved by the needle. No published gauge exists; see the trade rules.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from sitegen.model.location import Location
from sitegen.model.source import Part
from sitegen.model.thread import End, Phrase, Point
from sitegen.trade.rules import rules
from sitegen.weave.openwork import bend_gap, uneven
from sitegen.weave.work import View, Work

Node = tuple[int, int]
"""(column, level) of a place where legs meet: columns from the side of the first bead, levels from the row
worked first."""
Sign = tuple[str, Location]
"""A letter and its place in the source."""


def net_part(work: Work, part: Part) -> None:
    """Work a whole net."""
    shape = net_shape(part)
    net = _Net(work, shape)
    joints = _lay(net, part)
    work.problems += uneven(work, joints)
    if work.problems:
        return
    net.string()
    for row in range(2, shape.high + 1):
        net.row(row)
    net.finish()


@dataclass(frozen=True, slots=True)
class NetShape:
    """How a net's chart is to be read."""

    leg: int
    """Beads between two nodes."""
    wide: int
    """Half nets across."""
    high: int
    """Rows."""
    first: int
    """Text column of the leftmost bead."""
    from_left: bool
    """Whether the first row starts at the left as the piece hangs."""
    turned: bool
    """Whether the row worked first is the lowest of the chart."""

    def cell(self, node: Node, step: int = 0, place: int = 0) -> tuple[int, int]:
        """(text column, line) of a node, or of a bead so many places from it towards the next level."""
        column = node[0] * (self.leg + 1) + step * place
        line = node[1] * (self.leg + 1) + place
        if not self.from_left:
            column = self.wide * (self.leg + 1) - column
        if self.turned:
            line = self.high * (self.leg + 1) - line
        return column + self.first, line

    def nodes(self) -> Iterator[Node]:
        """All nodes, level by level."""
        for level in range(self.high + 1):
            for column in range(level % 2, self.wide + 1, 2):
                yield column, level


def net_shape(part: Part) -> NetShape:
    """The shape of a net chart without faults."""
    rows = part.all_rows
    leg = (part.net - 1) // 2
    columns = [column for row in rows for column, _ in row.cells]
    turned = part.begin != "top"
    return NetShape(
        leg=leg,
        wide=(max(columns) - min(columns)) // (leg + 1),
        high=(len(rows) - 1) // (leg + 1),
        first=min(columns),
        from_left=rows[-1 if turned else 0].cells[0][0] == min(columns),
        turned=turned,
    )


class _Net:
    """A part on its way."""

    def __init__(self, work: Work, shape: NetShape) -> None:
        self.work = work
        self.shape = shape
        self.view = View(turned=shape.turned)
        self.nodes: dict[Node, int] = {}
        self.legs: dict[tuple[Node, Node], list[int]] = {}
        """Beads from a node to the next level, in order."""

    def _along(self, one: Node, other: Node) -> list[int]:
        """The beads of a leg in the order from one node to the other."""
        leg = self.legs.get((one, other))
        return leg if leg is not None else self.legs[other, one][::-1]

    def _enter(self, bead: int, heading: Point) -> End:
        """The end at which a needle that goes this way enters."""
        turn = math.radians(self.work.beads[bead].angle)
        along = heading[0] * math.sin(turn) + heading[1] * math.cos(turn)
        return End.TOP if along > 0 else End.BOTTOM

    def _heading(self, one: Node, other: Node) -> Point:
        a, b = (self.work.beads[self.nodes[node]] for node in (one, other))
        return b.x - a.x, b.y - a.y

    def edge(self, node: Node) -> bool:
        """Whether a node's bead stands upright at an edge, where the thread turns."""
        return node[1] > 0 and node[0] in (0, self.shape.wide)

    def mouth(self, node: Node, other: Node) -> Point:
        """Where a leg to another node begins: at the mouth of the node's hole on that side."""
        bead = self.work.beads[self.nodes[node]]
        rightward = (other[0] > node[0]) is self.shape.from_left
        if self.edge(node):  # the legs end side by side, and the bead stands upright beside them
            return bead.x + (bead.width if rightward else -bead.width) / 2, bead.y
        return bead.mouth(End.BOTTOM if rightward else End.TOP)

    def _at_node(self, node: Node, heading: Point) -> End:
        """The end at which a node is entered: edge beads from the level before, others along the row."""
        beads = self.work.beads
        if self.edge(node):
            inner = self.nodes[1 if node[0] == 0 else node[0] - 1, node[1] - 1]
            return self._enter(self.nodes[node], (0.0, beads[self.nodes[node]].y - beads[inner].y))
        return self._enter(self.nodes[node], (heading[0], 0.0))

    def _pick_leg(self, one: Node, other: Node) -> None:
        heading = self._heading(one, other)
        for bead in self._along(one, other):
            self.work.pick(bead, self._enter(bead, heading))

    def _pick_node(self, node: Node, heading: Point) -> None:
        self.work.pick(self.nodes[node], self._at_node(node, heading))

    def string(self) -> None:
        """The first row: the first bead held by a second pass, then all the others on one thread."""
        work, wide = self.work, self.shape.wide
        way: list[Node] = [(column, column % 2) for column in range(wide + 1)]
        heading = self._heading(way[0], way[1])
        self._pick_node(way[0], heading)
        work.through(self.nodes[way[0]], self._at_node(way[0], heading))
        self._close(1, "net-stop")
        for one, other in pairwise(way):
            self._pick_leg(one, other)
            self._pick_node(other, self._heading(one, other))
        count = (wide + 1) * (self.shape.leg + 1) - self.shape.leg - 1
        self._close(1, "net-string", {"count": count}, rest=True)

    def row(self, row: int) -> None:
        """One row: whole nets back into the middle beads of the row before, then half a net."""
        wide, net = self.shape.wide, 2 * self.shape.leg + 1
        step = 1 if row % 2 else -1
        here = (0 if row % 2 else wide, row - 1)
        edge = (wide - here[0], row)
        motion = f"net-first-{net}"
        while here[0] + step != edge[0]:
            low, there = (here[0] + step, row), (here[0] + 2 * step, row - 1)
            self._pick_leg(here, low)
            self._pick_node(low, self._heading(here, low))
            self._pick_leg(low, there)
            self.work.through(self.nodes[there], self._at_node(there, self._heading(here, there)))
            self._close(row, motion, {"count": net})
            here, motion = there, f"net-next-{net}"
        self._pick_leg(here, edge)
        self._pick_node(edge, self._heading(here, edge))
        self._close(row, "net-half", {"count": self.shape.leg + 1}, rest=row < self.shape.high)

    def finish(self) -> None:
        """Round the last edge bead, and back through the leg into the last join."""
        row = self.shape.high
        column = self.shape.wide if row % 2 else 0
        inner = (column - 1 if row % 2 else 1, row - 1)
        heading = self._heading((column, row), inner)
        for bead in self._along((column, row), inner):
            self.work.through(bead, self._enter(bead, heading))
        self.work.through(self.nodes[inner], self._at_node(inner, heading))
        self._close(row, "net-finish", {"count": self.shape.leg}, rest=True)

    def _close(
        self, row: int, motion: str, values: dict[str, object] | None = None, *, rest: bool = False
    ) -> None:
        self.work.step(row, motion, (Phrase(motion, values or {}),), turned=self.view.turned, rest=rest)


def _lay(net: _Net, part: Part) -> list[tuple[int, int, float]]:
    """Lay all beads: nodes across (upright at the edges), legs straight from node to node.

    -> the joints along the legs: (bead, bead, mm between their holes).
    """
    work, shape = net.work, net.shape
    signs: dict[tuple[int, int], Sign] = {
        (column, line): (letter, row.spot(cell))
        for line, row in enumerate(part.all_rows)
        for cell, (column, letter) in enumerate(row.cells)
    }
    across, down = _pitches(work, part, shape, signs)
    index = work.begin_part(part, shape.high, down, 2 * across)
    for node in shape.nodes():
        column, line = shape.cell(node)
        x, y = (column - shape.first) / (shape.leg + 1) * across, line / (shape.leg + 1) * down
        angle = 90.0
        if net.edge(node):
            kind = work.kind(signs[column, line][0])
            x += (-1 if column == shape.first else 1) * (kind.width_mm - kind.length_mm) / 2
            angle = 0.0
        net.nodes[node] = work.lay(index, max(1, node[1]), column + 1, signs[column, line], (x, y, angle))
    joints: list[tuple[int, int, float]] = []
    for column, level in list(net.nodes):
        for step in (-1, 1):
            other = (column + step, level + 1)
            if other in net.nodes:
                places = [shape.cell((column, level), step, place) for place in range(1, shape.leg + 1)]
                joints += _lay_leg(
                    net, index, ((column, level), other), [(c, signs[c, n]) for c, n in places]
                )
    return joints


def _pitches(
    work: Work, part: Part, shape: NetShape, signs: Mapping[tuple[int, int], Sign]
) -> tuple[float, float]:
    """Half a net across and one row down, mm, from the longest bead of the nodes and the longest leg.

    An author's gauge counts nets across and rows.
    """
    gauge = part.gauge or work.pattern.gauge
    if gauge:
        return gauge.width_mm / gauge.beads / 2, gauge.height_mm / gauge.rows
    cells = {shape.cell(node) for node in shape.nodes()}
    node = max(work.kind(sign[0]).length_mm for cell, sign in signs.items() if cell in cells)
    leg = max(work.kind(sign[0]).length_mm for cell, sign in signs.items() if cell not in cells)
    width = max(work.kind(letter).width_mm for letter in {letter for letter, _ in signs.values()})
    slope = rules().lay["net-slope"]
    gap = bend_gap(width, slope, rules().lay["open-corner"])
    turn = math.radians(slope)
    reach = shape.leg * leg + gap
    return node + gap + reach * math.cos(turn), reach * math.sin(turn)


def _lay_leg(
    net: _Net, index: int, ends: tuple[Node, Node], signs: list[tuple[int, Sign]]
) -> list[tuple[int, int, float]]:
    """Lay the beads of a leg with even gaps from hole to hole; -> its joints."""
    work = net.work
    one, other = ends
    start, goal = net.mouth(one, other), net.mouth(other, one)
    lengths = [work.kind(letter).length_mm for _, (letter, _) in signs]
    whole = math.dist(start, goal)
    gap = (whole - sum(lengths)) / (len(lengths) + 1)
    angle = math.degrees(math.atan2(goal[0] - start[0], goal[1] - start[1]))
    far = gap
    beads = []
    for (column, sign), length in zip(signs, lengths, strict=True):
        share = (far + length / 2) / whole
        x, y = (a + (b - a) * share for a, b in zip(start, goal, strict=True))
        beads.append(work.lay(index, other[1], column + 1, sign, (x, y, angle)))
        far += length + gap
    net.legs[ends] = beads
    return [(a, b, gap) for a, b in zip([net.nodes[one], *beads], [*beads, net.nodes[other]], strict=True)]
