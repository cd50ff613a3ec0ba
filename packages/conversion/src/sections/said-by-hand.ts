import { date, group, mapOf, words } from '../schema/field.ts'

/** Findings somebody takes responsibility for. */
export const accepted = mapOf(
  'accepted findings',
  'finding',
  group('acceptance', {
    by: words('accepted by'),
    reason: words('reason'),
    scope: words('scope', { says: 'For what use, until when.' }),
    date: date('day'),
    rests: words('fingerprint', { says: 'What the finding rested on; copied from the finding. When it changes, the acceptance lapses.' }),
  }),
)

/** Findings somebody says are no matter of this car. */
export const doesNotApply = mapOf(
  'findings that do not apply to this car',
  'finding',
  group('reason why it does not apply', {
    by: words('said by'),
    reason: words('reason'),
    date: date('day'),
    rests: words('fingerprint', {
      says: 'What the finding rested on; copied from the finding. When it changes, this lapses and the finding counts again.',
    }),
  }),
  'The name is that of the rule with `@` and what it is about, without commas. An acceptance of the same finding that holds goes first',
)
