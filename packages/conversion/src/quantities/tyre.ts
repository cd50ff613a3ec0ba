import { type Fault, fault, type Problem } from './quantity.ts'
import { LOAD_RANGE, loadOf, SPEED_SYMBOLS, speedOf } from './tyre-service.ts'

/** What a tyre's marking says. */
export type TyreMarking = {
  /** Nominal section width [m]. */
  readonly width: number
  /** Section height over width. */
  readonly aspect: number
  /** Rim diameter [m]. */
  readonly rim: number
  readonly construction: 'radial' | 'bias'
  /** Unloaded diameter [m]: rim and twice the section height; of a flotation size as marked. */
  readonly diameter: number
  readonly loadIndex?: number
  /** Load one tyre, fitted singly, may carry [kg]. */
  readonly loadKg?: number
  readonly speedSymbol?: string
  /** Speed of the symbol [m/s]. A bare ZR or an old VR says no upper speed. */
  readonly maxSpeed?: number
  /** P passenger, LT light truck, T temporary spare, C commercial. */
  readonly use?: 'P' | 'LT' | 'T' | 'C'
  /** Extra load (XL, RF, reinforced). */
  readonly reinforced?: true
  readonly text: string
  /** What rests on memory or habit, each a sentence; empty when all is from checked tables. */
  readonly marks: readonly string[]
}

type Size = Pick<TyreMarking, 'width' | 'aspect' | 'rim' | 'diameter'> & {
  readonly built: string
  readonly before: string
  readonly use: string
  readonly tail: string
  readonly marks: readonly string[]
}

