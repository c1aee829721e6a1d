/* src/physics/flow/streamtubes/step.ts, tubeState.ts, march.ts; a wall below, a free boundary above, one composition. */
#include "flow.h"

#include <stdlib.h>
#include <string.h>

enum { STRIDE = 8, MOST_NEWTON = 40, MOST_STEPS = 20000 };
static const double SETTLED = 1e-7, SETTLED_CUBED = 3e-6, LEAST_HALLEY = 0.5, SMALL = 0.03, COURANT = 0.7, SMALL_JUMP = 0.03;

typedef struct {
  double *slope_p, *slope_t, *half_p, *half_t, *width, *lead, *step, *to_x, *to_r;
} Work;

typedef struct {
  const WallLine *line;
  double along;
  int piece;
} Wall;

typedef struct {
  double *x, *r, *ln_p, *ln_sigma, *force;
  int count, room;
  double total;
} Samples;

static double where_cubic(double a, double da, double b, double db, double value) {
  double d = b - a, c2 = 3 * d - 2 * da - db, c3 = da + db - 2 * d;
  double low = 0, high = 1, t = (value - a) / d;
  for (int i = 0; i < 60; i++) {
    double miss = a + t * (da + t * (c2 + t * c3)) - value;
    if ((miss < 0) == (d > 0)) low = t;
    else high = t;
    double next = t - miss / (da + t * (2 * c2 + 3 * t * c3));
    int inside = next > low && next < high;
    double moved = inside ? next : 0.5 * (low + high);
    if (fabs(moved - t) < 1e-15 || fabs(miss) <= 0x1p-52 * fabs(value)) return inside ? next : t;
    t = moved;
  }
  return t;
}

static double nu_of_speed(const TubeGas *gas, double speed) {
  const Table *table = gas->table;
  const double *knots = table->speed;
  if (speed <= knots[0]) return 0;
  if (speed >= knots[2 * table->cells]) return table->nu_max;
  int low = 0, high = table->cells;
  while (high - low > 1) {
    int middle = (low + high) / 2;
    if (knots[2 * middle] < speed) low = middle;
    else high = middle;
  }
  const double *k = knots + 2 * low;
  double root = (low + where_cubic(k[0], k[1], k[2], k[3], speed)) * table->step;
  return root * root * root;
}

static inline double cubic(const double *k, double t) {
  double a = k[0], da = k[1], db = k[STRIDE + 1], d = k[STRIDE] - a;
  return a + t * (da + t * (3 * d - 2 * da - db + t * (da + db - 2 * d)));
}

static inline double small_sine(double x) {
  double q = x * x;
  return x * (1 - q * (1.0 / 6 - q * (1.0 / 120 - q * (1.0 / 5040))));
}

static inline double small_cosine(double x) {
  double q = x * x;
  return 1 - q * (1.0 / 2 - q * (1.0 / 24 - q * (1.0 / 720)));
}

static inline double small_arcsine(double s) {
  double q = s * s;
  return s * (1 + q * (1.0 / 6 + q * (3.0 / 40 + q * (5.0 / 112 + q * (35.0 / 1152)))));
}

static inline double small_exp(double x) {
  return 1 + x * (1 + x * (1.0 / 2 + x * (1.0 / 6 + x * (1.0 / 24 + x * (1.0 / 120 + x * (1.0 / 720 + x * (1.0 / 5040)))))));
}

static inline double damped(double change, double speed) {
  double most = 0.04 * speed;
  return change > most ? most : change < -most ? -most : change;
}

static double isentropic_normal_speed(const TubeGas *gas, double per_mass, double ln_sigma, double vn, double vt) {
  double per_step = 1 / gas->step;
  for (int iteration = 0; iteration <= MOST_NEWTON; iteration++) {
    double speed = sqrt(vn * vn + vt * vt);
    double at = (speed - gas->slowest) * per_step;
    if (!(at > -0.5 && at < gas->cells + 0.5)) return 0;
    int i = (int)at;
    if (i >= gas->cells) i = gas->cells - 1;
    double t = at - i;
    const double *k = gas->knots + i * STRIDE + 6;
    double a = k[0], da = k[1], d = k[STRIDE] - a, db = k[STRIDE + 1];
    double c2 = 3 * d - 2 * da - db, c3 = da + db - 2 * d;
    double phi = a + t * (da + t * (c2 + t * c3)) + ln_sigma;
    double share = vn / speed, square = share * share;
    double first = (da + t * (2 * c2 + 3 * t * c3)) * speed * per_step;
    double second = (2 * c2 + 6 * t * c3) * speed * speed * per_step * per_step;
    double slope = 1 + first * square;
    if (!(slope < 0)) {
      vn *= 1.01;
      continue;
    }
    double bend = square * (second * square + first * (1 - square)) - 1;
    double residual = phi + log(vn * per_mass);
    double least = LEAST_HALLEY * slope * slope, divisor = slope * slope - 0.5 * residual * bend;
    double change = damped((vn * residual * slope) / (divisor > least ? divisor : least), speed);
    vn -= change;
    if (fabs(change) < SETTLED_CUBED * speed) return vn;
  }
  return 0;
}

