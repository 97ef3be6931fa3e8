"""The app's addresses, a bare answer, and the framework's list of the grid's rows and fields."""

import os

from django.contrib.admin import AdminSite, ModelAdmin
from django.http import HttpRequest, HttpResponse
from django.urls import path

from sootline.project import urls
from sootline.storage.models import ComponentRow
from sootline.tasks.rights import Right
from sootline.web import access
from sootline.web.routes import ROUTES, Access

_ROWS = int(os.environ.get("BENCH_ROWS", "600"))


class Site(AdminSite):
    """The framework's administration, open to whoever is signed in."""

    def has_permission(self, request: HttpRequest) -> bool:
        """Whoever is signed in may look."""
        return request.user.is_authenticated


class Components(ModelAdmin):  # type: ignore[type-arg]
    """The list of components as the framework draws it."""

    list_display = ("id", "owner", "kind", "custody", "stage", "life", "holds", "place")
    list_per_page = _ROWS
    ordering = ("id",)
    show_full_result_count = False

    def has_view_permission(self, _request: HttpRequest, _obj: object = None) -> bool:
        """Everybody looks."""
        return True

    def has_module_permission(self, _request: HttpRequest) -> bool:
        """Everybody sees it."""
        return True

    def has_add_permission(self, _request: HttpRequest) -> bool:
        """Nobody adds."""
        return False

    def has_change_permission(self, _request: HttpRequest, _obj: object = None) -> bool:
        """Nobody changes."""
        return False

    def has_delete_permission(self, _request: HttpRequest, _obj: object = None) -> bool:
        """Nobody deletes."""
        return False


def hello(_request: HttpRequest) -> HttpResponse:
    """Answer with a word."""
    return HttpResponse("hello")


site = Site()
site.register(ComponentRow, Components)
access.ROUTES = {  # type: ignore[attr-defined]
    **ROUTES,
    "hello": Access(open=True, sends=False),
    "storage_componentrow_changelist": Access(see=Right.SEE_GEAR, sends=False),
}
urlpatterns = [path("hello", hello, name="hello"), path("admin/", site.urls), *urls.urlpatterns]
handler403, handler404 = urls.handler403, urls.handler404
