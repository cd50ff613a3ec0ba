import type { LotView } from '@ampwright/workbench'
import { useEffect, useState } from 'react'
import { groupsOf, mapAt } from '../field/map-at.ts'
import { Add } from '../field/sheet.tsx'
import { useInHand } from '../shell/in-hand.ts'
import { LotFigures, Sorting } from './lot.tsx'
import { ModuleTable } from './module-table.tsx'
import { TesterTable } from './tester-table.tsx'

/** Salvaged modules: a tester's table taken over, a verdict on each module, and what the lot comes to. */
export function ModulesPage() {
  const { conversion, opened } = useInHand(),
    [lot, setLot] = useState<LotView>()
  useEffect(() => conversion.show('pack'), [conversion])
  useEffect(() => {
    if (opened.told) void conversion.lot().then(setLot)
  }, [conversion, opened.told])
  const map = mapAt(opened.sheets.pack, 'pack.salvage'),
    modules = groupsOf(map)
  return (
    <>
      <h1>Salvaged modules</h1>
      <p className="lede">
        Each module measured by itself before it is bought: capacity, resistance after 10 s, two rest voltages days apart, insulation. The
        weakest decides for its whole string; a leak inside a cell is a short that grows.
      </p>
      <TesterTable some={modules.length > 0} />
      <section aria-label="The lot">
        <h2>The lot</h2>
        {modules.length === 0 ? <p>No module is recorded yet.</p> : <ModuleTable modules={modules} lot={lot} />}
        {map ? <Add map={map} /> : null}
      </section>
      {lot && modules.length ? (
        <div className="two">
          <Sorting lot={lot} />
          <LotFigures lot={lot} />
        </div>
      ) : null}
    </>
  )
}
