export { arrangementEdits } from './edits.ts'
export { arrangingJson } from './json.ts'
export { type Arranging, type ArrangingPlan, arrangingPlan } from './plan.ts'
export { ARRANGEMENT_HEADS, type ArrangementWords, type ArrangingView, arrangingView } from './view.ts'
