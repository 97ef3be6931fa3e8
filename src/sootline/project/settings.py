"""With which settings does the web app run? Safe ones, unless somebody says otherwise.

Everything a department may choose is an environment variable; docs/reference/settings.md lists
them all.
"""

import os

from csp.constants import NONE, SELF

from sootline.project.databases import database
from sootline.storage.data_dir import data_dir, make_data_dir, secret_key


def _on(name: str) -> bool:
    return os.environ.get(name, "").lower() in ("1", "true", "yes", "on")


def _listed(name: str, usual: str = "") -> list[str]:
    return [part for part in os.environ.get(name, usual).replace(",", " ").split() if part]


DATA_DIR = make_data_dir(data_dir())
SECRET_KEY = secret_key(DATA_DIR)
SECRET_KEY_FALLBACKS = _listed("SOOTLINE_OLD_SECRETS")
DEBUG = False
TLS = _on("SOOTLINE_TLS")
PLAIN_HTTP = _on("SOOTLINE_PLAIN_HTTP")
# Shows the invented department to whoever sits at this machine; the record is not touched.
DEMO = _on("SOOTLINE_DEMO")
# Hash of the link by which somebody comes into the demonstration; `sootline serve` sets it.
DEMO_DOOR = os.environ.get("SOOTLINE_DEMO_DOOR", "")
DEPARTMENT_WORDS = _listed("SOOTLINE_DEPARTMENT_WORDS")

ALLOWED_HOSTS = _listed("SOOTLINE_HOSTS", "localhost 127.0.0.1 [::1]")
CSRF_TRUSTED_ORIGINS = [f"https://{host}" for host in ALLOWED_HOSTS] if TLS else []
ROOT_URLCONF = "sootline.project.urls"
WSGI_APPLICATION = "sootline.project.wsgi.application"

INSTALLED_APPS = [
    "django.contrib.contenttypes",
    "django.contrib.auth",
    "django.contrib.sessions",
    "django.contrib.messages",
    "django.contrib.staticfiles",
    "axes",
    "csp",
    "sootline.storage",
    "sootline.web",
]
MIDDLEWARE = [
    "sootline.web.plain_http.PlainHttpMiddleware",
    "django.middleware.security.SecurityMiddleware",
    # The tokens in a page are masked anew each time, so that its length tells nothing of them.
    "django.middleware.gzip.GZipMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "csp.middleware.CSPMiddleware",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "sootline.web.later.answering.LaterMiddleware",
    "sootline.web.access.AccessMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "axes.middleware.AxesMiddleware",
    "sootline.web.refusing.FaultsMiddleware",
]
TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "APP_DIRS": True,
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "django.contrib.auth.context_processors.auth",
                "django.contrib.messages.context_processors.messages",
                "sootline.web.banners.banners",
                "sootline.web.page.page",
            ]
        },
    }
]

DATABASES = {"default": database(os.environ.get("DATABASE_URL"), DATA_DIR)}
if os.environ.get("SOOTLINE_OWNER_URL"):
    # Owns the tables and changes their form; the app itself may only read and append.
    DATABASES["owner"] = database(os.environ["SOOTLINE_OWNER_URL"], DATA_DIR)
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"
USE_TZ = True
TIME_ZONE = "UTC"
LANGUAGE_CODE = "en"

AUTH_USER_MODEL = "storage.User"
AUTHENTICATION_BACKENDS = [
    "axes.backends.AxesStandaloneBackend",
    "django.contrib.auth.backends.ModelBackend",
]
PASSWORD_HASHERS = ["django.contrib.auth.hashers.Argon2PasswordHasher"]
AUTH_PASSWORD_VALIDATORS = [
    {"NAME": "sootline.storage.passwords.LongEnough"},
    {"NAME": "django.contrib.auth.password_validation.CommonPasswordValidator"},
    {"NAME": "sootline.storage.passwords.NotOurWords"},
]
LOGIN_URL = "sign-in"
LOGIN_REDIRECT_URL = "front"
LOGOUT_REDIRECT_URL = "sign-in"
# Ten failures for one account within a quarter of an hour; it opens by itself, so that nobody can
# lock a colleague out for good.
AXES_FAILURE_LIMIT = 10
AXES_COOLOFF_TIME = 0.25
AXES_LOCKOUT_PARAMETERS = ["username"]
AXES_USERNAME_CALLABLE = "sootline.web.entrance.sign_in.account_meant"
AXES_LOCKOUT_CALLABLE = "sootline.web.entrance.sign_in.locked"
AXES_RESET_ON_SUCCESS = True
AXES_DISABLE_ACCESS_LOG = True
# The address has a limit of its own in the sign-in view: a station's people share one.
SILENCED_SYSTEM_CHECKS = ["axes.W006"]
AXES_SENSITIVE_PARAMETERS = ["password", "csrfmiddlewaretoken"]

# The policy on people may end it earlier; see the sign-in.
SESSION_COOKIE_AGE = 24 * 3600
SESSION_COOKIE_HTTPONLY = True
SESSION_COOKIE_SAMESITE = "Lax"
CSRF_COOKIE_HTTPONLY = True
CSRF_COOKIE_SAMESITE = "Strict"
SESSION_COOKIE_SECURE = CSRF_COOKIE_SECURE = TLS
SESSION_COOKIE_NAME = "__Host-session" if TLS else "session"
DEVICE_COOKIE_NAME = "__Host-device" if TLS else "device"
CSRF_COOKIE_NAME = "__Host-csrf" if TLS else "csrf"
SECURE_SSL_REDIRECT = TLS
SECURE_HSTS_SECONDS = 365 * 24 * 3600 if TLS else 0
SECURE_HSTS_INCLUDE_SUBDOMAINS = SECURE_HSTS_PRELOAD = TLS
SECURE_REFERRER_POLICY = "same-origin"
SECURE_CONTENT_TYPE_NOSNIFF = True
SECURE_CROSS_ORIGIN_OPENER_POLICY = "same-origin"
if _on("SOOTLINE_PROXY"):
    # Only where a proxy of the department's own stands in front and sets the header itself.
    SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https")
X_FRAME_OPTIONS = "DENY"
CONTENT_SECURITY_POLICY = {
    "DIRECTIVES": {
        "default-src": [NONE],
        "script-src": [SELF],
        "style-src": [SELF],
        "img-src": [SELF, "data:"],
        "font-src": [SELF],
        "connect-src": [SELF],
        "manifest-src": [SELF],
        "worker-src": [SELF],
        "form-action": [SELF],
        "base-uri": [NONE],
        "frame-ancestors": [NONE],
    }
}
DATA_UPLOAD_MAX_MEMORY_SIZE = 5 * 2**20
DATA_UPLOAD_MAX_NUMBER_FIELDS = 2000
FILE_UPLOAD_MAX_MEMORY_SIZE = 2**20
FILE_UPLOAD_PERMISSIONS = 0o600

STATIC_URL = "static/"
WHITENOISE_USE_FINDERS = True

LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "formatters": {"lines": {"()": "sootline.project.logs.JsonLines"}},
    "handlers": {"out": {"class": "logging.StreamHandler", "formatter": "lines"}},
    "root": {"handlers": ["out"], "level": os.environ.get("SOOTLINE_LOG", "WARNING").upper()},
    "loggers": {"django": {"handlers": [], "propagate": True, "level": "WARNING"}},
}
