"""Which commands are there, and where does each live?"""

from dataclasses import dataclass

DONE = 0
PROBLEM = 1
BAD_INPUT = 2
STOPPED = 130


@dataclass(frozen=True, kw_only=True)
class Command:
    """One command of the terminal.

    Args:
        name: as it is typed.
        help: message id of the one line that says what it is for.
        module: imported when the command is called, never before.
    """

    name: str
    help: str
    module: str


COMMANDS: tuple[Command, ...] = (
    Command(name="decide", help="cli.help.decide", module="sootline.cli.commands.decide"),
    Command(name="loads", help="cli.help.loads", module="sootline.cli.commands.loads"),
    Command(name="plan", help="cli.help.plan", module="sootline.cli.commands.plan"),
    Command(
        name="compare-plans",
        help="plan.help.compare_plans",
        module="sootline.cli.commands.compare_plans",
    ),
    Command(name="ride", help="cli.help.ride", module="sootline.cli.commands.ride"),
    Command(name="checks", help="cli.help.checks", module="sootline.cli.commands.checks"),
    Command(name="rebuild", help="cli.help.rebuild", module="sootline.cli.commands.rebuild"),
    Command(name="paper", help="cli.help.paper", module="sootline.cli.commands.paper"),
    Command(name="machine", help="machine.help.machine", module="sootline.cli.commands.machine"),
    Command(name="drying", help="drying.help.drying", module="sootline.cli.commands.drying"),
    Command(name="due", help="cli.help.due", module="sootline.cli.commands.due"),
    Command(name="today", help="upkeep.help.today", module="sootline.cli.commands.today"),
    Command(name="inspect", help="inspection.help.inspect", module="sootline.cli.commands.inspect"),
    Command(name="recall", help="recall.help.recall", module="sootline.cli.commands.recall"),
    Command(
        name="contractor",
        help="contractor.help.contractor",
        module="sootline.cli.commands.contractor",
    ),
    Command(name="rules", help="cli.help.rules", module="sootline.cli.commands.rules"),
    Command(name="import", help="roster.help.import", module="sootline.cli.commands.import_"),
    Command(name="job", help="cli.help.job", module="sootline.cli.commands.job"),
    Command(name="ledger", help="ledger.help.ledger", module="sootline.cli.commands.ledger"),
    Command(name="serve", help="store.help.serve", module="sootline.cli.commands.serve"),
    Command(name="admin", help="accounts.help.admin", module="sootline.cli.commands.admin"),
    Command(name="enter", help="store.help.enter", module="sootline.cli.commands.enter"),
    Command(name="record", help="store.help.record", module="sootline.cli.commands.record"),
    Command(name="undo", help="store.help.undo", module="sootline.cli.commands.undo"),
    Command(name="export", help="store.help.export", module="sootline.cli.commands.export"),
    Command(name="backup", help="store.help.backup", module="sootline.cli.commands.backup"),
    Command(name="restore", help="store.help.restore", module="sootline.cli.commands.restore"),
    Command(name="doctor", help="store.help.doctor", module="sootline.cli.commands.doctor"),
    Command(name="demo", help="cli.help.demo", module="sootline.cli.commands.demo"),
)
