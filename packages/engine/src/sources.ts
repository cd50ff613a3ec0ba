/**
 * Every standard, book and paper the engine rests on, once. A source names one of these works and the place in it.
 *
 * `read` says how the work was read: 'confirmed' (a published copy of the passage was seen), 'from memory' (known, not re-read),
 * 'derived' (elementary: follows from definitions, no work needed), 'practice' (habit of the trade, nothing published).
 */
export type Work = { readonly title: string; readonly read: 'confirmed' | 'from memory' | 'derived' | 'practice' }

export const WORKS = {
  statics: { title: 'Elementary statics and kinematics', read: 'derived' },
  circuits: { title: 'Elementary circuit theory', read: 'derived' },
  definition: { title: 'Definition of the quantity', read: 'derived' },
  practice: { title: 'Common practice of the conversion trade', read: 'practice' },
  'ev-fuses': { title: 'How to select EV fuses, batterydesign.net, guidance of fuse makers', read: 'from memory' },
  'mannering-washburn': { title: 'Mannering and Washburn, Principles of Highway Engineering and Traffic Analysis', read: 'from memory' },
  ehsani: { title: 'Ehsani et al., Modern Electric, Hybrid Electric and Fuel Cell Vehicles', read: 'from memory' },
  gillespie: { title: 'Gillespie, Fundamentals of Vehicle Dynamics', read: 'from memory' },
  wong: { title: 'Wong, Theory of Ground Vehicles', read: 'from memory' },
  bosch: { title: 'Bosch Automotive Handbook', read: 'from memory' },
  hucho: { title: 'Hucho, Aerodynamics of Road Vehicles', read: 'from memory' },
  etrto: { title: 'ETRTO Standards Manual', read: 'from memory' },
  'larminie-lowry': { title: 'Larminie and Lowry, Electric Vehicle Technology Explained', read: 'from memory' },
  'igbt-manual': { title: 'Application manuals of makers of power modules', read: 'from memory' },
  incropera: { title: 'Incropera et al., Fundamentals of Heat and Mass Transfer', read: 'from memory' },
  'iec-60085': { title: 'IEC 60085 Electrical insulation, thermal evaluation and designation', read: 'from memory' },
  'iso-2533': { title: 'ISO 2533 Standard atmosphere', read: 'from memory' },
  'un-r100': { title: 'UN Regulation No. 100, electric power train', read: 'confirmed' },
  'eu-1230-2012': { title: 'Regulation (EU) No 1230/2012, masses and dimensions', read: 'from memory' },
  'un-gtr-15': { title: 'UN Global Technical Regulation No. 15, worldwide harmonised light vehicles test procedure', read: 'from memory' },
  'cfr-1066': { title: 'US Code of Federal Regulations, title 40, part 1066, vehicle testing procedures', read: 'confirmed' },
  'nhtsa-rollover': { title: 'US NHTSA, consumer information, rollover resistance, 66 FR 3388 (2001)', read: 'confirmed' },
  'nhtsa-rollover-2003': { title: 'US NHTSA, rollover resistance, 68 FR 59250 (2003)', read: 'from memory' },
  'iso-10392': { title: 'ISO 10392 Road vehicles, determination of centre of gravity', read: 'from memory' },
  jazar: { title: 'Jazar, Vehicle Dynamics: Theory and Application, exercises of chapter 2', read: 'confirmed' },
  stvzo: { title: 'German StVZO, sections 38 to 44, consolidated text of 2022', read: 'confirmed' },
  'ch-vts': { title: 'Swiss ordinance on the technical requirements of road vehicles, SR 741.41', read: 'confirmed' },
  reimpell: { title: 'Reimpell, Stoll and Betzler, The Automotive Chassis, 2nd ed.', read: 'confirmed' },
  'un-r30': { title: 'UN Regulation No. 30, tyres of cars and their trailers', read: 'confirmed' },
  'un-r39': { title: 'UN Regulation No. 39, speedometer', read: 'from memory' },
  'un-r55': { title: 'UN Regulation No. 55, mechanical couplings', read: 'confirmed' },
  'un-r13-h': { title: 'UN Regulation No. 13-H, braking of cars', read: 'confirmed' },
  shigley: { title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design, 9th ed.', read: 'confirmed' },
  'eu-71-320': { title: 'Council Directive 71/320/EEC, braking devices', read: 'confirmed' },
  'uk-mot': { title: 'UK MOT inspection manual, cars and passenger vehicles', read: 'confirmed' },
  'barton-fieldhouse': { title: 'Barton and Fieldhouse, Automotive Chassis Engineering', read: 'confirmed' },
  taborek: { title: 'Taborek, Mechanics of Vehicles', read: 'from memory' },
  gough: { title: 'Gough, parking moment of a tyre, as textbooks repeat it', read: 'from memory' },
  gum: { title: 'JCGM 100:2008, Guide to the expression of uncertainty in measurement', read: 'from memory' },
  'epa-2022': { title: 'US EPA, model year 2022 light-duty base-year fleet table (file of 2023-08-31)', read: 'confirmed' },
  'en-228': { title: 'EN 228 Automotive fuels, unleaded petrol', read: 'from memory' },
  'en-590': { title: 'EN 590 Automotive fuels, diesel', read: 'from memory' },
  'rule-set': { title: 'Rule set the brief names; each of its rows cites its own text', read: 'confirmed' },
  'savitzky-golay': {
    title:
      'Savitzky and Golay, Smoothing and differentiation of data by simplified least squares procedures, Analytical Chemistry 36 (1964) 1627',
    read: 'from memory',
  },
  nec: { title: 'NFPA 70, National Electrical Code', read: 'from memory' },
  'press-sessions': { title: 'Fast-charging sessions of published cars, trade press 2018 to 2024', read: 'confirmed' },
  'iec-61851-1': { title: 'IEC 61851-1, Electric vehicle conductive charging system, general requirements', read: 'from memory' },
  'epa-doe-2019': { title: 'US EPA and DOE, fuel economy data file, release of October 2019', read: 'confirmed' },
  'adac-2022': { title: 'ADAC, charging losses of four cars, 2022, as reported in the press', read: 'confirmed' },
  'iso-80000-3': { title: 'ISO 80000-3 Quantities and units, space and time (standard acceleration of free fall)', read: 'from memory' },
  plett: { title: 'Plett, Battery Management Systems, volumes I (2015) and II (2016)', read: 'from memory' },
  'chen-rincon-mora-2006': {
    title:
      'Chen and Rincón-Mora, Accurate electrical battery model capable of predicting runtime and I–V performance, IEEE Trans. Energy Conversion 21 (2006) 504–511',
    read: 'confirmed',
  },
  'bpx-nmc-2022': {
    title: 'NMC111/graphite 12.5 Ah pouch cell, example parameter set of the BPX battery parameter standard, December 2022',
    read: 'confirmed',
  },
  'bpx-lfp-2022': {
    title: 'LFP/graphite 2 Ah 18650 cell, example parameter set of the BPX battery parameter standard, December 2022',
    read: 'confirmed',
  },
  'chen-2020': { title: 'C.-H. Chen et al., J. Electrochem. Soc. 167 (2020) 080534', read: 'confirmed' },
  'kollmeyer-2018': {
    title: 'Kollmeyer, cell test data of an NCA-type 18650, Mendeley Data V1 (2018), doi:10.17632/wykht8y7tg.1',
    read: 'confirmed',
  },
  'wiggins-2019': {
    title:
      'Wiggins, Allu and Wang, cell test data of a 33 Ah laminate car cell, Oak Ridge National Laboratory (2019), doi:10.5281/zenodo.2580327',
    read: 'confirmed',
  },
  'pulsebat-2024': {
    title: 'Tao et al., Nature Communications 15 (2024), doi:10.1038/s41467-024-54454-0, data tables of retired cells',
    read: 'confirmed',
  },
  'tao-2026': { title: 'Tao, Xia and Zou, pulse data of retired cells, v1.0 (2026), doi:10.5281/zenodo.21008092', read: 'confirmed' },
  'hassini-2025': { title: 'Hassini et al., cells of retired modules, arXiv:2507.14020 (2025), abstract', read: 'confirmed' },
  'wang-2011': { title: 'J. Wang et al., J. Power Sources 196 (2011) 3942–3948', read: 'confirmed' },
  'schmalstieg-2014': {
    title:
      'Schmalstieg et al., A holistic aging model for Li(NiMnCo)O2 based 18650 lithium-ion batteries, J. Power Sources 257 (2014) 325–334',
    read: 'confirmed',
  },
  'naumann-2018': { title: 'Naumann et al., J. Energy Storage 17 (2018) 153', read: 'confirmed' },
  'naumann-2020': { title: 'Naumann, Spingler and Jossen, J. Power Sources 451 (2020) 227666', read: 'confirmed' },
  'bernardi-1985': {
    title: 'Bernardi et al., A general energy balance for battery systems, J. Electrochem. Soc. 132 (1985)',
    read: 'from memory',
  },
  'forgez-2010': { title: 'Forgez et al., thermal two-node model of a cylindrical cell, J. Power Sources (2010)', read: 'from memory' },
  'golubkov-2014': { title: 'Golubkov et al., RSC Advances 4 (2014) 3633–3642', read: 'from memory' },
  'larsson-2017': { title: 'Larsson et al., Scientific Reports 7 (2017) 10018', read: 'confirmed' },
  blom: { title: 'Blom, Statistical Estimates and Transformed Beta-Variables (1958)', read: 'from memory' },
  probability: { title: 'Elementary probability and order statistics', read: 'derived' },
  heat: { title: 'Elementary heat balance and conduction', read: 'derived' },
  gas: { title: 'Ideal gas and flow through an opening', read: 'derived' },
  'cell-sheets': { title: 'Published specification sheets of generic 18650, LFP and LTO cells and modules', read: 'confirmed' },
  'gottschalk-1996': {
    title: 'Gottschalk, Lin and Manocha, OBBTree: a hierarchical structure for rapid interference detection, SIGGRAPH 1996',
    read: 'from memory',
  },
  ericson: { title: 'Ericson, Real-Time Collision Detection (2005)', read: 'from memory' },
  'barnes-1979': {
    title: 'Barnes, Packing the maximum number of m × n tiles in a large p × q rectangle, Discrete Mathematics 26 (1979) 93–100',
    read: 'from memory',
  },
  'birgin-2010': { title: 'Birgin, Lobato and Morabito, J. Oper. Res. Soc. 61 (2010) 306–320', read: 'confirmed' },
  'de-bruijn-1969': { title: 'de Bruijn, Filling boxes with bricks, American Mathematical Monthly 76 (1969) 37–40', read: 'from memory' },
  'eu-2018-858': { title: 'Regulation (EU) 2018/858, approval of motor vehicles', read: 'from memory' },
  'cfr-523': { title: 'US Code of Federal Regulations, title 49, part 523, vehicle classification', read: 'from memory' },
  'fmvss-110': { title: 'US Federal Motor Vehicle Safety Standard 110, tire selection and rims', read: 'from memory' },
  'iec-60228': { title: 'IEC 60228 Conductors of insulated cables', read: 'confirmed' },
  'astm-b258': { title: 'ASTM B258 Nominal diameters and areas of AWG sizes of solid round wires', read: 'confirmed' },
  'iec-60287-1-1': { title: 'IEC 60287-1-1 Electric cables, calculation of the current rating', read: 'from memory' },
  'iec-60364-5-52': { title: 'IEC 60364-5-52 Low-voltage installations, wiring systems', read: 'from memory' },
  'iec-60364-5-54': { title: 'IEC 60364-5-54 Low-voltage installations, earthing and protective conductors', read: 'confirmed' },
  'iec-60949': { title: 'IEC 60949 Thermally permissible short-circuit currents', read: 'from memory' },
  'bs-7671': { title: 'BS 7671 Requirements for electrical installations', read: 'confirmed' },
  'iso-10133': { title: 'ISO 10133:2012 Small craft, extra-low-voltage DC installations', read: 'confirmed' },
  'small-craft-wiring': { title: 'Wiring charts for small craft, voltage drop of 3 and of 10 %', read: 'confirmed' },
  'churchill-chu-1975': {
    title:
      'Churchill and Chu, Correlating equations for free convection from a horizontal cylinder, Int. J. Heat Mass Transfer 18 (1975) 1049',
    read: 'confirmed',
  },
  'us-standard-atmosphere-1976': { title: 'US Standard Atmosphere, 1976', read: 'confirmed' },
  'iec-60269': { title: 'IEC 60269 Low-voltage fuses', read: 'from memory' },
  'fuse-guide': { title: 'Application guide of a maker of semiconductor fuses', read: 'confirmed' },
  'fuse-pulse-guide': { title: 'Guide of a maker of fuses on choosing them, charts of pulses', read: 'confirmed' },
  'iso-6469-3': { title: 'ISO 6469-3 Electrically propelled road vehicles, safety specifications, electrical safety', read: 'confirmed' },
  'iso-6469-4': { title: 'ISO 6469-4 Electrically propelled road vehicles, safety specifications, post-crash', read: 'confirmed' },
  'un-r94': { title: 'UN Regulations No. 94 and No. 95, protection of occupants in frontal and lateral collision', read: 'confirmed' },
  'cfr-571-305': { title: 'US Code of Federal Regulations, title 49, section 571.305, electric powertrain vehicles', read: 'from memory' },
  'iec-60204-1': { title: 'IEC 60204-1 Safety of machinery, electrical equipment of machines', read: 'confirmed' },
  'ais-038': { title: 'AIS-038 Electric power train vehicles, Indian automotive standard', read: 'confirmed' },
  'iec-60364-6': { title: 'IEC 60364-6 Low-voltage installations, verification, as reprinted in Norwegian rail rules', read: 'confirmed' },
  'iec-60664-1': { title: 'IEC 60664-1 Insulation coordination within low-voltage systems, tables as numbered in 2007', read: 'confirmed' },
  'contactor-sheets': { title: 'Published data sheets of contactors of the 250 A and 500 A class', read: 'confirmed' },
  'iec-61851-1-reprints': {
    title: 'IEC 61851-1, control pilot and proximity, as reprinted in published instructions of testers and charging points',
    read: 'confirmed',
  },
  'sae-j1772': { title: 'SAE J1772 Electric vehicle conductive charge coupler', read: 'from memory' },
  'apl48-manual': { title: 'Operation manual of a 48 V LFP module, tables 4.3 and 4.4', read: 'confirmed' },
} as const satisfies Record<string, Work>

export type WorkKey = keyof typeof WORKS

/** One place in one work. `mark` weakens it where the passage itself was not read or is only a habit. */
export type Source = { readonly work: WorkKey; readonly place: string; readonly mark?: 'from memory' | 'common practice' }

/** The mark a reader must see beside what rests on this source; undefined where a published passage was read or nothing needs one. */
export function markOf(source: Source): 'from memory' | 'common practice' | undefined {
  if (source.mark) return source.mark
  const { read } = WORKS[source.work]
  return read === 'from memory' ? 'from memory' : read === 'practice' ? 'common practice' : undefined
}