static double balanced_normal_speed(const TubeGas *gas, double pn, double mass, double vn, double vt) {
  double per_step = 1 / gas->step;
  for (int iteration = 0; iteration <= MOST_NEWTON; iteration++) {
    double speed = sqrt(vn * vn + vt * vt);
    double at = (speed - gas->slowest) * per_step;
    if (!(at > -0.5 && at < gas->cells + 0.5)) return 0;
    int i = (int)at;
    if (i >= gas->cells) i = gas->cells - 1;
    double t = at - i;
    const double *k = gas->knots + i * STRIDE + 2;
    double a = k[0], da = k[1], d = k[STRIDE] - a, db = k[STRIDE + 1];
    double c2 = 3 * d - 2 * da - db, c3 = da + db - 2 * d;
    double w = a + t * (da + t * (c2 + t * c3));
    double push = pn - mass * vn;
    double dw = ((da + t * (2 * c2 + 3 * t * c3)) * per_step * vn) / speed;
    double slope = (pn - 2 * mass * vn) * w + push * vn * dw;
    if (!(slope < 0)) {
      vn *= 1.01;
      continue;
    }
    double change = damped((push * w * vn - mass) / slope, speed);
    vn -= change;
    if (fabs(change) < SETTLED * speed) return vn;
  }
  return 0;
}

static double ln_sigma_at(const TubeGas *gas, double speed, double ln_p) {
  double at = (speed - gas->slowest) / gas->step;
  int i = (int)at;
  if (i < 0) i = 0;
  else if (i > gas->cells - 1) i = gas->cells - 1;
  return ln_p - cubic(gas->knots + i * STRIDE, at - i);
}

static void note_state(Front *front, const TubeGas *gas, int j, double speed, double u, double v, double ln_sigma) {
  double at = (speed - gas->slowest) / gas->step;
  int i = (int)at;
  if (i < 0) i = 0;
  else if (i >= gas->cells) i = gas->cells - 1;
  double t = at - i;
  const double *k = gas->knots + i * STRIDE;
  const double *n = k + STRIDE;
  double back = t - 1, b = t * t * (3 - 2 * t), a = 1 - b, da = t * back * back, db = t * t * back;
  double zeta = a * k[0] + b * n[0] + da * k[1] + db * n[1];
  double w = a * k[2] + b * n[2] + da * k[3] + db * n[3];
  double m2 = a * k[4] + b * n[4] + da * k[5] + db * n[5];
  if (!(m2 > 1 && at <= gas->cells)) give_up("subsonic, or past the table");
  double beta = sqrt(m2 - 1);
  double per_speed = 1 / speed, c = u * per_speed, s = v * per_speed, c0 = front->cosine[j], s0 = front->sine[j];
  double turn = s * c0 - c * s0;
  int small = turn < SMALL && turn > -SMALL && c * c0 + s * s0 > 0;
  front->theta[j] = small ? front->theta[j] + small_arcsine(turn) : atan2(s, c);
  front->speed[j] = speed;
  front->cosine[j] = c;
  front->sine[j] = s;
  double ln_p = zeta + ln_sigma, rise = ln_p - front->ln_p[j];
  front->pressure[j] = rise < SMALL && rise > -SMALL ? front->pressure[j] * small_exp(rise) : exp(ln_p);
  front->ln_p[j] = ln_p;
  front->ln_sigma[j] = ln_sigma;
  front->beta[j] = beta;
  front->bend[j] = beta / (w * speed * speed);
}

