/*
 * A trip of an electric car, written a second time from the equations in packages/engine/src/trip/README.md, in another language and by
 * another route: it checks the engine's loop and is the yardstick for its time.
 *
 *   cc -O3 -ffp-contract=off -o trip trip.c -lm
 *   trip PLAN [RUNS]     plan: lines `name count numbers…`; prints `name number` lines, then the best seconds of one run
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define MOST_ITEMS 128
#define MOST_NODES 16
#define WINDOWS 7

typedef struct { char name[40]; int count; double *values; } Item;
typedef struct { double start, inverse; int last; const double *y; } Line;
typedef struct { Line axis[2]; int columns; const double *z; } Map;
typedef struct {
  int axle, part, winding, inverter;
  double ratio, eta, gearDrag, gearRise, peak, power, cont, contPower, base, volts, top, inverterShare, limit, lossFactor;
  Map loss;
  Line drag;
} Unit;
typedef struct { double rolling, air, climb, idle, all, cosine; } Road;
typedef struct { double *speed, *power, *current, *voltage, *charge, *distance, *force, *node[MOST_NODES]; } Series;

static Item items[MOST_ITEMS];
static int itemCount;

static const Item *find(const char *name) {
  for (int i = 0; i < itemCount; i++) if (!strcmp(items[i].name, name)) return &items[i];
  fprintf(stderr, "plan: %s is missing\n", name);
  exit(2);
}
static const Item *axis(const char *name, char which) {
  char key[48];
  snprintf(key, sizeof key, "%s.%c", name, which);
  return find(key);
}
static double number(const char *name) { return find(name)->values[0]; }

static double lineFromPoints(const double *x, const double *y, int n, double at) {
  if (at <= x[0]) return y[0];
  if (at >= x[n - 1]) return y[n - 1];
  int i = 0;
  while (at >= x[i + 1]) i++;
  return y[i] + (y[i + 1] - y[i]) * ((at - x[i]) / (x[i + 1] - x[i]));
}
static int equalSteps(const double *x, int n) {
  double step = (x[n - 1] - x[0]) / (n - 1);
  for (int i = 0; i < n; i++) if (fabs(x[i] - x[0] - i * step) > 1e-9 * step) return 0;
  return 1;
}
static Line line(const char *name) {
  const Item *x = axis(name, 'x'), *y = axis(name, 'y');
  int n = equalSteps(x->values, x->count) ? x->count : 1025;
  double span = x->values[x->count - 1] - x->values[0], *even = malloc(n * sizeof(double));
  for (int i = 0; i < n; i++) even[i] = lineFromPoints(x->values, y->values, x->count, x->values[0] + span * i / (n - 1));
  return (Line){x->values[0], (n - 1) / span, n - 1, even};
}
static inline double look(const Line *l, double at) {
  double place = (at - l->start) * l->inverse;
  if (!(place > 0)) return l->y[0];
  if (place >= l->last) return l->y[l->last];
  int i = (int)place;
  double part = place - i;
  return l->y[i] * (1 - part) + l->y[i + 1] * part;
}
static Map map(const char *name) {
  const Item *x = axis(name, 'x'), *y = axis(name, 'y');
  const Item *z = axis(name, 'z');
  int rows = equalSteps(x->values, x->count) ? x->count : 129, columns = equalSteps(y->values, y->count) ? y->count : 129;
  double wx = x->values[x->count - 1] - x->values[0], wy = y->values[y->count - 1] - y->values[0], *even = malloc(sizeof(double) * rows * columns), *row = malloc(sizeof(double) * x->count);
  for (int j = 0; j < columns; j++) {
    for (int i = 0; i < x->count; i++) row[i] = lineFromPoints(y->values, z->values + i * y->count, y->count, y->values[0] + wy * j / (columns - 1));
    for (int i = 0; i < rows; i++) even[i * columns + j] = lineFromPoints(x->values, row, x->count, x->values[0] + wx * i / (rows - 1));
  }
  free(row);
  return (Map){{{x->values[0], (rows - 1) / wx, rows - 1, NULL}, {y->values[0], (columns - 1) / wy, columns - 1, NULL}}, columns, even};
}
static inline double lookMap(const Map *m, double x, double y) {
  double p = (x - m->axis[0].start) * m->axis[0].inverse, q = (y - m->axis[1].start) * m->axis[1].inverse;
  p = p < 0 ? 0 : p > m->axis[0].last ? m->axis[0].last : p;
  q = q < 0 ? 0 : q > m->axis[1].last ? m->axis[1].last : q;
  int i = (int)p, j = (int)q;
  if (i == m->axis[0].last) i--;
  if (j == m->axis[1].last) j--;
  const double *c = m->z + i * m->columns + j;
  p -= i;
  q -= j;
  return (1 - p) * ((1 - q) * c[0] + q * c[1]) + p * ((1 - q) * c[m->columns] + q * c[m->columns + 1]);
}

static Unit units[2];
static int unitCount, nodeCount, linkCount;
static double mass, inertia, f0, f1, f2, wind, gravity, radius, mu, frontMass, rearMass, lever, firstShare, regenShare, regenPower, cutOff;
static double resistanceFactor, branchR, branchTau, capacity, floorU, ceilingU, peakI, chargeI, cabin, other, step, zStart;
static int packNode, hilly;
static Line open_, resistance, cold, accepts, slope;
static double *wanted, nodeC[MOST_NODES], nodeStart[MOST_NODES], linkG[64];
static int stepCount, linkFrom[64], linkTo[64];
static const double windows[WINDOWS] = {1, 10, 30, 60, 180, 600, 1800};

static void prepare(void) {
  unitCount = find("ratio")->count;
  for (int i = 0; i < unitCount; i++) {
    Unit *u = &units[i];
    char key[24];
    double *field[] = {&u->ratio, &u->eta, &u->gearDrag, &u->gearRise, &u->peak, &u->power, &u->cont, &u->contPower, &u->base, &u->volts, &u->top, &u->inverterShare, &u->limit, &u->lossFactor};
    static const char *name[] = {"ratio", "efficiency", "gearDrag", "gearDragRise", "peakTorque", "peakPower", "continuousTorque", "continuousPower", "baseSpeed", "statedVoltage", "topSpeed", "inverterShare", "windingLimit", "lossFactor"};
    for (int f = 0; f < 14; f++) *field[f] = find(name[f])->values[i];
    u->axle = (int)find("axle")->values[i];
    u->winding = (int)find("windingNode")->values[i]; u->inverter = (int)find("inverterNode")->values[i];
    snprintf(key, sizeof key, "losses%d", i);
    u->loss = map(key);
    snprintf(key, sizeof key, "drag%d", i);
    u->drag = line(key);
  }
  mass = number("mass"); inertia = number("effectiveMass"); f0 = number("f0"); f1 = number("f1"); f2 = number("f2"); wind = number("headWind"); gravity = number("gravity"); radius = number("radius");
  mu = number("grip"); frontMass = number("frontMass"); rearMass = number("rearMass"); lever = number("height") / number("wheelbase");
  firstShare = unitCount == 1 ? 1 : number("frontShare");
  units[0].part = firstShare > 0; units[1].part = firstShare < 1;
  regenShare = number("torqueShare"); regenPower = number("recoveryPower"); cutOff = number("cutOffSpeed");
  resistanceFactor = number("resistanceFactor"); branchR = number("branchResistance"); branchTau = number("branchTime"); capacity = number("capacity"); floorU = number("lowestVoltage"); ceilingU = number("highestVoltage");
  peakI = number("peakCurrent"); chargeI = number("chargeCurrent"); packNode = (int)number("packNode"); cabin = number("cabinPower"); other = number("otherPower");
  step = number("step"); zStart = number("startCharge");
  open_ = line("openCircuit"); resistance = line("resistance"); cold = line("coldFactor"); accepts = line("chargeShare"); slope = line("slope");
  const Item *flat = find("slope.y");
  for (int i = 0; i < flat->count; i++) hilly |= flat->values[i] != 0;
  const Item *t = find("trace.x"), *v = find("trace.y");
  stepCount = (int)ceil((t->values[t->count - 1] - t->values[0]) / step - 1e-9);
  wanted = malloc(sizeof(double) * (stepCount + 1));
  for (int k = 0, i = 0; k <= stepCount; k++) {
    double at = t->values[0] + k * step;
    while (i < t->count - 2 && at >= t->values[i + 1]) i++;
    wanted[k] = at >= t->values[i + 1] ? v->values[i + 1] : v->values[i] + (v->values[i + 1] - v->values[i]) * ((at - t->values[i]) / (t->values[i + 1] - t->values[i]));
  }
  nodeCount = find("nodeCapacity")->count;
  for (int i = 0; i < nodeCount; i++) {
    nodeC[i] = find("nodeCapacity")->values[i]; nodeStart[i] = find("nodeStart")->values[i];
  }
  linkCount = find("linkConductance")->count;
  for (int i = 0; i < linkCount; i++) {
    linkFrom[i] = (int)find("linkFrom")->values[i]; linkTo[i] = (int)find("linkTo")->values[i]; linkG[i] = find("linkConductance")->values[i];
  }
}

static inline Road roadAt(double vm, double s) {
  Road r = {0, 0, 0, 0, 0, 1};
  if (!(vm > 0)) return r;
  if (hilly) {
    double p = look(&slope, s + vm * step / 2);
    r.cosine = 1 / sqrt(1 + p * p);
    r.climb = mass * gravity * p * r.cosine;
  }
  double w = vm + wind;
  r.rolling = f0 * r.cosine + f1 * vm;
  r.air = f2 * w * fabs(w);
  for (int i = 0; i < unitCount; i++) {
    double gearing = units[i].ratio / radius;
    r.idle += gearing * (units[i].gearDrag + units[i].gearRise * vm * gearing);
    if (!units[i].part) r.idle += look(&units[i].drag, vm * units[i].ratio / radius) * units[i].ratio / (units[i].eta * radius);
  }
  r.all = r.rolling + r.air + r.climb + r.idle;
  return r;
}
/* Torque a unit may make, by speed, voltage and winding temperature. */
static inline double torqueAllowed(const Unit *u, double w, double volts, double celsius, double share) {
  double torque = u->peak, power = u->power, room = (u->limit - celsius) / 15;
  if (room < 1) {
    double lift = room > 0 ? room : 0, down = room < 0 ? (room > -1 ? 1 + room : 0) : 1;
    torque = (u->cont + (u->peak - u->cont) * lift) * down;
    power = (u->contPower + (u->power - u->contPower) * lift) * down;
  }
  torque = fmin(torque, share * u->peak);
  power = fmin(power, u->peak * u->base * volts / u->volts);
  return torque * w > power ? power / w : torque;
}
static double electric(double share, int braking, const double *w, const double *m) {
  double p = 0;
  for (int i = 0; i < unitCount; i++) {
    double loss = units[i].lossFactor * lookMap(&units[i].loss, w[i], share * m[i]);
    p += braking ? w[i] * share * m[i] - loss : w[i] * share * m[i] + loss;
  }
  return p;
}
/* Greatest share of the torques that keeps to a power, by halving. */
static double keeping(double limit, int braking, const double *w, const double *m) {
  if (electric(0, braking, w, m) >= limit) return 0;
  double low = 0, high = 1;
  for (int i = 0; i < 60; i++) {
    double middle = (low + high) / 2;
    if (electric(middle, braking, w, m) <= limit) low = middle; else high = middle;
  }
  return low;
}
static inline void split(double force, const double *cap, double *out) {
  if (unitCount == 1) { out[0] = fmin(force, cap[0]); return; }
  double first = fmin(firstShare * force, cap[0]);
  out[1] = fmin(force - first, cap[1]);
  out[0] = fmin(force - out[1], cap[0]);
}

