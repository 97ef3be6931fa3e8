"""Under which address is what is decided and done on the floor, and about people?"""

from django.urls import path

from sootline.web.views import changes, check, fitting, guests, history, holds

# Before the others: an address of a person or a call may hold anything.
urlpatterns = [
    path("call/<path:call>/guests/", guests.came, name="call-guests"),
    path("guests/", guests.went, name="guests"),
    path("holds/<path:cause>/disinfected/", holds.disinfected, name="hold-disinfected"),
    path("holds/<path:cause>/survey/", holds.survey, name="hold-survey"),
    path("holds/<path:cause>/", holds.hold, name="hold"),
    path("check/then/<path:piece>/", check.then, name="check-then"),
    path("wash/changed/", changes.changed, name="wash-changed"),
    path("history/verify/", history.verify, name="history-verify"),
    path("history/export.jsonl", history.export, name="history-export"),
    path("people/new/", fitting.new, name="person-new"),
    path("people/<path:member>/first-day/", fitting.first, name="person-first-day"),
    path("people/<path:member>/tried/", fitting.tried, name="person-tried"),
    path("people/<path:member>/exchange/", fitting.exchange, name="person-exchange"),
    path("people/<path:member>/leaves/", fitting.leaves, name="person-leaves"),
    path("people/<path:member>/elsewhere/", guests.elsewhere, name="person-elsewhere"),
]
