import { answerProblems, conversionText, QUESTIONS } from '../../workbench/src/guided/index.ts'
import { allConcepts } from '../../workbench/src/guided/concepts.ts'
import { fieldAt } from '@ampwright/conversion'
for (const q of QUESTIONS) for (const p of q.paths) if (p !== 'car' && !fieldAt(p)) console.log('no field', p)
const given = {
 'car':'Test car', 'donor.engine-position':'longitudinal front','donor.driven-wheels':'rear','donor.body':'saloon','donor.category':'M1','donor.first-registered':'1991',
 'donor.weighing.front':'540 ± 5 kg','donor.weighing.rear':'480 ± 5 kg','donor.weighing.fuel':'20 l','donor.weighing.tank':'55 l','donor.ratings.front-axle':'760 kg','donor.ratings.rear-axle':'830 kg','donor.ratings.total':'1500 kg',
 'donor.wheelbase':'2520 mm','donor.tyre':'185/65 R14 86H','donor.engine.power':'85 kW','donor.engine.torque':'165 Nm','donor.engine.red-line':'6500 rpm','donor.engine.fuel':'petrol','donor.removed.engine.x':'50 mm','donor.removed.tank.x':'2500 mm',
 'donor.seats.front.places':'2','donor.seats.front.x':'1450 mm','donor.seats.rear.places':'3','donor.seats.rear.x':'2250 mm','donor.luggage-x':'3000 mm','donor.brakes.assist':'vacuum','donor.steering.assist':'hydraulic',
 'donor.gearbox.gears.first':'3.6','donor.gearbox.gears.second':'2.1','donor.gearbox.gears.third':'1.4','donor.gearbox.gears.fourth':'1.0','donor.gearbox.gears.fifth':'0.8','donor.final-drive':'3.9',
 'brief.rules':'de','brief.workshop':'business','brief.seats':'4','brief.luggage':'40 kg','brief.loads.usual.people':'1','brief.loads.usual.luggage':'0 kg',
 'brief.conditions.surface':'dry','brief.conditions.temperature':'20 °C','brief.conditions.altitude':'100 m','brief.conditions.head-wind':'0 km/h',
 'brief.goals.top-speed.speed':'130 km/h','brief.goals.sprint.from':'0 km/h','brief.goals.sprint.to':'100 km/h','brief.goals.sprint.within':'12 s','brief.goals.pull-away.slope':'25 %','brief.goals.range.distance':'150 km','brief.reserve':'10 %','trips.named.usual.cycle':'wltc-3b','trips.named.usual.temperature':'5 °C','trips.named.usual.pack-temperature':'10 °C','trips.named.usual.surface':'dry','trips.named.usual.altitude':'100 m','trips.named.usual.head-wind':'0 km/h','trips.named.usual.cabin-power':'1 kW','trips.named.usual.other-power':'250 W',
 'charging.places.home.socket':'dedicated point','charging.places.home.voltage':'230 V','charging.places.home.current':'16 A','charging.places.home.phases':'1','charging.places.home.cable':'16 A','brief.goals.charging.from':'20 %','brief.goals.charging.to':'100 %','brief.goals.charging.within':'10 h','brief.goals.charging.temperature':'15 °C','brief.budget':'16000 €',
}
console.log(answerProblems(given))
const t = conversionText(given); console.log(t)
const all = allConcepts(t)
console.log(all.trials, all.assessments, all.skipped, JSON.stringify(all.verdict))
for (const c of all.concepts) {console.log(' ', c.id, c.trials, c.cost.low, c.cost.high, JSON.stringify(c.counts), c.failing.map(f=>f.harm+f.id+(f.planned?'*':'')).join(' '), c.leftOut.map(l=>l.what).join(','), c.rules.map(r=>r.key+':'+r.says+':'+r.outcome).join(' | '), c.gaps.length)
for (const r of c.headline) console.log('    ', r.label, r.outcome, r.figure?.value, r.missing.map(g=>g.path).join(' ')) }
