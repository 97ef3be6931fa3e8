"""The table of decisions sorted: no row meets in a drum what it must not meet.

The same kinds, labels, contaminants, states of knowledge and editions as the table of decisions.
Sources: the rule files name theirs row by row; that shells and liners are washed apart: articles on
NFPA 1851, 2020 edition (read; high).
"""

from functools import cache

import pytest
from tests.care_facts import EDITIONS, book
from tests.outside.test_care_table import ORDER, Row, decided, forbidden, listed
from tests.unit.laundry.wash_cases import ROOM

from sootline.core.basis import ComponentId, Finding, KindId, Standing
from sootline.core.care import Decision, Fate
from sootline.core.gear import WashMethod
from sootline.core.gear.catalogue import find_kind
from sootline.core.gear.kinds import Layer
from sootline.core.laundry.sorting import sort_components
from sootline.core.laundry.sorts import Sort, Sorting

LIMITED = (("wash.bath_temp", "bath_temp"), ("wash.extraction", "extraction"))
PROGRAMMES = {(one.id, run.id): run for one in ROOM.washers for run in one.programmes}
Table = dict[ComponentId, tuple[Row, Decision]]


def sorted_rows(table: Table, edition: str) -> Sorting:
    """Sort everything a table decides."""
    return sort_components(
        decisions=[decision for _, decision in table.values()],
        components=[row.component for row, _ in table.values()],
        room=ROOM,
        rulebook=book(edition),
    )


@cache
def layer(kind: KindId) -> Layer:
    """Return what a kind is for the wash."""
    return find_kind(kind).layer


def met(sort: Sort, table: Table, edition: str) -> list[str]:
    """Say what is wrong with what goes together in one sort."""
    members = [table[name] for name in sort.components]
    machine = sort.method is WashMethod.MACHINE
    wrong = []
    if machine and {layer(row.component.kind) for row, _ in members} >= {Layer.SHELL, Layer.LINER}:
        wrong.append("shells with liners")
    if machine and any(
        {"machine-wash", "any-wash"} & forbidden(row, edition) for row, _ in members
    ):
        wrong.append("a drum that a source forbids")
    if any(found.fate is not Fate.WASH for _, found in members):
        wrong.append("what is not to be washed")
    if len({(found.separation.alone, found.separation.hazards) for _, found in members}) > 1:
        wrong.append("what is set apart for different reasons")
    for setting in sort.settings:
        run = PROGRAMMES[setting.washer, setting.programme]
        for topic, reading in LIMITED:
            stands = {found.terms.limit(topic).stand(getattr(run, reading)) for _, found in members}
            if stands != {Standing.WITHIN}:
                wrong.append(f"{topic} is {stands}")
    return wrong


def without_source(sorting: Sorting) -> list[Finding]:
    """List the reasons of a sorting that cite nothing."""
    reasons = [reason for sort in sorting.sorts for reason in sort.reasons]
    reasons += [*sorting.refused, *(reason for _, reason in sorting.kept_out)]
    return [reason for reason in reasons if not reason.ground.source]


@pytest.mark.parametrize("edition", EDITIONS)
def test_nothing_in_the_table_meets_what_it_must_not(edition: str) -> None:
    """Shells never with liners, no limit passed, nothing held is washed, every reason sourced."""
    wrong: list[str] = []
    for entry in listed():
        for knowledge in ORDER:
            rows = decided(edition, str(entry["id"]), knowledge)
            table: Table = {row.component.id: (row, found) for row, found in rows}
            sorting = sorted_rows(table, edition)
            place = f"{edition} {entry['id']} {knowledge}"
            for sort in sorting.sorts:
                wrong += [f"{place} {sort.id}: {one}" for one in met(sort, table, edition)]
            wrong += [f"{place}: {one.message} cites nothing" for one in without_source(sorting)]
            placed = {name for sort in sorting.sorts for name in sort.components}
            kept = {name for name, _ in sorting.kept_out}
            refused = {dict(one.values).get("component") for one in sorting.refused}
            if set(table) - placed - kept - refused:
                wrong.append(f"{place}: a component is nowhere")
    assert wrong == []


@pytest.mark.parametrize("edition", [one for one in EDITIONS if one.startswith("nfpa-1851")])
def test_the_table_puts_shells_and_liners_into_drums(edition: str) -> None:
    """The check above is not true of nothing: both go into drums, in sorts of their own."""
    rows = decided(edition, "flame-retardant", ORDER[-1])
    table: Table = {row.component.id: (row, found) for row, found in rows}
    in_drums = [
        {layer(table[name][0].component.kind) for name in sort.components}
        for sort in sorted_rows(table, edition).sorts
        if sort.settings
    ]

    assert any(Layer.SHELL in layers for layers in in_drums)
    assert any(Layer.LINER in layers for layers in in_drums)
