"""Under which address does somebody come in?"""

from django.contrib.auth.views import LogoutView
from django.urls import path

from sootline.web.entrance import looks
from sootline.web.entrance.account import account, account_do
from sootline.web.entrance.accounts import accounts, accounts_do
from sootline.web.entrance.attachments import attachment
from sootline.web.entrance.devices import devices, first_pin, revoke
from sootline.web.entrance.door import come_in
from sootline.web.entrance.health import healthz
from sootline.web.entrance.second_factor import second_factor
from sootline.web.entrance.sign_in import SignIn

urlpatterns = [
    path("sign-in/", SignIn.as_view(), name="sign-in"),
    path("sign-out/", LogoutView.as_view(), name="sign-out"),
    path("account/", account, name="account"),
    path("account/second-factor/", second_factor, name="second-factor"),
    path("account/looks/", looks.own, name="looks"),
    path("account/<slug:deed>/", account_do, name="account-do"),
    path("looks/<path:member>/", looks.of, name="looks-of"),
    path("accounts/", accounts, name="accounts"),
    path("accounts/<slug:deed>/<path:name>/", accounts_do, name="accounts-do"),
    path("devices/", devices, name="devices"),
    path("devices/first-pin/", first_pin, name="first-pin"),
    path("devices/revoke/<slug:device>/", revoke, name="device-revoke"),
    path("attachments/<str:digest>/", attachment, name="attachment"),
    path("come-in/<str:token>/", come_in, name="come-in"),
    path("healthz", healthz, name="healthz"),
]
