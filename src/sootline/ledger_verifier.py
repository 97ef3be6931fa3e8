"""Is an exported record the one that was written?

One file, Python 3.11 or newer, nothing but the standard library, nothing of the program that
wrote the record: keep it beside the export. The format is in docs/reference/ledger-format.md.

    python ledger_verifier.py EXPORT.jsonl [--anchor FILE ...] [--json]

Ends with 0 when nothing is damaged, 1 when something is, 2 when it is no export at all.
"""

import argparse
import json
import sys
from collections.abc import Iterable, Iterator
from hashlib import sha256
from pathlib import Path
from typing import Any

KNOWN, FORM, BEGINNING, MOST_LISTED = '[1,"sha256"]', '["ledger",1]', "0" * 64, 200
Object = dict[str, Any]


class NoExportError(Exception):
    """The file is no export, or of a form this verifier does not know."""


def refuse(number: str) -> object:
    """Refuse a number with a fraction: no canonical text of a record has one."""
    raise ValueError(number)


DECODER = json.JSONDecoder(parse_float=refuse, parse_constant=refuse)


def digest(before: bytes, text: str) -> bytes:
    """Hash a text after some bytes; half a character hashes to something else, too."""
    return sha256(before + text.encode(errors="surrogatepass")).digest()


def written(value: object) -> str:
    """Write a value in its one form: no spaces, names in order (RFC 8785 for plain names)."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"), sort_keys=True)


def read_object(text: str) -> Object | None:
    """Return an object from its one text, or None when the text is not that."""
    try:
        value = DECODER.decode(text)
        same = isinstance(value, dict) and written(value) == text
    except (ValueError, RecursionError):
        return None
    return value if same else None


def node(left: bytes, right: bytes) -> bytes:
    """Hash two hashes of a tree together (RFC 9162, section 2.1.1)."""
    return sha256(b"\x01" + left + right).digest()


class Tree:
    """The root over a growing number of hashes."""

    def __init__(self) -> None:
        self.size, self.full = 0, list[bytes]()

    def add(self, leaf: bytes) -> None:
        """Take in one more hash."""
        rest = self.size
        while rest & 1:
            leaf, rest = node(self.full.pop(), leaf), rest >> 1
        self.full.append(leaf)
        self.size += 1

    def root(self) -> bytes:
        """Return the root so far."""
        whole = self.full[-1] if self.full else sha256(b"").digest()
        for left in reversed(self.full[:-1]):
            whole = node(left, whole)
        return whole


def proven_root(leaf: bytes, at: int, size: int, path: list[bytes]) -> bytes | None:
    """Return the root a proof leads to (RFC 9162, section 2.1.3.2)."""
    if not 0 <= at < size:
        return None
    last = size - 1
    for step in path:
        if last == 0:
            return None
        if at & 1 or at == last:
            leaf = node(step, leaf)
            while at and not at & 1:
                at, last = at >> 1, last >> 1
        else:
            leaf = node(leaf, step)
        at, last = at >> 1, last >> 1
    return leaf if last == 0 else None


class Findings:
    """What is wrong, and what was erased."""

    def __init__(self) -> None:
        self.listed: list[tuple[int, str]] = []
        self.count, self.foreign, self.gone = 0, 0, set[int]()
        self.erasures: dict[int, tuple[int, str, str]] = {}

    def damage(self, seq: int, kind: str) -> None:
        """Note a damage."""
        self.count += 1
        if len(self.listed) < MOST_LISTED:
            self.listed.append((seq, kind))

    def check(self, entry: Object, place: int) -> tuple[bytes, Object | None]:
        """Check one entry by itself; return its hash and what its header says."""
        leaf = digest(b"\x00", entry["header"])
        if leaf.hex() != entry["hash"]:
            self.damage(place, "hash")
        fields = read_object(entry["header"])
        if fields is None:
            self.damage(place, "unreadable")
            return leaf, None
        if written([fields.get("v"), fields.get("alg")]) != KNOWN:
            self.damage(place, "version")
        if written(fields.get("seq")) != str(place):
            self.damage(place, "sequence")
        salt, payload = entry["salt"], entry["payload"]
        if salt is None and payload is None:
            self.gone.add(place)
        elif None in (salt, payload) or digest(salt, payload).hex() != fields.get("payload_digest"):
            self.damage(place, "payload")
        if fields.get("kind") == "erased":
            self.note_erasure(fields, place)
        elif fields.get("kind") == "foreign":
            self.foreign += 1
            for _ in range(0 if payload is None else foreign_faults(payload)):
                self.damage(place, "foreign")
        return leaf, fields

    def hold(self, anchor: Object, *found: str) -> list[int]:
        """Hold what was found against an anchor kept elsewhere."""
        names = dict(zip(("installation", "hash", "root"), found, strict=True))
        wrong = [name for name, what in names.items() if anchor[name] != what]
        for name in wrong:
            self.damage(anchor["n"], f"anchor-{name}")
        return [] if wrong else [anchor["n"]]

    def note_erasure(self, fields: Object, place: int) -> None:
        """Two different people must stand for an erasure of an earlier entry's payload."""
        erases, actor, second = fields.get("erases"), fields.get("actor"), fields.get("second")
        other = second.get("person") if isinstance(second, dict) else None
        two = isinstance(actor, str) and isinstance(other, str) and actor != other
        if type(erases) is not int or not 0 < erases < place or not two:
            self.damage(place, "erasure")
        else:
            self.erasures.setdefault(erases, (place, str(actor), str(other)))

    def report(self, entries: int, head: str, root: str, anchors: list[int]) -> Object:
        """Say what came out."""
        missing = [(seq, "payload-missing") for seq in sorted(self.gone - self.erasures.keys())]
        listed = sorted([*self.listed, *missing], key=lambda damage: damage[0])[:MOST_LISTED]
        told = sorted(self.erasures.items())
        return {
            "entries": entries,
            "head": head,
            "root": root,
            "first_bad": listed[0][0] if listed else None,
            "damages": [list(damage) for damage in listed],
            "more": self.count + len(missing) - len(listed),
            "erased": [[seq, *under] for seq, under in told if seq in self.gone],
            "not_carried_out": [[seq, under[0]] for seq, under in told if seq not in self.gone],
            "anchors": anchors,
            "foreign": self.foreign,
        }


