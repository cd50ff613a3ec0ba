import { type AnyFormula, type Fact, FORMULAS, isOne, markOf, type One, type Source, type Take, WORKS } from '@ampwright/engine'

const source = (s: Source): string => `${WORKS[s.work].title}, ${s.place}${markOf(s) ? ` (${markOf(s)})` : ''}`

/** docs/handbook.md: every formula as its card states it. */
export function handbook(used: ReadonlySet<string>): string {
  const chapters = [...new Set(FORMULAS.map(f => f.chapter))]
  return `# Handbook

Generated from the cards by \`npm run docs\`. ${FORMULAS.length} formulas. Each can be used alone: \`ampwright handbook wheel-force --input 'torque=250 Nm' …\`.
*Handbook only* marks formulas that no study uses on the four samples.

${chapters
  .map(
    c =>
      `## ${c}\n\n${FORMULAS.filter(f => f.chapter === c)
        .map(f => entry(f.formula, used))
        .join('\n')}`,
  )
  .join('\n')}`
}

function entry({ card }: AnyFormula, used: ReadonlySet<string>): string {
  const gives: readonly One[] = isOne(card.gives) ? [card.gives] : Object.values(card.gives as Record<string, One>)
  const takes = (Object.entries(card.takes) as [string, Take][]).map(
    ([name, t]) =>
      `- ${t.symbol} [${'oneOf' in t ? t.oneOf.join(', ') : typeof t.unit === 'string' ? t.unit : t.unit.join(' → ')}] ${t.label ?? name}${'holds' in t && t.holds ? `, holds from ${t.holds[0]} to ${t.holds[1]}` : ''}`,
  )
  const constants = ((card.uses ?? []) as Fact[]).map(u => `- ${u.symbol} = ${u.value} ${u.unit}: ${u.label}`)
  const examples =
    'none' in card.proof
      ? [`No published example: ${card.proof.none}.`]
      : card.proof.examples.map(
          (e: { gives: unknown; within: number; source: Source }) =>
            `Example: gives ${JSON.stringify(e.gives)} within ${e.within} — ${source(e.source)}.`,
        )
  return [
    `### ${card.label} (\`${card.id}\`)${used.has(card.id) ? '' : ' — handbook only'}\n`,
    '```',
    card.words ?? card.text,
    '```\n',
    ...gives.map(g => `- ${g.symbol} [${g.unit}] ${g.label ?? card.label}`),
    ...takes,
    ...constants,
    '',
    `Source: ${source(card.source)}.${card.leavesOut ? ` Leaves out: ${card.leavesOut}` : ''}`,
    '',
    ...examples,
    '',
  ].join('\n')
}