const ACCEPTED = 'a size such as 185/60 R14 82H, 31x10.50 R15 109Q or 165 R13 82S'
const LONGEST = 60
const INCH = 0.0254
const METRIC = /^(P|LT|T)? ?(\d{3}) ?\/ ?(\d{2,3}) ?([A-Z]?)([RDB-]) ?(\d{2,3}(?:\.5)?) ?(C|LT)?(?=[ (]|$)/
const FLOTATION = /^(\d{2}(?:\.\d{1,2})?) ?X ?(\d{1,2}(?:\.\d{1,2})?) ?([RDB-]) ?(\d{2}(?:\.5)?) ?(LT)?(?=[ (]|$)/
const NO_ASPECT = /^(\d{3}) ?([A-Z]?)([RDB-]) ?(\d{2}) ?(C)?(?=[ (]|$)/
const INCHES = /^\d{1,2}\.\d{1,2} ?(?:R|-|\/| ) ?\d{2}/
const SERVICE = /^\(?(\d{2,3})(?:\/\d{2,3})? ?([A-Z])?\)?(?= |$)/
const EXTRAS = /^(?:XL|RF|REINF|REINFORCED|EXTRA LOAD|SL|TL|TT|M\+S|M&S|C|LT|\d{1,2}PR)(?= |$)/
/** Section height in % of the width, of a radial marked without it, by old habit. */
const OLD_ASPECT = 82
const OLD_MARK = 'aspect 0.82 for a radial marked without one (from memory; 0.80 is also met, 1 % less diameter): measure the tyre'

/**
 * Reads a tyre's marking: metric `185/60 R14 82H`, `P205/55ZR16 91W XL`, `LT245/75 R16 120/116S`; flotation `31x10.50 R15 109Q`; the old
 * metric `165 R13 82S`. Never throws; every fault comes back as a problem.
 *
 * D = d + 2·w·a, with rim codes below 100 in inches and from 100 in millimetres (ETRTO Standards Manual and UN Regulation No. 30, from memory).
 */
export function readTyre(
  text: string,
): { readonly ok: true; readonly tyre: TyreMarking } | { readonly ok: false; readonly problem: Problem } {
  const read = understood(text)
  if (read.ok) return read
  const { found, why, nearest } = read
  return { ok: false, problem: { found, accepted: read.accepted ?? ACCEPTED, ...(nearest === undefined ? {} : { nearest }), why } }
}

function understood(text: string): { readonly ok: true; readonly tyre: TyreMarking } | Fault {
  if (text.length > LONGEST) return fault(`${text.slice(0, 40)}…`, `a tyre marking is shorter than ${LONGEST} characters`)
  const typed = text
    .normalize('NFKC')
    .trim()
    .toUpperCase()
    .replace(/\s+/g, ' ')
    .replaceAll('×', 'X')
    .replaceAll('–', '-')
    .replace(/(\d),(?=\d)/g, '$1.')
  const size = metric(typed) ?? flotation(typed) ?? withoutAspect(typed) ?? unreadable(text, typed)
  if ('ok' in size) return size
  if (size.built === 'B') return fault(text, 'a bias-belted tyre (B) is not covered here; radial (R) and cross-ply (D or -) are')
  const service = serviceOf(text, size)
  if ('ok' in service) return service
  const { width, aspect, rim, diameter } = size
  return { ok: true, tyre: { width, aspect, rim, diameter, construction: size.built === 'R' ? 'radial' : 'bias', ...service, text } }
}

function metric(typed: string): Size | Fault | undefined {
  const m = METRIC.exec(typed)
  if (!m) return undefined
  const [all, prefix = '', width = '', aspect = '', before = '', built = '', rim = '', use = ''] = m
  const fits = plausible(typed, Number(width), Number(aspect), Number(rim))
  return (
    fits ??
    sized(Number(width), Number(aspect), Number(rim), {
      built,
      before,
      use: prefix || use,
      tail: typed.slice(all.length).trim(),
      marks: [],
    })
  )
}

function withoutAspect(typed: string): Size | Fault | undefined {
  const m = NO_ASPECT.exec(typed)
  if (!m) return undefined
  const [all, width = '', before = '', built = '', rim = '', use = ''] = m
  if (built !== 'R')
    return fault(
      typed,
      'a cross-ply tyre marked without an aspect ratio has no diameter by rule; give the metric size of the tyre that replaces it',
    )
  const fits = plausible(typed, Number(width), OLD_ASPECT, Number(rim))
  return (
    fits ?? sized(Number(width), OLD_ASPECT, Number(rim), { built, before, use, tail: typed.slice(all.length).trim(), marks: [OLD_MARK] })
  )
}

function flotation(typed: string): Size | Fault | undefined {
  const m = FLOTATION.exec(typed)
  if (!m) return undefined
  const [all, outer = '', across = '', built = '', code = '', use = ''] = m
  const diameter = Number(outer) * INCH,
    width = Number(across) * INCH,
    rim = Number(code) * INCH
  if (diameter <= rim || width === 0 || rim === 0)
    return fault(typed, 'the tyre has to be larger than its rim: outer diameter, width, then rim, in inches')
  return {
    width,
    rim,
    diameter,
    aspect: (diameter - rim) / 2 / width,
    built,
    before: '',
    use,
    tail: typed.slice(all.length).trim(),
    marks: [],
  }
}

type Rest = Pick<Size, 'built' | 'before' | 'use' | 'tail' | 'marks'>
function sized(widthMm: number, aspectPercent: number, code: number, rest: Rest): Size {
  // In tenths of a millimetre all of this is whole, so no rounding shows.
  const rim = code < 100 ? code * 254 : code * 10
  const diameter = (rim + (widthMm * aspectPercent) / 5) / 10_000
  return { width: widthMm / 1000, aspect: aspectPercent / 100, rim: rim / 10_000, diameter, ...rest }
}

function plausible(typed: string, width: number, aspect: number, rim: number): Fault | undefined {
  if (width % 5 !== 0 || width < 105 || width > 405)
    return fault(typed, `${width} mm is no section width; they go in steps of five from 105 to 405`)
  if (aspect < 25 || aspect > 100) return fault(typed, `${aspect} % is no aspect ratio of a car tyre; 25 to 100 are`)
  if (rim < 10 || (rim > 26 && rim < 315) || rim > 415) return fault(typed, `${rim} is no rim diameter; 10 to 26 in, or 315 to 415 mm, are`)
  return undefined
}

/** Load index, speed symbol and what else may follow the size, in any order. */
function serviceOf(
  text: string,
  { tail, before, use, marks }: Size,
): (Omit<TyreMarking, keyof Size | 'construction' | 'text'> & Pick<Size, 'marks'>) | Fault {
  const words: string[] = []
  let rest = tail,
    index: number | undefined,
    symbol = before !== '' && 'SH'.includes(before) ? before : undefined
  if (before !== '' && !'SHVZ'.includes(before)) return fault(text, `'${before}R' is not a marking known here; R, SR, HR, VR and ZR are`)
  while (rest !== '') {
    const extra = EXTRAS.exec(rest),
      service: RegExpExecArray | null = extra || index !== undefined ? null : SERVICE.exec(rest)
    if (!extra && !service) return fault(rest, 'after the size stand load index and speed symbol, such as 82H, then XL, C, LT or M+S')
    if (extra) words.push(extra[0])
    if (service) {
      index = Number(service[1])
      if (symbol !== undefined && service[2] !== undefined && service[2] !== symbol)
        return fault(text, `${symbol}R and ${service[2]} name two speeds`)
      symbol = service[2] ?? symbol
    }
    rest = rest.slice((extra ?? service)?.[0].length).trim()
  }
  const load = index === undefined ? undefined : loadOf(index),
    speed = symbol === undefined ? undefined : speedOf(symbol)
  if (index !== undefined && !load)
    return { ...fault(String(index), `load index ${index} is not in the table held here`), accepted: `load indices ${LOAD_RANGE}` }
  if (symbol !== undefined && !speed)
    return { ...fault(symbol, `speed symbol ${symbol} is not in the table held here`), accepted: SPEED_SYMBOLS }
  const kind = (use || words.find(w => w === 'C' || w === 'LT')) as TyreMarking['use'] | '' | undefined
  return {
    ...(index === undefined || !load ? {} : { loadIndex: index, loadKg: load.value }),
    ...(symbol === undefined || !speed ? {} : { speedSymbol: symbol, maxSpeed: speed.value }),
    ...(kind ? { use: kind } : {}),
    ...(words.some(w => /^(?:XL|RF|REINF|EXTRA)/.test(w)) ? { reinforced: true as const } : {}),
    marks: [...marks, ...[load?.mark, speed?.mark].filter(mark => mark !== undefined)],
  }
}

function unreadable(text: string, typed: string): Fault {
  if (INCHES.test(typed))
    return fault(text, 'an inch size without an aspect ratio has no diameter by rule; give the metric size of the tyre that replaces it')
  const loose = /^(?:P|LT)? ?(\d{3})\D{1,3}(\d{2})\D{1,3}(\d{2})(?!\d)/.exec(typed)
  const instead = loose ? `${loose[1]}/${loose[2]} R${loose[3]}` : undefined
  return fault(text, 'this is not a tyre marking that can be read here', instead)
}
