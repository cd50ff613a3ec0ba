/** A published work, or a document a row was read in; `how` says what of it was open. */
export type Work = { readonly title: string; readonly date?: string; readonly how: string }

const table = {
  // United Nations, European Union
  'un-r100': { title: 'UN Regulation No. 100, 03 series', date: '2021-06-09', how: 'clause digest with scanned tables' },
  'un-r100-02': { title: 'UN Regulation No. 100, 02 series', how: 'edge distances of the crush test; inlet clause in the Indian draft' },
  'ais-038-draft': {
    title: 'Draft Indian standard AIS-038, electric power train safety',
    date: '2019-09',
    how: 'clauses 5.1.1.5 to 5.1.3',
  },
  'un-r10': { title: 'UN Regulation No. 10, electromagnetic compatibility', how: 'title, as called by national law' },
  'un-r13h': {
    title: 'UN Regulations No. 13 and No. 13-H, braking',
    date: '2025-06-12',
    how: 'title and contents of No. 13-H, Official Journal L 2026/502, 02 series in force 12 June 2025',
  },
  'grva-2022-10': { title: 'Amendment record of UN R13-H, GRVA/2022/10, WP.29/2022/79', date: '2022', how: 'topic only, no figures' },
  'un-r39': { title: 'UN Regulation No. 39, speedometer', how: 'title, as called by national law' },
  'un-r79': { title: 'UN Regulation No. 79, steering', how: 'title, as called by national law' },
  'un-r85': { title: 'UN Regulation No. 85, engine and motor power', how: 'title, as called by national law' },
  'eu-540-2014': { title: 'Regulation (EU) No 540/2014, sound of motor vehicles', date: 'consolidated', how: 'Art. 3(22) and 8' },
  'eu-1230-2012': { title: 'Regulation (EU) No 1230/2012, masses and dimensions; now (EU) 2021/535', how: 'not open' },

  // Germany
  stvzo: { title: 'StVZO 2012, with the ordinance of 25 June 2021', date: '2022-03', how: 'clauses named' },
  'fzv-2011': { title: 'FZV 2011', date: '2022-03', how: 'clauses named; replaced on 1 September 2023 (from memory)' },
  'eg-fgv': { title: 'EG-FGV 2011', date: '2022-03', how: 'clauses named' },
  emog: { title: 'Electric mobility act, EmoG', date: '2022-03', how: '§2' },
  'merkblatt-764': { title: 'VdTÜV Merkblatt 764, conversion to electric drive', date: '2012-02', how: 'not open' },
  'de-builder-list': { title: 'Points of Merkblatt 764 on the page of a conversion builder', how: 'list' },
  'de-association-page': { title: 'Page of the inspection bodies’ association on Merkblatt 764', how: 'opening' },
  'de-radio-2014': { title: 'Radio feature on a single inspection', date: '2014-08-08', how: 'page' },

  // France
  'fr-order-2020': {
    title: 'Order of 13 March 2020, NOR TRER2007140A, JORF 3 April 2020',
    date: '2020-04-03',
    how: 'Art. 3 and 4, openings of Annexes I to III, as first published',
  },
  'fr-order-2023': {
    title: 'Order of 12 September 2023, NOR TRER2323790A, JORF 24 October 2023',
    date: '2023-10-24',
    how: 'notice; the new points 4, 5 and 8 of Annex III not open',
  },
  'fr-question-15951': { title: 'Written question 15951, National Assembly, 16th legislature', date: '2023', how: 'text' },
  'fr-abstract-2020': { title: 'Face au risque, abstract of the order', date: '2020-04', how: 'text' },
  'fr-press-2020': { title: 'Motoring and technology press on the order', date: '2020-04', how: 'reports quoting the power band' },
  'fr-technical-summary': { title: 'Technical summary of the order', how: 'text' },
  'fr-converter-note': { title: 'Note of a converter on the order of 2023', date: '2023-10', how: 'text' },
  'fr-transport-press': { title: 'Actu Transport Logistique on the order', how: 'text' },
  'fr-code-route': { title: 'Code de la route, state of 31 March 2026', date: '2026-03-31', how: 'articles named' },

  // Belgium
  'be-decree-1968': {
    title: 'Royal decree of 15 March 1968, Art. 77bis (royal decree of 19 April 2023, Moniteur belge 22 May 2023)',
    date: '2023-05-22',
    how: 'opening of Art. 77bis',
  },
  'be-notification': { title: 'Notification 2023/0487/BE, Flemish rules', date: '2023-08', how: 'text' },
  'be-summaries': { title: 'Legal publisher’s summaries of Art. 77bis', date: '2023-05', how: 'text' },
  'be-press-2023': { title: 'News agency report in the daily press', date: '2023-05-20', how: 'text' },

  // Italy
  'it-dm-141': {
    title: 'Ministerial decree of 26 July 2022 no. 141, Gazzetta Ufficiale 217',
    date: '2022-09-16',
    how: 'consolidated, Art. 1 to 10 and Annexes D, E; Art. 3(2) missing from the copy, forms are pictures',
  },
  'it-craft-notes': { title: 'Notes of a craft association on the decree', how: 'text' },
  'it-highway-code': { title: 'Highway code, Art. 78', date: '2022-09', how: 'as printed in the notes to the decree' },

  // Spain
  'es-rd-866': { title: 'Royal decree 866/2010, BOE-A-2010-11154', date: '2010-07', how: 'articles named' },
  'es-trade-blog': { title: 'Trade blog on approval', date: '2026-01-14', how: 'text' },

  // Netherlands
  'nl-regeling': { title: 'Regeling voertuigen, BWBR0025798', date: '2012-12-31', how: 'Art. 6.1 to 6.8' },
  'nl-rdw': { title: 'RDW, safety requirements for electric vehicles', how: 'page' },
  'nl-association': { title: 'Trade association notice on the postponed rules', date: '2023-12', how: 'text' },

  // Switzerland
  'ch-vts': { title: 'VTS, SR 741.41, as of 1 January 2026', date: '2026-01-01', how: 'articles named; Annexes 7 and 12 not open' },
  'ch-nev': { title: 'NEV, SR 734.26', date: '2023-01', how: 'Art. 1' },
  'ch-canton': { title: 'Canton Basel-Landschaft, conversion to electric vehicle', how: 'opening' },
  'ch-astra-2020': { title: 'ASTRA, explanations on electrical safety and EMC', date: '2020-06-01', how: 'opening' },

  // Great Britain, Ireland
  'gb-radical': {
    title: 'Government page on radically altered vehicles, archived',
    date: 'archived',
    how: 'text; its table of values is lost',
  },
  'gb-rebuilt': { title: 'Government page on rebuilt vehicles, archived', date: 'archived', how: 'text' },
  'gb-association-letters': { title: 'Enthusiasts’ association, letters with the licensing and testing agencies', how: 'text' },
  'gb-owner-letter': { title: 'Open letter of an owner', date: '2022-08-28', how: 'text' },
  'gb-call-press': { title: 'Press on the call for evidence on modified and electric classics', date: '2024-05', how: 'text' },
  'gb-certificate-press': { title: 'Press on the registration certificate', how: 'text' },
  'gb-vhi': { title: 'Guidance on vehicles of historic interest', date: '2018', how: 'text of the draft' },
  'gb-iva': { title: 'IVA inspection manuals M1, N1', date: '2020-10', how: 'contents pages' },
  'gb-campaign-letter': { title: 'Campaign letter on the tax of converted cars', date: '2023-05', how: 'press report' },
  'gb-mot': { title: 'Annual test (MOT)', how: 'not open' },
  'ie-finance-act': { title: 'Finance Act 1992, section 130', how: 'as quoted' },
  'ie-explainer': { title: 'Explainer of the registration tax', how: 'text' },
  'ie-revenue': { title: 'Revenue, guide to the registration tax, conversions', how: 'text' },
  'ie-councils': { title: 'County councils of Mayo and Meath, conversion of vehicles', how: 'pages' },
  'ie-press': { title: 'Motoring column of a national newspaper', how: 'text' },
  'ie-nct': { title: 'Car test (NCT)', how: 'not open' },

  // Australia, New Zealand
  'au-vsb14': { title: 'VSB 14, national code for light vehicle modification', how: 'preface; the codes only in a wiki summary' },
  'au-wiki': { title: 'Summary of VSB 14 in a wiki of converters', how: 'text' },
  'au-ncop14': { title: 'NCOP14, guideline for electric drives', how: 'not open' },
  'au-parts-summary': { title: 'Summary of NCOP13 and NCOP14 by a parts firm', how: 'text' },
  'au-leakage-article': { title: 'Article on earth leakage of a converted car', how: 'quotes NCOP14' },
  'au-inverter-manuals': { title: 'Inverter manuals', how: 'quote NCOP14' },
  'au-vsi8': { title: 'VicRoads VSI 8', date: '2021-06-08', how: 'opening' },
  'au-qld-persons': { title: 'Queensland business rules for an approved person, v4.0', date: '2015-09-01', how: 'opening' },
  'au-tas-2024': { title: 'Tasmanian vehicle standards regulations 2024, r. 134', date: '2024', how: 'text' },
  'au-vic-2021': { title: 'Victorian Road Safety (Vehicles) Regulations 2021, s. 144B', date: '2021', how: 'text' },
  'au-nsw-page': { title: 'New South Wales, warning and safety labels', how: 'page' },
  'au-dealer-notice': { title: 'Dealer association, new EV testing category', date: '2026', how: 'text' },
  'nz-rule-35001': { title: 'Rule 35001/1, vehicle standards compliance 2002', how: 'as named by the LVV Code' },
  'nz-lvv-code': { title: 'LVV Code, issue 12', date: '2018-10-01', how: 'opening' },
  'nz-virm-inservice': { title: 'NZTA VIRM in-service, 13-5', how: 'text' },
  'nz-virm-entry': { title: 'NZTA VIRM entry certification, 1-6 and technical bulletin 1', date: '2024', how: 'text' },
  'nz-lvv-75': { title: 'LVV Standard 75-00(01), electric and hybrid vehicles', date: '2013-07', how: 'title pages; no technical clause' },
  'nz-lvv-index': { title: 'LVVTA index of standards', date: '2016', how: 'opening' },

  // North America
  'us-30122': { title: '49 USC 30122', date: '2024-12', how: 'text' },
  'us-letter-4956': { title: 'NHTSA interpretation letter aiam4956', how: 'text' },
  'us-letter-1993': { title: 'NHTSA interpretation letter nht93-3.10', date: '1993-04-21', how: 'text' },
  'us-fmvss-305': { title: '49 CFR 571.305', how: 'S3 in a reprint' },
  'us-fmvss-305a': { title: 'FMVSS 305a, 89 FR 104318 and 90 FR 9609', date: '2025-02-14', how: 'Federal Register notices' },
  'us-fmvss-141': { title: '49 CFR 571.141', how: 'not open' },
  'us-nfpa-70': { title: 'NFPA 70, National Electrical Code', how: 'not open' },
  'us-arb-guidance': { title: 'ARB, conversions by individuals', date: '2013-12-20', how: 'text' },
  'us-arb-questions': { title: 'ARB, questions and answers on qualifying vehicles', how: 'text' },
  'us-va-code': { title: 'Code of Virginia, § 46.2-602.3', how: 'text' },
  'us-users-register': { title: 'Users’ register of state rules', how: 'text' },
  'ca-mvsa': { title: 'Motor Vehicle Safety Act', how: 'not open' },
  'ca-email-2010': { title: 'E-mail of an electric mobility association, twice reprinted', date: '2010-06-07', how: 'reprint' },
  'qc-saaq-fr': { title: 'SAAQ, véhicule modifié', how: 'page' },
  'qc-saaq': { title: 'SAAQ, modified vehicles', how: 'page' },
  'qc-safety-code': { title: 'Highway Safety Code, s. 214', how: 'text' },
  'qc-press': { title: 'Guide de l’auto, article 70679', how: 'text' },
  'qc-builder': { title: 'Report of a builder', date: '2011-09-21', how: 'list' },
  'qc-newspaper': { title: 'Daily newspaper on the cost of approval', date: '2021-09-14', how: 'text' },

  // Japan, India, South Africa
  'jp-annex-4': { title: 'Examination rules, annex 4, modified cars', how: 'reprints; its table of parts not open' },
  'jp-naltec': { title: 'NALTEC, questions and answers on modified cars', how: 'page' },
  'jp-kanto': { title: 'Kanto transport bureau, points to watch', date: '2010-09-29', how: 'as reported by the motor press' },
  'jp-forms': { title: 'Forms 3 and 4, light motor vehicle inspection organisation', how: 'text' },
  'jp-form-2-guide': { title: 'Guide of a filing office to form 2', how: 'text' },
  'jp-guideline-items': { title: 'Industry guideline, draft items', date: '2010-12-17', how: 'newspaper report' },
  'jp-guideline': { title: 'Industry guideline for conversions', date: '2011-04-27', how: 'press summary' },
  'jp-guideline-2020': { title: 'Industry guideline for conversions, revision', date: '2020-06-03', how: 'press report' },
  'in-gsr-167': { title: 'Notification GSR 167(E)', date: '2019-03-01', how: 'quoted in ACMA circular 2018-19/182' },
  'in-agency': { title: 'Overview by a test agency', how: 'reprint' },
  'in-gsr-629': { title: 'Notification GSR 629(E), hybrid kits', date: '2016-06-24', how: 'press on the rules' },
  'in-ais-123': { title: 'AIS-123 part 3, amendment 2', date: '2018-09-08', how: 'scan of the amendment; main text not open' },
  'za-nrtr': { title: 'National Road Traffic Regulations 2000', how: 'r. 9' },
  'za-camper-report': { title: 'Report on a camper conversion', date: '2022-03', how: 'text' },

  'common-practice': { title: 'Common practice of conversion workshops', how: 'no published text' },
} as const satisfies Record<string, Work>

/** Short name of a work, as rows cite it. */
export type WorkId = keyof typeof table

/** Every work the rule sets cite, once. */
export const WORKS: Readonly<Record<WorkId, Work>> = table
