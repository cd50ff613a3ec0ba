import type { Finding } from '@ampwright/engine'

/** What a finding is called where it is remedied or accepted: its rule, and the item it is about. */
export const idOf = (f: Pick<Finding, 'rule' | 'item'>): string => (f.item === undefined ? f.rule : `${f.rule}@${f.item}`)
