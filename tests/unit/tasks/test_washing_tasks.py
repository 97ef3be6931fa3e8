"""Washers checked, drying estimated, and reductions recorded, all from one job."""

from dataclasses import replace

import pytest
from tests.washing_night import DRUM, night, readings

from sootline.core.basis import (
    BadInputError,
    ComponentId,
    KindId,
    MachineId,
    PlaceId,
    UnreadableValueError,
    quantity,
)
from sootline.core.drying import Cloth, Readings
from sootline.core.gear import WashMethod
from sootline.core.gear.labels import CareText, Label
from sootline.core.job.checks import check_job
from sootline.core.job.jobs import Job
from sootline.core.machines import Act, Method
from sootline.core.washplan.durations import Pace
from sootline.files.planning_table import load_planning_times
from sootline.files.practice_tables import load_assumptions, load_reductions
from sootline.tasks.check_machines import MachineReport, check_machines
from sootline.tasks.estimate_drying import (
    estimate_drying_of,
    room_with_estimates,
    wet_pieces,
    wettest,
)
from sootline.tasks.form_loads import form_loads
from sootline.tasks.plan_wash import build_all, plan_wash
from sootline.tasks.record_reductions import record_reductions
from sootline.wiring.rules import RULES

TABLE = load_assumptions()


def checked(job: Job | None = None) -> MachineReport:
    """Check the night's washers."""
    return check_machines(RULES, job or night(), TABLE)


def test_every_programme_of_every_washer_is_reported() -> None:
    """Three of drum 1, one each of the others."""
    assert [(one.washer, one.programme) for one in checked().programmes] == [
        ("drum 1", "1 shells"), ("drum 1", "2 liners"), ("drum 1", "7 hot"), ("drum 2", "A"),
        ("old drum", "normal"),
    ]  # fmt: skip


def test_the_thermometer_counts_when_it_reads_hotter() -> None:
    """104 °F is set and 107 °F was read: beyond."""
    said = {str(one.message): one for one in checked().programmes[0].findings}

    assert said["machine.bath.past"].value("reading") == "107 °F"


def test_drum_and_speed_count_before_the_stated_g() -> None:
    """90 G are stated; 430 rpm in 36 inches come to 94.5 and may be beyond."""
    first, second, *_ = checked().programmes

    assert "machine.spin.uncertain" in [one.message for one in first.findings]
    assert "machine.spin.inside" in [one.message for one in second.findings]
    assert (first.refused, second.refused) == (True, False)


def test_pieces_that_bear_less_than_the_edition_are_named() -> None:
    """Labels speak for their own pieces."""
    named = {one.value("component") for one in checked().stricter}

    assert named <= {component.id for component in night().components}


def test_drying_needs_the_rooms_air() -> None:
    """Nobody read it: asked for, not guessed; the plan's room stays as it is."""
    job = replace(night(), readings=Readings())

    with pytest.raises(BadInputError, match=r"drying\.no_air"):
        estimate_drying_of(RULES, job, TABLE)
    assert room_with_estimates(job, form_loads(RULES, job), TABLE) is job.wash_room


def test_every_rack_and_cabinet_gets_an_estimate() -> None:
    """Shells and liners apart, gloves and boots not at all."""
    found = estimate_drying_of(RULES, night(), TABLE)

    assert {one.place for one in found.places} == {"rack", "cabinet", "line"}
    kinds = {kind for row in found.rows for kind in row.kinds}
    assert "coat-liner" in kinds
    assert not kinds & {"gloves", "boots-leather"}


@pytest.mark.parametrize(
    ("at", "message"), [("90 G", "scaled"), ("", "weighed"), ("40 G", "default")]
)
def test_a_weighing_counts_for_the_gentlest_spin(at: str, message: str) -> None:
    """Scaled to 80 G, taken as it is, or left for the default where it is too far off."""
    job = replace(night(), readings=readings(at=at))

    assert wettest(job, TABLE).rests_on == f"machine.moisture.{message}"


def test_the_plan_rests_on_the_rooms_air() -> None:
    """Where somebody read the air and nobody measured a time."""
    plan = plan_wash(RULES, night(), planning=load_planning_times(), stop=lambda: True)

    assert "drying.rests.weighed" in {one.message for one in plan.rests_on}


