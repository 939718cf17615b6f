/** A stored moment as the device's own day and time: `2026-11-25 13:05`. Text that is no moment stays as it is. */
export function dayAndTime(iso: string): string {
  const moment = new Date(iso)
  if (Number.isNaN(moment.getTime())) return iso
  const two = (value: number) => String(value).padStart(2, '0')
  const day = `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`
  return `${day} ${two(moment.getHours())}:${two(moment.getMinutes())}`
}
