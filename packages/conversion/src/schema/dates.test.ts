import { describe, expect, it } from 'vitest'
import { readConversion } from '../conversion.ts'

const read = (lines: string) => {
  const { model, issues } = readConversion(`schema: 1\n${lines}`)
  return { model, issues: issues.map(i => `${i.path}: ${i.accepted}`) }
}

describe('dates', () => {
  it.each(['1993-06-01', '1993-06', '1993'])('takes %s where a month or year will do', text => {
    const { model, issues } = read(`donor:\n  first-registered: ${text}\n  built: ${text}\n`)
    expect(issues).toEqual([])
    expect([model.donor.firstRegistered, model.donor.built]).toMatchObject([{ value: text }, { value: text }])
  })
  it.each(['1993-6', '1993-13', '1993-00', '93', '1993-06-32', 'June 1993'])('refuses %s, and says what it takes', text => {
    expect(read(`donor:\n  built: ${text}\n`).issues).toEqual(['donor.built: a date such as 2026-05-12, 2026-05 or 2026'])
  })
  it.each(['2027-02-30', '2027-02-29', '2100-02-29', '2027-04-31'])('refuses %s: the calendar has no such day', text => {
    expect(read(`brief:\n  converted-on: ${text}\n`).issues).toEqual(['brief.converted-on: a date such as 2026-05-12'])
  })
  it.each(['2028-02-29', '2000-02-29'])('takes %s, a leap day', text => {
    expect(read(`brief:\n  converted-on: ${text}\n`).issues).toEqual([])
  })
  it.each(['2027-04', '2027'])('wants the day where the day decides: %s is refused', text => {
    expect(read(`brief:\n  converted-on: ${text}\n`).issues).toEqual(['brief.converted-on: a date such as 2026-05-12'])
  })
})
