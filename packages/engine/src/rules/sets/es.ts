import { type RuleSet, rowsFrom } from './requirement.ts'

const decree = rowsFrom({ work: 'es-rd-866', date: '2010-07', read: 'T' })
const blog = rowsFrom({ work: 'es-trade-blog', date: '2026-01', read: 'Q' })

/** Spain: a reform of a registered vehicle, with project, conformity report and inspection. */
export const es: RuleSet = {
  id: 'es',
  name: 'Spain',
  base: 'un',
  note: 'Codes, limits and regulations of each reform stand in the Manual de Reformas de Vehículos, which was not open.',
  rows: [
    decree('route.allowed', 'fact', 'yes, as a reform: function 2, power unit, and each other function touched', '', {
      for: 'registered vehicle',
      clause: 'Art. 3.18, 7.2, Annex I',
    }),
    decree('donor.registered', 'must', 'definitively registered in Spain', '', {
      clause: 'Art. 2',
      remark: 'before that, individual approval only',
    }),
    decree('sign.technical', 'who', 'technical service for reforms, or the car maker', '', {
      for: 'conformity report, Annex II',
      clause: 'Art. 5.3, 7.3 b',
    }),
    decree('sign.approval', 'who', 'regional authority through the ITV station', '', { clause: 'Art. 8' }),
    decree('papers.project', 'paper', 'technical project by a qualified graduate', '', {
      clause: 'Art. 7.3 a, 7.6, 7.7',
      remark: 'not with an authorised functional set, nor where the result equals an approved type',
    }),
    decree('papers.final', 'paper', 'certificate of completed work with workshop and date', '', {
      clause: 'Art. 7.3 a',
      remark: 'by the same graduate',
    }),
    decree('papers.workshop', 'paper', 'certificate of the registered workshop, Annex III', '', { clause: 'Art. 7.3 c' }),
    decree('route.kit', 'fact', 'an authorised functional set is possible, not needed', '', {
      clause: 'Art. 6.2',
      remark: 'decision within six months, silence refuses',
    }),
    decree('inspect.within', 'max', 15, 'days', { for: 'after the reform', clause: 'Art. 8.1' }),
    decree('inspect.approval', 'must', 'ITV inspection; the card is endorsed or renewed', '', { clause: 'Art. 8.3' }),
    blog('fee', 'fact', [800, 2500], '€', { for: 'approval, on top of the conversion' }),
  ],
}
