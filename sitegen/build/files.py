"""A shop in each of its languages, printed -> every file of the output folder, as path and contents."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence

from sitegen.build.look import Look
from sitegen.build.machines import report, site_files
from sitegen.build.tree import SITE, Tree, shared_files, tree_files
from sitegen.publish.favicon import icon_files
from sitegen.publish.offline import WORKER, offline_worker
from sitegen.publish.pages import look_files
from sitegen.publish.piece import Piece
from sitegen.publish.report import measures_json, measures_text

DESK = "desk"
"""What only the author reads."""


def output_files(trees: Sequence[Tree], look: Look, notes: str) -> dict[str, bytes]:
    """The whole output; `notes` is the text of the problems, for the author's desk.

    `trees` are the languages, the first one first: what has no words is made of that alone, and the desk
    reads it.
    """
    first = trees[0]
    files, sizes = shared_files(first)
    files |= {f"{SITE}/{name}": data for name, data in look_files(look.theme)}
    icons = icon_files(first.pieces, first.shop, first.words, look.theme)
    files |= {f"{SITE}/{icon}": data for icon, data in icons}
    for tree in trees:
        files |= tree_files(tree, sizes)
    for_machines = site_files(_site(files), first.patterns, first.shop)
    files |= {f"{SITE}/{name}": data for name, data in for_machines.items()}
    told = report(_site(files), first.patterns, first.shop, first.words)
    files[f"{DESK}/machines.txt"] = told.encode()
    files[f"{DESK}/problems.txt"] = notes.encode()
    for piece in first.pieces:
        _reports(files, piece)
    files[f"{SITE}/{WORKER}"] = offline_worker(_site(files), look.theme)
    return files


def _site(files: Mapping[str, bytes]) -> dict[str, bytes]:
    """Path below the top of the site -> contents."""
    return {
        path.removeprefix(f"{SITE}/"): data for path, data in files.items() if path.startswith(f"{SITE}/")
    }


def _reports(files: dict[str, bytes], piece: Piece) -> None:
    """One pattern's measures for the author's desk."""
    pattern, words = piece.pattern, piece.words
    data = measures_json(pattern, piece.path, piece.measures, words)
    files[f"{DESK}/{pattern.name}.json"] = (json.dumps(data, indent=2, ensure_ascii=False) + "\n").encode()
    files[f"{DESK}/{pattern.name}.txt"] = measures_text(pattern, piece.measures, words, piece.row_of).encode()
