"""Under which address does what was kept on a phone come in?"""

from django.urls import path

from sootline.web.later import views
from sootline.web.later.pocket import pocket
from sootline.web.later.questions import question
from sootline.web.views.photos import photo

urlpatterns = [
    path("photos/<slug:name>/", photo, name="photo"),
    path("pocket/", pocket, name="pocket"),
    path("questions/<path:piece>/", question, name="question"),
    path("later/now/", views.knock, name="later-now"),
    path("later/call/", views.call, name="later-call"),
    path("later/person/", views.person, name="later-person"),
    path("later/hazards/", views.hazards, name="later-hazards"),
    path("later/load/", views.load, name="later-load"),
    path("later/check/", views.check, name="later-check"),
    path("later/hold/", views.hold, name="later-hold"),
    path("later/handover/", views.handover, name="later-handover"),
]