enum { ASKED, SLOW, CHARGE, BATTERY, CABIN, OTHER, MOTORS, LINE, IDLE, ROLLING, AIR, SLOPE, BRAKES, MOTION, DRAWN, BACK, DRIVE, BRAKE, RECOVERED, LOST_CUT, LOST_TORQUE, LOST_GRIP, LOST_POWER, LOST_FULL, ABOVE, SUMS };
static const char *sumName[SUMS] = {"asked", "slowTime", "charge", "battery", "cabin", "other", "motors", "driveline", "idle", "rolling", "air", "slope", "brakes", "motion", "drawn", "putBack", "wheelDrive", "wheelBrake", "recovered", "cutOff", "torque", "grip", "power", "full", "aboveContinuous"};
typedef struct { double sum[SUMS], distance, charge, mostI, mostBack, leastU, hottest[MOST_NODES], rms[WINDOWS]; } Result;

static void run(Series *out, Result *res) {
  double v = wanted[0], s = 0, z = zStart, u = 0, terminal = look(&open_, z), T[MOST_NODES], top = INFINITY, sum[SUMS] = {0};
  double keep[MOST_NODES], total[MOST_NODES] = {0};
  for (int i = 0; i < unitCount; i++) top = fmin(top, units[i].top * radius / units[i].ratio);
  for (int i = 0; i < nodeCount; i++) res->hottest[i] = T[i] = nodeStart[i];
  for (int l = 0; l < linkCount; l++) { total[linkFrom[l]] += linkG[l]; total[linkTo[l]] += linkG[l]; }
  for (int i = 0; i < nodeCount; i++) keep[i] = exp(-step * total[i] / nodeC[i]);
  double decay = exp(-step / branchTau), mostI = 0, mostBack = 0, leastU = terminal, v0 = v, aux = cabin + other, carMass = frontMass + rearMass;
  for (int k = 0; k < stepCount; k++) {
    double chill = look(&cold, T[packNode]), E0 = look(&open_, z), E = E0 - u, R0 = resistanceFactor * look(&resistance, z) * chill, R1 = branchR * chill;
    double give = fmax(0, fmin(fmin((E - floorU) / R0, peakI), 0.95 * E / (2 * R0))), gives = give * (E - R0 * give);
    double take = fmax(0, fmin((ceilingU - E) / R0, chargeI * look(&accepts, T[packNode]))), takes = take * (E + R0 * take);
    double aim = fmin(wanted[k + 1], top), next = aim, vm = (v + aim) / 2, F = 0, atWheels = 0, w[2] = {0, 0}, m[2] = {0, 0}, part[2] = {0, 0};
    double cut = 0, byTorque = 0, byGrip = 0, byPower = 0, byFull = 0;
    Road road;
    int looks = 0, fixed = 0;
    double rate = (next - v) / step;
    for (;;) {
      road = roadAt(vm, s);
      F = vm > 0 ? road.all + inertia * rate : 0;
      for (int i = 0; i < unitCount; i++) w[i] = vm * units[i].ratio / radius;
      if (F <= 0) break;
      double cap[2] = {0, 0}, N = gravity * road.cosine, pull = fmin(F, mu * N * carMass);
      if (fixed) {
        double before = part[0] + part[1], a = unitCount == 1 ? 1 : before > 0 ? part[0] / before : firstShare;
        part[0] = a * F;
        part[1] = unitCount == 1 ? 0 : F - part[0];
      } else {
        for (int i = 0; i < unitCount; i++) {
          if (!units[i].part) continue;
          const Unit *n = &units[i];
          double hold = mu * N * carMass;
          if (n->axle == 0) hold = unitCount == 1 ? mu * N * frontMass / (1 + mu * lever) : mu * (N * frontMass - pull * lever);
          if (n->axle == 1) hold = unitCount == 1 ? (mu * lever < 1 ? fmin(hold, mu * N * rearMass / (1 - mu * lever)) : hold) : mu * (N * rearMass + pull * lever);
          cap[i] = fmin(torqueAllowed(n, w[i], terminal, T[n->winding], INFINITY) * n->ratio * n->eta / radius, fmax(0, hold));
        }
        split(F, cap, part);
      }
      for (int i = 0; i < unitCount; i++) m[i] = part[i] * radius / (units[i].ratio * units[i].eta);
      if (fixed) break;
      if (electric(1, 0, w, m) + aux > gives) {
        double down = keeping(gives - aux, 0, w, m);
        for (int i = 0; i < unitCount; i++) { part[i] *= down; m[i] *= down; }
      }
      double reach = part[0] + part[1];
      if (looks == 0 && reach >= F * (1 - 1e-12)) break;
      looks++;
      double then = v + (reach - road.all) / inertia * step;
      if (then > 0) {
        next = fmin(then, aim);
        vm = (v + next) / 2;
        fixed = looks == 4;
        rate = ((fixed ? next : aim) - v) / step;
      } else {
        double roll = v > 0 ? v * v * inertia / (2 * (road.all - reach)) : 0;
        next = 0;
        vm = roll / step;
        rate = roll > 0 ? -v * v / (2 * roll) : 0;
        fixed = 1;
      }
    }
    double B = 0, taken = 0;
    if (F < 0) {
      B = -F;
      double N = gravity * road.cosine, shift = fmin(B, mu * N * carMass) * lever, cap[2] = {0, 0};
      double fade = cutOff > 0 ? fmin(1, fmax(0, (vm - cutOff) / (cutOff / 2))) : 1;
      for (int i = 0; i < unitCount; i++)
        if (units[i].part) cap[i] = torqueAllowed(&units[i], w[i], terminal, T[units[i].winding], regenShare) * units[i].ratio / (units[i].eta * radius);
      split(B * fade, cap, part);
      cut = B - B * fade;
      byTorque = B * fade - part[0] - part[1];
      for (int i = 0; i < unitCount; i++) {
        double hold = units[i].axle == 0 ? mu * (N * frontMass + shift) : units[i].axle == 1 ? mu * (N * rearMass - shift) : mu * N * carMass;
        hold = fmax(0, hold);
        if (part[i] > hold) { byGrip += part[i] - hold; part[i] = hold; }
        m[i] = part[i] * units[i].eta * radius / units[i].ratio;
        taken += part[i];
      }
      if (electric(1, 1, w, m) > regenPower) {
        double down = keeping(regenPower, 1, w, m);
        byPower = taken * (1 - down);
        taken *= down;
        for (int i = 0; i < unitCount; i++) m[i] *= down;
      }
      if (electric(1, 1, w, m) > (takes + aux) * (1 + 1e-12)) {
        double down = keeping(takes + aux, 1, w, m);
        byFull = taken * (1 - down);
        taken *= down;
        for (int i = 0; i < unitCount; i++) m[i] *= down;
      }
    } else {
      atWheels = F;
      if (F == 0) m[0] = m[1] = 0;
    }
    double shaft = 0, lost = 0, heat[MOST_NODES] = {0};
    int over = 0;
    for (int i = 0; i < unitCount; i++) {
      double loss = units[i].lossFactor * lookMap(&units[i].loss, w[i], m[i]);
      shaft += m[i] * w[i];
      lost += loss;
      heat[units[i].inverter] = loss * units[i].inverterShare;
      heat[units[i].winding] = fmax(0, loss - units[i].lossFactor * lookMap(&units[i].loss, w[i], 0));
      over |= m[i] > units[i].cont || m[i] * w[i] > units[i].contPower;
    }
    double P = (F > 0 ? shaft : -shaft) + lost + aux, limit = E * E / (4 * R0), fed = 1;
    if (P > limit) { fed = aux > 0 ? fmax(0, 1 - (P - limit) / aux) : 1; P = limit; }
    double I = P == 0 ? 0 : (E - sqrt(fmax(0, E * E - 4 * R0 * P))) / (2 * R0);
    if (fabs(P) * R0 < 1e-3 * E * E) I = 2 * P / (E + sqrt(E * E - 4 * R0 * P));
    if (out) {
      out->speed[k] = v; out->power[k] = P; out->current[k] = I; out->voltage[k] = E - R0 * I; out->charge[k] = z; out->distance[k] = s; out->force[k] = F;
      for (int i = 0; i < nodeCount; i++) out->node[i][k] = T[i];
    }
    terminal = E - R0 * I;
    heat[packNode] = R0 * I * I + u * u / R1;
    sum[ASKED] += (wanted[k] + wanted[k + 1]) / 2 * step; sum[SLOW] += wanted[k + 1] - next > 2 / 3.6 ? step : 0;
    sum[CHARGE] += E0 * I * step; sum[BATTERY] += (R0 * I + u) * I * step;
    sum[CABIN] += cabin * fed * step; sum[OTHER] += other * fed * step;
    sum[MOTORS] += lost * step; sum[LINE] += (F > 0 ? shaft - F * vm : taken * vm - shaft) * step;
    sum[IDLE] += road.idle * vm * step; sum[ROLLING] += road.rolling * vm * step;
    sum[AIR] += road.air * vm * step; sum[SLOPE] += road.climb * vm * step;
    sum[BRAKES] += (B - taken) * vm * step; sum[DRAWN] += P > 0 ? P * step : 0;
    sum[BACK] += P < 0 ? -P * step : 0; sum[DRIVE] += atWheels * vm * step;
    sum[BRAKE] += B * vm * step; sum[RECOVERED] += F <= 0 && shaft > lost ? (shaft - lost) * step : 0;
    sum[LOST_CUT] += cut * vm * step; sum[LOST_TORQUE] += byTorque * vm * step;
    sum[LOST_GRIP] += byGrip * vm * step; sum[LOST_POWER] += byPower * vm * step;
    sum[LOST_FULL] += byFull * vm * step; sum[ABOVE] += over ? step : 0;
    mostI = fmax(mostI, I); mostBack = fmax(mostBack, -I); leastU = fmin(leastU, terminal);
    z -= I * step / capacity;
    u = decay * u + (1 - decay) * R1 * I;
    s += vm * step;
    v = next;
    double flow[MOST_NODES];
    for (int i = 0; i < nodeCount; i++) flow[i] = heat[i];
    for (int l = 0; l < linkCount; l++) {
      flow[linkFrom[l]] += linkG[l] * T[linkTo[l]]; flow[linkTo[l]] += linkG[l] * T[linkFrom[l]];
    }
    for (int i = 0; i < nodeCount; i++) {
      if (isinf(nodeC[i])) continue;
      T[i] = total[i] > 0 ? flow[i] / total[i] * (1 - keep[i]) + T[i] * keep[i] : T[i] + heat[i] * step / nodeC[i];
      res->hottest[i] = fmax(res->hottest[i], T[i]);
    }
  }
  sum[MOTION] = inertia * (v * v - v0 * v0) / 2;
  memcpy(res->sum, sum, sizeof sum);
  res->distance = s; res->charge = z; res->mostI = mostI; res->mostBack = mostBack; res->leastU = leastU;
  if (!out) return;
  for (int j = 0; j < WINDOWS; j++) {
    int n = (int)lround(windows[j] / step);
    if (n > stepCount) n = stepCount;
    double inside = 0, most = -1;
    for (int k = 0; k < stepCount; k++) {
      inside += out->current[k] * out->current[k];
      if (k >= n) inside -= out->current[k - n] * out->current[k - n];
      if (k >= n - 1 && inside > most) most = inside;
    }
    res->rms[j] = most < 0 ? -1 : sqrt(most / n);
  }
}

