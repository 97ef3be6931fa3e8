# Two commands matter: `make run` and `make test`. Everything else serves them.
PYTHON ?= python3
TOOLS  := .tools
UV     := PYTHONPATH=$(TOOLS) $(TOOLS)/bin/uv
VENV   := .venv
BIN    := $(VENV)/bin
STAMP  := $(VENV)/.synced

.PHONY: run test services check fix bench docs pictures lock words clean

run: $(STAMP)
	$(BIN)/sootline demo
	$(BIN)/sootline serve --demo

test: check services
	$(BIN)/pytest --cov --cov-report=term --cov-fail-under=99

# A PostgreSQL server for the store's tests and a browser for the screens', where this machine has none
# and may install one; without them those tests are counted as not run.
services:
	@command -v chromium >/dev/null || \
	  if [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
	    apt-get update -q && apt-get install -yq --no-install-recommends chromium; \
	  else echo "no Chromium: the tests of the screens in a browser cannot run here"; fi
	@ls /usr/lib/postgresql/*/bin/initdb >/dev/null 2>&1 || command -v initdb >/dev/null || \
	  if [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
	    apt-get update -q && apt-get install -yq --no-install-recommends postgresql; \
	  else echo "no PostgreSQL server: its tests cannot run here"; fi

check: $(STAMP)
	$(BIN)/ruff format --check src tests benchmarks
	$(BIN)/ruff check src tests benchmarks
	$(BIN)/mypy
	$(BIN)/lint-imports
	$(BIN)/python -m tests.docs.generated --check

fix: $(STAMP)
	$(BIN)/ruff format src tests benchmarks
	$(BIN)/ruff check --fix src tests benchmarks

bench: $(STAMP)
	$(BIN)/python -m benchmarks

docs: $(STAMP)
	$(BIN)/python -m tests.docs.generated

# Takes the pictures of every screen anew; it needs Chromium.
pictures: $(STAMP)
	$(BIN)/python -m tests.web.screenshots docs/pictures

# Compiles the catalogues of words; `check` compares them through tests.docs.generated.
words: $(STAMP)
	$(BIN)/python -m tests.docs.words

# Rewrites the hashed requirement lists from pyproject.toml; run it after a change of dependencies.
lock: $(TOOLS)/bin/uv
	$(UV) pip compile -q --universal --no-annotate --no-header --generate-hashes pyproject.toml -o requirements.txt
	$(UV) pip compile -q --universal --no-annotate --no-header --generate-hashes pyproject.toml --group dev -o requirements-dev.txt

$(TOOLS)/bin/uv:
	$(PYTHON) -m pip install -q --disable-pip-version-check --target $(TOOLS) uv

$(STAMP): $(TOOLS)/bin/uv requirements-dev.txt pyproject.toml
	test -x $(BIN)/python || $(UV) venv -q --python $(PYTHON) $(VENV)
	$(UV) pip sync -q --python $(BIN)/python --require-hashes requirements-dev.txt
	$(UV) pip install -q --python $(BIN)/python --no-deps -e .
	touch $@

clean:
	rm -rf $(VENV) $(TOOLS) dist .pytest_cache .mypy_cache .ruff_cache .import_linter_cache
