/* drawing_list.c - the list below a drawing: what its letters stand for, and what found no room in it. */
#include "report/drawing_frame.h"

#include <stdint.h>

/* Room for letters, up to "aaa". */
#define LETTERS 44.0
/* In two columns an entry has half the width. */
#define HALF_WIDTH (GTL_FULL_WIDTH / 2 - LETTERS - 8)

static bool fits_half(const gtl_notes *notes)
{
    for (int i = 0; i < notes->entry_count; i++) {
        const gtl_note *note = notes->entries[i].note;
        double over = note->over ? GTL_MARK_WIDTH + gtl_text_width(note->over, SIZE_MAX, true) : 0;
        if (over > HALF_WIDTH || gtl_text_width(note->entry, SIZE_MAX, false) > HALF_WIDTH) return false;
    }
    return notes->entry_count > 3;
}

/* One entry; what is over comes first, with its mark. Returns the next foot. */
static double put_entry(gtl_drawing *drawing, const gtl_entry *entry, gtl_point foot, double width)
{
    gtl_point at = {foot.x + LETTERS, foot.y};
    gtl_shape_text(drawing, GTL_ROLE_FRAME, foot, true, "%s", entry->letters[0] ? entry->letters : "-");
    if (entry->note->over) {
        gtl_mark_over(drawing, GTL_ROLE_FRAME, -1, at);
        gtl_shape_text(drawing, GTL_ROLE_FRAME, (gtl_point){at.x + GTL_MARK_WIDTH, at.y}, true, "%s",
                       entry->note->over);
        at.y += GTL_TEXT_STEP;
    }
    return gtl_frame_words(drawing, at, width, 0, false, entry->note->entry);
}

double gtl_frame_list(gtl_picture *picture, const gtl_notes *notes, double top)
{
    bool halves = fits_half(notes);
    int rows = halves ? (notes->entry_count + 1) / 2 : notes->entry_count, row = 0;
    double first = top + 28, y = first, lowest = top;
    double width = halves ? HALF_WIDTH : GTL_FULL_WIDTH - LETTERS;
    for (int pass = 0; pass < 2; pass++) {
        for (int i = 0; i < notes->entry_count; i++) {
            const gtl_entry *entry = &notes->entries[i];
            if ((entry->letters[0] == '\0') != (pass == 1)) continue;
            if (row == rows) y = first;
            double left = GTL_MARGIN + (row >= rows ? GTL_DRAWING_WIDTH / 2 - GTL_MARGIN / 2 : 0);
            y = put_entry(picture->drawing, entry, (gtl_point){left, y}, width);
            if (y - GTL_TEXT_STEP > lowest) lowest = y - GTL_TEXT_STEP;
            row++;
        }
    }
    return lowest;
}
