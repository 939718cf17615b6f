/** What this build is: shown in the footer and written into saved records. */
declare const __APP_VERSION__: string
declare const __BUILD_DATE__: string

export const appVersion: string = __APP_VERSION__
/** Day of the build, YYYY-MM-DD. */
export const buildDate: string = __BUILD_DATE__
