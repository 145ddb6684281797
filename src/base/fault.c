/* fault.c - the list of what was wrong with the input. */
#include "base/grow.h"
#include "base/text.h"

#include <stdlib.h>
#include <string.h>

void gtl_faults_begin(gtl_fault_list *faults, const char *file)
{
    *faults = (gtl_fault_list){.file = gtl_text_copy(file, strlen(file))};
    faults->out_of_memory = !faults->file;
}

/* A fault may quote the user's bytes: none of them may steer a terminal. */
static void tame(char *text)
{
    for (; *text; text++) {
        if ((unsigned char)*text < ' ' || *text == 0x7F) *text = '?';
    }
}

/* Where a fault of that line goes: after all of the same line, so that order of finding is kept. Those of
 * other files stand before line 0. */
static size_t place_of(const gtl_fault_list *faults, int line)
{
    size_t low = 0;
    size_t high = faults->count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (faults->items[middle].file || faults->items[middle].line <= line) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

/* Whether the same is told of the same line already; `place` is that line's end. */
static bool already_told(const gtl_fault_list *faults, size_t place, int line, const char *text)
{
    for (; place > 0 && !faults->items[place - 1].file && faults->items[place - 1].line == line; place--) {
        if (strcmp(faults->items[place - 1].text, text) == 0) return true;
    }
    return false;
}

/* False without memory, and out_of_memory is set. */
static bool insert(gtl_fault_list *faults, size_t place, gtl_fault fault)
{
    gtl_fault *items = gtl_grow(faults->items, faults->count, &faults->capacity, sizeof *items);
    if (!items) {
        faults->out_of_memory = true;
        return false;
    }
    faults->items = items;
    memmove(items + place + 1, items + place, (faults->count - place) * sizeof *items);
    items[place] = fault;
    faults->count++;
    return true;
}

/* Takes over `text`, also where it cannot be kept. */
static void keep(gtl_fault_list *faults, int line, char *text)
{
    size_t place = place_of(faults, line);
    if (already_told(faults, place, line, text)) {
        free(text);
        return;
    }
    if (insert(faults, place, (gtl_fault){line, text, NULL})) return;
    free(text);
}

void gtl_faults_add(gtl_fault_list *faults, int line, const char *format, ...)
{
    gtl_text text = {0};
    va_list arguments;
    va_start(arguments, format);
    gtl_text_add_list(&text, format, arguments);
    va_end(arguments);
    char *words = gtl_text_take(&text);
    if (!words) {
        faults->out_of_memory = true;
        return;
    }
    tame(words);
    keep(faults, line, words);
}

static void end_fault(gtl_fault *fault)
{
    free(fault->text);
    free(fault->file);
}

/* Put a fault of another file after all those there are; it is taken over, also where it cannot be kept. */
static void keep_other(gtl_fault_list *faults, gtl_fault fault, const char *file)
{
    size_t place = 0;
    while (place < faults->count && faults->items[place].file) place++;
    if (!fault.file) fault.file = file ? gtl_text_copy(file, strlen(file)) : NULL;
    if (fault.file && insert(faults, place, fault)) return;
    faults->out_of_memory = true;
    end_fault(&fault);
}

void gtl_faults_take(gtl_fault_list *faults, gtl_fault_list *other)
{
    for (size_t i = 0; i < other->count; i++) keep_other(faults, other->items[i], other->file);
    if (other->out_of_memory) faults->out_of_memory = true;
    other->count = 0;
}

const char *gtl_fault_file(const gtl_fault_list *faults, const gtl_fault *fault)
{
    const char *file = fault->file ? fault->file : faults->file;
    return file ? file : "";
}

char *gtl_faults_text(const gtl_fault_list *faults)
{
    gtl_text text = {0};
    for (size_t i = 0; i < faults->count; i++) {
        const gtl_fault *fault = &faults->items[i];
        gtl_text_add(&text, "%s:", gtl_fault_file(faults, fault));
        if (fault->line > 0) gtl_text_add(&text, "%d:", fault->line);
        gtl_text_add(&text, " %s\n", fault->text);
    }
    return gtl_text_take(&text);
}

void gtl_faults_end(gtl_fault_list *faults)
{
    for (size_t i = 0; i < faults->count; i++) end_fault(&faults->items[i]);
    free(faults->items);
    free(faults->file);
    *faults = (gtl_fault_list){0};
}