static void update_tube(Front *f, const TubeGas *gas, int j) {
  double dx = f->x[j + 1] - f->x[j], dr = f->r[j + 1] - f->r[j];
  double length = sqrt(dx * dx + dr * dr);
  double per_length = 1 / length, nx = dr * per_length, nr = -dx * per_length;
  double area = f->round ? length * 0.5 * (f->r[j] + f->r[j + 1]) : length;
  double mass = f->mass[j], px = f->momentum_x[j], pr = f->momentum_r[j];
  double vt = (px * nr - pr * nx) / mass;
  double ln_sigma = f->ln_sigma[j], before = f->ln_p[j];
  double vn0 = f->speed[j] * (f->cosine[j] * nx + f->sine[j] * nr);
  double vn = isentropic_normal_speed(gas, area / mass, ln_sigma, vn0, vt);
  if (vn > 0) note_state(f, gas, j, sqrt(vn * vn + vt * vt), vn * nx + vt * nr, vn * nr - vt * nx, ln_sigma);
  if (!(vn > 0) || f->ln_p[j] > before) {
    double pn = px * nx + pr * nr;
    double shocked = balanced_normal_speed(gas, pn, mass, vn > 0 ? vn : vn0, vt);
    if (!(shocked > 0)) give_up("subsonic, or past the table");
    double ln_p = log((pn - mass * shocked) / area);
    double fast = sqrt(shocked * shocked + vt * vt);
    double left = ln_sigma_at(gas, fast, ln_p);
    if (left < ln_sigma || !(vn > 0)) {
      note_state(f, gas, j, fast, shocked * nx + vt * nr, shocked * nr - vt * nx, left);
      return;
    }
  }
  double push = f->pressure[j] * area;
  f->momentum_x[j] = mass * (vn * nx + vt * nr) + push * nx;
  f->momentum_r[j] = mass * (vn * nr - vt * nx) + push * nr;
}

static inline double limited(double a, double b) {
  if (!(a * b > 0)) return 0;
  double least = 2 * (fabs(a) < fabs(b) ? fabs(a) : fabs(b)), mean = 0.5 * (a + b);
  return fabs(mean) < least ? mean : a > 0 ? least : -least;
}

static double length_of(const WallLine *line) {
  return line->along[line->count - 1];
}

static inline double least_of(double a, double b) {
  return a < b ? a : b;
}

static void move_on_wall(Wall *wall, double step, double *to_x, double *to_r) {
  const WallLine *line = wall->line;
  wall->along = least_of(wall->along + step, length_of(line));
  while (wall->piece < line->count - 2 && line->along[wall->piece + 1] < wall->along) wall->piece++;
  int k = wall->piece;
  double share = (wall->along - line->along[k]) / (line->along[k + 1] - line->along[k]);
  *to_x = line->x[k] + share * (line->x[k + 1] - line->x[k]);
  *to_r = line->r[k] + share * (line->r[k + 1] - line->r[k]);
}

static void push_tubes(Front *f, Work *w, double *lower, double *upper) {
  int n = f->count;
  for (int i = 0; i <= n; i++) {
    double dx = w->to_x[i] - f->x[i], dr = w->to_r[i] - f->r[i];
    if (dx == 0 && dr == 0) {
      if (i == 0) *lower = 0;
      if (i == n) *upper = 0;
      continue;
    }
    int j = i < n ? i : n - 1;
    double rise = f->face_ln_p[i] - f->ln_p[j];
    double pressure = rise < SMALL && rise > -SMALL ? f->pressure[j] * small_exp(rise) : exp(f->face_ln_p[i]);
    f->face_p[i] = pressure;
    double area = pressure * (f->round ? 0.5 * (w->to_r[i] + f->r[i]) : 1);
    if (i < n) {
      f->momentum_x[i] -= area * dr;
      f->momentum_r[i] += area * dx;
    }
    if (i > 0) {
      f->momentum_x[i - 1] += area * dr;
      f->momentum_r[i - 1] -= area * dx;
    }
    if (i == 0) *lower = area * dr;
    if (i == n) *upper = -area * dr;
  }
  if (!f->round) return;
  for (int j = 0; j < n; j++) {
    double ax = w->to_x[j + 1] - f->x[j], ar = w->to_r[j + 1] - f->r[j];
    double bx = f->x[j + 1] - w->to_x[j], br = f->r[j + 1] - w->to_r[j];
    double area = 0.5 * (ax * br - ar * bx);
    f->momentum_r[j] += 0.5 * (f->face_p[j] + f->face_p[j + 1]) * area;
  }
}

