"""A pattern whose photos are named -> the same with what their files hold, or problems.

Each file is read once, within the shop's folder, and looked over; only its fingerprint and size are kept.
Whoever makes something of it reads it again and gets the same bytes or none.
"""

from __future__ import annotations

import difflib
import hashlib
import re
import unicodedata
from dataclasses import replace
from pathlib import Path, PurePosixPath

from sitegen.model.location import Location
from sitegen.model.photo import Photo
from sitegen.model.source import Pattern
from sitegen.read.faults import Faults
from sitegen.read.photo_file import MOST_BYTES, PhotoRefused, upright_size

_ADDRESS = re.compile(r"[A-Za-z][A-Za-z0-9+.-]*:|/|~|.*\\")
"""How a path begins that does not lead down from the pattern's folder; or one with another sign between."""
_ENDINGS = frozenset({".jpg", ".jpeg", ".png", ".webp", ".heic"})


class PhotoChanged(OSError):
    """A photo is no longer what it was when it was looked over."""


def with_photos(pattern: Pattern, folder: Path, root: Path, faults: Faults) -> Pattern:
    """Look the pattern's photos up in `folder`, its own, without leaving `root`."""
    looker = _Looker(folder, root, faults)
    lead = looker.look_up(pattern.photo) if pattern.photo is not None else None
    body = tuple(looker.look_up(block) if isinstance(block, Photo) else block for block in pattern.body)
    return replace(pattern, photo=lead, body=body)


def photo_bytes(photo: Photo) -> bytes:
    """The file's bytes as they were looked over. Raises PhotoChanged if they are others by now."""
    data = _read(photo.path) if photo.path is not None else b""
    if hashlib.sha256(data).hexdigest() != photo.digest:
        raise PhotoChanged(f"{photo.file} was changed while it was in use; run the command again")
    return data


def _read(path: Path) -> bytes:
    """The file, no further than it may be large."""
    with path.open("rb") as file:
        return file.read(MOST_BYTES + 1)


class _Looker:
    """Finds the photos of one pattern; each file is looked over once."""

    def __init__(self, folder: Path, root: Path, faults: Faults) -> None:
        self.folder, self.root, self.faults = folder, root, faults
        self.known: dict[Path, tuple[str, int, int]] = {}

    def look_up(self, photo: Photo) -> Photo:
        """The photo with its file, or as it is and a problem."""
        where = photo.at.get("file") or photo.at[""]
        path = self.find(photo.file, where)
        if path is None:
            return photo
        if path not in self.known:
            try:
                data = _read(path)
                self.known[path] = (hashlib.sha256(data).hexdigest(), *upright_size(data))
            except OSError as error:
                reason = (error.strerror or "no reason is given").lower()
                self.faults.add("photo-unreadable", where, file=photo.file, reason=reason)
                return photo
            except PhotoRefused as refused:
                self.faults.add(refused.code, where, file=photo.file, **refused.values)
                return photo
        digest, width, height = self.known[path]
        return replace(photo, path=path, digest=digest, width=width, height=height)

    def find(self, name: str, where: Location) -> Path | None:
        """The file of this name, letter for letter; or a problem."""
        steps = PurePosixPath(name).parts
        if _ADDRESS.match(name) or ".." in steps or not steps or "\0" in name:
            self.faults.add("photo-outside", where, file=name)
            return None
        path = self.folder
        for step in steps:
            found = _entry(path, step)
            if found is None:
                self.faults.add("photo-missing", where, file=name, hint=_hint(self.folder, path, step))
                return None
            path /= found
            if self.leads_out(path):
                self.faults.add("photo-outside", where, file=name)
                return None
            if unicodedata.normalize("NFC", found) != unicodedata.normalize("NFC", step):
                right = path.relative_to(self.folder).as_posix()
                self.faults.add("photo-case", where, file=name, found=right)
                return None
        if path.is_file():
            return path.resolve()
        self.faults.add("photo-unreadable", where, file=name, reason="it is no plain file")
        return None

    def leads_out(self, path: Path) -> bool:
        """Whether a link leads out of the shop, or nowhere."""
        try:
            return not path.resolve(strict=True).is_relative_to(self.root.resolve())
        except (OSError, RuntimeError):
            return True


def _entry(folder: Path, name: str) -> str | None:
    """The folder's entry of this name, else the one that differs in capitals alone, else None.

    The folder is asked for its list, as some computers open a file under a name in other capitals too.
    """
    entries = _entries(folder)
    wanted = unicodedata.normalize("NFC", name)
    alike = [entry for entry in entries if _folded(entry) == _folded(wanted)]
    exact = [entry for entry in alike if unicodedata.normalize("NFC", entry) == wanted]
    return next(iter([*exact, *alike]), None)


def _entries(folder: Path) -> list[str]:
    try:
        return sorted(entry.name for entry in folder.iterdir())
    except OSError:
        return []


def _folded(name: str) -> str:
    return unicodedata.normalize("NFC", name).casefold()


def _hint(folder: Path, within: Path, name: str) -> str:
    """What the author may have meant."""
    photos = [entry for entry in _entries(within) if Path(entry).suffix.lower() in _ENDINGS]
    near = difflib.get_close_matches(name.lower(), photos, n=1, cutoff=0.6)
    if near:
        return f"Did you mean `{(within / near[0]).relative_to(folder).as_posix()}`?"
    return "Put the photo into the pattern's own folder, or into one below it and write `folder/name.jpg`."
