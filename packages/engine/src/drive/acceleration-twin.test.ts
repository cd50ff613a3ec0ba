import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { proven } from '../../../../tests/proof.ts'
import { type RunPlan, run } from './full-throttle.ts'

/*
 * The run once more, by the differential-equation solver of GNU Octave, written from the equations: weight on the axles while the car pulls, torque and power of the motor, the winding's warmth.
 */
const TWIN = `
function [value, last, way] = goal(t, y, v2, s2, warm, hot)
  value = [v2 - y(1); s2 - y(2); 1]; if !hot && warm, value(3) = 1 - y(3); end
  last = [1; 1; 1]; way = [0; 0; 0];
end
function f = axles(p, front, rear, R)
  % Both axles: pull limited to grip times the load that stands on it while the car gathers speed; found by repeated substitution.
  g = 9.80665; f = [front; rear];
  for k = 1:100
    a = (sum(f) - R) / p.me;
    load = [p.mf * g - p.m * a * p.h / p.L; p.mr * g + p.m * a * p.h / p.L];
    new = min([front; rear], p.mu * max(load, 0));
    if max(abs(new - f)) < 1e-7, break; end
    f = new;
  end
end
function dy = rates(t, y, p, hot)
  w = max(y(1), 1e-9) * p.i / p.r;
  M = p.M; P = p.P;
  if hot, M = min(M, p.Mc); P = min(P, p.Pc); end
  m = min(M, P ./ w);
  F = m .* p.i .* p.eta / p.r;
  R = p.f0 + p.f1 * y(1) + p.f2 * (y(1) + p.vw) * abs(y(1) + p.vw);
  front = sum(F .* p.s); rear = sum(F .* (1 - p.s));
  f = axles(p, front, rear, R);
  share = [f(1) / max(front, 1e-9), f(2) / max(rear, 1e-9)];
  u = m(1) * (p.s(1) * share(1) + (1 - p.s(1)) * share(2));
  heat = (u / p.Mc(1))^2;
  dy = [(sum(f) - R) / p.me; y(1); (heat - y(3)) / p.tau];
end
function full_pull(p, v2, s2, warm)
  warning('off', 'all'); opt = odeset('RelTol', 1e-8, 'AbsTol', 1e-8, 'MaxStep', 0.05);
  y = [p.v1; 0; p.start]; t = 0; hot = false;
  for part = 1:2
    o = odeset(opt, 'Events', @(tt, yy) goal(tt, yy, v2, s2, warm, hot));
    [T, Y, te, ye, ie] = ode45(@(tt, yy) rates(tt, yy, p, hot), [t 200], y, o);
    t = T(end); y = Y(end, :)';
    if any(ie == 3) && abs(y(3) - 1) < 1e-6, hot = true; else, break; end
  end
  printf('%.12g %.12g %.12g\\n', t, y(2), y(1));
end
`
const has = spawnSync('octave-cli', ['--version']).status === 0
const infinity = Number.POSITIVE_INFINITY
const roadster: RunPlan = {
  mass: 1205,
  front: 562,
  rear: 643,
  height: 0.47,
  wheelbase: 2.31,
  f0: 171,
  f1: 0.5,
  f2: 0.38,
  headWind: 2,
  grip: 0.8,
  radius: 0.28,
  wheelsInertia: 3,
  torque: [250],
  power: [100e3],
  efficiency: [0.95],
  topSpeed: [2000],
  inertia: [0.038],
  ratios: [5.33],
  gears: [1],
  frontShare: [0],
  centre: 'open',
  shiftTime: [],
  ratedTorque: [110],
  ratedPower: [44e3],
  windingTime: [119],
  start: 0,
  from: 0,
  to: 100 / 3.6,
  distance: infinity,
}
const both = {
  torque: [250, 190],
  power: [110e3, 80e3],
  efficiency: [0.96, 0.96],
  topSpeed: [2000, 2000],
  inertia: [0.04, 0.034],
  ratios: [9.7, 9],
  gears: [1, 1],
  frontShare: [1, 0],
  ratedTorque: [115, 85],
  ratedPower: [48e3, 35e3],
  windingTime: [119, 119],
}
const PLANS: readonly (readonly [string, RunPlan])[] = [
  ['roadster, 0–100 km/h', roadster],
  ['roadster on a wet road, 0–100 km/h', { ...roadster, grip: 0.4 }],
  [
    'front-drive hatchback held back by grip, 0–60 km/h',
    { ...roadster, frontShare: [1], front: 643, rear: 562, grip: 0.7, ratios: [9.3], to: 60 / 3.6 },
  ],
  ['roadster with a winding close to its limit, 0–130 km/h', { ...roadster, start: 0.93, to: 130 / 3.6 }],
  ['roadster, 80–120 km/h against the wind', { ...roadster, headWind: 8, from: 80 / 3.6, to: 120 / 3.6 }],
  ['roadster, quarter mile', { ...roadster, to: infinity, distance: 402.336 }],
  [
    'estate with a motor for each axle, 0–100 km/h',
    { ...roadster, ...both, mass: 1900, front: 1050, rear: 850, height: 0.56, wheelbase: 2.64, grip: 0.6 },
  ],
]

