/** Sources of the waveform and suppressor figures: rows `T…` of sources.ts, by kind and reference id. */

export const TRANSIENT_SOURCES = {
  T1: { title: 'RS-485 transceiver data sheet with DO-160 pin-injection tables (T1)', seen: 'part read' },
  T2: { title: 'Page on RTCA DO-160 section 22 by a seller of test equipment (T2)', seen: 'read' },
  T3: {
    title: 'EMC mailing list, December 2000, quoting SAE ARP5412 tables 5, 6 and 9 and figure 24',
    seen: 'read in that quotation',
  },
  T4: { title: 'Lightning-protected interface data sheet, pin-injection waveforms, p. 7 (T4)', seen: 'part read' },
  T5: {
    title: 'M. Clark, application note on lightning levels and suppressor ratings, rev 2, 2006 (T5)',
    seen: 'contents and introduction only',
  },
  T6: { title: 'Standards listing on RTCA DO-160 section 22 (T6)', seen: 'read' },
  T7: { title: 'Article on designing for DO-160 pin injection (T7)', seen: 'first part only' },
  T8: { title: 'Waveform constants in the source of a public field solver (T8)', seen: 'constants read' },
  T9: { title: 'Page on the formula of the electrostatic-discharge current (T9)', seen: 'formula read' },
  T10: { title: 'Tutorial on the fast-transient burst test (T10)', seen: 'read' },
  T11: { title: 'Data sheet of a 5 V flat-clamp suppressor, 8.5 and 9.2.2 (T11)', seen: 'part read' },
  T12: { title: 'Question-and-answer thread on suppressors for RS-485 (T12)', seen: 'read' },
  T13: { title: 'Design note of an RS-485 evaluation board (T13)', seen: 'part read' },
  T14: { title: 'B. Harlacher, tutorial on CS115, CS116 and RS105 of MIL-STD-461E', seen: 'part read' },
  T15: { title: 'White-paper summary on the Q of CS116 (T15)', seen: 'read' },
  T16: { title: 'Standards listing on CS117 (T16)', seen: 'read' },
  T17: { title: 'Page on RTCA DO-160 section 17 (T17)', seen: 'read' },
  T18: { title: 'Manual of a power source that runs DO-160 section 16, p. 181 (T18)', seen: 'page read' },
  T19: { title: 'MIL-STD-704 checklist (T19)', seen: 'read' },
  T20: { title: '1500 W suppressor data sheet, temperature formula, p. 3 (T20)', seen: 'part read' },
  T21: { title: 'Note on the temperature coefficient of suppressors (T21)', seen: 'read, weak' },
  T22: { title: '6 V suppressor data sheet, p. 2 (T22)', seen: 'part read' },
  T23: {
    title: 'Review notes and listings quoting 28 V suppressor data sheets of 600 W and 1500 W (T23)',
    seen: 'read second-hand',
  },
  T24: { title: 'K. Walters, application note on suppressor terms (T24)', seen: 'first page read' },
  T25: { title: 'MIL-HDBK-419A volume 2, surge arrester guidance', seen: 'page read in a copy' },
  T26: { title: 'MIL-HDBK-419A volume 2, arrester test limits', seen: 'page read in a copy' },
  T27: { title: 'M. Clark, K. Walters, application note on clamping voltage at other currents (T27)', seen: 'read' },
  T28: { title: 'B. Hartwig, application note on suppressor clamping (T28)', seen: 'read' },
  T29: { title: 'Application note on transient energy (T29)', seen: 'read' },
  T30: {
    title:
      'D. C. Wunsch, R. R. Bell, "Determination of threshold failure levels of semiconductor diodes and transistors due to pulse voltages", IEEE Trans. Nucl. Sci. NS-15(6), 1968',
    seen: 'quoted in a project note',
  },
  T31: { title: '600 W suppressor data sheet, pulse derating (T31)', seen: 'part read' },
  T32: { title: 'Application note on low-capacitance suppressors (T32)', seen: 'read' },
  T33: { title: 'Note on suppressors in series and parallel (T33)', seen: 'read, weak' },
  T34: {
    title:
      '"Design of transient voltage suppressors for digital inputs of avionics devices in indirect lightning tests according to ED-14/DO-160", 2013',
    seen: 'abstract read',
  },
  T35: { title: 'Fuel-quantity test-set manual, insulation reading, p. 17 (T35)', seen: 'page read' },
  T36: { title: 'UFGS-13095A, p. 37, filter tests', seen: 'page read in a copy' },
  T37: { title: 'SAE ARP6216, aircraft wire high-potential testing', seen: 'abstract read' },
  T38: { title: 'Harness service bulletin, insulation test (T38)', seen: 'read' },
  T39: { title: '30 kW suppressor data sheet, failure mode (T39)', seen: 'part read' },
  'iec-61000-4': {
    title: 'IEC 61000-4-2, -4-4 and -4-5, immunity to discharge, burst and surge',
    seen: 'not opened',
  },
} as const
