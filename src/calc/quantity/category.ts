/** A test category as it is printed on a box: pairs of a letter and a level, "A3" or "A4G4L3". */

const PAIRS = /^(?:[A-Z][1-5XZ]){1,3}$/iu

/**
 * The level a category gives for the test sets named by `letters` ("AB": the pin sets), as text; the text itself where it
 * is no category or holds none of these sets. "A3" → "3", "A4G4L3" with "CDEFGHJK" → "4".
 * Source: DO-160 section 22: a pin set letter and its level, a stroke set letter and its level, a burst letter and its level.
 */
export function levelInCategory(text: string, letters: string): string {
  const folded = text.replace(/\s+/gu, '').toUpperCase()
  if (!PAIRS.test(folded)) return text
  const pair = (folded.match(/../gu) ?? []).find(([letter = '']) => letters.includes(letter))
  return pair?.[1] !== undefined && /[1-5]/u.test(pair[1]) ? pair[1] : text
}
