/** What this build is: shown in the footer and written into saved records. */
declare const __APP_VERSION__: string
declare const __BUILD_DATE__: string
declare const __DATA_EDITION__: string

export const appVersion: string = __APP_VERSION__
/** Day of the build, YYYY-MM-DD. */
export const buildDate: string = __BUILD_DATE__

/** Edition of the guide and the tables that came with this build. */
export const dataEdition: string = __DATA_EDITION__
