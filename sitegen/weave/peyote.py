"""A staggered chart of lying beads -> flat peyote: one string for rows 1 and 2, then row after row between.

Mechanics. The first string of beads becomes rows 1 and 2 (rows are counted zig-zag); the thread goes back
through all of it but the last bead, so that row 1 has its two passes. Each bead after that is picked up and
followed by a pass through the next unit that stands out of the row before. Turns:
even      the row ends in a unit that stands out: the next row begins with a bead beneath it;
odd       the row's last bead has nothing to be sewn to: through the edge unit two rows back, round its
          outer end, and the bead hangs from it; no thread lies bare at the edge;
inside    (decrease) round the thread at the edge and back, or through beads, to where the next row begins;
outside   (increase) at a row's end the beads beyond the edge are strung, the last one skipped, and the
          others gone back through; at a row's start they wait for the end of the row after it.
The last row is run back through, or zipped to the first. Passes: row 1: 2; row 2: 3; all others 2.
Sources, read as trade notes: https://www.myworldofbeads.com/counting-peyote-rows/ (rows counted zig-zag, the
first string is rows 1 and 2); https://www.interweave.com/article/beading/tension-bead/ (stop bead);
http://beadwork.about.com/od/beadedamuletbags/tp/Maple-Leaf-Amulet-Bag-Fringe-Pattern.htm (zipping up).
The odd turn, the way back through the first string, and the increases are common practice or our own
working-out; no source.
"""

from __future__ import annotations

from sitegen.model.problem import Problem
from sitegen.model.source import Part
from sitegen.model.thread import Phrase
from sitegen.weave.finding import hang_finding, no_hold
from sitegen.weave.lattice import Lattice, Place, Spot
from sitegen.weave.work import Work


def peyote_part(work: Work, part: Part) -> None:
    """Work a whole peyote part."""
    lattice = Lattice(work, part)
    if len(lattice.order) < 3:
        work.problems.append(Problem("weave-peyote-rows", part.all_rows[0].where, {"part": part.name}))
        return
    if not _Peyote(work, lattice).work_all(part):
        return
    loose = next((place for place in lattice.units if place not in lattice.picked), None)
    if loose is not None:
        work.problems.append(Problem("weave-peyote-loose", work.beads[lattice.units[loose][0]].where))
    elif not hang_finding(work, part, lattice.part):
        work.problems.append(no_hold(work, part, lattice.part))


