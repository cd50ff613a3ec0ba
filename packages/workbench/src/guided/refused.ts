import { formatIssue, type Issue } from '@ampwright/conversion'
import { Refusal } from '../refusal.ts'

export const issuesAsRefusal = (issues: readonly Issue[]): Refusal =>
  new Refusal(
    `${issues.map(formatIssue).join('\n')}\n${issues.length === 1 ? 'One problem' : `${issues.length} problems`}; no concept was made.`,
  )
