import { continuousDraw } from '../../studies/pack/continuous-draw.ts'
import { launchSag } from '../../studies/pack/launch-sag.ts'
import { packModel } from '../../studies/pack/pack-model.ts'
import { isGaps } from '../../studies/study.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { open, PRACTICE } from './answers.ts'

export const peakCurrent = rule({
  id: 'pack-peak-current',
  title: 'The drive cannot draw more than the cells give at their peak',
  stage: 'pack',
  harm: 'S2',
  hazards: [],
  source: PRACTICE,
  judgements: (m, ask) => {
    const about = ['pack.limits.bms', 'pack.bms.limits-drive', 'pack.module.peak-current', 'drive.units'],
      p = ask(packModel)
    if (isGaps(p)) return [open(about, p)]
    const { limits, bms } = m.pack,
      without = !isGap(bms.fitted) && bms.fitted.value === 'no',
      held = !without && !isGap(limits.bms) && !isGap(bms.limitsDrive) && bms.limitsDrive.value !== 'no'
    const set = {
      do: 'set' as const,
      says: 'Set the discharge limit of the BMS to what the cells give.',
      sets: [{ path: 'pack.limits.bms', to: { value: p.peakCurrent.value, kind: 'current' as const } }],
    }
    if (held)
      return [
        {
          about,
          found: limits.bms,
          side: 'at most',
          limit: p.peakCurrent,
          says: 'The BMS lets the drive draw {found}; the cells give {limit} at their peak.',
          remedies: [set],
        },
      ]
    const sag = ask(launchSag)
    if (isGaps(sag)) return [open(about, sag)]
    return [
      {
        about,
        found: sag.wanted,
        side: 'at most',
        limit: p.peakCurrent,
        says: 'Nothing holds the inverters back: together they draw up to {found}; the cells give {limit} at their peak.',
        remedies: [set],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.limits.bms', now: '500 A' }] },
})

export const continuousCurrent = rule({
  id: 'pack-continuous-current',
  title: 'Cells, fuse and contactor carry what the motors draw continuously',
  stage: 'pack',
  harm: 'S2',
  hazards: [],
  source: PRACTICE,
  judgements: (m, ask) => {
    const draw = ask(continuousDraw),
      p = ask(packModel),
      { fuse, contactor } = m.pack.limits
    const items = [
      [
        'cells',
        isGaps(p) ? p : p.continuousCurrent,
        'pack.module.continuous-current',
        'More modules side by side, cells with a higher continuous current, or a motor limited to what the cells give.',
      ],
      ['fuse', fuse, 'pack.limits.fuse', 'A larger fuse, as far as cable and contactor allow.'],
      ['contactor', contactor, 'pack.limits.contactor', 'A contactor for more continuous current.'],
    ] as const
    return items.map(([item, limit, path, says]): Judgement => {
      const about = [path, 'drive.units']
      if (isGaps(draw)) return open(about, draw, item)
      return {
        item,
        about,
        found: draw.held,
        side: 'at most',
        limit,
        says:
          draw.held.value < draw.current.value
            ? 'The BMS lets the motors draw {found} for ever; {item}: {limit}.'
            : 'At their continuous rating the motors draw {found}; {item}: {limit}.',
        remedies: [{ do: 'act', says }],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.limits.contactor', now: '120 A' }], item: 'contactor' },
})

/** From the peak of the cells up nothing but the fuse is left: whatever it is rated for it carries for hours. Cable and contactor are judged apart. */
export const fuseGuardsCells = rule({
  id: 'main-fuse-guards-cells',
  title: 'The main fuse blows before cells and links are overloaded',
  stage: 'pack',
  harm: 'S3',
  hazards: [],
  source: PRACTICE,
  caution: 'A fuse that is too large lets a short heat cells, links and cables until one of them burns.',
  judgements: (m, ask) => {
    const p = ask(packModel),
      about = ['pack.limits.fuse', 'pack.module.peak-current', 'pack.strings']
    if (isGaps(p)) return [open(about, p)]
    return [
      {
        about,
        found: m.pack.limits.fuse,
        side: 'at most',
        limit: p.peakCurrent,
        says: 'The main fuse carries {found} for hours; the cells give {limit} for a short time only.',
        remedies: [
          {
            do: 'set',
            says: 'The largest fuse that still guards the cells. Better is the smallest that carries what the motors draw continuously.',
            sets: [{ path: 'pack.limits.fuse', to: { value: p.peakCurrent.value, kind: 'current' } }],
          },
        ],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.limits.fuse', now: '1000 A' }] },
})

export const chargingCurrent = rule({
  id: 'pack-charging-current',
  title: 'Nothing charges the cells faster than they allow',
  stage: 'pack',
  harm: 'S2',
  hazards: [],
  source: PRACTICE,
  judgements: (m, ask) => {
    const p = ask(packModel),
      { charger } = m.charging,
      { bmsCharge } = m.pack.limits
    const about = ['pack.module.charge-current']
    const judged = (item: string, path: string, found: typeof bmsCharge, says: string): Judgement => {
      if (isGaps(p)) return open([...about, path], p, item)
      return {
        item,
        about: [...about, path],
        found,
        side: 'at most',
        limit: p.chargeCurrent,
        says,
        remedies: [
          {
            do: 'set',
            says: 'Set the limit to what the cells take.',
            sets: [{ path, to: { value: p.chargeCurrent.value, kind: 'current' } }],
          },
        ],
      }
    }
    return [
      judged(
        'BMS',
        'pack.limits.bms-charge',
        bmsCharge,
        'The BMS lets {found} into the pack, regeneration included; the cells take {limit} when warm.',
      ),
      ...(charger.given
        ? [
            judged(
              'charger',
              'charging.charger.current',
              charger.current,
              'The charger gives up to {found}; the cells take {limit} when warm.',
            ),
          ]
        : doesNotApply('no charger is planned yet', about)),
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.limits.bms-charge', now: '200 A' }], item: 'BMS' },
})

export const peakLastsOut = rule({
  id: 'pack-peak-lasts',
  title: 'The cells give their peak for as long as the motors take theirs',
  stage: 'pack',
  harm: 'S1',
  hazards: [],
  source: PRACTICE,
  judgements: m => {
    const units = Object.entries(m.drive.units)
    if (units.length === 0) return doesNotApply('no drive unit yet', ['drive.units'])
    return units.map(
      ([item, u]): Judgement => ({
        item,
        about: ['pack.module.peak-time', `drive.units.${item}.motor.peak-time`],
        found: m.pack.module.peakTime,
        side: 'at least',
        limit: u.motor.peakTime,
        says: 'The cells give their peak current for {found}, the motor {item} its peak torque for {limit}.',
        remedies: [{ do: 'act', says: 'Count on the shorter time, or let the BMS fall back to the continuous current after it.' }],
      }),
    )
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.module.peak-time', now: '10 s' }], item: 'main' },
})
