# make serve    builds the release app and serves it here, printing the address (PORT=8080 if nothing else is said)
# make test     every test there is
# make bench    speed of the daily balance, native and in a browser, and of a start beside the barest program's
# make build    the release app, into dist/
# make size     what the app weighs on its way to the phone
#
# Each first installs what is missing (.ci/prepare); on a prepared machine that takes a tenth of a second.

SHELL := /usr/bin/env bash
.SHELLFLAGS := -eu -o pipefail -c
.NOTPARALLEL:
.PHONY: serve test bench build size prepare format lint lint-web native-days test-native test-browser test-journeys

PORT ?= 8080
TOOLS := .ci/with-tools
WASM := --target wasm32-unknown-unknown --locked
WEIGH := node .ci/weigh.mjs dist
# Two at a time: each waits for its browser more than it works. Those that measure how long the page is held come after, alone.
JOURNEY := $(TOOLS) node --test --test-timeout=300000
MEASURING := $(shell grep -lw 'await slowed' tests/journeys/*.test.mjs)
JOURNEYS := $(JOURNEY) --test-concurrency=2 $(filter-out $(MEASURING),$(wildcard tests/journeys/*.test.mjs)) && \
	$(JOURNEY) --test-concurrency=1 $(MEASURING)
export WASM_BINDGEN_TEST_TIMEOUT ?= 120

serve: build
	@node tests/journeys/server.mjs dist $(PORT)

# What goes to the browser keeps one processor busy (what it said is in target/web.log); what is native goes on beside it.
test: prepare
	@mkdir -p target
	@$(MAKE) --no-print-directory build lint-web test-browser >target/web.log 2>&1 & web=$$!; \
	failed=0; $(MAKE) --no-print-directory format lint test-native || failed=$$?; \
	wait $$web || { cat target/web.log; exit 1; }; exit $$failed
	@$(WEIGH)
	$(JOURNEYS)

bench: build native-days
	{ cargo bench --locked --bench balance; \
	  .ci/as-released cargo test --release $(WASM) --test browser -- balance_benchmark --include-ignored --nocapture; } | \
	  $(TOOLS) node tests/bench/ratios.mjs
	$(TOOLS) node tests/bench/start.mjs

build: prepare
	.ci/build-app

size: build
	@$(WEIGH)

format: prepare
	cargo fmt --check

lint: prepare
	cargo clippy --locked --all-targets -- -D warnings

# As released: the libraries' macros are there already where the app was built, and stay as they are.
lint-web: prepare native-days
	.ci/as-released cargo clippy --release $(WASM) --lib --bin eavewater --test browser -- -D warnings

# The unit tests are compiled in half the time without optimization, and are as quick; what runs the engine for decades is not.
test-native: prepare
	CARGO_PROFILE_TEST_OPT_LEVEL=0 cargo test --locked --lib
	cargo test --locked --test native
	cargo test --locked --doc

# What the engine makes natively of sites with every kind of part, day by day: the browser's tests want the same bits.
# By the program that the native tests are built with: another would be compiled anew.
native-days:
	@mkdir -p target
	cargo test --locked --quiet --no-run --test native
	$${CARGO_TARGET_DIR:-target}/debug/reckon tests/cases/every-part.json --days > target/native-days.json

# As released: what the compiler makes of it then has to give the same bits too. What failed is told in words only by the
# ordinary build: .ci/with-tools cargo test --target wasm32-unknown-unknown --test browser
test-browser: prepare native-days
	.ci/as-released cargo test --release $(WASM) --test browser

test-journeys: build
	$(JOURNEYS)

prepare:
	@.ci/prepare
