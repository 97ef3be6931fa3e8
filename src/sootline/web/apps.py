"""The screens as the framework knows them."""

from django.apps import AppConfig


class WebConfig(AppConfig):
    """The screens."""

    name = "sootline.web"
    label = "web"
