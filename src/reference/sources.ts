/**
 * Where each figure comes from. Standards and publications by author, number and title; part data sheets, makers'
 * notes and forum posts by kind and reference id only. `S…`: filters and insertion loss; `R…`: lines, data buses and
 * interference; `T…`: waveforms and suppressors; `C…`, `D…`: public documents of the case histories; `W…`: installation handbooks; words: standards and books known from memory.
 * How well a single figure is known stands beside the figure (standing.ts), not here.
 */
import { CASE_SOURCES } from './sources-cases.ts'
import { TRANSIENT_SOURCES } from './sources-transients.ts'

export type SourceRow = { readonly title: string; readonly seen: string }

export const SOURCES = {
  derived: { title: 'Computed here from the stated inputs', seen: 'derivation in the working' },
  practice: { title: 'Common practice', seen: 'engineering judgement, no printed source' },

  // Filters, insertion loss, limits, parts
  S1: { title: 'Application note "EMI filters insertion loss"', seen: 'part read' },
  S2: {
    title: 'B. Adamczyk, D. Haring, "EMC Filters Comparison Part I: CL and LC Filters", In Compliance',
    seen: 'part read',
  },
  S3: {
    title: 'B. Adamczyk, D. Haring, "EMC Filters Comparison Part II: Pi and T Filters", In Compliance',
    seen: 'part read',
  },
  S4: {
    title: 'B. Adamczyk, "Correlation Between Insertion Loss and Input Impedance of EMC Filters", In Compliance, 2023',
    seen: 'part read',
  },
  S5: { title: 'Exam problem on the lossless normalised two-port', seen: 'read' },
  S6: { title: 'Explanation of the CISPR 17 insertion-loss set-ups', seen: 'part read' },
  S7: {
    title: 'MIL-STD-220C, Method of Insertion-Loss Measurement, 14 May 2009, foreword',
    seen: 'part read, in a copy',
  },
  S8: {
    title:
      'S. M. Vakil, "MIL-STD-220A versus Classical Measurement of Filter Insertion Loss in a 50-ohm System", IEEE Trans. EMC, 1983',
    seen: 'abstract read',
  },
  S9: { title: 'Paper on the worst-case insertion loss of power-line filters', seen: 'abstract read' },
  S10: { title: 'Ozenbaugh and Pullen, EMI Filter Design, 3rd edition, appendix A', seen: 'part read' },
  S11: { title: 'Pozar, Microwave Engineering, example 8.3', seen: 'read in a secondary copy' },
  S12: { title: 'Table of Butterworth prototype values', seen: 'read, orders 1 to 8' },
  S13: {
    title: 'Bird, Electrical Circuit Theory and Technology, chapter 42',
    seen: 'inputs and formulas read in a public code collection; printed answers from memory',
  },
  S14: {
    title: 'Worked example of a constant-k and m-derived low-pass, public code collection (book title not seen)',
    seen: 'inputs and formulas read',
  },
  S15: {
    title: 'G. M. Kauffman, "Accurate Feedthrough Capacitor Measurements at High Frequencies"',
    seen: 'part read',
  },
  S16: { title: 'Instrumentation-amplifier input filter, answer on a part maker’s support forum (S16)', seen: 'read' },
  S17: { title: 'J. Bao, notes on ferrite-bead models', seen: 'read' },
  S18: { title: 'Application note on ferrite beads (S18)', seen: 'introduction read; the rest from memory' },
  S19: { title: 'Reprint of an article on ferrite beads (S19)', seen: 'read' },
  S20: { title: 'Signal-integrity mailing list, 10 March 1998, ferrite-bead model', seen: 'read' },
  S21: { title: 'Lesson on self-resonance with a table of inductances', seen: 'read' },
  S22: { title: 'E. Bogatin, blog entry of 16 February 2009, capacitor inductance', seen: 'read' },
  S23: { title: 'Technical summary of multilayer ceramic capacitors (S23)', seen: 'read' },
  S24: { title: 'Ceramic dielectric and ageing data, maker’s general page (S24)', seen: 'read' },
  S25: { title: 'Explanation of DC bias with a 10 µF example (S25)', seen: 'read' },
  S26: { title: 'Application note on capacitance lost under DC bias (S26)', seen: 'read in poor secondary copies' },
  S27: { title: 'Pages on capacitor tolerance codes', seen: 'read' },
  S28: { title: 'MIL-PRF-28861D, Filters and Capacitors, 4.6.3 and 4.6.4', seen: 'page read in a copy' },
  S29: { title: 'MIL-PRF-28861D, Filters and Capacitors, scope', seen: 'read in a copy' },
  S30: { title: 'MIL-STD-461, clause 4.2.2 "Filtering (Navy only)"', seen: 'text quoted in a secondary copy' },
  S31: { title: 'Test-laboratory summaries of MIL-STD-461 applicability', seen: 'read' },
  S32: { title: 'Summaries of MIL-STD-461 CS114', seen: 'read' },
  S33: { title: 'Independent tutorial on MIL-STD-461 CE102', seen: 'read' },
  S34: { title: 'Public MIL-STD-461F test-row template', seen: 'read, weak' },
  S35: { title: 'EN 55022 limits in a course page and in Power Electronics Handbook', seen: 'read, the two agree' },
  S36: { title: 'Page on RTCA DO-160 section 21 categories', seen: 'read' },
  S37: { title: 'Article on the sections of RTCA DO-160', seen: 'read' },
  S38: { title: 'MIL-HDBK-1004/5, section 6, passive-element filters', seen: 'read' },
  S39: { title: 'UFGS-13095A, electromagnetic shielding guide specification, 2.6', seen: 'read' },
  S40: { title: 'NASA Reliability Practice PD-ED-1206, Power Line Filters', seen: 'part read' },
  S41: { title: 'Test-laboratory note on MIL-STD-461G 4.3.8.2, bonding of the equipment', seen: 'read' },
  S42: {
    title: '"Lightning and RF Electrical Bonding: the origin and application of the 2.5 mΩ requirement", In Compliance',
    seen: 'introduction read',
  },
  S43: { title: 'Page on the Paschen curve', seen: 'read' },
  S44: { title: 'NASA dictionary entry on the Paschen minimum', seen: 'read' },
  S45: { title: 'J. Prymak et al., paper on capacitance under bias', seen: 'abstract read' },
  S46: {
    title:
      'Albaugh, Instrumentation Amplifier Handbook, figures 4-16 and 4-20, and an article on common-mode rejection',
    seen: 'quoted in a secondary copy',
  },
  S47: { title: 'Technical page on feed-through against two-wire capacitors (S47)', seen: 'part read' },
  S48: {
    title: 'Designer’s guide to instrumentation amplifiers, 3rd edition, p. 5-14',
    seen: 'quoted in a secondary copy',
  },

  // Lines, data buses, interference
  R1: { title: 'ARINC Specification 429 Part 1, electrical clauses 2.2', seen: 'not opened' },
  R2: { title: 'ARINC 429 protocol tutorial, section 3.3', seen: 'part read' },
  R3: { title: 'Design note on an ARINC 429 transmitter (R3)', seen: 'read' },
  R4: { title: 'ARINC 429 line-driver data sheet (R4)', seen: 'part read' },
  R5: { title: 'Question-and-answer thread on an ARINC 429 edge network', seen: 'read' },
  R6: { title: 'Simulation-library page on an ARINC 429 link (R6)', seen: 'read' },
  R7: {
    title: 'MIL-STD-1553B with Notice 2, clauses 4.5.1 and 4.5.2',
    seen: 'two secondary pages read; the rest from memory',
  },
  R8: { title: 'TIA-232-F and its predecessors', seen: 'not opened' },
  R9: { title: 'Note on EIA-232-D cable length', seen: 'read' },
  R10: { title: 'Communications manual of an industrial controller, 2500 pF rule (R10)', seen: 'read' },
  R11: { title: 'Transceiver maker’s answer on RS-232 cable length (R11)', seen: 'read' },
  R12: { title: 'TIA-422-B, annex criteria', seen: 'quoted in an applications book' },
  R13: { title: 'TIA-485-A and TSB-89-A', seen: 'quoted in a secondary book' },
  R14: { title: 'Transceiver tutorial on stub length and edge time (R14)', seen: 'read' },
  R15: { title: 'RS-485 design guide (R15)', seen: 'not opened' },
  R16: { title: 'ISO 11898-2', seen: 'quoted in transceiver data sheets' },
  R17: {
    title: 'Application note on the spacing of CAN connections (R17)',
    seen: 'formula quoted in a secondary copy',
  },
  R18: { title: 'Isolated-CAN questions and answers on bus capacitance (R18)', seen: 'read' },
  R19: { title: 'Transceiver maker’s forum on capacitors at CANH and CANL (R19)', seen: 'read' },
  R20: { title: 'CAN cable data in an industrial user guide (R20)', seen: 'read' },
  R21: { title: 'I²C-bus specification UM10204, revision 5, 7.1', seen: 'part read' },
  R22: { title: 'Microcontroller data sheet, two-wire timing table (R22)', seen: 'read' },
  R23: {
    title: 'Application note on I²C pull-up resistors (R23)',
    seen: 'not opened; the same numbers read elsewhere',
  },
  R24: { title: 'USB 2.0 specification, 7.1.1 to 7.1.6', seen: 'part read in a scan' },
  R25: { title: 'IEEE 802.3 40.8.3.1 and ANSI X3.263-1995 9.1.5', seen: 'quoted in a compliance-test manual' },
  R26: { title: 'Manual of an Ethernet test instrument, port impedance (R26)', seen: 'part read' },
  R27: { title: 'Application note on fast backplanes (R27)', seen: 'part read' },
  R28: { title: 'Data book on loaded line impedance, p. 763 (R28)', seen: 'part read' },
  R29: { title: 'Question-and-answer thread, 3 nF suppressor on a 2 Mb/s line', seen: 'read' },
  R30: { title: 'Application note on protecting high-speed data lines (R30)', seen: 'abstract read' },
  R31: { title: 'Data sheet of a low-capacitance protection diode (R31)', seen: 'part read' },
  R32: { title: 'Trade articles on suppressor capacitance limits', seen: 'read, weak' },
  R33: { title: 'Part maker’s forum on LIN slave capacitance (R33)', seen: 'read' },
  R34: { title: 'Textbook excerpt on a capacitive load at a line end', seen: 'part read' },
  R35: { title: 'TIA/EIA-644-A (LVDS) and TIA-899 (M-LVDS)', seen: 'not opened' },
  R36: {
    title: 'MIL-STD-704F, and a 2019 paper on 6-pulse and 12-pulse rectification to 270 VDC',
    seen: 'standard not opened; abstract of the paper read',
  },
  R37: { title: 'MIL-STD-461F/G 4.2.2, MIL-STD-464C/D margins, MIL-STD-1576, MIL-HDBK-240', seen: 'not opened' },
  R38: { title: 'FAA Aeronautical Information Manual, chapter 1 section 1', seen: 'part read' },
  R39: {
    title: 'ICAO Annex 10 Volume V, ICAO Doc 9718, ITU Radio Regulations article 5, 47 CFR 87.173',
    seen: 'part read',
  },
  R40: { title: 'J. Schwaner, article on alternator-induced radio noise', seen: 'read' },
  R41: { title: 'Flinn, open textbook, 3.5, alternator frequency', seen: 'read' },
  R42: { title: 'Paper on claw-pole alternator orders', seen: 'abstract read' },
  R43: { title: 'Pilot forum, spectrum of a whine that follows rpm', seen: 'read' },
  R44: { title: 'EASA AMC 25.1353(a), sources of interference', seen: 'part read' },
  R45: {
    title: 'SAE ARP60493; CASA AC 21-53 v1.0 (2015); FAA HIRF final rule, 72 FR 44016 (2007)',
    seen: 'scope and contents only',
  },
  R46: {
    title:
      'R. D. Leach, M. B. Alexander, NASA RP-1374, Electronic Systems Failures and Anomalies Attributed to EMI, 1995',
    seen: 'not opened',
  },

  // Standards and books known from memory
  'mil-std-461': { title: 'MIL-STD-461F/G, Control of Electromagnetic Interference', seen: 'not opened' },
  'mil-std-464': {
    title: 'MIL-STD-464, Electromagnetic Environmental Effects, Requirements for Systems',
    seen: 'not opened',
  },
  'mil-std-704': { title: 'MIL-STD-704F, Aircraft Electric Power Characteristics', seen: 'not opened' },
  'mil-std-220': {
    title: 'MIL-STD-220, Method of Insertion-Loss Measurement',
    seen: 'foreword read; the rest not opened',
  },
  'mil-std-202': { title: 'MIL-STD-202, Test Methods for Electronic Component Parts', seen: 'not opened' },
  'mil-std-1553': {
    title: 'MIL-STD-1553B, Digital Time Division Command/Response Multiplex Data Bus',
    seen: 'not opened',
  },
  'mil-std-1399': { title: 'MIL-STD-1399 Section 300, Electric Power, Alternating Current', seen: 'not opened' },
  'mil-b-5087': { title: 'MIL-B-5087, Bonding, Electrical, and Lightning Protection', seen: 'not opened' },
  'mil-dtl-38999': { title: 'MIL-DTL-38999, Connectors, Electrical, Circular', seen: 'not opened' },
  'mil-hdbk-241': { title: 'MIL-HDBK-241B, Design Guide for EMI Reduction in Power Supplies', seen: 'not opened' },
  'mil-hdbk-419': { title: 'MIL-HDBK-419A, Grounding, Bonding, and Shielding', seen: 'not opened' },
  'mil-std-6051': { title: 'MIL-E-6051D, Electromagnetic Compatibility Requirements, Systems', seen: 'not opened' },
  'do-160': {
    title: 'RTCA DO-160G / EUROCAE ED-14G, Environmental Conditions and Test Procedures',
    seen: 'not opened',
  },
  'do-214': {
    title: 'RTCA DO-214, Audio Systems Characteristics and Minimum Operational Performance',
    seen: 'not opened',
  },
  'arinc-407': { title: 'ARINC 407, Synchro System Manual', seen: 'not opened' },
  'arinc-429': { title: 'ARINC Specification 429 Part 1', seen: 'not opened' },
  'arinc-664': { title: 'ARINC Specification 664 Parts 2 and 7', seen: 'not opened' },
  'arinc-700': { title: 'ARINC 700-series characteristics, discrete conventions', seen: 'not opened' },
  'arinc-708': { title: 'ARINC Characteristic 708 (and 453), weather radar bus', seen: 'not opened' },
  'arinc-717': { title: 'ARINC Characteristic 717, flight data acquisition', seen: 'not opened' },
  'arinc-825': { title: 'ARINC Specification 825, General Standardization of CAN', seen: 'not opened' },
  csdb: { title: 'Commercial Standard Digital Bus, as listed in GAMA publications', seen: 'not opened' },
  'tia-232': { title: 'TIA-232-F', seen: 'not opened' },
  'tia-422': { title: 'TIA-422-B', seen: 'not opened; annex criteria quoted elsewhere' },
  'tia-485': { title: 'TIA-485-A', seen: 'not opened' },
  'tia-644': { title: 'TIA-644-A', seen: 'not opened' },
  'iso-11898-2': { title: 'ISO 11898-2, CAN high-speed medium access unit', seen: 'not opened; quoted in data sheets' },
  'iso-17987': { title: 'ISO 17987 (LIN)', seen: 'not opened' },
  'i2c-bus': { title: 'I²C-bus specification UM10204', seen: 'part read' },
  'usb-2': { title: 'Universal Serial Bus Specification 2.0', seen: 'part read' },
  'ieee-802-3': { title: 'IEEE 802.3', seen: 'not opened; masks quoted in a test manual' },
  'ieee-1394': { title: 'IEEE 1394b and SAE AS5643', seen: 'not opened' },
  'ecss-spacewire': { title: 'ECSS-E-ST-50-12C, SpaceWire', seen: 'not opened' },
  'iec-60062': { title: 'IEC 60062, marking codes for resistors and capacitors', seen: 'not opened' },
  'iec-60063': { title: 'IEC 60063, preferred number series for resistors and capacitors', seen: 'not opened' },
  'iec-60584': { title: 'IEC 60584, thermocouples', seen: 'not opened' },
  'iec-60751': { title: 'IEC 60751, industrial platinum resistance thermometers', seen: 'not opened' },
  'en-55022': { title: 'EN 55022 / CISPR 22', seen: 'limits read in two secondary sources' },
  'cispr-16': { title: 'CISPR 16-1-1, radio disturbance measuring apparatus', seen: 'not opened' },
  '3gpp-45-002': { title: '3GPP TS 45.002, multiplexing and multiple access on the radio path', seen: 'not opened' },
  'cispr-17': { title: 'CISPR 17, suppression characteristics of passive EMC filtering devices', seen: 'not opened' },
  'ac-43-13': { title: 'FAA AC 43.13-1B, chapter 11', seen: 'not opened' },
  'ac-25-981': { title: 'FAA AC 25.981-1, fuel tank ignition source prevention', seen: 'not opened' },
  ott: { title: 'H. W. Ott, Electromagnetic Compatibility Engineering', seen: 'not opened' },
  paul: { title: 'C. R. Paul, Introduction to Electromagnetic Compatibility', seen: 'not opened' },
  middlebrook: {
    title: 'R. D. Middlebrook, "Input Filter Considerations in Design and Application of Switching Regulators"',
    seen: 'not opened',
  },
  terman: { title: 'F. E. Terman, Radio Engineers’ Handbook', seen: 'not opened' },
  textbook: { title: 'Elementary circuit theory, any textbook', seen: 'from memory' },

  // Public documents of the case histories
  C01: { title: 'NTSB report ERA14LA311, 24 June 2014', seen: 'summary read' },
  C03: { title: 'FAA Airworthiness Directive 2014-20-06', seen: 'read' },
  C05: { title: 'FAA Airworthiness Directives 2021-23-12 and 2023-10-02', seen: 'read' },
  C07: {
    title: 'Owners’ forum thread on GPS and VHF COM, with a receiver service manual page',
    seen: 'read, single witness',
  },
  C09: { title: 'ASRS report 236197', seen: 'part read' },
  C11: { title: 'ASRS report as reprinted in "Banana Skins" 188, In Compliance', seen: 'read' },
  C13: { title: 'UK CAA Paper 2003/3, cellular telephones and avionics', seen: 'summary quoted in a secondary copy' },
  C15: { title: 'Owners’ forum thread, ammeter shunt leads and PTT', seen: 'read, single witness' },
  C17: { title: 'Owners’ forum thread, hiss from a stall-warning circuit', seen: 'read, single witness' },
  C19: { title: 'Article on alternator-induced radio noise (same as R40)', seen: 'read' },
  C21: { title: 'Los Angeles Times, 13 November 1987', seen: 'copy read' },
  C23: { title: 'Radio amateurs’ mailing list, September 2005, precipitation static', seen: 'read, single witness' },
  C25: { title: 'NASA RP-1374, airship case of 1990', seen: 'not opened' },
  C27: { title: 'NASA RP-1374, intersystem interference case of 1986', seen: 'not opened; no figure is taken from it' },
  C29: { title: 'Owners’ forum thread, ammeter reading at PTT on a new panel', seen: 'read, single witness' },

  ...CASE_SOURCES,

  // Waveforms and suppressors
  ...TRANSIENT_SOURCES,
} as const satisfies Readonly<Record<string, SourceRow>>

export type SourceId = keyof typeof SOURCES
