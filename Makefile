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
SOURCES = $(wildcard src/*.c src/*/*.c)
OBJECTS = $(SOURCES:src/%.c=$(BUILD)/%.o)
PROGRAM = $(filter-out $(BUILD)/main.o,$(OBJECTS))
TESTS = $(patsubst tests/unit/%.c,$(BUILD)/tests/%,$(wildcard tests/unit/*.c))
COMPILE = $(CC) $(STANDARD) $(WARNINGS) $(HARDENING) $(CFLAGS) $(CPPFLAGS) -MMD -MP

all: $(BUILD)/seamstamp

$(BUILD)/seamstamp: $(OBJECTS)
	$(CC) $(CFLAGS) $(LINK) $(LDFLAGS) -o $@ $(OBJECTS) $(LIBRARIES)

$(BUILD)/%.o: src/%.c
	@mkdir -p $(@D)
	$(COMPILE) -c -o $@ $<

# The files that .incbin brings in are no headers: the compiler does not name them.
$(BUILD)/base/builtin.o: $(wildcard data/*/*) $(wildcard examples/*.yaml) $(wildcard tests/rules/*.csv)

$(BUILD)/tests/%: tests/unit/%.c $(PROGRAM)
	@mkdir -p $(@D)
	$(COMPILE) -Itests -o $@ $< $(PROGRAM) $(LINK) $(LDFLAGS) $(LIBRARIES) -lcmocka

-include $(OBJECTS:.o=.d) $(wildcard $(BUILD)/tests/*.d)