def foreign_faults(payload: str) -> int:
    """Count what is wrong with another installation's entry inside one of this record."""
    outer = read_object(payload) or {}
    try:
        header, origin, stated = (str(outer[name]) for name in ("header", "origin", "hash"))
        seq, salt, text = int(str(outer["seq"])), outer.get("salt"), outer.get("payload")
        raw = bytes.fromhex(salt) if isinstance(salt, str) else None
    except (KeyError, ValueError):
        return 1
    fields = read_object(header)
    if fields is None:
        return 1
    said = isinstance(text, str)
    found = digest(raw, str(text)).hex() if said and raw is not None else None
    return sum((
        digest(b"\x00", header).hex() != stated,
        fields.get("installation") != origin,
        fields.get("seq") != seq,
        said and found != fields.get("payload_digest"),
    ))  # fmt: skip


def verify_whole(lines: Iterable[str], anchors: list[Object]) -> Object:
    """Read a whole record and hold it against the anchors."""
    found, tree, head, agreed = Findings(), Tree(), BEGINNING, []
    awaited = {n: [one for one in anchors if one["n"] == n] for n in {a["n"] for a in anchors}}
    installation: object = None
    for line in lines:
        place = tree.size + 1
        entry = read_entry(line)
        leaf, fields = found.check(entry, place)
        if fields is not None:
            if fields.get("prev") != head:
                found.damage(place, "previous")
            if place == 1:
                installation = fields.get("installation")
            elif fields.get("installation") != installation:
                found.damage(place, "installation")
        head = leaf.hex()
        tree.add(leaf)
        for anchor in awaited.pop(place, ()):
            agreed += found.hold(anchor, str(installation), head, tree.root().hex())
    for _ in awaited:
        found.damage(tree.size + 1, "anchor-short")
    return found.report(tree.size, head, tree.root().hex(), agreed)


