"""Under which address is what?"""

from sootline.web.entrance.urls import urlpatterns as entrance
from sootline.web.urls import urlpatterns as screens

urlpatterns = [*entrance, *screens]
handler403 = "sootline.web.refusing.forbidden"
handler404 = "sootline.web.refusing.absent"
