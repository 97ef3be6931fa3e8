"""What does a job look like once a fact of the year is written down?"""

from dataclasses import replace

from sootline.core.basis import BadInputError, ComponentId, Fault
from sootline.core.gear import Component, Refusal, apply
from sootline.core.job.checks import check_job
from sootline.core.job.jobs import Job
from sootline.core.upkeep.people import Measured
from sootline.tasks.ports import Rules
from sootline.tasks.year_deeds import Fact
from sootline.tasks.year_events import Follows, follows
from sootline.tasks.year_facts import with_fact, with_measures


def take_year(rules: Rules, job: Job, fact: Fact) -> Job:
    """Return the job with one more fact of the year, and what it does to gear.

    Raises:
        BadInputError: it names what is not there, or cannot be as things stand; every component
            in the way is named.
    """
    after = check_job(replace(job, upkeep=with_fact(job.upkeep, fact)))
    what = {one.component: one for one in follows(rules, job, after, fact)}
    faults: list[Fault] = []
    components = tuple(
        _changed(one, what[one.id], faults) if one.id in what else one for one in after.components
    )
    if faults:
        raise BadInputError(faults)
    measured = (fact,) if isinstance(fact, Measured) else ()
    members = with_measures(after.members, measured)
    return replace(after, components=components, members=members)


def _changed(component: Component, what: Follows, faults: list[Fault]) -> Component:
    state = component.state
    for event in what.events:
        outcome = apply(state, event)
        if isinstance(outcome, Refusal):
            faults.append(_refused(component.id, outcome))
            return component
        state = outcome
    records = component.records if what.record is None else (*component.records, what.record)
    return replace(component, state=state, records=records)


def _refused(component: ComponentId, refusal: Refusal) -> Fault:
    reason = refusal.reason
    return Fault(place=component, message=reason.message, values=reason.values)
