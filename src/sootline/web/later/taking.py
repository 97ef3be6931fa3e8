"""How is what was kept on a phone taken in, and what is said of it?"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse, JsonResponse
from django.shortcuts import redirect
from django.urls import reverse

from sootline.core.basis import BadInputError, MemberId, MessageId
from sootline.core.job.jobs import Job
from sootline.core.ledger import component
from sootline.tasks.deeds import Deed
from sootline.tasks.desk import Report
from sootline.web.later.answering import HEADER
from sootline.web.later.told import told_of
from sootline.web.reading.clock import clock_of
from sootline.web.reading.questions import read_question
from sootline.web.reports import actor_of
from sootline.web.tongue import language_of
from sootline.wiring.desks import desks_of
from sootline.words import say


@dataclass
class Taking:
    """One form that comes in, and what is said of it in the end.

    Args:
        job: as it stands when the form comes in.
    """

    request: HttpRequest
    job: Job
    said: list[str] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)
    about: list[str] = field(default_factory=list)

    def keep(
        self,
        message: str,
        deed: Deed,
        *,
        about: Sequence[str] = (),
        values: Mapping[str, str] | None = None,
        part: str = "",
    ) -> bool:
        """Keep one deed of the form.

        Args:
            part: tells it from the form's other deeds.

        Returns:
            whether it was kept.
        """
        lang, desks = language_of(self.request), desks_of(self.request.user)
        by, key = actor_of(self.request), self.request.POST.get("key", "")[:64]
        try:
            report = Report(
                at=self.job.now,
                by=MemberId(by) if by else None,
                message=MessageId(message),
                values=tuple((values or {}).items()),
                about=tuple(about),
                key=f"{key}.{part}" if key and part else key,
                told=told_of(self.request, self.job),
            )
            desks.keep(report, deed)
        except BadInputError as error:
            self.faults += [
                f"{one.place}: {say(one.message, one.values, lang=lang)}"
                for one in error.faults[:8]
            ]
            return False
        self.said.append(say(message, report.values, lang=lang))
        self.about += about
        return True

    def misses(self, form: forms.Form) -> None:
        """Say what a form lacks."""
        lang = language_of(self.request)
        for name, errors in form.errors.as_data().items():
            for error in errors:
                what = say(f"web.form.field.{name}", lang=lang)
                self.faults.append(f"{what}: {say(f'web.form.fault.{error.code}', lang=lang)}")

    def refuse(self, message: str, **values: str) -> None:
        """Say why it cannot be taken in."""
        self.faults.append(say(message, values, lang=language_of(self.request)))

    def answer(self) -> HttpResponse:
        """Return what a script understands, or a page for whoever has none."""
        asked = self._asked()
        if HEADER in self.request.headers and self.request.POST.get("made"):
            return JsonResponse(
                {"said": self.said, "faults": self.faults, "asked": asked},
                status=422 if self.faults else 200,
            )
        for one in self.said:
            messages.success(self.request, one, extra_tags="undo")
        for one in (*self.faults, *asked):
            messages.error(self.request, one)
        key = self.request.POST.get("key", "")
        kept = f"?kept={key[:64]}" if key.isalnum() and not self.faults else ""
        return redirect(reverse("pocket") + kept)

    def _asked(self) -> list[str]:
        """Return the questions that stand open about the form's pieces."""
        lang = language_of(self.request)
        items = {component(one) for one in self.about}
        questions = desks_of(self.request.user).look().questions if items else ()
        clock = clock_of(self.job, lang)
        found = [read_question(one, clock) for one in questions if one.item in items]
        return [say(one.message, one.values, lang=lang) for one in found]
