import type { Picture, SaidBound } from '../../calc/types.ts'
import { Ladder } from './ladder.tsx'
import { Plot } from './plot.tsx'
import { Strip } from './strip.tsx'
import { Table } from './table.tsx'

/** One part for each kind of picture; every check is shown through these four. */
export function PictureView(given: {
  readonly picture: Picture
  readonly bounds?: readonly SaidBound[]
  /** a strip's words stand elsewhere */
  readonly bare?: boolean
}) {
  const { picture, bounds = [], bare = false } = given
  switch (picture.is) {
    case 'strip':
      return <Strip picture={picture} bounds={bounds} bare={bare} />
    case 'ladder':
      return <Ladder picture={picture} />
    case 'plot':
      return <Plot picture={picture} />
    case 'table':
      return <Table picture={picture} />
  }
}
