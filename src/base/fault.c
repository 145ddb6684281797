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

/* Where a fault of that line goes: after all of the same line, so that order of finding is kept. */
static size_t place_of(const gtl_fault_list *faults, int line)
{
    size_t low = 0;
    size_t high = faults->count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (faults->items[middle].line <= line) {
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
    for (; place > 0 && faults->items[place - 1].line == line; place--) {
        if (strcmp(faults->items[place - 1].text, text) == 0) return true;
    }
    return false;
}

/* Takes over `text`, also where it cannot be kept. */
static void keep(gtl_fault_list *faults, int line, char *text)
{
    size_t place = place_of(faults, line);
    if (already_told(faults, place, line, text)) {
        free(text);
        return;
    }
    gtl_fault *items = gtl_grow(faults->items, faults->count, &faults->capacity, sizeof *items);
    if (!items) {
        faults->out_of_memory = true;
        free(text);
        return;
    }
    faults->items = items;
    memmove(items + place + 1, items + place, (faults->count - place) * sizeof *items);
    items[place] = (gtl_fault){line, text};
    faults->count++;
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

char *gtl_faults_text(const gtl_fault_list *faults)
{
    gtl_text text = {0};
    for (size_t i = 0; i < faults->count; i++) {
        const gtl_fault *fault = &faults->items[i];
        gtl_text_add(&text, "%s:", faults->file ? faults->file : "");
        if (fault->line > 0) gtl_text_add(&text, "%d:", fault->line);
        gtl_text_add(&text, " %s\n", fault->text);
    }
    return gtl_text_take(&text);
}

void gtl_faults_end(gtl_fault_list *faults)
{
    for (size_t i = 0; i < faults->count; i++) free(faults->items[i].text);
    free(faults->items);
    free(faults->file);
    *faults = (gtl_fault_list){0};
}