static void choose_steps(const Front *f, const Wall *wall, Work *w) {
  int n = f->count;
  double before = (length_of(wall->line) - wall->along) / COURANT, level = INFINITY, ahead = 0;
  for (int j = 0; j < n; j++) {
    double c = f->cosine[j], s = f->sine[j], dx = f->x[j + 1] - f->x[j], dr = f->r[j + 1] - f->r[j];
    double width = dr * c - dx * s, reach = width * f->beta[j];
    w->width[j] = width;
    w->lead[j] = ahead;
    double most = ahead + COURANT * least_of(reach, before);
    if (most < level) level = most;
    before = reach;
    ahead += dx * c + dr * s;
  }
  w->lead[n] = ahead;
  level = least_of(level, ahead + COURANT * before);
  for (int i = 0; i <= n; i++) {
    double ds = level - w->lead[i];
    w->step[i] = ds > 0 ? ds : 0;
  }
}

static void find_halfway(const Front *f, Work *w, double first_p, double last_p, double first_t, double last_t) {
  int n = f->count;
  double down_p = first_p, down_t = first_t, p = f->ln_p[0], angle = f->theta[0];
  for (int j = 0; j < n; j++) {
    int last = j == n - 1;
    double next_p = last ? p : f->ln_p[j + 1], next_t = last ? angle : f->theta[j + 1];
    double up_p = last ? last_p : next_p - p, up_t = last ? last_t : next_t - angle;
    double sp = limited(down_p, up_p), st = limited(down_t, up_t);
    double wide = w->width[j], e = w->lead[j + 1] - w->lead[j], b = f->beta[j];
    double ratio = f->bend[j] / b, det = wide * wide - (e * e) / (b * b);
    double ds = 0.25 * (w->step[j] + w->step[j + 1]);
    w->slope_p[j] = sp;
    w->slope_t[j] = st;
    w->half_p[j] = p;
    w->half_t[j] = angle;
    if (ds > 0 && det > 0.3 * wide * wide) {
      double stretch = f->round ? f->sine[j] / (0.5 * (f->r[j] + f->r[j + 1])) : 0;
      double a = 1 / (f->bend[j] * b), rp = sp + e * a * stretch, part = ds / det;
      w->half_p[j] = p - a * (part * (wide * st + e * ratio * rp) + ds * stretch);
      w->half_t[j] = angle - ratio * part * (wide * rp + e * a * st);
    }
    down_p = up_p;
    down_t = up_t;
    p = next_p;
    angle = next_t;
  }
}

static void meet_at_faces(Front *f, const Work *w) {
  double pl = w->half_p[0] + 0.5 * w->slope_p[0], tl = w->half_t[0] + 0.5 * w->slope_t[0], kl = f->bend[0];
  for (int i = 1; i < f->count; i++) {
    double hp = w->half_p[i], ht = w->half_t[i], sp = 0.5 * w->slope_p[i], st = 0.5 * w->slope_t[i], ku = f->bend[i];
    double p = (tl - (ht - st) + kl * pl + ku * (hp - sp)) / (kl + ku);
    f->face_ln_p[i] = p;
    f->face_theta[i] = tl - kl * (p - pl);
    pl = hp + sp;
    tl = ht + st;
    kl = ku;
  }
}

/* Node 0 is on the wall. */
static void move_nodes(const Front *f, Work *w) {
  int n = f->count;
  for (int i = 1; i <= n; i++) {
    int j = i < n ? i : n - 1;
    double turn = f->face_theta[i] - f->theta[j];
    if (turn < SMALL && turn > -SMALL) {
      double c = small_cosine(turn), s = small_sine(turn);
      w->to_x[i] = f->x[i] + w->step[i] * (f->cosine[j] * c - f->sine[j] * s);
      w->to_r[i] = f->r[i] + w->step[i] * (f->sine[j] * c + f->cosine[j] * s);
    } else {
      w->to_x[i] = f->x[i] + w->step[i] * cos(f->face_theta[i]);
      w->to_r[i] = f->r[i] + w->step[i] * sin(f->face_theta[i]);
    }
  }
}

