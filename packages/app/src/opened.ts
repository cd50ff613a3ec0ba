import type { Issue, System } from '@ampwright/conversion'
import type { SheetNode, Told } from '@ampwright/workbench'
import type { Clash } from './server/api.ts'
import type { Section } from './worker/service.ts'

/** What a window knows of the conversion it has open. Replaced whole at every change. */
export type Opened = {
  readonly id: string
  readonly name: string
  readonly revision: number
  readonly told: Told | undefined
  readonly early: ReadonlyMap<string, string>
  /** Figures, bands and findings are being worked out anew. */
  readonly renewing: boolean
  readonly saving: 'saved' | 'saving' | 'not saved' | 'not there' | 'server away'
  readonly sheets: Partial<Record<Section, SheetNode>>
  readonly unreadable: readonly Pick<Issue, 'line' | 'path' | 'what' | 'found' | 'accepted'>[]
  readonly clashes: readonly Clash[]
  /** Labels of fields that clashed, by path. */
  readonly called: Readonly<Record<string, string>>
  readonly said: string | undefined
  readonly undoable: number
  readonly redoable: number
}

export const STORED = 'ampwright.units'
export const storedUnits = (): System => {
  const kept = localStorage.getItem(STORED)
  return kept === 'us' || kept === 'uk' ? kept : 'metric'
}

/** What cannot be left out where something is said of a finding by hand, in the words of the form. */
export const ASKED = {
  accepted: {
    by: 'your name is empty: who accepts a finding says who that is',
    reason: 'the reason is empty: who accepts a finding says why it may stay so',
    scope: 'what it holds for is empty: who accepts a finding says for what and until when',
    date: 'the day is empty: who accepts a finding says when',
  },
  'does not apply': {
    by: 'your name is empty: who says that a finding does not apply says who that is',
    reason: 'the reason is empty: who says that a finding does not apply says why',
    date: 'the day is empty: who says that a finding does not apply says when',
  },
  'taken back': {},
} as const

/** What stands typed in a field: what it would put there, what stood there, and what it is for. */
export type Typed = { readonly now: string | null; readonly was: string | null; readonly what: string }
/** Before anything is known of a conversion. */
export const unopened = (id: string): Opened => ({
  id,
  name: '',
  revision: 0,
  told: undefined,
  early: new Map(),
  renewing: true,
  saving: 'saved',
  sheets: {},
  unreadable: [],
  clashes: [],
  called: {},
  said: undefined,
  undoable: 0,
  redoable: 0,
})
