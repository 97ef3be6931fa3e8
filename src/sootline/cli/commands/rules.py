"""`sootline rules`: what does an edition say, and what would another one change?"""

import argparse
from pathlib import Path

from sootline.cli.commands.rules_text import compared_lines, listed_lines, shown_lines
from sootline.cli.output import deliver
from sootline.cli.parser import CommandParser
from sootline.core.basis import EditionId
from sootline.core.gear import Component
from sootline.tasks.compare_rules import compare_rules
from sootline.tasks.show_rules import list_editions, show_rules
from sootline.wiring.rules import RULES, read_policy


def add_arguments(parser: CommandParser) -> None:
    """Add `show [EDITION]` and `compare A B`."""
    kinds = parser.add_sub_commands("what")
    show = kinds.add_parser("show", help="rules.help.show")
    show.add_argument("edition", nargs="?", metavar="EDITION", help="rules.help.edition")
    show.add_argument("--topic", default="", metavar="TOPIC", help="rules.help.topic")
    show.add_argument("--of", nargs="+", default=(), metavar="WORD", help="rules.help.of")
    show.add_argument("--policy", type=Path, metavar="FILE", help="rules.help.policy")
    compare = kinds.add_parser("compare", help="rules.help.compare")
    compare.add_argument("before", metavar="A", help="rules.help.before")
    compare.add_argument("after", metavar="B", help="rules.help.after")
    compare.add_argument("--job", type=Path, metavar="JOB", help="rules.help.job")


def run(options: argparse.Namespace) -> int:
    """List the editions, show one, or compare two."""
    if options.what == "compare":
        components = _components(options.job) if options.job else ()
        before, after = EditionId(options.before), EditionId(options.after)
        compared = compare_rules(RULES, before, after, components)
        deliver(compared, compared_lines(compared, lang=options.lang), options)
    elif options.edition is None:
        listed = list_editions(RULES)
        deliver(listed, listed_lines(listed, lang=options.lang), options)
    else:
        policy = read_policy(options.policy) if options.policy else ()
        edition = EditionId(options.edition)
        shown = show_rules(RULES, edition, policy=policy, topic=options.topic, of=options.of)
        deliver(shown, shown_lines(shown, lang=options.lang), options)
    return 0


def _components(path: Path) -> tuple[Component, ...]:
    # Loaded here because reading a job is the slow part, and `rules show` reads none.
    from sootline.wiring.jobs import read_job  # noqa: PLC0415

    return read_job(path).components
