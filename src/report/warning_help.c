/* warning_help.c - what each warning means and what to do about it; docs/report.md has examples beside. */
#include "report/words.h"

static const char *const help[GTL_WARN_COUNT] = {
    [GTL_WARN_FRICTION_NOT_STATED] =
        "A block or fairlead has no friction stated and was worked without. Real pulls and anchor loads are "
        "greater. Give its efficiency, or friction; for all blocks at once efficiency in [rig].",
    [GTL_WARN_FRICTION_NONE] =
        "It is stated to be without friction. That is right for comparing with a textbook, not for gear. "
        "Give a real figure.",
    [GTL_WARN_UNRATED] =
        "There is nothing to check the part by. Read its tag or certificate, and give wll, or "
        "mbs with a design factor.",
    [GTL_WARN_MBS_WITHOUT_FACTOR] =
        "A breaking strength alone is no rating. Give the design factor that your trade and law ask for.",
    [GTL_WARN_LOW_DESIGN_FACTOR] =
        "The design factor is low for gear of this kind. See your code of practice; a "
        "factor typed as a mere guess is no protection.",
    [GTL_WARN_WLL_ABOVE_MBS] =
        "The part's wll is greater than its mbs over the design factor. One of the three is "
        "likely mistyped. The smaller one was used.",
    [GTL_WARN_REDIRECT_FORCE] =
        "The block or fairlead carries clearly more than the line that runs over it. That is no fault, but "
        "often forgotten: a line that turns back on itself loads its block with twice its tension. Choose "
        "block, connector and anchor by that force.",
    [GTL_WARN_WIDE_BRIDLE] =
        "The legs of a bridle stand wide apart, so that their tension grows fast with the "
        "angle. Use longer legs, or a spreader.",
    [GTL_WARN_FLAT_LEG] = "A leg lies less than 30 degrees above the horizontal. Do not use it so without a "
                          "qualified person; use longer legs.",
    [GTL_WARN_NEARLY_HORIZONTAL_LEG] =
        "A leg lies nearly level. Its tension hangs on small differences of length and sag, and the figure "
        "with it. Give it more sag, and do not rely on the figure.",
    [GTL_WARN_FAR_FROM_DRAWING] =
        "The body hangs far from where it is drawn in the file. Either a length is wrong "
        "or the drawing is. Draw it where you expect it.",
    [GTL_WARN_NOT_PARALLEL] =
        "The parts of line at a travelling block are not parallel. The pull is greater than the count of "
        "parts suggests; the figures here have that in them.",
    [GTL_WARN_FRICTION_CARRIES] =
        "While the load comes down, the hand's pull is under half of what it would be without friction: a "
        "bollard, a crotch or many sheaves carry the rest. If that friction is less than stated (wet, worn, "
        "polished, a turn fewer), the pull grows quickly. Plan for more than the figure.",
    [GTL_WARN_WILL_NOT_LOWER] =
        "Friction holds the load: let go, and it stays. It has to be pulled down, or the rig needs less "
        "friction. Do not count on that friction to hold a load.",
    [GTL_WARN_CANNOT_MOVE] =
        "Raising (or lowering, where it is not friction that holds the load) has no figures. The rig jams, "
        "friction multiplies faster than the pull, or no place in balance was found. See the case's reason "
        "under Effort.",
    [GTL_WARN_RUNS_AWAY] =
        "At rest the hand would have to push: the load (or a counterweight) comes by itself. See "
        "that the weights are right.",
    [GTL_WARN_UNDECIDED] =
        "Rope does not run over this stop in this motion, or its direction cannot be settled. Friction may "
        "then hold the two tensions apart either way. The figures have equal tensions here; the demands are "
        "the worst of equal, one way and the other.",
    [GTL_WARN_NOT_EVERY_COMBINATION] =
        "There are too many undecided stops to try every combination of directions. Each was tried alone, "
        "and all one way, so the worst may have been missed. Leave more margin, or work the rig in parts.",
    [GTL_WARN_IDLE] =
        "The part carries nothing. Often it was left out of a path or a via. If it does nothing, take "
        "it out of the file.",
    [GTL_WARN_WEIGHTLESS_BLOCK] =
        "A block that travels has no weight stated. It is lifted with the load, and it "
        "helps the rig to come down. Give its mass.",
    [GTL_WARN_LENGTH_SENSITIVE] =
        "One per cent more length in one line changes the greatest tension by a large share. Stretch and "
        "measuring decide how the load is shared. Let the lines equalise (a block instead of a joint), or "
        "rate each for the whole load.",
    [GTL_WARN_SEVERAL_PLACES] =
        "The rig can hang in more than one place near its drawing. The nearest is printed; all that were "
        "found are rated. See that nothing can tip it over into another.",
    [GTL_WARN_SLACK_LINE] =
        "The line carries nothing in this case. Is its length right? A slack line that comes taut does so "
        "with a jerk, which no figure here covers.",
    [GTL_WARN_NEARLY_TAUT] =
        "The line is slack, but by so little that stretch of the others, or a measuring fault, would bring "
        "it in. Then it takes a share that is not in these figures.",
    [GTL_WARN_NEUTRAL] =
        "The body can turn or shift without any rope running or weight rising, so nothing says where it "
        "stays. It was left as drawn. Use a tag line.",
    [GTL_WARN_POORLY_CONDITIONED] =
        "The rig is near a place where it has no answer: a small change of shape changes the forces "
        "greatly. Change the shape until the warning goes.",
    [GTL_WARN_NOT_ALLOWED] =
        "The table behind one of the part's steps forbids what the rig asks of it: a shackle pulled more "
        "than 90 degrees to the side, an eyebolt pulled too far from its axis. Nothing of its rating "
        "counts, so it is over. Turn the gear, or take gear made for it.",
    [GTL_WARN_NOT_PUBLISHED] =
        "The table says nothing for this angle or bend: no figure was found in print. The part counts as "
        "unrated. Change the angle, or put a figure from the gear's maker into a table of your own.",
    [GTL_WARN_TIGHT_BEND] =
        "A fibre rope (or a line whose material is not stated) lies round a sheave or a pin of less than 8 "
        "times its own diameter. Fibre rope loses strength there, but no published figure says how much, so "
        "none was taken off. The 8 is a rule of thumb without a source. For wire rope, state material: its "
        "loss is worked out.",
    [GTL_WARN_VERY_TIGHT_BEND] =
        "A fibre rope (or a line whose material is not stated) lies round a sheave or a pin of less than 4 "
        "times its own diameter, also a rule of thumb. Expect to lose much of the strength.",
    [GTL_WARN_CHOKE_ANGLE_NOT_STATED] =
        "A sling is choked, and nobody says at what angle. It was worked as choked at 120 degrees or more, "
        "the best there is, and the verdict is at best unrated. State choke angle: the angle between the "
        "sling's body and its own running part, 180 degrees where it runs straight through.",
    [GTL_WARN_MATERIAL_NOT_STATED] =
        "A sling is choked, and nobody says what it is made of. Natural fibre rope and chain hold less in a "
        "choke than others. State material, or a hardware row that has one. Until then the verdict is at "
        "best unrated.",
    [GTL_WARN_UNDER_USE_FACTOR] =
        "The part's design factor is under the one that the row of use asks for. Where it has no design "
        "factor but both mbs and wll, one over the other stands for it. The part's own figure was worked, "
        "not the row's.",
    [GTL_WARN_OVER_USE_SHARE] =
        "The part has a wll alone, so no factor can be compared; the row of use then leaves "
        "a share of it, and more than that is used.",
    [GTL_WARN_OVER_PEOPLE] =
        "The row of use is for loads over people. Where the law says so, every factor is doubled there. "
        "Nothing is doubled here: what the file states was worked, and the row is printed beside it. This "
        "program is not made for people, neither lifted nor under the load.",
    [GTL_WARN_HEAD_FITTING] =
        "The connector next to a block with one sheave holds less than twice what the block's line carries. "
        "The rule is from Lloyd's Code for Lifting Appliances in a Marine Environment, chapter 8, 5.1. A "
        "lead block that turns its line by a right angle feels only 1.4 times the line, so that the force "
        "alone looks well; led another way it feels the double. The verdict is then over.",
    [GTL_WARN_NO_FIGURES] = "A jam or a loss was asked for and could not be worked out; its reason stands "
                            "under Effort. The verdict is at best unrated.",
    [GTL_WARN_DROPS] =
        "After the loss this line catches something, and it had slack before: what it catches drops first. "
        "The loss factor is for a load let go onto a taut line; a drop makes more, which is not worked out, "
        "and the verdict is at best unrated. Take the slack out of it.",
    [GTL_WARN_LOAD_FALLS] =
        "After the loss nothing holds the load. What it hits is not worked out. Use a second line, or keep "
        "everybody out from under it; do so anyway.",
    [GTL_WARN_CAME_LOOSE] =
        "After the loss nothing holds this block or joint in its place: it rides down a line, "
        "or falls. It was left out, its weight too.",
    [GTL_WARN_ANCHOR_FORGOTTEN] =
        "All the gear down to this anchor is rated, and the anchor is not. Strong gear makes no strong "
        "anchor. Ask whoever answers for the structure or the tree, and give its wll.",
    [GTL_WARN_HAND_BEYOND_GEAR] =
        "The hand can pull more than the line in it is rated for. As long as the load runs free that does "
        "no harm; when it catches, the line breaks before the hand gives way. Fewer people, a stronger "
        "line, a limit on the winch; and work the case jam, which puts that pull on everything.",
    [GTL_WARN_FRICTION_MIXED] =
        "This stop is stated to have no friction while others have some. The figures are "
        "then neither the textbook's nor those of a real rig.",
    [GTL_WARN_LOW_EFFICIENCY] =
        "The efficiency of one sheave is under 80 %. Plain bushed pulleys, the poorest sheaves with a figure "
        "in print, have that. Perhaps it is the efficiency of the whole tackle: efficiency is that of one "
        "sheave, with the rope turning by 180 degrees. A pulley with a ratchet may really be that poor.",
    [GTL_WARN_FAR_BELOW_RATING] =
        "The part carries less than a thousandth of its rating: perhaps a unit is wrong, kN for N. If it is "
        "right, it is a part that does next to nothing: see that the load really reaches it.",
    [GTL_WARN_WRAP_NOT_AS_DRAWN] =
        "The stated wrap is more than 15 degrees from the turn that the line makes as drawn. Friction goes "
        "by the wrap, forces by the drawing. Perhaps the angle between the parts was read instead of the "
        "turn. Leave wrap out, unless the drawing cannot show the turn.",
    [GTL_WARN_DIRECTION_ONLY] =
        "The hauled line runs over two blocks or more, and none of them moves. They turn the line; friction "
        "at each makes the pull greater, and none makes it less. For advantage a block has to travel with "
        "the load.",
    [GTL_WARN_GAINS_NO_FORCE] =
        "Less rope comes to the hand than the load is lifted, so the hand pulls more than the weight that "
        "it lifts: a tackle turned round, or a ratio upside down.",
    [GTL_WARN_BALANCED] =
        "At rest no pull is needed: load and counterweight are equal. They do not level out, whatever their "
        "heights: where they stand, friction alone keeps them, and a little more on either side sets them "
        "off. Make it fast.",
    [GTL_WARN_HAULS_ITSELF] =
        "The hand sits on the body that it hauls. The figures are right for that, and quite different from "
        "somebody on the floor hauling. But this program is not for lifting people.",
    [GTL_WARN_BATTEN_SLACK] =
        "Where a batten has more than two lines, its load can lift it off one of them: that line would have "
        "to push, and a line cannot. It was let go, and the others worked without it. It comes taut as soon "
        "as the batten moves or its load changes: leave it tied, or move the picks.",
    [GTL_WARN_BATTEN_UNSURE] =
        "More than two lines share a batten by how stiff it is, how much the lines give, and by "
        "millimetres of length. The two figures are the ends of what is likely on level lines. Every part "
        "was held against the worse. Trim the lines with the load on, or use load cells.",
    [GTL_WARN_BATTEN_PARTS] =
        "A batten's weight is shared out for a level bar under plumb lines. In this case its picks move "
        "apart, together, or out of level: a line is not plumb, or not as long as drawn. The figures of its "
        "lines are then not the batten's. Put each loft block above its pick.",
    [GTL_WARN_BATTEN_TILTS] =
        "As the hand hauls, the picks of the batten do not rise alike: some lines are fixed, or led over "
        "another number of parts. The batten tilts, and its lines share its weight in another way than was "
        "worked.",
    [GTL_WARN_HARD_PULL] =
        "Each of the people is stated to pull more than is planned for a pull that lasts: 150 to 250 N on a "
        "rope, "
        "by common practice, without a source. They may do so once; a lift takes longer. HSE's filter for "
        "pushing and pulling asks for an assessment from 200 N (men) and 150 N (women) to start or stop a "
        "load, "
        "and 100 N and 70 N to keep it moving. Nobody pulls down with more than they weigh. More people, or "
        "more "
        "parts of rope.",
    [GTL_WARN_MAY_NOT_LOWER] = "Friction is stated as a range. At one end of it the load comes down, at "
                               "another friction alone holds "
                               "it. Be ready for both: to pull it down, and to hold it as it comes.",
    [GTL_WARN_BAND_NOT_PROVEN] =
        "Friction (or the share of a batten's lines) is a range, and the rig was worked at its ends. Where "
        "no "
        "body moves, forces are greatest there. Where one hangs elsewhere from one end to the other, where a "
        "stop is undecided, or where there are too many ranges to work every combination, nobody has shown "
        "that "
        "nothing between is worse. It seldom is by much; work the file with a figure in the middle to see.",
    [GTL_WARN_BEYOND_STRETCH] =
        "The line is pulled harder in the drop than where its stretch is stated, and was taken to go on "
        "stretching at the same rate. If it stiffens, the true peak is higher, and the verdict is at best "
        "unrated. Ask the "
        "maker for the elongation at a greater force, and state that.",
    [GTL_WARN_STRETCH_NOT_STATED] =
        "A line that takes part of the falling load states no stretch. It was worked as if it did not give "
        "at all, which makes the peak too high rather than too low. State its stretch, if you know it.",
    [GTL_WARN_CATCH_JERKS] =
        "Beside the load something else moves as it is caught: a block or joint with a weight of its own in "
        "the lines that catch, or a body that hangs elsewhere once the load pulls harder. The model knows "
        "one weight, falling straight down. The verdict is at best unrated. What falls with the load belongs "
        "`on` it, and the rig is best led so that the load hangs straight under what holds it.",
    [GTL_WARN_CATCHING_HAND] =
        "Whoever holds the rope behind a post or a bollard feels a part of the peak, and nobody can say "
        "which: friction that was measured in slow pulls does not carry over to snatches (Kane and Reiland "
        "2016). The hand is not checked in the drop, and the verdict is at best unrated.",
    [GTL_WARN_MEAN_DENSITY] =
        "Figures of green wood are averages, and a single piece can be a fifth heavier or more. The file "
        "asks for the average, so every force is too low if this piece is a heavy one. Leave `density end` "
        "out to work it with the heavy end, or weigh the piece and state its mass.",
    [GTL_WARN_ONE_DENSITY] =
        "A density typed in counts as it stands. Where it is an average out of a book, and not that of this "
        "very piece, a heavy piece weighs a fifth more or so. Give a range, such as 860 kg/m3 .. 1190 kg/m3, "
        "whose upper end is then worked with, or a species from the tables, which know their spread.",
    [GTL_WARN_MIDDLE_DIAMETER] =
        "The middle diameter counts four times as much as each end. Where the three stand in another order "
        "than they were measured in, the mass is wrong. A piece between two forks may really be like that.",
    [GTL_WARN_LIFT_CUT_SHORT] =
        "Before the load has gone up as far as `lift` says, two blocks of the tackle meet, or the rig finds "
        "no "
        "place any more. The rope bill names the two, and says whether a reset helps: the load held by other "
        "means, the tackle drawn out again for the next run. Else hang the tackle higher, or sling the load "
        "shorter.",
    [GTL_WARN_GROWS_ON_THE_WAY] =
        "The forces in the report are for the load where it is drawn. Where parts of a rig are not vertical, "
        "their angles change as the load goes up, and this part then bears more. At rest that was worked all "
        "the way up, and a part that comes over its rating makes the verdict over; with friction it was not. "
        "Draw the load at the top of its lift in a second file, and check that as well.",
};

const char *gtl_words_warning_help(gtl_warning_code code)
{
    return help[code];
}
