/** The guide that comes with the app and its fingerprint, worked out when the app is built: a question computes no figure. */
import { GUIDE } from '../guide/guide.ts'
import { type BundledGuide, guideDigest } from '../store/guide-store.ts'

export const built: BundledGuide = { guide: GUIDE, digest: guideDigest(GUIDE) }
