import { readFileSync } from 'node:fs'
import { applyEdits, readConversion, formatIssue } from '@ampwright/conversion'
import { headlineOf } from '@ampwright/engine'
import { baseOf } from '../../workbench/src/guided/base.ts'
import { conceptEdits } from '../../workbench/src/guided/compose.ts'
import { conceptKinds } from '../../workbench/src/guided/layouts.ts'
import { weighedTogether } from '../../workbench/src/guided/removed.ts'
import { search } from '../../workbench/src/guided/search.ts'
import { edited } from '../../workbench/src/guided/trial.ts'
import { assessModel } from '@ampwright/workbench'
import { attachmentsIn } from './attachments.ts'
for (const car of process.argv.slice(2)) {
const base = baseOf(readFileSync(`samples/${car}.conversion.yaml`,'utf8'), attachmentsIn('samples'))
const kinds = conceptKinds(base.model.donor) as any
for (const kind of kinds) {
  const w = weighedTogether(base.model, kind); if (w) { console.log(car, kind.id, 'together', w); continue }
  const count = { trials: 0, full: 0 }
  const t0=performance.now()
  const g = search(base, kind, count); let r = g.next(); while (!r.done) r = g.next()
  const d = r.value as any
  const t1=performance.now()
  const text = edited(base.text, conceptEdits(base, d))
  const c = readConversion(text, { lookUps: base.lookUps })
  const as = assessModel(c.model, true)
  const t2=performance.now()
  console.log(car, kind.id, 'trials', count.trials, 'search ms', (t1-t0).toFixed(), 'full', (t2-t1).toFixed(), d.drive.map((m:any)=>m.part.id).join('+'), d.gear, d.reduction, d.pack.part.id, d.pack.inSeries, d.pack.strings, 'bay', d.bayShare, d.charger.id, c.issues.map(formatIssue))
  for (const f of headlineOf(as)) console.log('  ', f.id, f.value.toPrecision(4), (as.halves.get(f.id)??0).toPrecision(3))
  for (const f of as.findings) if (f.outcome==='failing') console.log('   FAIL', f.harm, f.rule, f.item)
  const rg = as.findings.filter(f=>['range','charging','acceleration','climb','hill-start','steady-speed','top-speed'].includes(f.rule) && f.outcome==='unanswered'); for (const f of rg) console.log('   ?', f.rule, f.item, f.gaps.map(g=>g.path).join(' '))
}}
