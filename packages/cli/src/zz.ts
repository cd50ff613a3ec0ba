import { allConcepts, conversionText } from '@ampwright/workbench'
import { SALOON } from '../../../tests/saloon.ts'

const full = allConcepts(conversionText(SALOON))
console.log(
  full.concepts.map(c => c.id + ' ' + c.failing.map(f => f.id)),
  JSON.stringify(full.verdict),
)
for (const path of Object.keys(SALOON)) {
  const { [path]: _, ...rest } = SALOON
  const t0 = performance.now()
  try {
    const all = allConcepts(conversionText(rest))
    const named = all.asked.some(g => g.path === path)
      ? 'asked'
      : all.concepts
          .map(c => {
            const g = c.gaps.find(g => g.path === path)
            return g ? 'gap' : c.gaps.find(g => path.startsWith(g.path) || g.path.startsWith(path)) ? 'near' : '-'
          })
          .join(',')
    console.log(path, named, (performance.now() - t0).toFixed(), all.verdict.worth)
  } catch (e) {
    console.log(path, 'THROWS', String((e as Error).stack).slice(0, 600))
  }
}
