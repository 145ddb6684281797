# gantline: rope-and-block arithmetic. `make help` lists the targets.
#
# Everything that is made goes under $(BUILD). Other ways to build (sanitizers, coverage, fuzzing) are this
# same file with another BUILD and SANITIZE, so that objects of different kinds never meet.

BUILD ?= build
CFLAGS ?= -O2 -g
PREFIX ?= /usr/local
SECONDS ?= 60
DEMO ?= docs/examples/flown-piece.ini
# The system's own Python: another one, first on the path, would lack Debian's modules.
PYTHON ?= $(firstword $(wildcard /usr/bin/python3) python3)

VERSION := $(shell sed -n 's/^.define GTL_VERSION "\(.*\)"/\1/p' include/gantline/version.h)
# Raised whenever a program linked against the last one could break.
SONAME = libgantline.so.0

WARNINGS = -Wall -Wextra -Wconversion -Wshadow -Werror
SANITIZE_FLAGS = $(if $(SANITIZE),-fsanitize=$(SANITIZE) -fno-sanitize-recover=all -fno-omit-frame-pointer)
ALL_CFLAGS = -std=c17 $(WARNINGS) -fvisibility=hidden -fPIC -Iinclude -Isrc $(CFLAGS) $(SANITIZE_FLAGS)

# The command takes the archives where there are any: one that loads only libc and libm starts in two thirds of
# the time. KLU's own needs follow it. Asked for late, since `make setup` may just have brought them.
ARCHIVES = iniparser jansson csv klu btf colamd amd suitesparseconfig
archive_or_shared = $(if $(filter /%,$(shell $(CC) -print-file-name=lib$(1).a)),-l:lib$(1).a,-l$(1))
COMMAND_LIBS = $(foreach lib,$(ARCHIVES),$(call archive_or_shared,$(lib))) -lm
SHARED_LIBS = -liniparser -ljansson -lcsv -lklu -lm

LIB_SRC := $(sort $(filter-out src/cli/%,$(wildcard src/*/*.c)))
CLI_SRC := $(sort $(wildcard src/cli/*.c))
TABLES := $(sort $(wildcard hardware-tables/*.ini))
LIB_OBJ := $(LIB_SRC:src/%.c=$(BUILD)/obj/%.o) $(BUILD)/obj/tables.o
CLI_OBJ := $(CLI_SRC:src/%.c=$(BUILD)/obj/%.o)
HEADERS := $(wildcard include/gantline/*.h)
LIBRARY := $(BUILD)/libgantline.a
SHARED := $(BUILD)/libgantline.so.$(VERSION)
COMMAND := $(BUILD)/gantline

# In a folder of tests a file with a main(), or libFuzzer's own, is a program; the others are linked into each
# program of the folder, those in tests/common into all.
programs = $(shell grep -ls '^int main\b' tests/$(1)/*.c | sed 's|\(.*\)\.c|$(BUILD)/\1|')
helpers = $(shell grep -Ls '^int \(main\|LLVMFuzzerTestOneInput\)\b' tests/$(1)/*.c)
TESTS := $(call programs,unit) $(call programs,laws) $(BUILD)/tests/sample $(BUILD)/tests/list_keys
BENCHES := $(call programs,bench)

C_FILES = $(sort $(wildcard include/*/*.h src/*/*.[ch] tests/*/*.[ch]))

# Installed at a goal's turn, so that `make setup demo` and `make -j setup demo` are the same.
SETUP_GOALS := $(filter setup setup-check,$(MAKECMDGOALS))
# All processors, unless somebody up the line already shares them out.
ALL_CPUS = $(if $(findstring jobserver,$(MAKEFLAGS)),,-j$(shell nproc 2>/dev/null || echo 2))
REMAKE = $(MAKE) --no-print-directory $(ALL_CPUS)

.PHONY: all setup setup-check demo tests check asan lint format coverage bench golden fuzz fuzz-program mutate
.PHONY: install uninstall clean help
.DELETE_ON_ERROR:

all: $(COMMAND) $(LIBRARY) $(BUILD)/libgantline.so ## library and command (the default)

# --- build ---

$(BUILD)/obj/%.o: src/%.c Makefile | $(SETUP_GOALS)
	@mkdir -p $(@D)
	$(CC) $(ALL_CFLAGS) -MMD -MP -c $< -o $@

# The shipped tables as an array of texts, so that nothing is looked for at run time. The folder stands among
# what it is made of, for a table that is removed.
$(BUILD)/obj/tables.c: $(TABLES) hardware-tables Makefile
	@mkdir -p $(@D)
	@{ echo '#include "read/table_shipped.h"'; echo 'const gtl_shipped_table gtl_shipped_tables[] = {'; \
	for table in $(TABLES); do \
	    echo "{\"$$table\","; sed -e 's/[\\"]/\\&/g' -e 's/.*/"&\\n"/' $$table || exit 1; echo '},'; \
	done; echo '{0}};'; } >$@

$(BUILD)/obj/tables.o: $(BUILD)/obj/tables.c src/read/table_shipped.h | $(SETUP_GOALS)
	$(CC) $(ALL_CFLAGS) -c $< -o $@

$(LIBRARY): $(LIB_OBJ)
	rm -f $@
	$(AR) rcs $@ $^

$(SHARED): $(LIB_OBJ)
	$(CC) $(ALL_CFLAGS) $(LDFLAGS) -shared -Wl,-soname,$(SONAME) -Wl,--as-needed $^ $(SHARED_LIBS) -o $@

$(BUILD)/libgantline.so: $(SHARED)
	ln -sf $(notdir $(SHARED)) $(BUILD)/$(SONAME)
	ln -sf $(SONAME) $@

$(COMMAND): $(CLI_OBJ) $(LIBRARY)
	$(CC) $(ALL_CFLAGS) $(LDFLAGS) $^ $(COMMAND_LIBS) -o $@

# --- set-up and demo ---

RUN_PACKAGES = gcc libc6-dev make libiniparser-dev libjansson-dev libcsv-dev libsuitesparse-dev
CHECK_PACKAGES = libcmocka-dev clang libclang-rt-14-dev clang-format clang-tidy cppcheck python3 \
	python3-jsonschema python3-scipy gcovr units man-db pkg-config \
	chromium fonts-dejavu-core poppler-utils node=nodejs npm=npm

setup: ## install what building and the demo need (Debian; asks nothing)
	@sh tests/tools/setup.sh $(RUN_PACKAGES)

setup-check: ## install what check, lint and coverage need as well
	@sh tests/tools/setup.sh $(RUN_PACKAGES) $(CHECK_PACKAGES)
	@sh tests/pages/install.sh

# Status 1 and 3 are verdicts (over, unrated), not failures of the program.
demo: | $(SETUP_GOALS) ## print the report of an example
	+@$(REMAKE) -s $(COMMAND)
	@$(COMMAND) report $(DEMO) || case $$? in 1 | 3) ;; *) exit 2 ;; esac

