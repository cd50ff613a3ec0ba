import { expect, test } from 'vitest'
import { issueOf, quoted } from './issue.ts'

test("a piece of the user's text is shown short and harmless", () => {
  expect(quoted('speed')).toBe('"speed"')
  expect(quoted('a\u001b[31mb\u0000')).toBe('"a\\u001b[31mb\\u0000"')
  expect(quoted('x'.repeat(1000))).toHaveLength(62)
  expect(quoted('\u202eevil')).toBe('"\\u202eevil"')
})

test('names from the file cannot disturb a terminal from any part of an issue', () => {
  const nasty = `\u001b]0;x\u0007${'y'.repeat(1000)}`
  const issue = issueOf({ line: 1, column: 2, path: nasty, what: nasty, found: nasty, accepted: nasty })
  for (const text of [issue.path, issue.what, issue.found, issue.accepted]) {
    expect(text).toMatch(/^\\u001b\]0;x\\u0007y+…$/)
    expect(text.length).toBeLessThan(320)
  }
})
