export type Lane = { readonly lane: number; readonly centre: number }

/** Puts texts that belong to places along a line into as few rows as they need: centred on their place, moved inside the edges, none touching another. */
export function laned(wanted: readonly { readonly at: number; readonly width: number }[], low: number, high: number): readonly Lane[] {
  const ends: number[] = [],
    out: Lane[] = Array.from(wanted, () => ({ lane: 0, centre: 0 }))
  const order = [...wanted.keys()].sort((a, b) => (wanted[a]?.at ?? 0) - (wanted[b]?.at ?? 0))
  for (const i of order) {
    const { at, width } = wanted[i] as { at: number; width: number },
      centre = Math.max(Math.min(at, high - width / 2), low + width / 2),
      start = centre - width / 2
    let lane = ends.findIndex(end => end <= start)
    if (lane < 0) lane = ends.length
    ends[lane] = centre + width / 2 + 6
    out[i] = { lane, centre }
  }
  return out
}