def verify_item(lines: Iterable[str], anchor: Object, kept: list[Object]) -> Object:
    """Check the entries of one thing, each with its proof."""
    found, count, agreed = Findings(), 0, []
    for count, line in enumerate(lines, start=1):  # the last one is the number
        entry = read_entry(line)
        said = (read_object(entry["header"]) or {}).get("seq")
        seq = said if type(said) is int else count
        leaf, fields = found.check(entry, seq)
        if (fields or {}).get("installation") != anchor["installation"]:
            found.damage(seq, "installation")
        root = proven_root(leaf, seq - 1, anchor["n"], entry["proof"])
        if root is None or root.hex() != anchor["root"]:
            found.damage(seq, "proof")
    for other in (one for one in kept if one["n"] == anchor["n"]):
        agreed += found.hold(other, anchor["installation"], anchor["hash"], anchor["root"])
    return found.report(count, anchor["hash"], anchor["root"], agreed)


def read_entry(line: str) -> Object:
    """Return the entry of a line; a line that is none becomes one whose hash is wrong."""
    document = read_object(line) or {}
    try:
        salt, payload = document.get("salt"), document.get("payload")
        "".join((document["header"], document["hash"], "" if payload is None else payload))
        return {
            "header": document["header"],
            "hash": document["hash"],
            "salt": None if salt is None else bytes.fromhex(salt),
            "payload": payload,
            "proof": [bytes.fromhex(step) for step in document.get("proof", [])],
        }
    except (KeyError, TypeError, ValueError):
        return {"header": line, "hash": "", "salt": None, "payload": None, "proof": []}


def read_anchor(text: str) -> Object:
    """Return an anchor from its text."""
    anchor = read_object(text.strip()) or {}
    texts = [anchor.get(name) for name in ("installation", "hash", "root")]
    known = written(anchor.get("v")) == "1" and type(anchor.get("n")) is int and anchor["n"] > 0
    if not known or not all(isinstance(value, str) for value in texts):
        raise NoExportError(f"no anchor, or of an unknown version: {text[:80]!r}")
    return anchor


def verify(lines: Iterator[str], anchors: list[Object]) -> Object:
    """Verify an export, whole or of one thing."""
    head = read_object(next(lines, "")) or {}
    if written([head.get("sootline"), head.get("form")]) != FORM:
        raise NoExportError("no export of a record, or of an unknown form")
    if "item" in head:
        return verify_item(lines, read_anchor(str(head.get("anchor"))), anchors)
    return verify_whole(lines, anchors)


def main(typed: list[str] | None = None) -> int:
    """Verify one export from the command line; bytes that are no text show as damage."""
    parser = argparse.ArgumentParser(description="Verify an exported record.")
    parser.add_argument("export", type=Path)
    parser.add_argument("--anchor", type=Path, action="append", default=[])
    parser.add_argument("--json", action="store_true")
    given = parser.parse_args(typed)
    try:
        kept = [read_anchor(a) for p in given.anchor for a in p.read_bytes().decode().splitlines()]
        with given.export.open(encoding="utf-8", errors="surrogateescape", newline="\n") as file:
            report = verify((line.rstrip("\n") for line in file), kept)
    except (NoExportError, OSError, UnicodeDecodeError) as error:
        print(error, file=sys.stderr)
        return 2
    told = "\n".join(f"{name}: {value}" for name, value in report.items())
    print(written(report) if given.json else told)
    return 1 if report["first_bad"] is not None else 0


if __name__ == "__main__":
    sys.exit(main())