static void step_tubes(Front *f, const TubeGas *gas, Wall *wall, double ambient, double ambient_nu, Work *w, double *lower, double *upper) {
  int n = f->count, m = n - 1;
  choose_steps(f, wall, w);
  move_on_wall(wall, w->step[0], &w->to_x[0], &w->to_r[0]);
  double wx = w->to_x[0] - f->x[0], wr = w->to_r[0] - f->r[0];
  double lower_theta = wx == 0 && wr == 0 ? f->face_theta[0] : atan2(wr, wx);
  find_halfway(f, w, 2 * (f->ln_p[0] - f->face_ln_p[0]), 2 * (ambient - f->ln_p[m]), 2 * (f->theta[0] - lower_theta),
               2 * (f->face_theta[n] - f->theta[m]));
  f->face_theta[0] = lower_theta;
  f->face_ln_p[0] =
    w->half_p[0] - 0.5 * w->slope_p[0] + (lower_theta - (w->half_t[0] - 0.5 * w->slope_t[0])) / f->bend[0];
  double jump = ambient - (w->half_p[m] + 0.5 * w->slope_p[m]);
  double above = w->half_t[m] + 0.5 * w->slope_t[m];
  f->face_ln_p[n] = ambient;
  if (fabs(jump) < SMALL_JUMP) f->face_theta[n] = above - f->bend[m] * jump;
  else f->face_theta[n] = above - (nu_of_speed(gas, f->speed[m]) - ambient_nu);
  meet_at_faces(f, w);
  move_nodes(f, w);
  push_tubes(f, w, lower, upper);
  memcpy(f->x, w->to_x, (size_t)(n + 1) * sizeof(double));
  memcpy(f->r, w->to_r, (size_t)(n + 1) * sizeof(double));
  for (int j = 0; j < n; j++) {
    if (w->step[j] > 0 || w->step[j + 1] > 0) update_tube(f, gas, j);
  }
}

static void *held(void *memory) {
  if (!memory) give_up("out of memory");
  return memory;
}

static void note(Samples *s, const Front *f, int node, int tube, double from_x, double from_r, double force) {
  if (f->x[node] == from_x && f->r[node] == from_r) return;
  if (s->count == s->room) {
    s->room = s->room ? 2 * s->room : 64;
    size_t size = (size_t)s->room * sizeof(double);
    s->x = held(realloc(s->x, size));
    s->r = held(realloc(s->r, size));
    s->ln_p = held(realloc(s->ln_p, size));
    s->ln_sigma = held(realloc(s->ln_sigma, size));
    s->force = held(realloc(s->force, size));
  }
  s->total += force;
  s->x[s->count] = 0.5 * (from_x + f->x[node]);
  s->r[s->count] = 0.5 * (from_r + f->r[node]);
  s->ln_p[s->count] = f->face_ln_p[node];
  s->ln_sigma[s->count] = f->ln_sigma[tube];
  s->force[s->count++] = s->total;
}

static void drop(Samples *s) {
  free(s->x);
  free(s->r);
  free(s->ln_p);
  free(s->ln_sigma);
  free(s->force);
}

Marched march_tubes(Front *front, const TubeGas *gas, const WallLine *line, double ambient_ln_p, double ambient_nu) {
  int n = front->count;
  size_t size = (size_t)n + 1;
  double *memory = held(calloc(9 * size, sizeof(double)));
  Work work = {memory, memory + size, memory + 2 * size, memory + 3 * size, memory + 4 * size,
               memory + 5 * size, memory + 6 * size, memory + 7 * size, memory + 8 * size};
  Wall wall = {line, 0, 0};
  Samples lower = {0}, upper = {0};
  double on_lower = 0, on_upper = 0;
  Marched out = {0, 0, 0};
  while (out.steps < MOST_STEPS && wall.along < length_of(line) * (1 - 1e-9)) {
    double low_x = front->x[0], low_r = front->r[0], up_x = front->x[n], up_r = front->r[n];
    step_tubes(front, gas, &wall, ambient_ln_p, ambient_nu, &work, &on_lower, &on_upper);
    out.steps++;
    note(&lower, front, 0, 0, low_x, low_r, on_lower);
    note(&upper, front, n, n - 1, up_x, up_r, on_upper);
  }
  out.force_lower = lower.total;
  out.force_upper = upper.total;
  drop(&lower);
  drop(&upper);
  free(memory);
  return out;
}
