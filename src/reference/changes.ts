/**
 * What changed for whoever uses the app, edition by edition, the newest first. An edition is that of the rules which turn
 * figures into verdicts; a check kept under an older one is judged again when it is opened.
 */
export type Edition = { readonly rules: number; readonly changes: readonly string[] }

export const CHANGES: readonly Edition[] = [
  {
    rules: 8,
    changes: [
      'A filter’s gain is judged with each capacitor and inductor at its own end of tolerance.',
      'The window and a connector’s schedule say beside the part what it lifts the noise by elsewhere.',
      'They count its damping there, and parts at an end of their tolerance.',
      'The filter check says that its search for a gain can miss a very sharp resonance.',
      'A long chosen option stands below its label on a small phone.',
    ],
  },
  {
    rules: 7,
    changes: [
      'The strike of a connector gives no yes past volts that were entered between the legs of a pair.',
      'It says that between the legs of a pair nothing is judged.',
      'A picture of the first screen is drawn part by part, so that a tap is taken meanwhile.',
      'A check that is left while it opens no longer opens the next one on its own line.',
      'A trace of a million rows is read and kept without holding the screen.',
      'A page that is scrolled while its answer changes stays where it was scrolled to.',
      'A power line whose wiring was given more inductance than wiring has gets no plain yes.',
    ],
  },
  {
    rules: 6,
    changes: [
      'The filter check gives no plain yes by resonance with lead and bond either.',
      'A coil or a choke that only its own resonance makes good is no plain yes.',
      'Of several noise sources the one decides from which a filter amplifies most.',
      'A need on a pair is judged only once the mode of the noise is known.',
      'A sharp resonance between filter and line is found wherever it lies, and told.',
      'A line-to-line capacitor counts over its tolerance in the loading check too.',
      'A hot suppressor counts for the pair, the insulation and the filter capacitor too.',
      'What a line holds by itself is added to a surge also where only its peaks are entered.',
      'A bundle test asks for the wire ahead of the connector where its inductance would decide otherwise.',
      'The strike of a connector counts hot suppressors, and gives no plain yes where line or cable is unknown.',
      'Volts between the legs that nothing worked out are called not judged.',
      'The loop check counts the error of both readings of a fall.',
      'A need read as a field is not known until a clamp on its cable made the worst fall.',
      'Both ends of a loop are called resistances only where no reactance gives the same readings.',
      'The power check asks for the number of lines and the wiring inductance where they decide.',
      'The inrush of a capacitor from line to line is held against its own withstand test.',
      'A part of which a proof for all tolerances was not reached is with care, and the answer says so.',
      'The window picture draws such parts with care.',
    ],
  },
  {
    rules: 5,
    changes: [
      'A part that meets its need only by resonance with its lead and bond is no plain yes.',
      'A trial put away still counts: what harmed the signal in it stays excluded.',
      'A trial or a trace that cannot be read keeps the window from answering.',
      'The later turns of a ring count in the overshoot of a step.',
      'A whole connector is planned at once: its face, its schedule, one shared path to the case, sheets to print.',
      'A progressive trial is noted step by step, and counts in the window by what it showed and excluded.',
      'A measured trace can be kept with a line, compared before and after, and prove a cure.',
      'Photos and measured files go into a saved file. Files come in by choice, drop, opening or sharing.',
      'The Log says when it is time to save it as a file.',
    ],
  },
  {
    rules: 4,
    changes: [
      'A capacitor that is small for its value is doubted, and so is an inductor that its current saturates.',
      'A step through two coils may not overshoot by more than one through a section damped by 0.7.',
    ],
  },
  {
    rules: 3,
    changes: [
      'Differential noise on a supply is that between line and return; a choke is counted.',
      'A capacitor from line to line loads the signal at its largest, and has a lead of its own.',
      'Unequal halves of a filter are judged over their tolerance.',
    ],
  },
  {
    rules: 2,
    changes: [
      'A yes holds for every value within the tolerances, for the noise and for the signal.',
      'A yes rests on no favourable assumption that could turn it; the assumption is named instead.',
      'A suppressor is judged against its own line.',
    ],
  },
  { rules: 1, changes: ['The first edition.'] },
]
