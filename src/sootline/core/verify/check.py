"""Does a wash plan keep every hard rule of its instance?"""

from itertools import chain

from sootline.core.basis import Fault
from sootline.core.verify.book import counts, open_book, unknown_names
from sootline.core.verify.numbers import numbers, washers
from sootline.core.verify.said import begun, said
from sootline.core.verify.steps import cabinet_runs, drying, hand, loads, tasks
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan


def verify(instance: Instance, plan: Plan) -> tuple[Fault, ...]:
    """List every broken rule with place, value and limit; nothing listed means the plan holds.

    The plan's bound and gap are not checked: they say something about other plans.
    """
    unknown = tuple(unknown_names(instance, plan))
    if unknown:
        return unknown
    book = open_book(instance, plan)
    return tuple(
        chain(
            counts(book),
            tasks(book, plan),
            hand(book, plan),
            loads(instance, book, plan),
            drying(instance, book, plan),
            cabinet_runs(instance, book, plan),
            numbers(instance, book, plan),
            washers(instance, plan),
            said(instance, book, plan),
            begun(instance, plan),
        )
    )
