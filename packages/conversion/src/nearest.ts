/** Words longer than this are no misspelling of anything we know. */
const LONGEST = 64

/**
 * The candidate a misspelt word most likely meant, or undefined where a guess would be no help.
 *
 * Distance is the restricted Damerau-Levenshtein distance (insert, drop, replace a letter, swap two neighbours), letters compared
 * without regard to case. One change is allowed per three letters of the word, three at most; words of one or two letters are matched
 * by case alone, because among short unit names everything is near everything. Between equals, the closer case wins, then the earlier.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  if (word === '' || word.length > LONGEST) return undefined
  const allowed = Math.min(3, Math.floor(word.length / 3))
  const lower = word.toLowerCase()
  let best: string | undefined
  let least = Number.POSITIVE_INFINITY
  for (const candidate of candidates) {
    if (candidate === word || Math.abs(candidate.length - word.length) > allowed) continue
    const changes = editDistance(lower, candidate.toLowerCase())
    if (changes > allowed) continue
    const score = changes + editDistance(word, candidate) / 1000
    if (score < least) {
      best = candidate
      least = score
    }
  }
  return best
}

/** The name that has most words in common with a misspelt one, words parted by hyphens; undefined where none has any. */
export function sharingWords(name: string, candidates: Iterable<string>): string | undefined {
  if (name.length > LONGEST) return undefined
  const words = wordsOf(name)
  let best: string | undefined
  let most = 0
  for (const candidate of candidates) {
    const others = wordsOf(candidate)
    // A word that is the same counts for more than one that is nearly so.
    const shared = words.reduce((sum, w) => sum + (others.includes(w) ? 2 : nearest(w, others) === undefined ? 0 : 1), 0)
    if (shared > most) {
      best = candidate
      most = shared
    }
  }
  return best
}
const wordsOf = (name: string): readonly string[] =>
  name
    .replace(/@.*/, '')
    .toLowerCase()
    .split(/[-_.\s]+/)
    .filter(w => w !== '')

/** Restricted Damerau-Levenshtein distance: the fewest single changes that turn one word into the other, no letter touched twice. */
export function editDistance(from: string, to: string): number {
  let beforeLast: number[] = []
  let last = Array.from({ length: to.length + 1 }, (_, j) => j)
  for (let i = 1; i <= from.length; i++) {
    const row = [i]
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1]
      let least = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1))
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]) least = Math.min(least, (beforeLast[j - 2] ?? 0) + 1)
      row.push(least)
    }
    beforeLast = last
    last = row
  }
  return last[to.length] ?? 0
}
