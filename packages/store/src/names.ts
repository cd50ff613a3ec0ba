import { StoreFault } from './fault.ts'

/** Names some systems keep for devices. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i
const LONGEST = 120

const isPart = (part: string): boolean => /^[\p{L}\p{N}_][\p{L}\p{N} ._+()-]*$/u.test(part) && !/[ .]$/.test(part) && !DEVICE.test(part)

/** A name a file beside a conversion may have: up to four plain words with a slash between, so that it is a file on every system. */
export function isFileName(name: string): boolean {
  const parts = name.split('/')
  return name.length <= LONGEST && parts.length <= 4 && parts.every(isPart) && !/\.conversion\.yaml$/i.test(name)
}

/** The name as it is kept, or a refusal that says what is accepted. */
export function fileName(name: string): string {
  const kept = name.normalize('NFC')
  if (isFileName(kept)) return kept
  throw new StoreFault(
    'name',
    `«${name.slice(0, LONGEST)}» cannot be the name of a file beside a conversion; accepted: letters, figures, blanks, - _ . + ( ), at most ${LONGEST}, folders by /`,
  )
}

/** A folder name made of a conversion's name: small letters, figures and dashes. */
export function slugOf(name: string): string {
  const slug = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
    .replace(/-+$/, '')
  return slug === '' || DEVICE.test(slug) ? `conversion${slug && `-${slug}`}` : slug
}
