/** The prefix and unit after a number: which power of ten they stand for in a field of a known quantity. */
import { PREFIX_POWER, QUANTITIES, type Quantity } from './quantity.ts'
import { quote, type Refused, refuse } from './reading.ts'

const SAME_CASE_FREE: readonly Quantity[] = ['decibel', 'slope', 'level']
const EXACT_WORDS: readonly string[] = ['ohm', 'Ohm', 'ohms', 'R', 'sec', 'Vrms', 'Vpk']

type Match = { readonly prefix: string; readonly symbol: string; readonly power: number }

function spellings(prefix: string): readonly string[] {
  if (prefix === 'µ') return ['µ', 'u']
  // IEC 60062 writes kilo as K, and no other prefix is a K
  if (prefix === 'k') return ['k', 'K']
  return [prefix]
}

function symbolsOf(quantity: Quantity): readonly string[] {
  const { symbol, symbolsIn } = QUANTITIES[quantity]
  return [...new Set(['', symbol, ...symbolsIn])]
}

/** Every way to write each unit of a quantity with these prefixes; made once, since every field is read with them. */
const written = new Map<string, ReadonlyMap<string, readonly Match[]>>()

function waysToWrite(quantity: Quantity, prefixes: readonly string[]): ReadonlyMap<string, readonly Match[]> {
  const key = `${quantity} ${prefixes.join(' ')}`
  const known = written.get(key)
  if (known) return known
  const ways = new Map<string, Match[]>()
  for (const prefix of prefixes)
    for (const symbol of symbolsOf(quantity)) {
      const match = { prefix, symbol, power: (PREFIX_POWER[prefix] ?? 0) - (symbol === '%' ? 2 : 0) }
      for (const way of new Set(spellings(prefix).map((spelling) => folded(spelling + symbol, quantity))))
        ways.set(way, [...(ways.get(way) ?? []), match])
    }
  written.set(key, ways)
  return ways
}

const folded = (text: string, quantity: Quantity) => (SAME_CASE_FREE.includes(quantity) ? text.toLowerCase() : text)

function matches(tail: string, quantity: Quantity, prefixes: readonly string[]): readonly Match[] {
  const found = waysToWrite(quantity, prefixes).get(folded(tail, quantity)) ?? []
  // "1.5 m" in a field of lengths is the unit itself, not a prefix that lacks it
  const unit = found.find(({ prefix, symbol }) => prefix === '' && symbol === QUANTITIES[quantity].symbol)
  return unit !== undefined && tail === unit.symbol ? [unit] : found
}

function takes(quantity: Quantity): string {
  const rule = QUANTITIES[quantity]
  return `this field takes ${rule.word} such as ${rule.example}`
}

function withPrefix(typed: string, prefix: string, quantity: Quantity): string {
  return `${typed} ${prefix}${QUANTITIES[quantity].symbol}`
}

function orList(items: readonly string[]): string {
  const last = items.at(-1) ?? ''
  return items.length > 1 ? `${items.slice(0, -1).join(', ')} or ${last}` : last
}

function ambiguity(typed: string, tail: string, found: readonly Match[], quantity: Quantity): Refused | undefined {
  const powers = new Set(found.map((match) => match.power))
  if (powers.size > 1) {
    const choices = found.map((match) => withPrefix(typed, match.prefix, quantity))
    return refuse('ambiguous-prefix', `${typed} ${tail} could be ${orList(choices)}; write the one you mean.`)
  }
  const match = found[0]
  if (match?.prefix !== 'm' || match.symbol === '') return undefined
  if (match.symbol === QUANTITIES[quantity].symbol || EXACT_WORDS.includes(match.symbol)) return undefined
  // an all-lower-case unit says nothing about the case meant for the prefix
  const other = QUANTITIES[quantity].prefixes.includes('M') ? 'M' : quantity === 'capacitance' ? 'µ' : undefined
  if (other === undefined) return undefined
  const choices = ['m', other].map((prefix) => withPrefix(typed, prefix, quantity))
  return refuse('ambiguous-prefix', `${typed} ${tail} could be ${orList(choices)}; write the one you mean.`)
}

function prefixesToOffer(refused: string, quantity: Quantity): readonly string[] {
  const used = [...QUANTITIES[quantity].prefixes].reverse()
  const sibling = used.indexOf(refused === 'M' ? 'm' : refused)
  if (sibling >= 0) return used.slice(sibling, sibling + 3)
  const refusedPower = PREFIX_POWER[refused] ?? 0
  return [...used]
    .sort((a, b) => Math.abs((PREFIX_POWER[a] ?? 0) - refusedPower) - Math.abs((PREFIX_POWER[b] ?? 0) - refusedPower))
    .slice(0, 3)
}

function prefixNotUsed(typed: string, tail: string, quantity: Quantity): Refused | undefined {
  const rule = QUANTITIES[quantity]
  const others = Object.keys(PREFIX_POWER).filter((prefix) => prefix !== '' && !rule.prefixes.includes(prefix))
  const found = matches(tail, quantity, others)[0]
  if (!found) return undefined
  if (rule.prefixes.length === 1)
    return refuse('prefix-not-used', `${tail} is not used for ${rule.word}; ${takes(quantity)}.`)
  const choices = prefixesToOffer(found.prefix, quantity).map((prefix) => withPrefix(typed, prefix, quantity))
  return refuse('prefix-not-used', `${tail} is not used for ${rule.word}; write ${orList(choices)}.`)
}

