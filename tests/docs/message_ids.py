"""Which message ids does the source use, and which do the catalogues hold?

An id counts as used when the source spells it out (in Python, in a rule file or in a template),
when it is built by a function that puts a domain before its argument and is called with the rest
spelled out, or when it matches an f-string that begins with a domain. The last is the weakest: at
least one entry must match, and all that match count as used.
"""

import ast
import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from babel.messages.pofile import read_po

SOURCE = Path(__file__).parents[2] / "src" / "sootline"
LOCALE = SOURCE / "words" / "locale"
# What has the look of a message id and is none: the names of files.
NOT_MESSAGES = re.compile(
    r"[a-z0-9_-]+\.(json|toml|csv|xlsx|md|py|txt)|upkeep\.(notices|manifests|supplies)"
)
_ID = re.compile(r"[a-z][a-z0-9_]*(\.[a-z0-9_-]+)*\.[a-z0-9_-]*[a-z0-9]")
_IN_TEMPLATES = re.compile(r'{% say "([a-z0-9_.-]+)"(\|add:)?')
_MESSAGE_ARGUMENT = {"MessageId": 0, "UnreadableValueError": 0, "UsageError": 0, "say": 0,
                     "finding": 1}  # fmt: skip
_MESSAGE_KEYWORDS = {"message", "help", "rests_on", "question"}


@dataclass
class Used:
    """What the source uses: ids, and patterns of ids it builds, each with where it does."""

    ids: dict[str, str] = field(default_factory=dict)
    patterns: dict[str, str] = field(default_factory=dict)

    def covers(self, message_id: str) -> bool:
        """Whether the source can come to this id."""
        return message_id in self.ids or any(
            re.fullmatch(pattern, message_id) for pattern in self.patterns
        )


@dataclass(frozen=True, kw_only=True)
class Entry:
    """One text of a catalogue, with its plural forms if it has them."""

    message_id: str
    forms: tuple[str, ...]
    domain: str


def entries(lang: str) -> dict[str, Entry]:
    """Return every text of a language by message id, read from the sources people edit."""
    found: dict[str, Entry] = {}
    for path in sorted(LOCALE.glob(f"{lang}/LC_MESSAGES/*.po")):
        with path.open("rb") as file:
            for message in read_po(file, locale=lang, abort_invalid=True):
                if message.id:
                    message_id, forms = message.id, message.string
                    message_id = message_id if isinstance(message_id, str) else message_id[0]
                    forms = (forms,) if isinstance(forms, str) else tuple(forms or ())
                    found[message_id] = Entry(message_id=message_id, forms=forms, domain=path.stem)
    return found


def python_trees(root: Path = SOURCE) -> dict[Path, ast.Module]:
    """Return the parsed source that may name messages; words itself only holds their texts."""
    return {
        path: ast.parse(path.read_text(encoding="utf-8"))
        for path in sorted(root.rglob("*.py"))
        if "words" not in path.relative_to(root).parts
    }


def used(root: Path = SOURCE) -> Used:
    """Return every id and pattern the source uses."""
    trees = python_trees(root)
    domains = _domains(trees)
    result = Used()
    for path, tree in trees.items():
        where = str(path.relative_to(root))
        wrappers = _wrappers_near(path, trees)
        for node in _without_other_ids(tree):
            for shape in _ids_at(node, domains, wrappers):
                (result.patterns if "\\" in shape else result.ids).setdefault(shape, where)
    for path in sorted(root.rglob("*.toml")):
        if "words" not in path.relative_to(root).parts:
            for text in _strings(tomllib.loads(path.read_text(encoding="utf-8"))):
                if _is_id(text, domains):
                    result.ids.setdefault(text, str(path.relative_to(root)))
    for path in sorted(root.rglob("*.html")):
        where = str(path.relative_to(root))
        for text, added in _IN_TEMPLATES.findall(path.read_text(encoding="utf-8")):
            if added:
                result.patterns.setdefault(re.escape(text) + r"[a-z0-9_.-]+", where)
            else:
                result.ids.setdefault(text, where)
    return result


def _domains(trees: dict[Path, ast.Module]) -> frozenset[str]:
    """Return the domains that have texts, and those the source hands over as messages."""
    found = {path.stem for path in LOCALE.glob("en/LC_MESSAGES/*.po")}
    for tree in trees.values():
        for node in ast.walk(tree):
            if isinstance(node, ast.Call):
                found |= {text.partition(".")[0] for text in _said_in(node) if _ID.fullmatch(text)}
    return frozenset(found - {"name"})