function octave(plans: readonly RunPlan[]): readonly (readonly [time: number, distance: number, speed: number])[] {
  const list = (x: readonly number[]): string => `[${x.map(v => v.toPrecision(17)).join(' ')}]`
  const calls = plans.map(p => {
    const turning =
      p.inertia.reduce((s, j, u) => s + j * (p.ratios[u] as number) ** 2 * (p.efficiency[u] as number), p.wheelsInertia) / p.radius ** 2
    return `p = struct('m', ${p.mass}, 'me', ${(p.mass + turning).toPrecision(17)}, 'mf', ${p.front}, 'mr', ${p.rear}, 'h', ${p.height}, 'L', ${p.wheelbase}, 'f0', ${p.f0}, 'f1', ${p.f1}, 'f2', ${p.f2}, 'vw', ${p.headWind}, 'mu', ${p.grip}, 'r', ${p.radius}, 'v1', ${p.from.toPrecision(17)}, 'start', ${p.start}, 'tau', ${p.windingTime[0]}, 'M', ${list(p.torque)}, 'P', ${list(p.power)}, 'Mc', ${list(p.ratedTorque)}, 'Pc', ${list(p.ratedPower)}, 'i', ${list(p.ratios)}, 'eta', ${list(p.efficiency)}, 's', ${list(p.frontShare)}); full_pull(p, ${p.to === infinity ? '1e9' : p.to.toPrecision(17)}, ${p.distance === infinity ? '1e9' : p.distance}, true);`
  })
  const folder = mkdtempSync(join(tmpdir(), 'full-pull-')),
    script = join(folder, 'full_pull_twin.m')
  writeFileSync(script, `1;\n${TWIN}\n${calls.join('\n')}\n`)
  const { stdout, stderr, status } = spawnSync('octave-cli', ['--quiet', '--no-init-file', script], {
    encoding: 'utf8',
    timeout: 110_000,
    cwd: folder,
  })
  rmSync(folder, { recursive: true })
  if (status !== 0) throw new Error(stderr)
  return stdout
    .trim()
    .split('\n')
    .map(l => l.split(' ').map(Number) as unknown as [number, number, number])
}

describe('the run against a general-purpose solver', () => {
  it.skipIf(!has)(`agrees to one part in ten thousand${has ? '' : ' (skipped: octave-cli is not installed)'}`, () => {
    const twins = octave(PLANS.map(([, p]) => p))
    expect(twins).toHaveLength(PLANS.length)
    for (const [k, [name, plan]] of PLANS.entries()) {
      const own = run(plan),
        [time, distance, speed] = twins[k] as readonly [number, number, number]
      expect(
        proven({
          domain: 'drive',
          check: `full-throttle: ${name}`,
          source: 'GNU Octave, ode45',
          mark: 'independent program',
          expected: time,
          obtained: own.time,
          tolerance: 1e-4 * time,
          unit: 's',
        }),
        `${name}: ${own.time} and ${time}`,
      ).toBe(true)
      expect(Math.abs(own.distance / distance - 1), name).toBeLessThan(1e-4)
      expect(Math.abs(own.speed / speed - 1), name).toBeLessThan(1e-4)
    }
  })
})
