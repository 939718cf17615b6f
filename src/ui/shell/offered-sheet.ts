/** Lays a sheet out in the page and gives what takes it away again; at once, since a browser does not wait. */
export type Sheet = () => () => void

let offered: Promise<Sheet> | undefined
let ready: Sheet | undefined

/** From now on this sheet is printed in place of the screen; gives what withdraws it. Its code may still be on the way. */
export function offerSheet(sheet: Promise<Sheet>): () => void {
  offered = sheet
  ready = undefined
  sheet.then(
    (laid) => {
      if (offered === sheet) ready = laid
    },
    // without it the screen itself is printed
    () => undefined,
  )
  return () => {
    if (offered !== sheet) return
    offered = undefined
    ready = undefined
  }
}

/** Prints what is offered, once it is there. */
export async function printNow(): Promise<void> {
  await offered?.catch(() => undefined)
  print()
}

/** Prints this sheet once, in place of the one that is offered, which comes back afterwards. */
export async function printSheet(sheet: Promise<Sheet>): Promise<void> {
  const laid = await sheet
  const [before, was] = [offered, ready]
  const back = () => {
    offered = before
    ready = was
  }
  offered = sheet
  ready = laid
  addEventListener('afterprint', back, { once: true })
  print()
}

/** The sheet that is offered, once its code is there. */
export const readySheet = (): Sheet | undefined => ready
