// @vitest-environment happy-dom
import { useLayoutEffect, useState } from 'preact/hooks'
import { afterEach, expect, it } from 'vitest'
import { useFrameByFrame } from '../../src/ui/parts/frame-later.ts'
import { eventually, show } from './support.ts'

afterEach(() => {
  show(null)
})

it('brings a value to one part after the other, and passes none over where it changes before the last has it', async () => {
  const seen = new Set<string>()
  const Drawing = ({ last }: { readonly last: number }) => {
    const [value, setValue] = useState(1)
    const shown = useFrameByFrame(value, 3)
      .map((one) => one ?? '-')
      .join('')
    seen.add(shown)
    // from the second on there is a new value as soon as one part has the one before
    const isNext = value === 1 ? shown === '111' : shown.includes(String(value))
    useLayoutEffect(() => {
      if (isNext && value < last) setValue(value + 1)
    }, [isNext, value, last])
    return null
  }
  show(<Drawing last={4} />)
  await eventually('all parts anew', () => seen.has('444') || undefined)
  const all = [...seen]
  expect(all.slice(0, 4)).toEqual(['', '1--', '11-', '111'])
  expect(all.filter((one) => one.includes('4') && one.includes('1'))).toEqual([])
})
