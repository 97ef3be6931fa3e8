"""An invented night at an invented station, with something for every sheet."""

import datetime as dt

from sootline.core.basis import (
    BagId,
    CallId,
    ComponentId,
    ContaminantId,
    EditionId,
    KindId,
    MachineId,
    MemberId,
    MinuteSpan,
    PlaceId,
    quantity,
)
from sootline.core.care import Appointment, CarePolicy
from sootline.core.exposure import Answer, Call, Hazard, Presence, Remark, Zone
from sootline.core.exposure.calls import Decon, DeconMethod, Done
from sootline.core.gear import CareStage, Component, Custody, State
from sootline.core.gear.kinds import DryMethod
from sootline.core.job.jobs import Department, Job, Member
from sootline.core.laundry.rooms import (
    Company,
    DryingPlace,
    Programme,
    Sink,
    SinkUse,
    Washer,
    WashRoom,
)
from sootline.core.rulebook.contaminants import Decider, Knowledge
from sootline.paper.page import Page, PaperSize
from sootline.tasks.plan_wash import PlanResult, plan_wash
from sootline.wiring.plans import load_planning_times
from sootline.wiring.rules import RULES

NOW = dt.datetime(2026, 3, 11, 4, 20, tzinfo=dt.UTC)
BACK = NOW - dt.timedelta(hours=1)
AT = NOW - dt.timedelta(hours=3)
SMOKE = Hazard(contaminant=ContaminantId("smoke"), knowledge=Knowledge.KNOWN)
KINDS = ("coat-shell", "coat-liner", "gloves", "hood")


def piece(name: str, kind: str, owner: str | None = None, **state: object) -> Component:
    """Return one component; what of its state is not given is as usual."""
    return Component(
        id=ComponentId(name),
        kind=KindId(kind),
        owner=MemberId(owner) if owner else None,
        mass=quantity("3 lb"),
        state=State(**state),  # type: ignore[arg-type]
    )


def worn(member: str, bag: str, method: DeconMethod, **facts: object) -> Presence:
    """Return somebody who was inside, in smoke, and bagged everything."""
    return Presence(
        member=MemberId(member),
        zones=(Zone.INSIDE,),
        smoke=Answer.YES,
        decon=Decon(done=Done.DONE, method=method),
        bags=(BagId(bag),),
        **facts,  # type: ignore[arg-type]
    )


CALL = Call(
    id=CallId("N-7"),
    at=AT,
    back_at=BACK,
    hazards=(SMOKE,),
    people=(worn("301", "12", DeconMethod.WET_SOAP), worn("302", "13", DeconMethod.DRY_BRUSH)),
    remarks=(
        Remark(
            component=ComponentId("302-coat"),
            contaminant=ContaminantId("blood"),
            reached_skin=Answer.YES,
        ),
    ),
)

GEAR = (
    *(piece(f"301-{number}", kind, "301") for number, kind in enumerate(KINDS, start=1)),
    piece("302-coat", "coat-shell", "302"),
    piece("303-coat", "coat-shell", "303", stage=CareStage.DRYING),
    piece("303-liner", "coat-liner", "303", stage=CareStage.WASHED),
    piece("S-1", "hood", None, custody=Custody.LOAN, holder=MemberId("302")),
    piece("S-2", "hood", None, holder=MemberId("303")),
    piece("S-3", "hood", None, custody=Custody.REPAIR),
    piece("S-4", "hood"),
)

ROOM = WashRoom(
    washers=(
        Washer(
            id=MachineId("drum 1"),
            limit=quantity("20 lb"),
            programmes=tuple(
                Programme(
                    id=company.value,
                    companies=(company,),
                    bath_temp=quantity("100 °F"),
                    extraction=quantity("90 G"),
                    minutes=MinuteSpan.exactly(50),
                )
                for company in (Company.SHELLS, Company.LINERS)
            ),
        ),
        Washer(id=MachineId("drum 2"), limit=quantity("20 lb"), programmes=(), working=False),
    ),
    sinks=(Sink(id=PlaceId("basin"), use=SinkUse.GEAR),),
    drying=(
        DryingPlace(id=PlaceId("rack"), method=DryMethod.RACK, places=12),
        DryingPlace(id=PlaceId("flat"), method=DryMethod.FLAT, places=12),
    ),
)


def night(*, gear: tuple[Component, ...] = GEAR, calls: tuple[Call, ...] = (CALL,)) -> Job:
    """Return the night as a job."""
    safety = Appointment(office=Decider.INFECTION_CONTROL, person="207", deputy="204")
    return Job(
        version=1,
        title="An invented night",
        now=NOW,
        department=Department(
            name="Pellow Cross",
            zone="America/Denver",
            edition=EditionId("nfpa-1851/2020"),
            care=CarePolicy(appointments=(safety,)),
        ),
        members=tuple(Member(id=MemberId(name)) for name in ("301", "302", "303")),
        components=gear,
        calls=calls,
        wash_room=ROOM,
    )


def planned(job: Job) -> PlanResult:
    """Return the first sound plan of a job."""
    return plan_wash(RULES, job, planning=load_planning_times(), stop=lambda: True)


def page(*languages: str, size: PaperSize = PaperSize.A4, department: str = "Pellow Cross") -> Page:
    """Return the paper to print on; English if nothing else is asked for."""
    return Page(
        printed_at=NOW,
        zone="America/Denver",
        department=department,
        size=size,
        languages=languages or ("en",),
    )
