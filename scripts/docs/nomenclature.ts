import { FORMULAS, isOne, type One, type Take } from '@ampwright/engine'

/** docs/nomenclature.md: every symbol of the formulas, what it stands for, its unit and its name in code. */
export function nomenclature(): string {
  const rows = new Map<string, { symbol: string; unit: string; meanings: Set<string>; names: Set<string>; in: Set<string> }>()
  const add = (symbol: string, unit: string, meaning: string, name: string, chapter: string): void => {
    const key = `${symbol}\n${unit}`,
      row = rows.get(key) ?? { symbol, unit, meanings: new Set(), names: new Set(), in: new Set() }
    row.meanings.add(meaning)
    row.names.add(name)
    row.in.add(chapter)
    rows.set(key, row)
  }
  for (const {
    chapter,
    formula: { card },
  } of FORMULAS) {
    const gives: readonly (readonly [string, One])[] = isOne(card.gives)
      ? [['', card.gives]]
      : Object.entries(card.gives as Record<string, One>)
    for (const [name, one] of gives) add(one.symbol, one.unit, one.label ?? card.label, name, chapter)
    for (const [name, take] of Object.entries(card.takes) as [string, Take][])
      add(
        take.symbol,
        'oneOf' in take ? 'word' : typeof take.unit === 'string' ? take.unit : take.unit.join(' → '),
        take.label ?? name,
        name,
        chapter,
      )
    for (const used of (card.uses ?? []) as readonly { symbol: string; unit: string; label: string }[])
      add(used.symbol, used.unit, used.label, '', chapter)
  }
  const sorted = [...rows.values()].sort((a, b) => a.symbol.localeCompare(b.symbol, 'en') || a.unit.localeCompare(b.unit, 'en'))
  const list = (s: Set<string>): string => [...s].filter(Boolean).slice(0, 4).join('; ').replaceAll('|', '/')
  return `# Nomenclature

Generated from the cards by \`npm run docs\`. Everything is in coherent SI units; a symbol may stand for several things as long as no formula uses both.
Discharge and power out of the pack are positive, so are uphill and head wind. x behind the front axle, y to the right, z above the ground.

| symbol | unit | stands for | name in code | chapters |
|---|---|---|---|---|
${sorted
  .map(
    r =>
      `| ${r.symbol.replaceAll('|', '/')} | ${r.unit} | ${list(r.meanings)} | ${[...r.names]
        .filter(Boolean)
        .slice(0, 4)
        .map(n => `\`${n}\``)
        .join(', ')} | ${list(r.in)} |`,
  )
  .join('\n')}
`
}
