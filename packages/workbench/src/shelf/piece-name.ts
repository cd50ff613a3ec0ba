/** A short name for a piece that none on the shelf has yet, from its record or its words: `motor-pm-100kw`, `coupler-hub-2`. */
export function pieceName(of: string, taken: readonly string[]): string {
  const slug =
    of
      .replace(/@\d+$/, '')
      .normalize('NFKD')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 40)
      .replace(/-+$/, '') || 'piece'
  // A note is no piece, whatever it is called.
  const stem = slug === 'note' ? 'note-piece' : slug
  for (let n = 1; ; n++) {
    const name = n === 1 ? stem : `${stem}-${n}`
    if (!taken.includes(name)) return name
  }
}