def _without_other_ids(tree: ast.AST) -> Iterator[ast.AST]:
    """Walk a tree, leaving out what is made an id of another kind (a rule, a contaminant)."""
    waiting: list[ast.AST] = [tree]
    while waiting:
        node = waiting.pop()
        yield node
        if not (
            isinstance(node, ast.Call)
            and _called(node).endswith("Id")
            and _called(node) != "MessageId"
        ):
            waiting.extend(ast.iter_child_nodes(node))


def _said_in(call: ast.Call) -> Iterator[str]:
    """Return the constants a call hands over where a message id is expected."""
    given: list[ast.expr] = [word.value for word in call.keywords if word.arg in _MESSAGE_KEYWORDS]
    at = _MESSAGE_ARGUMENT.get(_called(call))
    if at is not None and len(call.args) > at:
        given.append(call.args[at])
    for value in given:
        if isinstance(value, ast.Constant) and isinstance(value.value, str):
            yield value.value


def _called(call: ast.Call) -> str:
    return getattr(call.func, "id", getattr(call.func, "attr", ""))


def _wrappers_near(path: Path, trees: dict[Path, ast.Module]) -> dict[str, tuple[str, int, str]]:
    """Functions of the same folder that put a domain before an argument: prefix, position, name."""
    found: dict[str, tuple[str, int, str]] = {}
    for other, tree in trees.items():
        if other.parent != path.parent:
            continue
        for node in ast.walk(tree):
            if isinstance(node, ast.FunctionDef) and (other == path or node.name[0] != "_"):
                for wrapper in _wrapper(node):
                    found[node.name] = wrapper
    return found


def _wrapper(function: ast.FunctionDef) -> Iterator[tuple[str, int, str]]:
    names = [argument.arg for argument in function.args.args]
    for node in _without_other_ids(function):
        if isinstance(node, ast.JoinedStr) and len(node.values) == 2:
            first, second = node.values
            if (
                isinstance(first, ast.Constant)
                and re.fullmatch(r"([a-z_]+\.)+", str(first.value))
                and isinstance(second, ast.FormattedValue)
                and isinstance(second.value, ast.Name)
                and second.value.id in names
            ):
                name = second.value.id
                yield str(first.value), names.index(name), name


def _ids_at(
    node: ast.AST, domains: frozenset[str], wrappers: dict[str, tuple[str, int, str]]
) -> Iterator[str]:
    if isinstance(node, ast.Constant) and _is_id(node.value, domains):
        yield str(node.value)
    elif isinstance(node, ast.JoinedStr):
        shape = _shape(node)
        built_by_wrapper = any(re.escape(prefix) + r"[a-z0-9_.-]+" == shape
                               for prefix, _, _ in wrappers.values())  # fmt: skip
        begins = shape.partition(r"\.")[0] if r"\." in shape else ""
        if begins in domains and not built_by_wrapper:
            yield shape
    elif isinstance(node, ast.Call) and _called(node) in wrappers:
        prefix, at, name = wrappers[_called(node)]
        given = [word.value for word in node.keywords if word.arg == name]
        given += node.args[at : at + 1]
        for value in given:
            if isinstance(value, ast.Constant) and isinstance(value.value, str):
                yield prefix + value.value
            elif isinstance(value, ast.JoinedStr):
                yield re.escape(prefix) + _shape(value)
            elif prefix.count(".") > 1:
                yield re.escape(prefix) + r"[a-z0-9_.-]+"


def _shape(text: ast.JoinedStr) -> str:
    """Return an f-string as a pattern; whatever is put in may be any part of an id."""
    return "".join(
        re.escape(str(part.value)) if isinstance(part, ast.Constant) else r"[a-z0-9_.-]+"
        for part in text.values
    )


def _is_id(value: object, domains: frozenset[str]) -> bool:
    return (
        isinstance(value, str)
        and bool(_ID.fullmatch(value))
        and value.partition(".")[0] in domains
        and not NOT_MESSAGES.fullmatch(value)
    )


def _strings(value: object) -> Iterator[str]:
    """Return every text in a parsed rule file, keys included."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for key, inner in value.items():
            yield key
            yield from _strings(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from _strings(inner)