class _Peyote:
    """The part on its way: what waits at the end of the last row, and which way that row went."""

    def __init__(self, work: Work, lattice: Lattice) -> None:
        self.work = work
        self.lattice = lattice
        self.waiting: list[Place] = []
        """Units of the row just worked that lie beyond its edge, not yet picked up, from the inside."""
        self.heading = 1

    def work_all(self, part: Part) -> bool:
        """All rows from the first string on; False (with a problem noted) where one cannot be worked."""
        order = self.lattice.order
        before, last = order[0], order[1]
        self._string(before, last, part.start)
        for row in order[2:]:
            if abs(row - last) != 1:  # the base row's other side comes now
                if not self._finish(before, last):
                    return False
                before, last = order[1], order[0]
            if not self._row(row, before, last):
                return False
            before, last = last, row
        return self._zip(before, last) if part.zip else self._finish(before, last)

    # The first string

    def _string(self, first: int, second: int, start: str) -> None:
        """Rows 1 and 2 on one string, and back through it; the thread comes out where row 3 begins."""
        lattice = self.lattice
        heading = self._string_way(first, second, start)
        begin = next(
            column
            for column in lattice.row_of[first][::heading]
            if (column + heading, second) in lattice.units or (column - heading, second) in lattice.units
        )  # the check stage holds that the rows touch
        outside = [column for column in lattice.row_of[second] if (begin - column) * heading > 0]
        self.waiting = [(column, second) for column in outside[::-heading]]
        strung = self._outward((begin, first), (second, first), heading)
        count = len(strung) * lattice.drop
        said = Phrase("peyote-string" if lattice.drop == 1 else "peyote-string-drop", {"count": count})
        self.work.step(2, "peyote-string", (said,))
        self._return(strung, -heading)
        values = {"count": count - 1, "way": _way(-heading)}
        phrases = (Phrase("peyote-string-back", values), Phrase("peyote-rise", {"count": lattice.drop}))
        self.work.step(2, "peyote-string-back", phrases, rest=True)
        self.heading = -heading

    def _string_way(self, first: int, second: int, start: str) -> int:
        """The way the string is laid: from a side where row 1 stands out, the author's side if both do."""
        one, two = self.lattice.row_of[first], self.lattice.row_of[second]
        left, right = one[0] < two[0], one[-1] > two[-1]
        if left != right:
            return 1 if left else -1
        return 1 if start == "left" else -1

    def _outward(self, begin: Place, rows: tuple[int, int], heading: int) -> list[Place]:
        """String the units that follow each other column by column, in two rows by turns."""
        strung = [begin]
        while True:
            column = strung[-1][0] + heading
            following = (column, rows[(len(strung) + 1) % 2])
            if following not in self.lattice.units or following in self.lattice.picked:
                break
            strung.append(following)
        for place in strung:
            self.lattice.go(*place, heading)
        return strung

    def _return(self, strung: list[Place], heading: int) -> None:
        """Skip the last bead strung and go back through all the others."""
        self.lattice.back_round(heading)
        for place in strung[-2::-1]:
            self.lattice.go(*place, heading)

    # Rows

    def _row(self, row: int, before: int, last: int) -> bool:
        """Work one row onto the one before it (`last`); `before` is the row before that."""
        lattice = self.lattice
        out = self.heading
        if not self._turn(row, before, last):
            return False
        columns = [column for column in lattice.row_of[row] if not lattice.made(column, row)]
        middle = sum(lattice.row_of[last]) / len(lattice.row_of[last])
        passed = [place for place in lattice.single if place[1] not in (row, last)]
        self._firm([place for place in passed if (place[0] - middle) * out > 0], self._number(last))
        if not columns:
            return True
        if not self._reach(columns, row, before, last):
            return False
        self._stitches(columns[:: self.heading], row, last)
        return True

    def _reach(self, columns: list[int], row: int, before: int, last: int) -> bool:
        """Bring the thread to where the row can begin, at the side where the last one ended if that goes."""
        for way in (-self.heading, self.heading):
            start = self._start(columns, row, before, last, way)
            if start is not None and self.lattice.weave({start}, self._number(row)):
                self.heading = way
                return True
        place = self.lattice.at(columns[0], row)
        where = self.work.beads[self.lattice.units[place][0]].where
        self.work.problems.append(Problem("weave-no-way", where, {"row": self._number(row)}))
        return False

    def _start(self, columns: list[int], row: int, before: int, last: int, way: int) -> Spot | None:
        """Where the thread must come out for the row to be worked that way."""
        lattice = self.lattice
        for column in columns[::way]:
            if lattice.made(column - way, last):
                return (*lattice.at(column - way, last), way)
            if lattice.made(column + way, last):
                over = (column, before) if lattice.made(column, before) else (column + way, last)
                return (*lattice.at(*over), -way)
        return None

    def _stitches(self, columns: list[int], row: int, last: int) -> None:
        """One unit after another, each followed by the next unit that stands out of the row before."""
        lattice, way = self.lattice, self.heading
        sewn = [c for c in columns if lattice.made(c - way, last) or lattice.made(c + way, last)]
        columns = columns[columns.index(sewn[0]) :]
        if lattice.here == (*lattice.at(columns[0] + way, last), -way):
            self._round_one(columns.pop(0), row, last)
        for place, column in enumerate(columns):
            if not lattice.has(column + way, last):
                self.waiting = [(beyond, row) for beyond in columns[place:]]
                return
            late = not lattice.made(column + way, last)
            lattice.go(column, row, way)
            lattice.go(column + way, last, way)
            motion = "peyote-increase" if late else self._key("peyote-next")
            values = {"row": self._number(last), "way": _way(way), "drop": lattice.drop}
            phrase = Phrase(self._key(motion) if late else motion, values)
            done = column == columns[-1]
            self.work.step(self._number(row), motion, (phrase,), rest=done)

    def _round_one(self, column: int, row: int, last: int) -> None:
        """Begin a row beyond the edge where no unit lies above: skip the last bead and go back."""
        lattice, way = self.lattice, self.heading
        lattice.go(column, row, -way)
        lattice.back_round(way)
        lattice.go(column + way, last, way)
        values = {"count": 2 * lattice.drop - 1, "row": self._number(row)}
        self.work.step(self._number(row), "peyote-out", (Phrase("peyote-out", values),))

    def _key(self, key: str) -> str:
        """The message for units of one bead, or for those of several."""
        return key if self.lattice.drop == 1 else f"{key}-drop"

    def _number(self, row: int) -> int:
        """A chart row's number in order of working."""
        return self.lattice.number[self.lattice.at(0, row)[1]]

    # Turns and ends

    def _turn(self, row: int | None, before: int, last: int) -> bool:
        """Pick up what waits beyond the last row's edge; False (a problem noted) where nothing holds it."""
        if not self.waiting:
            return True
        lattice, out = self.lattice, self.heading
        (column, _), *more = self.waiting
        loose = self.waiting[1:]
        if row is not None and (column + out, row) in lattice.units:
            strung = self._outward((column, last), (row, last), out)
            self._return(strung, -out)
            values = {"count": len(strung) * lattice.drop - 1, "row": self._number(row)}
            self.work.step(self._number(last), "peyote-out", (Phrase("peyote-out", values),), rest=True)
            loose = [place for place in more if place not in strung]
        elif not more:
            self._odd_turn(column, 2 * before - last, last, ends=row is None)
        self.waiting = []
        if loose:
            where = self.work.beads[lattice.units[loose[0]][0]].where
            self.work.problems.append(Problem("weave-peyote-loose", where))
        return not loose

    def _odd_turn(self, column: int, above: int, last: int, *, ends: bool) -> None:
        """Hang a row's last unit from the edge unit two rows back; at a tip, from the thread round it.

        Where the work ends there, the thread goes round the two once more.
        """
        lattice, out = self.lattice, self.heading
        motion = "peyote-odd" if lattice.made(column, above) else "peyote-tip"
        values: dict[str, object] = {"way": _way(out), "back": _way(-out), "drop": lattice.drop}
        if motion == "peyote-odd":
            lattice.go(column, above, out)
            if ends:
                lattice.go(column, last, -out)
                lattice.go(column, above, out)
        if motion == "peyote-odd" or lattice.drop == 1:
            lattice.go(column, last, -out)
        else:
            lattice.go(column, last, out)
            lattice.back_round(-out)
        key = "peyote-odd-last" if ends and motion == "peyote-odd" else motion
        self.work.step(self._number(last), motion, (Phrase(self._key(key), values),), rest=True)

    def _finish(self, before: int, last: int) -> bool:
        """Run back through the last two rows, and through what has only one pass."""
        lattice = self.lattice
        if not self._turn(None, before, last):
            return False
        row, way = self._number(last), -self.heading
        columns = lattice.row_of[last][::way]
        loose = [(column, last) for column in columns if not lattice.made(column, last)]
        if loose or not lattice.weave({(columns[0], last, way)}, row):
            place = (loose or [(columns[0], last)])[0]
            where = self.work.beads[lattice.units[place][0]].where
            code = "weave-peyote-loose" if loose else "weave-no-way"
            self.work.problems.append(Problem(code, where, {"row": row}))
            return False
        column = columns[0]
        if (column, last) in lattice.single:
            self._firm([(column, last)], row)
            lattice.weave({(column, last, way)}, row)
        run = 0
        while column != columns[-1]:
            column += way
            run += 1
            lattice.go(column, before if run % 2 else last, way)
        if run:
            values = {"count": run * lattice.drop, "way": _way(way), "row": row}
            self.work.step(row, "peyote-back", (Phrase("peyote-back", values),), rest=True)
        self.heading = way
        self._firm(list(lattice.single), row)
        return True

    def _firm(self, places: list[Place], row: int) -> None:
        """Go through units that would otherwise keep a single pass."""
        for _ in places:
            single = [place for place in places if place in self.lattice.single]
            goals = {(*place, way) for place in single for way in (1, -1)} - {self.lattice.here}
            if goals:
                self.lattice.weave(goals, row, whole=True)

    def _zip(self, before: int, last: int) -> bool:
        """Zip the last row to the first, tooth to tooth."""
        lattice = self.lattice
        row = 2 * last - before
        if not self._turn(None, before, last):
            return False
        lattice.around = len(lattice.order)
        columns = lattice.row_of[lattice.order[0]]
        if not self._reach(columns, row, before, last):
            return False
        way = self.heading
        count = 0
        for column in columns[::way]:
            lattice.go(column, row, way)
            count += 1
            if lattice.has(column + way, last):
                lattice.go(column + way, last, way)
                count += 1
        values = {"count": count * lattice.drop, "way": _way(way), "drop": lattice.drop}
        phrase = Phrase(self._key("peyote-zip"), values)
        self.work.step(len(lattice.order), "peyote-zip", (phrase,), rest=True)
        self._firm(list(lattice.single), len(lattice.order))
        return True


def _way(heading: int) -> str:
    return "right" if heading > 0 else "left"
