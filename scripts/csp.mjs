/** The one content security policy: sent as a header by the server, and put into the page by the build. */

const DIRECTIVES = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "font-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types stillpin stillpin-work',
]

export const CSP_HEADER = DIRECTIVES.join('; ')

/** `frame-ancestors` is ignored in a meta tag and browsers complain about it there. */
export const CSP_META = DIRECTIVES.filter((directive) => !directive.startsWith('frame-ancestors')).join('; ')
