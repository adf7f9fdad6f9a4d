# Two commands do everything: `make demo` runs the main job on the built-in pieces, `make test` passes the tests.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
PAGE := src/pegwright/server/page/index.html
FRONT := frontend/index.html frontend/vite.config.ts frontend/types.json \
  $(shell find frontend/src frontend/public -type f ! -path frontend/src/schema/types.ts)

PIP := $(BIN)/python -m pip install --quiet --disable-pip-version-check
LOCK := uv pip compile pyproject.toml --universal --python-version 3.11 --generate-hashes --no-emit-index-url \
  --no-emit-find-links --quiet --custom-compile-command "make lock" --group install

.PHONY: demo test front-check quick lint bench wheel-test lock changelog clean studio frontend types atlas programs

$(VENV)/.installed: pyproject.toml locks/demo.txt
	test -x $(BIN)/python || $(PYTHON) -m venv $(VENV)
	$(PIP) --require-hashes -r locks/demo.txt
	$(PIP) --no-deps --no-build-isolation -e .
	touch $@

$(VENV)/.tested: locks/test.txt $(VENV)/.installed
	$(PIP) --require-hashes -r locks/test.txt
	touch $@

demo: $(VENV)/.installed
	$(BIN)/pegwright demo build/demo

studio: $(VENV)/.installed $(PAGE)
	$(BIN)/pegwright studio build/studio

frontend: $(PAGE)

frontend/node_modules/.installed: frontend/package-lock.json
	cd frontend && npm ci --silent
	touch $@

$(PAGE): frontend/node_modules/.installed $(FRONT)
	cd frontend && npm run --silent build

types: $(VENV)/.installed
	$(BIN)/python -m pegwright.server.schema frontend/types.json

# The atlas that is kept with the program: measure it anew after a change of techniques, solver or rehearsal.
atlas: $(VENV)/.installed
	$(BIN)/pegwright atlas build/atlas
	$(BIN)/python -m pegwright.workshop.measured_techniques build/atlas

# Chromium drives the studio's tests, espeak-ng speaks in the film's. Without the rights to bring them, those tests
# say that they are left out.
programs:
	@for each in chromium espeak-ng; do command -v $$each >/dev/null \
	  || { test "$$(id -u)" = 0 && command -v apt-get >/dev/null \
	    && apt-get update -qq && apt-get install -y -qq $$each >/dev/null; } \
	  || echo "$$each IS NOT HERE: the tests that need it are left out" >&2; done

lint: $(VENV)/.tested
	$(BIN)/ruff format --check src testing tests bench
	$(BIN)/ruff check src testing tests bench
	$(BIN)/lint-imports
	$(BIN)/mypy

# Work is stolen only at the end: till then the tests of a file are one worker's, and what they share is made once.
test: lint programs front-check
	$(BIN)/python -m pytest -n auto --dist worksteal --instafail

front-check: $(PAGE) $(VENV)/.tested
	cd frontend && npm run --silent check && PYTHON=$(abspath $(BIN)/python) npm run --silent test

# The fastest checks of the most: linters, types, import law, and the tests that take seconds.
quick: lint
	$(BIN)/python -m pytest tests/house tests/finding tests/pattern/test_expand.py tests/pattern/test_repeats.py tests/loom/test_notation.py

# make bench NAME=proof QUICK=1
bench: $(VENV)/.tested
	@test -n "$(NAME)" || { echo "say which: make bench NAME=proof"; $(BIN)/python -m bench --help; exit 2; }
	$(BIN)/python -m bench $(NAME) $(if $(QUICK),--quick)

# Builds the wheel and uses it in bare environments, on every supported interpreter that is here.
wheel-test: $(VENV)/.tested
	rm -rf build/wheel && $(BIN)/python -m build --wheel --outdir build/wheel
	$(BIN)/python testing/wheel.py build/wheel/*.whl build/wheel-envs

# Names anew what the two commands install: what changed in pyproject.toml, or the newest of all with UPGRADE=1.
lock:
	@command -v uv >/dev/null || { echo "uv is needed to renew the locks: pip install uv" >&2; exit 2; }
	$(LOCK) --extra film --extra test --extra dev $(if $(UPGRADE),--upgrade) --output-file locks/test.txt
	$(LOCK) --extra film --constraint locks/test.txt $(if $(UPGRADE),--upgrade) --output-file locks/demo.txt

# make changelog VERSION=0.2.0
changelog:
	@test -n "$(VERSION)" || { echo "say which: make changelog VERSION=0.2.0"; exit 2; }
	$(PYTHON) changelog.d/collect.py $(VERSION)

clean:
	rm -rf build $(VENV) frontend/node_modules src/pegwright/server/page
