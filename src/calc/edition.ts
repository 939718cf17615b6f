/**
 * Edition of the rules that turn figures into verdicts. Raise it when a rule becomes stricter: a kept check that was
 * judged by an older one says so and is judged again when it is opened.
 *   1  the first rules
 *   2  a yes holds over the whole box of tolerances, on the noise side and on the signal side, and rests on no favourable
 *      assumption that could turn it; a suppressor is judged against its own line
 *   3  differential noise on a supply is that between line and return; a line-to-line capacitor loads the signal at its
 *      largest and has a lead of its own; a choke is counted; unequal halves of a Pi or T are judged over their tolerance
 *   4  a part that is small for its capacitance, and an inductor that its current saturates, are doubted; a step through two
 *      coils may not go over by more than one through a section damped by 0.7
 *   5  no plain yes by resonance with lead and bond; what a trial or a trace on the line says counts or refuses, also where it
 *      was put away; later turns of a ring count in the overshoot; a whole connector is no better than its contacts
 *   6  the filter check gives no plain yes by resonance with lead and bond either; where no proof was reached a search alone
 *      is no plain yes; self-resonance of a coil carries no plain yes; of several sources the one decides that rings most; a
 *      need on a pair waits for the mode; a sharp resonance of the signal is found wherever it lies; both readings of a fall are
 *      off; a hot suppressor, a line's typed peaks, the lines and the wiring of a supply count where they decide
 *   7  a strike gives no yes past a figure that was entered between the legs of a pair
 *   8  a filter's gain is judged with both capacitors of a Pi, and both inductors of a T, each at its own end of its tolerance
 */
export const RULES_EDITION = 8

/** Edition of checks that were kept before editions were noted. */
export const FIRST_EDITION = 1
