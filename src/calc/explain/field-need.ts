/** What a level of a field says of one line, in the need check and of a trace alike. */
export const FIELD_OF_ALL =
  'A field comes from every cable and box together: it is a need of this line only after a clamp on its cable made the worst fall.'
