/** A stage of the job that comes later: what it will ask, and where what is known of it stands until then. */
export type Later = { readonly slug: string; readonly title: string; readonly asks: readonly string[]; readonly until: string }

export const LATER: readonly Later[] = [
  {
    slug: 'signals',
    title: 'Signals',
    asks: [
      'What runs on 12 V, with which fuse and wire?',
      'What do ignition key, pedals and selector ask of the VCU?',
      'Who speaks on the CAN bus, and what happens when somebody falls silent?',
    ],
    until: 'Pack asks what the BMS watches and what it may stop.',
  },
  {
    slug: 'thermal',
    title: 'Thermal',
    asks: [
      'How is the motor, inverter, charger and pack cooled: flow, radiator, pump?',
      'How is the cabin warmed and the windscreen cleared?',
      'How warm does the pack get on a hot day, and how cold overnight?',
    ],
    until: 'Drive tells the heat of the motor as one winding; trips take the power of the cabin you state.',
  },
  {
    slug: 'driveline',
    title: 'Driveline',
    asks: [
      'How are motor and gearbox joined, centred and mounted?',
      'What do coupler, shafts, joints and axle have to carry?',
      'What are the battery boxes made of, and what bears them?',
    ],
    until: 'Drive and Donor judge torque against the ratings of coupler, gearbox and axle.',
  },
  {
    slug: 'build',
    title: 'Build',
    asks: [
      'Which tasks are there, in which order, and what only after what?',
      'How many hours, who may do it, and what must be proven dead before?',
      'Which parts have to be there by when?',
    ],
    until: 'The survey sheet says what to measure, and by when.',
  },
  {
    slug: 'prove',
    title: 'Prove',
    asks: [
      'Which test, with what, and which reading is to be expected?',
      'Where does work stop until somebody has looked?',
      'What was read, by whom, and does it bear out what was worked out?',
    ],
    until: 'Coast-down and Salvaged modules take what was measured on road and bench.',
  },
  {
    slug: 'papers',
    title: 'Papers',
    asks: [
      'What does the inspector want to see, and the insurer?',
      'What must a rescuer know before cutting?',
      'What does the next owner get?',
    ],
    until: 'The enquiry letter asks inspector and insurer before the first part is bought.',
  },
  {
    slug: 'service',
    title: 'Service',
    asks: [
      'What is looked at every year, and which reading calls for work?',
      'What does a fault mean, and what may be touched?',
      'What has changed since the car was approved?',
    ],
    until: 'Revisions keep every change of the conversion.',
  },
]
