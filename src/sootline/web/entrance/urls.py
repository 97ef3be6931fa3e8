"""Under which address does somebody come in?"""

from django.contrib.auth.views import LogoutView
from django.urls import path

from sootline.web.entrance.attachments import attachment
from sootline.web.entrance.health import healthz
from sootline.web.entrance.sign_in import SignIn

urlpatterns = [
    path("sign-in/", SignIn.as_view(), name="sign-in"),
    path("sign-out/", LogoutView.as_view(), name="sign-out"),
    path("attachments/<str:digest>/", attachment, name="attachment"),
    path("healthz", healthz, name="healthz"),
]
