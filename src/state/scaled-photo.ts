/**
 * A photo made small enough to be kept: longest side and bytes bounded, whatever the camera gives. Drawn anew, so that
 * place, time and camera written into the file do not go along.
 */
import type { PhotoType, Picture } from '../store/photos.ts'

/** Longest side of what is kept: the writing on a breaker can still be read. */
export const MOST_SIDE_PX = 1600
/** A hundred photos are then 30 MB. */
export const MOST_BYTES = 300_000

const LEAST_QUALITY = 0.4
const QUALITIES = [0.8, 0.6, LEAST_QUALITY] as const
/** Where the least quality is still too much, the sides shrink at least by this. */
const LEAST_SHRINK = 0.9
const LEAST_SIDE_PX = 200

/** Said where what was chosen cannot be kept as a photo. */
export class PhotoError extends Error {}

export type Size = { readonly widthPx: number; readonly heightPx: number }

/** What a browser's canvas does: the picture at this size, as a file of this type; another type where it cannot. */
export type Encode = (size: Size, type: PhotoType, quality: number) => Promise<Blob | undefined>

/** The size whose longest side is at most this, never larger than it was. */
export function fitted({ widthPx, heightPx }: Size, mostPx: number): Size {
  const scale = Math.min(1, mostPx / Math.max(widthPx, heightPx))
  return { widthPx: Math.max(1, Math.round(widthPx * scale)), heightPx: Math.max(1, Math.round(heightPx * scale)) }
}

async function pictureOf(blob: Blob, type: PhotoType, size: Size): Promise<Picture> {
  return { type, ...size, bytes: await blob.arrayBuffer() }
}

/** Tries less and less quality, then sides that shrink as far as the bytes are over, until it fits. */
export async function shrunk(size: Size, encode: Encode): Promise<Picture> {
  let type: PhotoType = 'image/webp'
  let now = fitted(size, MOST_SIDE_PX)
  for (let attempt = 0; Math.max(now.widthPx, now.heightPx) >= LEAST_SIDE_PX || attempt === 0; attempt++) {
    const quality = QUALITIES[Math.min(attempt, QUALITIES.length - 1)] ?? LEAST_QUALITY
    let blob = await encode(now, type, quality)
    if (blob?.type !== type) {
      // This browser writes no such files.
      type = 'image/jpeg'
      blob = await encode(now, type, quality)
    }
    if (blob === undefined) throw new PhotoError('This browser could not draw the photo. Nothing else is affected.')
    if (blob.size <= MOST_BYTES) return pictureOf(blob, type, now)
    const scale = Math.min(LEAST_SHRINK, Math.sqrt(MOST_BYTES / blob.size))
    if (attempt >= QUALITIES.length - 1) now = fitted(size, Math.max(now.widthPx, now.heightPx) * scale)
  }
  throw new PhotoError('The photo does not get small enough to be kept. Choose another one.')
}

const NO_PICTURE = 'This file is not a picture that this browser can read. Choose a photo (JPEG, PNG or WebP).'

/** The photo of a file, small enough to be kept. Fails with a `PhotoError` that says what is wrong. */
export async function scaledPhoto(file: Blob): Promise<Picture> {
  const image = await createImageBitmap(file).catch(() => undefined)
  if (image === undefined || image.width === 0) throw new PhotoError(NO_PICTURE)
  const canvas = document.createElement('canvas')
  try {
    return await shrunk({ widthPx: image.width, heightPx: image.height }, (size, type, quality) => {
      canvas.width = size.widthPx
      canvas.height = size.heightPx
      canvas.getContext('2d')?.drawImage(image, 0, 0, size.widthPx, size.heightPx)
      return new Promise((done) => canvas.toBlob((blob) => done(blob ?? undefined), type, quality))
    })
  } finally {
    image.close()
    canvas.width = 0
  }
}