# --- tests ---

tests: $(COMMAND) $(LIBRARY) $(TESTS)

define test_rule
$(BUILD)/tests/$(1)/%: tests/$(1)/%.c $(call helpers,$(1)) $(call helpers,common) $(LIBRARY)
	@mkdir -p $$(@D)
	$$(CC) $$(ALL_CFLAGS) -Itests -MMD -MP -MF $$@.d $$(filter %.c,$$^) $$(LDFLAGS) \
	    $$(LIBRARY) $$(SHARED_LIBS) $$(TEST_LIBS) -o $$@
endef
$(foreach folder,unit laws bench fuzz,$(eval $(call test_rule,$(folder))))
$(BUILD)/tests/laws/%: TEST_LIBS = -lcmocka
# Memory that fails on demand, in our own code only: the libraries beside it stay shared, out of the wrap's reach.
$(BUILD)/tests/unit/%: TEST_LIBS = -lcmocka -Wl,--wrap=malloc,--wrap=calloc,--wrap=realloc,--wrap=free
$(BUILD)/tests/fuzz/%: TEST_LIBS = -fsanitize=fuzzer

$(BUILD)/tests/list_keys: tests/tools/list_keys.c $(HEADERS) $(LIBRARY)
	@mkdir -p $(@D)
	$(CC) $(ALL_CFLAGS) $< $(LDFLAGS) $(LIBRARY) $(SHARED_LIBS) -o $@

# The complete program that gantline.h opens with.
$(BUILD)/tests/sample: include/gantline/gantline.h $(HEADERS) tests/tools/sample.sh $(LIBRARY)
	@mkdir -p $(@D)
	sh tests/tools/sample.sh $< > $@.c
	$(CC) $(ALL_CFLAGS) $@.c $(LDFLAGS) $(LIBRARY) $(SHARED_LIBS) -o $@

ASAN = BUILD=build/asan CFLAGS='-O1 -g' SANITIZE=address,undefined
FUZZ = BUILD=build/fuzz CC=clang CFLAGS='-O1 -g' SANITIZE=fuzzer-no-link,address,undefined

asan: ## build library, command and tests with the address and undefined-behaviour sanitizers
	+@$(REMAKE) $(ASAN) tests

fuzz-program:
	+@$(REMAKE) $(FUZZ) build/fuzz/tests/fuzz/fuzz_read build/fuzz/tests/fuzz/fuzz_tables build/fuzz/tests/fuzz/fuzz_lab

check: | $(SETUP_GOALS) ## every test; the last line is `N passed, N failed`
	+@MAKE="$(REMAKE)" PYTHON=$(PYTHON) sh tests/tools/run_suites.sh

golden: ## print how the reports of the examples differ from tests/golden, then take them over
	+@$(REMAKE) -s $(COMMAND)
	@PYTHON=$(PYTHON) sh tests/golden/run.sh --update $(COMMAND)

