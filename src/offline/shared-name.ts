/** What the worker and the page call the place of shared files. */

/** Of this app only: other apps may stand on the same host. Named so that the removal of the offline copy finds it. */
export const sharedName = (scope: string): string => `shared-files-${scope}`

/** The header a kept file carries its name in. */
export const NAME_HEADER = 'X-File-Name'
