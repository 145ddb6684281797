/* fault.h - what was wrong with the input: line, text, what to do. */
#ifndef GANTLINE_FAULT_H
#define GANTLINE_FAULT_H

#include <stdbool.h>
#include <stddef.h>

#if defined(__GNUC__)
#define GTL_API                   __attribute__((visibility("default")))
#define GTL_PRINTF(string, first) __attribute__((format(printf, string, first)))
#else
#define GTL_API
#define GTL_PRINTF(string, first)
#endif

/* What a call came to. Anything but GTL_OK leaves no number behind that could be printed. */
typedef enum gtl_status {
    GTL_OK = 0,
    GTL_FAULTY,    /* the input is wrong; the fault list says where and how to mend it */
    GTL_NO_ANSWER, /* the rig has no answer; the state or the fault list says why */
    GTL_NO_MEMORY
} gtl_status;

/* One fault. `line` counts from 1; 0 means the file as a whole. */
typedef struct gtl_fault {
    int line;
    char *text; /* what is wrong, and how to mend it; owned by the list */
    char *file; /* that it is in, owned by the list; NULL: the list's own file */
} gtl_fault;

/* All faults of one file, in the order of its lines; before them those of other files that it names. */
typedef struct gtl_fault_list {
    char *file; /* the name printed before the line; owned */
    gtl_fault *items;
    size_t count;
    size_t capacity;
    bool out_of_memory; /* a fault could not be kept: the list is not whole */
} gtl_fault_list;

/* Begin an empty list for a file of that name (copied). */
GTL_API void gtl_faults_begin(gtl_fault_list *faults, const char *file);

/* Keep one more fault, put in order by line; printf's format. Never fails loudly: see out_of_memory. */
GTL_API void gtl_faults_add(gtl_fault_list *faults, int line, const char *format, ...) GTL_PRINTF(3, 4);

/* Take over all faults of another list, which is of another file and is empty afterwards, but for its name.
 */
GTL_API void gtl_faults_take(gtl_fault_list *faults, gtl_fault_list *other);

/* The name of the file that a fault is in: its own, else the list's. */
GTL_API const char *gtl_fault_file(const gtl_fault_list *faults, const gtl_fault *fault);

/* The whole list as text, one `FILE:LINE: text` a line. The caller frees it; NULL without memory. */
GTL_API char *gtl_faults_text(const gtl_fault_list *faults);

/* Give back all that the list holds; it is empty afterwards. */
GTL_API void gtl_faults_end(gtl_fault_list *faults);

#endif
