"""How does the check after the wash read: what waits for a hand, what for being put together?"""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from sootline.core.basis import ComponentId, MessageId
from sootline.core.care import Decision
from sootline.core.exposure.calls import Answer
from sootline.core.gear import Assembly, CareStage, Component, Element, Layer, find_kind
from sootline.core.job.jobs import Job
from sootline.core.rebuild import AfterWashCheck, Felt, Flaw, FlawFound, Verdict
from sootline.web.forms import CheckForm
from sootline.web.reading.marks import Mark, mark_of

_ON_ITS_WAY = (CareStage.WASHED, CareStage.DRYING, CareStage.TO_CHECK)
_CLOTH = (Layer.SHELL, Layer.LINER, Layer.SOFT, Layer.STRAP, Layer.GLOVE)
# What can be seen on some kinds only; whatever is not named here can be seen on any.
_ONLY_ON: dict[Flaw, tuple[Layer, ...]] = {
    Flaw.SOLE_WORN: (Layer.BOOT,),
    Flaw.LINER_PULLED: (Layer.GLOVE,),
    Flaw.TRIM_LIFTED: (Layer.SHELL, Layer.HARD),
    Flaw.CUFF: (Layer.SHELL, Layer.LINER, Layer.GLOVE),
    Flaw.HOOK_SNAG: _CLOTH,
    Flaw.SEAM_OPEN: (*_CLOTH, Layer.BOOT, Layer.PADDING),
    Flaw.CRACKED: (Layer.HARD, Layer.BOOT, Layer.GLOVE, Layer.PAD, Layer.PADDING),
    Flaw.CLOSURE: (Layer.SHELL, Layer.LINER, Layer.GLOVE, Layer.BOOT, Layer.STRAP, Layer.KIT),
}
_BUILT = (Element.COAT, Element.TROUSERS, Element.COVERALL)


@dataclass(frozen=True, kw_only=True)
class Waits:
    """One piece on its way from the drum to the hook.

    Args:
        verdict: what its check came to; None while nobody felt it.
    """

    component: Component
    mark: Mark
    verdict: Verdict | None


@dataclass(frozen=True, kw_only=True)
class ToBuild:
    """One element whose parts lie apart.

    Args:
        owner: whose, or the set it belongs to.
    """

    owner: str
    element: Element
    parts: tuple[Component, ...]

    @property
    def key(self) -> str:
        """Its name in an address."""
        return f"{self.owner}-{self.element}"

    @property
    def all_checked(self) -> bool:
        """Whether each part is through its check."""
        return all(part.state.stage is CareStage.CHECKED for part in self.parts)


@dataclass(frozen=True, kw_only=True)
class CheckRoom:
    """The whole screen."""

    members: tuple[tuple[str, tuple[Waits, ...]], ...]
    builds: tuple[ToBuild, ...]
    before: int


def read_check_room(
    job: Job, decisions: Iterable[Decision], verdicts: Iterable[Verdict], before: int
) -> CheckRoom:
    """Lay out what waits for a hand.

    Args:
        before: how many pieces are still to be washed.
    """
    known = {one.component: one for one in decisions}
    judged = {one.component: one for one in verdicts}
    checked = {one.component for one in job.checks}
    members: dict[str, list[Waits]] = defaultdict(list)
    for component in job.components:
        if component.state.stage in _ON_ITS_WAY:
            members[component.owner or component.set or "-"].append(
                Waits(
                    component=component,
                    mark=mark_of(component, known[component.id]),
                    verdict=judged.get(component.id) if component.id in checked else None,
                )
            )
    return CheckRoom(
        members=tuple((owner, tuple(pieces)) for owner, pieces in members.items()),
        builds=tuple(list_builds(job)),
        before=before,
    )


def list_builds(job: Job) -> Iterator[ToBuild]:
    """List the elements of which a part lies apart, with every part of theirs."""
    groups: dict[tuple[str, Element], list[Component]] = defaultdict(list)
    for component in job.components:
        element = find_kind(component.kind).element
        if element in _BUILT:
            groups[component.owner or component.set or "-", element].append(component)
    for (owner, element), parts in groups.items():
        apart = [part for part in parts if part.state.assembly is Assembly.APART]
        if apart:
            yield ToBuild(owner=owner, element=element, parts=tuple(parts))


def flaws_on(component: Component) -> tuple[Flaw, ...]:
    """List what can be seen on a piece of this kind."""
    layer = find_kind(component.kind).layer
    return tuple(flaw for flaw in Flaw if layer in _ONLY_ON.get(flaw, (layer,)))


def read_points(points: Iterable[MessageId], form: CheckForm) -> list[tuple[str, str]]:
    """Return the points a hand goes to, with what was ticked already."""
    return [(str(point), str(form.data.get(point, ""))) for point in points]


def check_of(
    component: ComponentId,
    points: Iterable[MessageId],
    form: CheckForm,
    job: Job,
    *,
    photo: str = "",
) -> AfterWashCheck:
    """Make a check of what was typed; a point nobody answered is not felt.

    Args:
        photo: the name of a kept photo of what was found.
    """
    given = form.cleaned_data
    flaws = tuple(
        FlawFound(flaw=Flaw(one), place=form.where, note=given["note"].strip(), photo=photo)
        for one in given["flaws"]
    )
    felt = tuple(
        Felt(point=point, dry=Answer(given[point])) for point in points if given.get(point)
    )
    return AfterWashCheck(
        component=component, by=given["by"].strip(), at=job.now, felt=felt, flaws=flaws
    )
