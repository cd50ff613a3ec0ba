import type { Issue } from '../issue.ts'
import { MAX_ISSUES } from './limits.ts'

/** Collects issues up to a limit and counts the rest, so that a hostile file cannot fill the memory with complaints. */
export class IssueList {
  readonly issues: Issue[] = []
  left = 0

  get isFull(): boolean {
    return this.issues.length >= MAX_ISSUES
  }

  add(issue: Issue): void {
    if (this.isFull) this.left++
    else this.issues.push(issue)
  }
}