fuzz: fuzz-program ## fuzz the readers, each: make fuzz SECONDS=60
	@sh tests/tools/fuzz.sh build/fuzz/tests/fuzz/fuzz_read $(SECONDS) tests/fuzz/corpus
	@sh tests/tools/fuzz.sh build/fuzz/tests/fuzz/fuzz_tables $(SECONDS) hardware-tables
	@sh tests/tools/fuzz.sh build/fuzz/tests/fuzz/fuzz_lab $(SECONDS) tests/fuzz/readings

bench: $(COMMAND) $(BENCHES) ## measure speed and memory
	@sh tests/bench/run.sh $(BUILD)

mutate: ## plant faults one by one and see that the tests catch them
	@$(PYTHON) tests/tools/mutate.py

# --- care ---

lint: ## formatting, clang-tidy, cppcheck, include directions
	@CHECKED="$(filter %.c,$(filter src/%,$(C_FILES)))" sh tests/tools/lint.sh $(C_FILES)

format: ## put all C files in the house's format
	clang-format -i $(C_FILES)

COVERAGE = BUILD=build/coverage CFLAGS='-O0 -g --coverage'

coverage: ## lines and branches run by the tests: build/coverage/index.html
	+@$(REMAKE) $(COVERAGE) tests
	@find build/coverage -name '*.gcda' -delete
	+@MAKE="$(REMAKE)" PYTHON=$(PYTHON) sh tests/tools/run_suites.sh --only build/coverage
	@gcovr --root . --filter src/ --exclude-throw-branches --html-details build/coverage/index.html --print-summary build/coverage

clean: ## remove all that was built
	rm -rf build

help: ## this list
	@sed -n 's/^\([a-z-]*\):.*## \(.*\)/\1|\2/p' Makefile | awk -F'|' '{ printf "  make %-12s %s\n", $$1, $$2 }'

# --- install ---

# What goes where: `uninstall` walks the same lists as `install`.
BINDIR = $(DESTDIR)$(PREFIX)/bin
LIBDIR = $(DESTDIR)$(PREFIX)/lib
INCLUDEDIR = $(DESTDIR)$(PREFIX)/include/gantline
MANDIR = $(DESTDIR)$(PREFIX)/share/man
DOCDIR = $(DESTDIR)$(PREFIX)/share/doc/gantline
TABLEDIR = $(DESTDIR)$(PREFIX)/share/gantline/hardware-tables

# Pages and examples keep their folders, so that links between them hold.
DOCS = LICENSE $(wildcard README.md SAFETY.md DEVELOPERS.md docs/*.md docs/*.json docs/*.svg docs/theory/* docs/examples/*)
DOC_FOLDERS = docs/examples docs/theory docs

install: all ## install under PREFIX (default /usr/local), below DESTDIR
	install -d $(BINDIR) $(LIBDIR)/pkgconfig $(INCLUDEDIR) $(MANDIR)/man1 $(MANDIR)/man5 $(addprefix $(DOCDIR)/,$(DOC_FOLDERS))
	install -m 755 $(COMMAND) $(BINDIR)
	install -m 644 $(LIBRARY) $(SHARED) $(LIBDIR)
	ln -sf $(notdir $(SHARED)) $(LIBDIR)/$(SONAME)
	ln -sf $(SONAME) $(LIBDIR)/libgantline.so
	sed -e 's|@PREFIX@|$(PREFIX)|' -e 's|@VERSION@|$(VERSION)|' src/gantline.pc.in > $(LIBDIR)/pkgconfig/gantline.pc
	chmod 644 $(LIBDIR)/pkgconfig/gantline.pc
	install -m 644 $(HEADERS) $(INCLUDEDIR)
	install -m 644 $(wildcard docs/man/*.1) $(MANDIR)/man1
	install -m 644 docs/man/gantline-rig.5 $(MANDIR)/man5
	for page in $(DOCS); do install -m 644 $$page $(DOCDIR)/$$page || exit 1; done
	$(if $(TABLES),install -d $(TABLEDIR) && install -m 644 $(TABLES) $(TABLEDIR))
	$(if $(DESTDIR),,[ "$$(id -u)" != 0 ] || ldconfig)

uninstall: ## remove exactly what install put there
	rm -f $(BINDIR)/gantline $(MANDIR)/man5/gantline-rig.5
	rm -f $(addprefix $(MANDIR)/man1/,$(notdir $(wildcard docs/man/*.1)))
	rm -f $(addprefix $(LIBDIR)/,libgantline.a libgantline.so $(SONAME) $(notdir $(SHARED)) pkgconfig/gantline.pc)
	rm -f $(addprefix $(INCLUDEDIR)/,$(notdir $(HEADERS)))
	rm -f $(addprefix $(DOCDIR)/,$(DOCS))
	rm -f $(addprefix $(TABLEDIR)/,$(notdir $(TABLES)))
	for folder in $(INCLUDEDIR) $(addprefix $(DOCDIR)/,$(DOC_FOLDERS)) $(DOCDIR) $(TABLEDIR) $(dir $(TABLEDIR)); do \
	    [ ! -d $$folder ] || rmdir $$folder; done

-include $(LIB_OBJ:.o=.d) $(CLI_OBJ:.o=.d) $(wildcard $(BUILD)/tests/*/*.d)