def test_impossible_air_stops_the_plan() -> None:
    """72 °C typed for 72 °F is asked about."""
    wrong = readings().air
    assert wrong is not None
    job = replace(night(), readings=replace(readings(), air=replace(wrong, temp=quantity("72 °C"))))

    with pytest.raises(UnreadableValueError, match=r"drying\.air_temp"):
        plan_wash(RULES, job, planning=load_planning_times(), stop=lambda: True)


def test_a_table_without_assumptions_estimates_nothing() -> None:
    """The planning intervals stand alone."""
    bare = replace(load_planning_times(), assumptions=None)
    built = build_all(night(), form_loads(RULES, night()), bare)

    assert "drying.rests.weighed" not in {one.message for one in built[Pace.LIKELY].rests_on}


def test_gear_without_any_weight_gives_off_nothing() -> None:
    """A kind of no typical mass that nobody weighed cannot be reckoned with."""
    job = night()
    loads = form_loads(RULES, job)
    masses = {component.id: component.mass for component in job.components}

    assert 0 < len(wet_pieces(job, loads)) < len(masses)


def test_what_a_label_wants_dried_in_one_piece_hangs_assembled() -> None:
    """Washed by hand in one piece; shell and liner share their free faces."""
    job = night()
    label = Label(care=CareText(assembled=True, wash=WashMethod.HAND))
    pieces = tuple(
        replace(one, label=label) if one.kind in ("coat-shell", "coat-liner") else one
        for one in job.components
    )
    given = replace(job, components=pieces)
    cloths = {piece.kind: piece.cloth for piece in wet_pieces(given, form_loads(RULES, given))}

    assert {cloths[KindId("coat-shell")], cloths[KindId("coat-liner")]} == {Cloth.ASSEMBLED}
    assert cloths[KindId("trouser-shell")] is Cloth.SHELL


def test_a_record_lists_steps_and_counts_in_order() -> None:
    """On-scene steps of the wearer and every advanced cleaning, by day, and the laboratory."""
    records = record_reductions(RULES, night(), load_reductions())
    one = next(one for one in records if len(one.record.lines) > 1)
    acts = {line.event.act for line in one.record.lines}
    days = [str(line.event.on) for line in one.record.lines]

    assert acts == set(Act)
    assert days == sorted(days)
    assert one.record.results[0].by == "Quern Laboratory"


def test_a_record_of_one_component_is_given_even_when_empty() -> None:
    """Whoever asks about a piece learns that nothing is recorded."""
    component = replace(
        night().components[0], id=ComponentId("new"), records=(), owner=None, wash_count=None
    )
    job = replace(night(), components=(*night().components, component))
    (one,) = record_reductions(RULES, job, load_reductions(), component=ComponentId("new"))

    assert one.record.lines == ()
    assert [found.message for found in one.washes] == ["machine.washes.unknown"]
    assert "new" not in {each.component for each in record_reductions(
        RULES, job, load_reductions())}  # fmt: skip


def test_a_step_that_was_not_made_is_none() -> None:
    """What was skipped, and what nobody named, stands nowhere."""
    records = record_reductions(RULES, night(), load_reductions())
    people = {line.event.who for one in records for line in one.record.lines
              if line.event.act is Act.ON_SCENE}  # fmt: skip
    methods = {line.event.method for one in records for line in one.record.lines}

    assert people == {"211", "214", "218", "217", "219"}
    assert methods >= {Method.WET_SOAP, Method.DRY_BRUSH, Method.WATER, Method.MACHINE_WASH}
    assert DRUM == "drum 1"


def test_readings_of_what_is_not_there_are_refused() -> None:
    """Every one by its place; a log of a place that is gone is history and stays."""
    read = readings()
    wrong = replace(
        read,
        drums=(replace(read.drums[0], washer=MachineId("gone")),),
        fans=(replace(read.fans[0], place=PlaceId("gone")),),
    )

    assert check_job(night()) is night()
    with pytest.raises(BadInputError) as refused:
        check_job(replace(night(), readings=wrong))
    assert [(fault.place, fault.message) for fault in refused.value.faults] == [
        ("readings.drums[0].washer", "job.no_such_washer"),
        ("readings.fans[0].place", "job.no_such_place"),
    ]