function quantityOf(tail: string, except: Quantity): Quantity | undefined {
  // a bare m behind a number is milli, as everywhere, before it is a metre
  if (Object.hasOwn(PREFIX_POWER, tail)) return undefined
  return (Object.keys(QUANTITIES) as Quantity[]).find(
    (other) =>
      other !== except && matches(tail, other, QUANTITIES[other].prefixes).some((match) => match.symbol !== ''),
  )
}

function otherCase(typed: string, tail: string, quantity: Quantity): readonly string[] {
  const lower = tail.toLowerCase()
  const prefixes = QUANTITIES[quantity].prefixes.filter((prefix) =>
    symbolsOf(quantity).some((symbol) => spellings(prefix).some((text) => (text + symbol).toLowerCase() === lower)),
  )
  return prefixes.map((prefix) => withPrefix(typed, prefix, quantity).trim())
}

/** Units people do write in such a field, and what to write instead. */
const OTHER_SCALES: Partial<Readonly<Record<Quantity, readonly (readonly [RegExp, string])[]>>> = {
  slope: [[/^db ?\/ ?oct/iu, 'a slope per octave times 3.32 is the slope per decade']],
  temperature: [
    [/^[°º]? ?F$/u, 'take 32 off and divide by 1.8 for °C'],
    [/^K$/u, 'take 273.15 off for °C'],
  ],
}

function otherScale(typed: string, tail: string, quantity: Quantity): Refused | undefined {
  const cure = OTHER_SCALES[quantity]?.find(([pattern]) => pattern.test(tail))?.[1]
  return cure === undefined ? undefined : refuse('wrong-unit', `${typed} ${quote(tail)}: ${cure}; ${takes(quantity)}.`)
}

/**
 * The power of ten that the text after a number stands for in a field of this quantity, or a refusal that says what
 * would be right. Case matters; m and M are never guessed. `typed` is the number as typed, for the sentence.
 */
export function readUnit(typed: string, tail: string, quantity: Quantity): { power: number } | Refused {
  if (tail === '') return { power: 0 }
  const rule = QUANTITIES[quantity]
  const found = matches(tail, quantity, rule.prefixes)
  const unclear = ambiguity(typed, tail, found, quantity)
  if (unclear) return unclear
  const first = found[0]
  if (first) return { power: first.power }
  const scale = otherScale(typed, tail, quantity)
  if (scale) return scale
  const other = quantityOf(tail, quantity)
  const unused = prefixNotUsed(typed, tail, quantity)
  if (unused && (other === undefined || rule.prefixes.length > 1)) return unused
  if (other) return refuse('wrong-unit', `${typed} ${tail} is ${QUANTITIES[other].word}; ${takes(quantity)}.`)
  const meant = otherCase(typed, tail, quantity)
  if (meant.length > 0) {
    return refuse('unknown-unit', `${quote(tail)} is not a unit; did you mean ${orList(meant)}?`)
  }
  return refuse('unknown-unit', `${quote(tail)} is not a unit known here; ${takes(quantity)}.`)
}

/**
 * The same inside a calculation, where quantities mix (1/(2*pi*50*1n) gives a frequency): any prefix alone and any
 * unit of any quantity is taken, as long as all readings agree. Percent only in a field that takes a share, because
 * 10n + 20 % means different things to different people; degrees never, because sin and cos take radians.
 */
export function readUnitInSum(typed: string, tail: string, quantity: Quantity): { power: number } | Refused {
  if (tail === '°' || tail === 'deg') {
    return refuse('wrong-unit', `sin and cos take radians; write ${typed}*pi/180 instead of ${typed} ${tail}.`)
  }
  if (tail === '%' && quantity !== 'fraction') {
    return refuse('wrong-unit', `${typed} % is unclear in a calculation; write it as a factor, such as 0.2 for 20 %.`)
  }
  const own = readUnit(typed, tail, quantity)
  if (!('is' in own) || own.code === 'ambiguous-prefix') return own
  const alone = Object.keys(PREFIX_POWER).find((prefix) => prefix !== '' && spellings(prefix).includes(tail))
  const names = Object.keys(QUANTITIES) as Quantity[]
  // a bare m is milli in a calculation, as everywhere; metres are for fields of lengths
  const isTaken = (name: Quantity) => alone === undefined || QUANTITIES[name].symbol !== tail
  const others = names.filter((name) => isTaken(name) && matches(tail, name, QUANTITIES[name].prefixes).length > 0)
  const readings = others.map((other) => readUnit(typed, tail, other))
  const refused = readings.find((reading) => 'is' in reading)
  if (refused && 'is' in refused) return refused
  const powers = new Set(readings.flatMap((reading) => ('power' in reading ? [reading.power] : [])))
  if (alone !== undefined) powers.add(PREFIX_POWER[alone] ?? 0)
  const [power] = powers
  return power !== undefined && powers.size === 1 ? { power } : own
}

/**
 * IEC 60062 marking: the letter that stands where the decimal point would (4n7, 4R7, 1k5, R47).
 * Returns the power of ten of that letter for this quantity, or undefined when the letter is not one.
 * Femto has no such letter, and f could be a farad.
 * Source: IEC 60062, marking codes for resistors and capacitors (`iec-60062`, from memory).
 */
export function pointLetterPower(letter: string, quantity: Quantity): number | undefined {
  const rule = QUANTITIES[quantity]
  if (letter === rule.symbol || (letter === 'R' && quantity === 'resistance')) return 0
  if (letter === 'f') return undefined
  const prefix = rule.prefixes.find((candidate) => candidate !== '' && spellings(candidate).includes(letter))
  return prefix === undefined ? undefined : PREFIX_POWER[prefix]
}