int main(int count, char **words) {
  FILE *file = count > 1 ? fopen(words[1], "r") : NULL;
  if (!file) { fprintf(stderr, "use: trip PLAN [RUNS]\n"); return 2; }
  int runs = count > 2 ? atoi(words[2]) : 1;
  while (itemCount < MOST_ITEMS && fscanf(file, "%39s %d", items[itemCount].name, &items[itemCount].count) == 2) {
    Item *i = &items[itemCount++];
    i->values = malloc(sizeof(double) * i->count);
    for (int k = 0; k < i->count; k++) if (fscanf(file, "%lf", &i->values[k]) != 1) { fprintf(stderr, "plan: %s is short\n", i->name); return 2; }
  }
  fclose(file);
  prepare();
  double best = INFINITY;
  Result result = {0};
  for (int r = 0; r < runs; r++) {
    struct timespec a, b;
    clock_gettime(CLOCK_MONOTONIC, &a);
    /* Fresh series each time, as a caller gets them. */
    int width = 7 + nodeCount;
    double *room = malloc(sizeof(double) * stepCount * width);
    Series out = {room, room + stepCount, room + 2 * stepCount, room + 3 * stepCount, room + 4 * stepCount, room + 5 * stepCount, room + 6 * stepCount, {0}};
    for (int i = 0; i < nodeCount; i++) out.node[i] = room + (7 + i) * stepCount;
    run(&out, &result);
    clock_gettime(CLOCK_MONOTONIC, &b);
    free(room);
    double seconds = (b.tv_sec - a.tv_sec) + 1e-9 * (b.tv_nsec - a.tv_nsec);
    if (seconds < best) best = seconds;
  }
  for (int i = 0; i < SUMS; i++) printf("%s %.17g\n", sumName[i], result.sum[i]);
  printf("distance %.17g\nendCharge %.17g\npeakCurrent %.17g\npeakChargeCurrent %.17g\nlowestVoltage %.17g\n", result.distance, result.charge, result.mostI, result.mostBack, result.leastU);
  for (int i = 0; i < nodeCount; i++) printf("hottest%d %.17g\n", i, result.hottest[i]);
  for (int j = 0; j < WINDOWS; j++) printf("rms%g %.17g\n", windows[j], result.rms[j]);
  printf("seconds %.9g\n", best);
  return 0;
}
