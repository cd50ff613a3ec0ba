/** One note on the demo: what is wrong, why it matters, what to press to put it right. */
export type Note = {
  /** The page it stands on, by the last part of its address. */
  readonly page: string
  readonly title: string
  /** Ids of the findings it is about; it is done when none of them fails or is unanswered. */
  readonly findings: readonly string[]
  readonly wrong: string
  readonly matters: string
  readonly press: string
}

/** The car of the demo, and how its text says what is wrong with it: both together tell the demo from any other conversion. */
export const DEMO_CAR = 'Lapwing roadster'
const SAYS_SO = '# Wrong on purpose: held in 4th gear, rear axle overloaded'
export const isDemo = (text: string): boolean => text.includes(SAYS_SO) && text.includes(`car: ${DEMO_CAR}`)

/** The tour of the demo, in its order: numbers are places in this list. */
export const NOTES: readonly Note[] = [
  {
    page: 'brief',
    title: 'Two wishes that do not fit into one car yet',
    findings: ['goals-agree@weekend and two-up, rear axle'],
    wrong:
      'The brief asks for a weekend’s range and for two people with luggage. With the boxes where they are, the rear axle cannot carry both.',
    matters: 'A brief that no car can meet is found out on the weighbridge, when everything is bought.',
    press:
      'Open the underlined number of the finding under What stands in the way to see where it comes from. Change nothing here: the note on the pack puts it right.',
  },
  {
    page: 'donor',
    title: 'The brakes lost their assist',
    findings: ['brake-assist'],
    wrong: 'The vacuum came from the engine. The field “brake assist after” says none.',
    matters: 'Without assist the pedal is very hard: the car needs far more foot and far more road to stop.',
    press:
      'Under What stands in the way, at this finding: Preview beside the electric vacuum pump, read what it cures and worsens, then Take it.',
  },
  {
    page: 'donor',
    title: 'The steering lost its pump',
    findings: ['steering-assist'],
    wrong: 'The pump was driven by the engine that left, and nothing takes its place.',
    matters: 'Steering made for assist is heavy without it, most of all at a standstill and when the assist ends in a bend.',
    press: 'At this finding: Preview beside the electro-hydraulic pump, then Take it.',
  },
  {
    page: 'donor',
    title: 'Nobody has asked what the gearbox stands',
    findings: ['gearbox-torque@main'],
    wrong: 'The kept gearbox has no torque its input shaft is rated for, so the rule stays ◌ unanswered: nothing is guessed.',
    matters: 'An electric motor gives its full torque from standstill. A gearbox that is too weak strips its teeth.',
    press:
      'Under What you decide, gearbox: type the rating where it is asked for. For the tour 260 Nm (datasheet) will do; 200 Nm (datasheet) shows it failing. Undo takes either back.',
  },
  {
    page: 'drive',
    title: 'Held in fourth',
    findings: ['climb@pass-climb', 'acceleration@sprint', 'geared-too-tall@main sprint', 'geared-too-tall@main pass-climb'],
    wrong: 'The car keeps its gearbox and is held in fourth: the total ratio is too tall for this motor.',
    matters: 'The sprint is slower than the brief asks, and on the pass the windings get hotter than they may.',
    press:
      'Drag the ratio in the drawing, or under What stands in the way press Preview beside the gear that meets every goal, then Take it. One press puts all four findings right.',
  },
  {
    page: 'pack',
    title: 'The rear axle carries too much',
    findings: ['laden-masses@two-up, rear axle', 'seats-wanted'],
    wrong:
      'Ten of the sixteen modules sit at the tank and in the boot. With two aboard and their luggage the rear axle is over its rating.',
    matters: 'An overloaded axle breaks tyres, bearings and brakes, on the road and with people aboard.',
    press:
      'Under What you decide, boxes: type 1 for the modules of boot and 9 for those of front. All findings offers the same as one remedy to preview. The box drawn in front has room for nine.',
  },
  {
    page: 'fit',
    title: 'It hangs low behind',
    findings: ['stands-as-before'],
    wrong: 'The old springs carry the batteries: the rear sinks more than the front.',
    matters: 'The lamps blind whoever comes the other way, and the car steers and brakes unlike it did.',
    press: 'At this finding: Preview beside the springs that ride as before, then Take it. Moving modules to the front helps as well.',
  },
  {
    page: 'findings',
    title: 'A decision nobody has made',
    findings: ['no-charging-below-freezing'],
    wrong:
      'All findings stand here, what can hurt people first. This one is unanswered: nothing says below which temperature the BMS stops charging.',
    matters: 'Cells charged below freezing grow metallic lithium. It does not show, does not go away, and can short a cell months later.',
    press: 'At the rule “Nothing charges the cells below freezing”: Preview beside stopping two degrees above freezing, then Take it.',
  },
]

/** How a note stands against the findings as they are now: `open` until none of its findings fails or is unanswered. */
export type Stands = 'open' | 'done'
export function stands(note: Note, findings: readonly { readonly id: string; readonly outcome: string }[]): Stands {
  const open = findings.some(f => note.findings.includes(f.id) && (f.outcome === 'failing' || f.outcome === 'unanswered'))
  return open ? 'open' : 'done'
}

/** The page of the next open note after a page, round the list once; undefined where no other page has one. */
export function nextPage(page: string, open: (note: Note) => boolean): string | undefined {
  const last = NOTES.findLastIndex(n => n.page === page)
  return [...NOTES.slice(last + 1), ...NOTES.slice(0, last + 1)].find(n => n.page !== page && open(n))?.page
}
