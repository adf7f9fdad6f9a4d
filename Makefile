# Two commands do everything: `make demo` runs the main job on the built-in pieces, `make test` passes the tests.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
PAGE := src/pegwright/server/page/index.html
FRONT := frontend/index.html frontend/vite.config.ts frontend/types.json \
  $(shell find frontend/src frontend/public -type f ! -path frontend/src/wire/types.ts)

.PHONY: demo test lint bench clean studio frontend types browser

$(VENV)/.installed: pyproject.toml
	test -x $(BIN)/python || $(PYTHON) -m venv $(VENV)
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -e .
	touch $@

$(VENV)/.tested: pyproject.toml $(VENV)/.installed
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -e '.[test,dev]'
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

# Chromium drives the studio's tests. Without the rights to bring it, those tests say that they are left out.
browser:
	@command -v chromium >/dev/null || { test "$$(id -u)" = 0 && command -v apt-get >/dev/null \
	  && apt-get update -qq && apt-get install -y -qq chromium >/dev/null; } \
	  || echo "NO CHROMIUM HERE: the studio's browser tests are left out" >&2

lint: $(VENV)/.tested
	$(BIN)/ruff format --check src tests bench
	$(BIN)/ruff check src tests bench
	$(BIN)/lint-imports
	$(BIN)/mypy

test: lint browser $(PAGE)
	cd frontend && npm run --silent check && PYTHON=$(abspath $(BIN)/python) npm run --silent test
	$(BIN)/python -m pytest -n auto --dist loadgroup

clean:
	rm -rf build $(VENV) frontend/node_modules src/pegwright/server/page
