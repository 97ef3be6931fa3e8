"""What do the rule files say: the editions shipped with the program, and a department's own?

A file is read when it is asked for, and once.
"""

import tomllib
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from sootline.core.basis import BadInputError, EditionId, Fault, MessageId
from sootline.core.rulebook.contaminants import ContaminantRule
from sootline.core.rulebook.reading import read_edition, read_rules
from sootline.core.rulebook.reading_contaminants import read_contaminants
from sootline.core.rulebook.rules import Edition, Rule
from sootline.files.reading import read_text

_MOST_BYTES = 1024 * 1024
_PRACTICE = EditionId("practice/common")


class RuleFiles:
    """The rules shipped with the program; answers the port `Rules`."""

    def editions(self) -> tuple[EditionId, ...]:
        """List the editions of standards there are, common practice apart."""
        bodies = (folder for folder in _shelf().iterdir() if folder.is_dir())
        return tuple(
            sorted(
                EditionId(f"{body.name}/{file.name.removesuffix('.toml')}")
                for body in bodies
                if body.name != "practice"
                for file in body.iterdir()
                if file.name.endswith(".toml")
            )
        )

    def edition(self, edition: EditionId) -> Edition:
        """Return one edition.

        Raises:
            BadInputError: there is no such edition; the fault lists those there are.
        """
        known = self.editions()
        if edition not in known:
            values = (("found", edition[:60]), ("known", ", ".join(known)))
            message = MessageId("rules.fault.no_edition")
            raise BadInputError([Fault(place="edition", message=message, values=values)])
        return _edition(edition)

    def practice(self) -> Edition:
        """Return common practice."""
        return _edition(_PRACTICE)

    def contaminants(self) -> tuple[ContaminantRule, ...]:
        """Return what common practice asks for, contaminant by contaminant."""
        return _contaminants()


def read_policy(path: Path) -> tuple[Rule, ...]:
    """Read a department's own rules from a file of `[[rule]]` rows.

    Raises:
        BadInputError: the file cannot be read or is no TOML, or every fault of its rows.
    """
    text = read_text(path, max_bytes=_MOST_BYTES)
    try:
        table = tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError, ValueError) as error:
        values = (("problem", str(error)[:120]),)
        message = MessageId("rules.fault.toml")
        raise BadInputError([Fault(place=path.name, message=message, values=values)]) from None
    return read_rules(table, path.name)


def _shelf() -> Traversable:
    return files("sootline").joinpath("rules")


def _parsed(name: str) -> dict[str, object]:
    return tomllib.loads(_shelf().joinpath(*name.split("/")).read_text(encoding="utf-8"))


@cache
def _edition(edition: EditionId) -> Edition:
    name = f"{edition}.toml"
    return read_edition(_parsed(name), name)


@cache
def _contaminants() -> tuple[ContaminantRule, ...]:
    name = "practice/contaminants.toml"
    return read_contaminants(_parsed(name), name)
