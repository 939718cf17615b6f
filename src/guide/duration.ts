/** How long a test takes, in words. Whole minutes. */
export function durationWords(minutes: number): string {
  if (minutes >= 1440) return 'a day or more'
  return minutes === 1 ? 'one minute' : `${minutes} minutes`
}
