/** Just enough complex arithmetic to wire reference loads in tests, independent of the solver under test. */
export type Complex = { readonly re: number; readonly im: number }

export function series(a: Complex, b: Complex): Complex {
  return { re: a.re + b.re, im: a.im + b.im }
}

export function inverse(a: Complex): Complex {
  const m = a.re * a.re + a.im * a.im
  return { re: a.re / m, im: -a.im / m }
}

export function parallel(a: Complex, b: Complex): Complex {
  return inverse(series(inverse(a), inverse(b)))
}
