"""How does a call read: what is known of it, person by person, and what is asked next?"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from sootline.core.exposure.calls import Answer, Call, DeconMethod, Done, Presence, Zone
from sootline.core.job.jobs import Job
from sootline.core.rulebook.contaminants import Knowledge
from sootline.web.forms import INSIDE_ON_AIR, PLACES, HazardsForm, PersonForm
from sootline.web.reading.clock import Clock
from sootline.web.reading.saying import Said, said

# What is asked of every call first; the rest of the list stands below.
USUAL = ("smoke", "asbestos", "battery-smoke", "blood", "fuel", "chemical", "drug-powder", "foam")


@dataclass(frozen=True, kw_only=True)
class Known:
    """What is known of one person at a call."""

    presence: Presence
    lines: tuple[Said, ...]


@dataclass(frozen=True, kw_only=True)
class CallShown:
    """One call as it is read."""

    call: Call
    began: str
    back: str
    people: tuple[Known, ...]
    hazards: tuple[Said, ...]

    @property
    def open_people(self) -> int:
        """Of how many nobody said where they were."""
        return sum(not one.presence.zones for one in self.people)


def read_calls(job: Job, clock: Clock) -> tuple[CallShown, ...]:
    """List the calls of a job, the newest first."""
    newest = sorted(job.calls, key=lambda call: call.at, reverse=True)
    return tuple(read_call(call, clock) for call in newest)


def read_call(call: Call, clock: Clock) -> CallShown:
    """Lay one call out."""
    return CallShown(
        call=call,
        began=clock.at(call.at),
        back=clock.at(call.back_at) if call.back_at else "",
        people=tuple(Known(presence=one, lines=tuple(_known(one))) for one in call.people),
        hazards=tuple(
            said(f"web.call.knows.{one.knowledge}", contaminant=one.contaminant)
            for one in call.hazards
        ),
    )


def _known(person: Presence) -> Iterator[Said]:
    if person.zones:
        for zone in person.zones:
            on_air = zone is Zone.INSIDE and person.on_air is Answer.YES
            yield said(f"web.call.place.{INSIDE_ON_AIR if on_air else zone.value}")
    else:
        yield said("web.call.not_said")
    yield said(f"web.call.scene.{person.decon.done}")
    if person.bags:
        yield said("web.needs.bags", bags=", ".join(person.bags))


def read_person(call: Call, before: Presence, form: PersonForm) -> dict[str, object]:
    """Return what the screen for one person shows: what was said before stands ticked."""
    members = [one.member for one in call.people]
    place = members.index(before.member)
    chosen = form.data.getlist("places") if form.is_bound else _places(before)  # type: ignore[attr-defined]
    return {
        "call": call,
        "person": before,
        "form": form,
        "number": place + 1,
        "of": len(members),
        "others": [one.member for one in call.people if one.zones and one.member != before.member],
        "following": members[place + 1] if place + 1 < len(members) else None,
        "places": [(one, one in chosen) for one in PLACES],
        "smoke": [(one.value, one is before.smoke) for one in Answer],
        "done": [(one.value, one is before.decon.done) for one in Done],
        "methods": [
            (one.value, said(f"name.decon_method.{one}"), one is before.decon.method)
            for one in DeconMethod
        ],
        "reason": before.decon.reason or "",
        "bags": ", ".join(before.bags),
        "taken_bags": sorted({bag for one in call.people for bag in one.bags}),
    }


def _places(person: Presence) -> list[str]:
    on_air = person.on_air is not Answer.NO
    return [
        INSIDE_ON_AIR if zone is Zone.INSIDE and on_air else zone.value for zone in person.zones
    ]


def read_hazards(call: Call, listed: Iterable[str], form: HazardsForm) -> dict[str, object]:
    """Return what the screen for hazards shows: the usual ones first."""
    known = {str(one.contaminant): one.knowledge for one in call.hazards}
    words = (Knowledge.KNOWN, Knowledge.SUSPECTED, Knowledge.UNKNOWN)
    every = list(listed)
    ordered = [one for one in USUAL if one in every]
    rest = [one for one in every if one not in USUAL]

    def rows(names: list[str]) -> list[tuple[str, list[tuple[str, bool]], bool]]:
        return [
            (one, [(word.value, known.get(one) is word) for word in words], one not in known)
            for one in names
        ]

    return {"call": call, "form": form, "usual": rows(ordered), "rest": rows(rest)}
