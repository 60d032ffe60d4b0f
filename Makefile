# seamstamp. Settings first; below the line there is nothing to set.
CC = gcc
CFLAGS = -O2 -g
PREFIX = /usr/local
DESTDIR =
BUILD = build
WERROR =
# ---------------------------------------------------------------------------------------------------------------------------
STANDARD = -std=c11 -D_GNU_SOURCE -Iinclude
WARNINGS = -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wstrict-prototypes -Wmissing-prototypes -Wwrite-strings -Wformat=2 \
	-Wimplicit-fallthrough -Wundef $(WERROR)
HARDENING = -U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=3 -fstack-protector-strong -fstack-clash-protection -fPIE -fcf-protection=full \
	-fno-delete-null-pointer-checks -fno-strict-overflow -fno-strict-aliasing -ffile-prefix-map=$(CURDIR)=.
LINK = -pie -Wl,-z,noexecstack,-z,relro,-z,now,--as-needed
LIBRARIES = -lyaml -lcsv -ljansson -lutf8proc -lmd -lpthread -lm
prefix = $(PREFIX)
JOBS := $(shell nproc)
PYTHON := $(firstword $(wildcard /usr/bin/python3) python3)
ORACLE_ROWS = 20000
ORACLE_SEED = 7
QUICK_plan = --quick
SOURCES = $(wildcard src/*.c src/*/*.c)
OBJECTS = $(SOURCES:src/%.c=$(BUILD)/%.o)
ARCHIVE = $(BUILD)/seamstamp.a
# The mutants of the criteria's tables take minutes: they are run by check-long alone.
LONG_TESTS = $(BUILD)/tests/mutants_tables
TESTS = $(filter-out $(LONG_TESTS),$(patsubst tests/unit/%.c,$(BUILD)/tests/%,$(wildcard tests/unit/*.c)))
COMPILE = $(CC) $(STANDARD) $(WARNINGS) $(HARDENING) $(CFLAGS) $(CPPFLAGS) -MMD -MP
AGAIN = $(MAKE) --no-print-directory -j$(JOBS)

.PHONY: all check check-brute check-formats check-clang check-long long-tests
.PHONY: test lint sanitize valgrind static bench accept docs install uninstall clean

all: $(BUILD)/seamstamp

$(BUILD)/seamstamp: $(OBJECTS)
	$(CC) $(CFLAGS) $(LINK) $(LDFLAGS) -o $@ $(OBJECTS) $(LIBRARIES)

$(BUILD)/%.o: src/%.c
	@mkdir -p $(@D)
	$(COMPILE) -c -o $@ $<

# The files that .incbin brings in are no headers: the compiler does not name them.
$(BUILD)/base/builtin.o: $(wildcard data/*/*) $(wildcard examples/*.yaml) $(wildcard tests/rules/*.csv)

# All but main, for programs that call the stages in process. Appended, as two folders may have files of one name.
$(ARCHIVE): $(filter-out $(BUILD)/main.o,$(OBJECTS))
	@rm -f $@
	ar qcs $@ $^

$(BUILD)/tests/%: tests/unit/%.c $(ARCHIVE)
	@mkdir -p $(@D)
	$(COMPILE) -Isrc -Itests -o $@ $< $(ARCHIVE) $(LINK) $(LDFLAGS) $(LIBRARIES) -lcmocka

# Questions with answers by another hand. Only the scripts make them change.
$(BUILD)/oracle/%.csv: tests/oracle/%.py
	@mkdir -p $(@D)
	$(PYTHON) $< --rows $(ORACLE_ROWS) --seed $(ORACLE_SEED) $(QUICK_$*) >$@.new && mv $@.new $@
$(BUILD)/tests/oracle_wind: | $(BUILD)/oracle/wind.csv $(BUILD)/oracle/plan.csv
$(BUILD)/tests/oracle_fastening: | $(BUILD)/oracle/fastening.csv

$(BUILD)/bench: tests/bench/bench.c $(ARCHIVE)
	$(COMPILE) -o $@ $< $(ARCHIVE) $(LINK) $(LDFLAGS) $(LIBRARIES)

# ---- tests: each way of building has its own folder, so that a changed flag never meets an old object ----
test: $(BUILD)/seamstamp $(TESTS)
	@BUILD=$(BUILD) tests/run.sh $(TESTS)

long-tests: $(LONG_TESTS)
	$(LONG_TESTS)

lint: $(OBJECTS)
	@BUILD=$(BUILD) CC="$(CC)" tests/lint.sh

check:
	+@$(AGAIN) -s BUILD=$(BUILD)/check WERROR=-Werror test
	+@$(AGAIN) -s BUILD=$(BUILD)/check WERROR=-Werror lint

# The suites once more by the other compiler and under both sanitizers; what takes longest stands last.
check-clang:
	+@$(AGAIN) -s BUILD=$(BUILD)/clang CC=clang WERROR=-Werror test

# Other people's validators, from the registry of npm; they stay in the build folder.
check-formats: $(BUILD)/npm/installed
	+@$(AGAIN) -s BUILD=$(BUILD)/check WERROR=-Werror all
	@BUILD=$(BUILD)/check NPM=$(BUILD)/npm sh tests/formats/check.sh

$(BUILD)/npm/installed: tests/formats/packages.txt
	@mkdir -p $(@D)
	@printf '{"name":"validators","private":true}\n' >$(@D)/package.json
	npm install --prefix $(@D) --save-exact --ignore-scripts --no-audit --no-fund --loglevel=error $$(cat $<)
	@touch $@

# What `options` offers and `takeoff` counts, by scripts that try and draw everything; check runs a small part of it.
check-brute:
	+@$(AGAIN) -s BUILD=$(BUILD)/check WERROR=-Werror all
	BUILD=$(BUILD)/check sh tests/long/options.sh
	BUILD=$(BUILD)/check sh tests/long/takeoff.sh

check-long:
	+@$(AGAIN) check-clang sanitize static valgrind -j1
	+@$(AGAIN) -s BUILD=$(BUILD)/check WERROR=-Werror long-tests
	@for script in $(wildcard tests/long/*.sh); do echo $$script; BUILD=$(BUILD)/check sh $$script || exit 1; done

# The handler of segmentation faults is left to the sanitizer: cmocka's own would hide its report. Instrumented code sets off
# warnings of its own.
sanitize:
	+@ASAN_OPTIONS=handle_segv=2:detect_leaks=1 $(AGAIN) -s BUILD=$(BUILD)/sanitize HARDENING=-fno-strict-aliasing WERROR=-Wno-conversion \
		CFLAGS="-O1 -g -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer" test

valgrind:
	+@UNDER="valgrind -q --error-exitcode=9 --leak-check=full" $(AGAIN) -s BUILD=$(BUILD)/check WERROR=-Werror test

# Left out are checks that see through neither our macros nor functions that never return; .clang-tidy names its own.
UNFIT = nullPointer nullPointerRedundantCheck preprocessorErrorDirective constStatement autoVariables uninitvar internalAstError
static:
	+@$(AGAIN) -s BUILD=$(BUILD)/analyzer CFLAGS="-O1 -fanalyzer -Wno-analyzer-null-dereference" WERROR=-Werror all
	@printf '%s\n' $(SOURCES) | xargs -P $(JOBS) -n 4 sh -c 'clang-tidy --quiet "$$@" -- $(STANDARD) 2>/dev/null' tidy
	@cppcheck --quiet -j $(JOBS) --std=c11 -Iinclude --enable=warning,performance,portability --inline-suppr --error-exitcode=1 \
		$(UNFIT:%=--suppress=%) src
	@echo "analyzer, clang-tidy, cppcheck: no error"

bench: $(BUILD)/bench
	$(BUILD)/bench

# Rewrites the expected texts of tests/cases; the diff is the review.
accept: $(BUILD)/seamstamp
	BUILD=$(BUILD) tests/cases.sh --accept

docs: $(BUILD)/seamstamp
	$(BUILD)/seamstamp form --reference >docs/form.md

# ---- installing ----
install: $(BUILD)/seamstamp
	install -D -m 755 $(BUILD)/seamstamp $(DESTDIR)$(prefix)/bin/seamstamp
	install -d $(DESTDIR)$(prefix)/share/doc/seamstamp/faults $(DESTDIR)$(prefix)/share/seamstamp/sample-2026
	install -m 644 README.md LICENSE $(wildcard docs/*.md docs/*.json) $(wildcard examples/*.*) $(DESTDIR)$(prefix)/share/doc/seamstamp
	install -m 644 $(wildcard examples/faults/*.yaml) $(DESTDIR)$(prefix)/share/doc/seamstamp/faults
	install -m 644 data/sample-2026/* $(DESTDIR)$(prefix)/share/seamstamp/sample-2026

uninstall:
	rm -f $(DESTDIR)$(prefix)/bin/seamstamp
	rm -rf $(DESTDIR)$(prefix)/share/doc/seamstamp $(DESTDIR)$(prefix)/share/seamstamp

clean:
	rm -rf $(BUILD)

-include $(OBJECTS:.o=.d) $(wildcard $(BUILD)/tests/*.d) $(BUILD)/bench.d
