"""How does a planned day read, line by line?"""

import argparse
from collections.abc import Iterator

from sootline.cli.output import finding_lines, printable
from sootline.cli.pieces import wrapped
from sootline.core.intervals import Standing
from sootline.core.upkeep.people import Order
from sootline.core.upkeep.planning import Bundle, DayPlan, OverdueSheet
from sootline.tasks.plan_day import Today
from sootline.words import name, say

_PRESSING = (Standing.OVERDUE, Standing.TODAY)


def today_lines(today: Today, options: argparse.Namespace) -> Iterator[str]:
    """Return a day as text."""
    lang = options.lang
    yield say("upkeep.cli.heading", {"today": today.today.isoformat()}, lang=lang)
    yield from _plan(today.plan, lang)
    yield from _overdue(today.overdue, lang, rows=options.overdue)
    if today.refits:
        yield from ("", say("upkeep.cli.refits", lang=lang))
    for refit in today.refits:
        yield f"  {printable(refit.member)}"
        yield from finding_lines(refit.reasons, lang=lang)
    if today.orders:
        yield from ("", say("upkeep.cli.orders", lang=lang))
    for order in today.orders:
        yield from _order(order, lang)
    yield from _stores(today, lang)


def _plan(plan: DayPlan, lang: str) -> Iterator[str]:
    if not plan.taken:
        yield from wrapped(say("upkeep.cli.nothing", lang=lang))
    for bundle in plan.taken:
        yield from wrapped(say("upkeep.cli.take", _bundle(bundle, lang), lang=lang))
    for swap in plan.swaps:
        values = {
            "member": printable(swap.member),
            "slot": swap.slot.value,
            "spare": printable(swap.spare),
        }
        yield from wrapped(say("upkeep.cli.swap", values, lang=lang), indent=4)
    for left in plan.left:
        yield from finding_lines(left.reasons, lang=lang)
    yield from finding_lines(plan.reasons, lang=lang)


def _bundle(bundle: Bundle, lang: str) -> dict[str, str]:
    matters = dict.fromkeys(due.matter for due in bundle.dues)
    days = [str(due.first_day) for due in bundle.dues]
    return {
        "unit": printable(bundle.unit),
        "holder": printable(bundle.holder or say("decide.nobodys", lang=lang)),
        "pieces": printable(", ".join(bundle.components)),
        "matters": ", ".join(name("matter", one, lang=lang) for one in matters),
        "first_day": min(days),
    }


def _overdue(sheet: OverdueSheet, lang: str, *, rows: bool) -> Iterator[str]:
    yield from ("", say("upkeep.cli.overdue", {"n": str(len(sheet.rows))}, lang=lang))
    for row in sheet.causes:
        values = {"cause": row.cause.value, "n": str(row.matters), "longest": str(row.longest)}
        yield from wrapped(say("upkeep.cli.cause", values, lang=lang))
        yield from wrapped(say(row.definition, lang=lang), indent=6)
    for one in sheet.rows if rows else ():
        values = {
            "component": printable(one.component),
            "holder": printable(one.holder or "-"),
            "matter": one.matter.value,
            "n": str(one.days_over),
            "cause": one.cause.value,
        }
        yield from wrapped(say("upkeep.cli.overdue_row", values, lang=lang))


def _order(order: Order, lang: str) -> Iterator[str]:
    slot = name("slot", order.what, lang=lang)
    sizes = ", ".join(f"{name('dimension', key, lang=lang)} {size}" for key, size in order.size)
    values = {
        "what": slot if slot != order.what else name("kind", order.what, lang=lang),
        "size": printable(sizes or "-"),
        "n": str(order.count),
        "members": printable(", ".join(order.members) or "-"),
        "needed": order.needed.isoformat(),
    }
    yield from wrapped(say("upkeep.cli.order", values, lang=lang))
    yield from finding_lines(order.reasons, lang=lang)


def _stores(today: Today, lang: str) -> Iterator[str]:
    pressing = [one.reason for one in today.chores if one.standing in _PRESSING]
    if today.stores or pressing:
        yield from ("", say("upkeep.cli.stores", lang=lang))
    yield from finding_lines((*today.stores, *pressing), lang=lang)
