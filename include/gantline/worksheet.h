/* worksheet.h - problems for a class: rigs whose figures are drawn from ranges, and the key to them. */
#ifndef GANTLINE_WORKSHEET_H
#define GANTLINE_WORKSHEET_H

#include <gantline/report.h>
#include <stdint.h>

/* The most students of one call, problems of one set, and values of one range. */
#define GTL_MOST_STUDENTS 500
#define GTL_MOST_PROBLEMS 50
#define GTL_MOST_VALUES   200

/* The longest reason why a file cannot be read, with its final zero. */
#define GTL_UNREADABLE_SIZE 200

/* A file that a set names, read whole. */
typedef struct gtl_set_file {
    char *name; /* for messages, and where the file's own tables are looked for; freed by the library */
    char *text; /* likewise; need not end with a zero */
    size_t size;
} gtl_set_file;

/* Reads a file by the name that stands in the set. False, and why it cannot be read, if it cannot. */
typedef bool gtl_set_opener(void *context, const char *name, gtl_set_file *file,
                            char why[GTL_UNREADABLE_SIZE]);

/* A set of problems that was read and tried. */
typedef struct gtl_set gtl_set;

/* Read a set of problems (docs/worksheet.md). Each value of each range is tried, so that a rig which cannot
 * be read, or has no answer, or not the one asked for, is a fault here already. Returns a set that the caller
 * frees, or NULL with every fault in `faults`, begun by the caller with the file's name. */
GTL_API gtl_set *gtl_set_read(const char *text, size_t size, gtl_set_opener *open, void *context,
                              gtl_fault_list *faults);
GTL_API void gtl_set_free(gtl_set *set);

typedef struct gtl_worksheet_wish {
    uint64_t seed; /* the same seed gives the same sheets, everywhere; student k's do not depend on how many
                    * students there are */
    int students;  /* 1 ... GTL_MOST_STUDENTS, each with other figures */
    bool together; /* the key stands behind the sheets, in one page */
} gtl_worksheet_wish;

/* Two pages of HTML, owned by the caller, and what to know about them. */
typedef struct gtl_worksheets {
    char *sheets;   /* no answer stands in it, be it unseen, unless `together` */
    char *key;      /* NULL where `together` */
    int least_sets; /* of the problem with the fewest: how many sets of figures it has, if that is less than
                     * there are students, so that some share theirs; else 0 */
} gtl_worksheets;

/* Draw figures and write the sheets and their key. GTL_OK; GTL_FAULTY where figures drawn together have no
 * answer, in `faults`; GTL_NO_MEMORY. Both texts are NULL then. */
GTL_API gtl_status gtl_worksheet(const gtl_set *set, const gtl_worksheet_wish *wish, gtl_worksheets *made,
                                 gtl_fault_list *faults);
GTL_API void gtl_worksheets_end(gtl_worksheets *made);

/* One row of the tables of what a problem may ask, and of the mistakes that one may hold. */
typedef struct gtl_set_word {
    const char *word;    /* as typed in the set */
    const char *meaning; /* in half a sentence */
} gtl_set_word;

/* Row `index` of what `ask` may name; NULL past the end. */
GTL_API const gtl_set_word *gtl_ask_at(size_t index);
/* Row `index` of what `mistake` may name; NULL past the end. */
GTL_API const gtl_set_word *gtl_mistake_at(size_t index);

#endif
