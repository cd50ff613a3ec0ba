import { describe, expect, it } from 'vitest'
import { asFound, formatIssue, isError } from './issue.ts'

const ISSUE = {
  line: 3,
  column: 5,
  path: 'donor.wheelbse',
  what: 'this key is not known',
  found: '"wheelbse"',
  accepted: 'mass, wheelbase',
}

describe('an issue on one line', () => {
  it('says where, what, what was found, what is accepted and what was probably meant', () => {
    expect(formatIssue({ ...ISSUE, file: 'a.yaml', nearest: 'wheelbase' })).toBe(
      'a.yaml:3:5 donor.wheelbse: this key is not known; found "wheelbse"; accepted mass, wheelbase; did you mean wheelbase?',
    )
  })

  it('leaves out what there is nothing to say about', () => {
    expect(formatIssue({ ...ISSUE, path: '', found: '', accepted: '' })).toBe('3:5 this key is not known')
  })

  it('is an error unless it is only a note', () => {
    expect(isError(ISSUE)).toBe(true)
    expect(isError({ ...ISSUE, harm: 'error' })).toBe(true)
    expect(isError({ ...ISSUE, harm: 'note' })).toBe(false)
  })
})

describe("the user's text quoted back", () => {
  it('is cut when long', () => {
    expect(asFound('x'.repeat(1000))).toBe(`"${'x'.repeat(59)}…"`)
  })

  it('cannot steer a terminal', () => {
    expect(asFound('a\u001b[31mb\u0000\u202ec\ud800')).toBe('"a\\u001b[31mb\\u0000\\u202ec\\ud800"')
    expect(asFound('1,5 m² 😀')).toBe('"1,5 m² 😀"')
  })
})
