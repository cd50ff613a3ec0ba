import { type RuleSet, rowsFrom } from './requirement.ts'

const fmvss305 = rowsFrom({ work: 'us-fmvss-305', read: 'from memory' })
const questions = rowsFrom({ work: 'us-arb-questions', read: 'S' })
const guidance = rowsFrom({ work: 'us-arb-guidance', via: ['us-arb-questions'], date: '2013-12; undated', read: 'S' })
const virginia = rowsFrom({ work: 'us-va-code', read: 'T' })
const register = rowsFrom({ work: 'us-users-register', read: 'Q' })

/** United States: no federal approval of a used car's conversion; states as variants, only those read. */
export const us: RuleSet = {
  id: 'us',
  name: 'United States',
  note: 'Safety standards bind makers of new vehicles. Of 49 CFR 571.305 and 305a nothing below S3 was open, nor the law of other states.',
  rows: [
    rowsFrom({ work: 'us-30122', date: '2024-12', read: 'T' })(
      'route.make-inoperative',
      'must-not',
      'knowingly disable a device or element fitted to meet a safety standard',
      '',
      {
        for: 'manufacturer, distributor, dealer, rental company, repair business; not an owner on the own car',
        clause: '(a), (b)',
        remark: 'repair business: anyone who repairs for pay',
      },
    ),
    rowsFrom({ work: 'us-letter-4956', read: 'S' })('route.allowed', 'fact', 'no federal approval; makers certify themselves', '', {
      via: ['us-letter-1993'],
      date: '1993 and before',
      remark: 'what applies to a conversion depends on whether the car is new or used',
    }),
    fmvss305('post-crash.scope', 'fact', 'working voltage above 60 V DC or 30 V AC, gross rating up to 4536 kg, speed above 40 km/h', '', {
      for: 'new vehicles',
      clause: 'S3',
      date: 'until replaced',
      read: 'T',
    }),
    fmvss305('post-crash.isolation.ac', 'min', 500, 'Ω/V', { for: 'new vehicles', clause: 'S5.3' }),
    fmvss305('post-crash.isolation.dc', 'min', '100 with monitor, else 500', 'Ω/V', {
      for: 'new vehicles',
      clause: 'S5.3',
      remark: 'disputed: the text of 2017 may not ask for the monitor',
    }),
    rowsFrom({ work: 'us-fmvss-305a', read: 'T' })('law.as-of', 'fact', 'FMVSS 305a takes the place of 305', '', {
      for: 'new vehicles',
      date: '2025-02',
      remark:
        'in force 20 March 2025, put off from 18 February; compliance 1 September 2027 up to 4536 kg, 1 September 2028 above; emergency documents (Part 561) 22 December 2025',
    }),
    fmvss305('avas.duty', 'fact', 'FMVSS 141 binds makers of new cars', '', { work: 'us-fmvss-141' }),
    fmvss305('charge.site', 'fact', 'NEC Article 625', '', { work: 'us-nfpa-70', for: 'building side' }),

    // states
    guidance(
      'route.allowed@ca',
      'fact',
      'any car registered in California, or fit for registration in the country, to full electric drive',
      '',
      {
        for: 'CA, own use',
      },
    ),
    guidance('engine.removed@ca', 'must', 'engine and every fuel component out before the inspection', '', { for: 'CA' }),
    questions('proof.own-power@ca', 'must', true, '', { for: 'CA, on the way to the inspection' }),
    questions('proof.capacity@ca', 'must', 'battery plainly large enough for all-electric driving', '', {
      for: 'CA',
      remark: 'unsafe, poorly built or underpowered cars may be refused',
    }),
    questions('sign.technical@ca', 'who', 'smog check referee, on the statement of facts of the registration office', '', { for: 'CA' }),
    questions('register.benefit@ca', 'fact', 'no carpool-lane or other incentive; periodic smog inspection ends', '', { for: 'CA' }),
    questions('donor.excluded@ca', 'must-not', 'direct import without its own compliance testing', '', { for: 'CA' }),
    virginia(
      'inspect.items@va',
      'list',
      ['engine out', 'tank out and not replaced', 'traction pack apart from 12 V', 'motor drives the wheels'],
      '',
      { for: 'VA, first new title' },
    ),
    virginia('fee@va', 'max', 40, '$', { for: 'VA, fee of the inspector' }),
    register('register.notify@ar', 'max', 10, 'days', { for: 'AR', remark: 'fine of up to 250 $' }),
    register('leakage.voltage@ct', 'max', 12, 'V', { for: 'CT, pole of the inverter to chassis', remark: 'figure of one inspector' }),
  ],
}
