/* src/physics/flow/streamtubes/step.ts, tubeState.ts, march.ts; a wall below, a free boundary above, one composition. */
#include "flow.h"

#include <stdlib.h>
#include <string.h>

enum { STRIDE = 8, MOST_NEWTON = 40, MOST_STEPS = 20000 };
static const double SETTLED = 1e-7, SETTLED_CUBED = 3e-6, SMALL_TURN = 0.03, COURANT = 0.7, SMALL_JUMP = 0.03;

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

static double nu_of_speed(const TubeGas *gas, double speed) {
  const Table *table = gas->table;
  double low = 0, high = table->nu_max;
  for (int i = 0; i < 60 && high - low > 1e-14; i++) {
    double middle = 0.5 * (low + high);
    if (column_at(table->speed, table->step, table->cells, middle) < speed) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}

static inline double cubic(const double *k, double t) {
  double a = k[0], da = k[1], db = k[STRIDE + 1], d = k[STRIDE] - a;
  return a + t * (da + t * (3 * d - 2 * da - db + t * (da + db - 2 * d)));
}

static inline double small_sine(double x) {
  double q = x * x;
  return x * (1 - (q / 6) * (1 - (q / 20) * (1 - q / 42)));
}

static inline double small_cosine(double x) {
  double q = x * x;
  return 1 - 0.5 * q * (1 - (q / 12) * (1 - q / 30));
}

static inline double small_arcsine(double s) {
  double q = s * s;
  return s * (1 + q * (1.0 / 6 + q * (3.0 / 40 + q * (5.0 / 112 + q * (35.0 / 1152)))));
}

static inline double damped(double change, double speed) {
  double most = 0.04 * speed;
  return change > most ? most : change < -most ? -most : change;
}

static double isentropic_normal_speed(const TubeGas *gas, double per_mass, double ln_sigma, double vn, double vt) {
  for (int iteration = 0;; iteration++) {
    double speed = sqrt(vn * vn + vt * vt);
    double at = (speed - gas->slowest) / gas->step;
    if (!(at > -0.5 && at < gas->cells + 0.5) || iteration > MOST_NEWTON) return 0;
    int i = (int)at;
    if (i >= gas->cells) i = gas->cells - 1;
    double t = at - i;
    const double *k = gas->knots + i * STRIDE + 6;
    double a = k[0], da = k[1], d = k[STRIDE] - a, db = k[STRIDE + 1];
    double c2 = 3 * d - 2 * da - db, c3 = da + db - 2 * d;
    double phi = a + t * (da + t * (c2 + t * c3));
    double per_speed = 1 / (gas->step * speed);
    double direction = vn * per_speed;
    double along = da + t * (2 * c2 + 3 * t * c3);
    double slope = 1 / vn + along * direction;
    if (!(slope < 0)) {
      vn *= 1.01;
      continue;
    }
    double share = vn / speed;
    double bend = (2 * c2 + 6 * t * c3) * direction * direction + along * per_speed * (1 - share * share) - 1 / (vn * vn);
    double newton = (phi + ln_sigma + log(vn * per_mass)) / slope;
    double lessened = 1 - (0.5 * newton * bend) / slope;
    double change = damped(newton / (lessened > 0.5 ? lessened : 0.5), speed);
    vn -= change;
    if (fabs(change) < SETTLED_CUBED * speed) return vn;
  }
}

static double balanced_normal_speed(const TubeGas *gas, double pn, double mass, double vn, double vt) {
  for (int iteration = 0;; iteration++) {
    double speed = sqrt(vn * vn + vt * vt);
    double at = (speed - gas->slowest) / gas->step;
    if (!(at > -0.5 && at < gas->cells + 0.5) || iteration > MOST_NEWTON) return 0;
    int i = (int)at;
    if (i >= gas->cells) i = gas->cells - 1;
    double t = at - i;
    const double *k = gas->knots + i * STRIDE + 2;
    double a = k[0], da = k[1], d = k[STRIDE] - a, db = k[STRIDE + 1];
    double c2 = 3 * d - 2 * da - db, c3 = da + db - 2 * d;
    double w = a + t * (da + t * (c2 + t * c3));
    double push = pn - mass * vn;
    double dw = ((da + t * (2 * c2 + 3 * t * c3)) * vn) / (gas->step * speed);
    double slope = (pn - 2 * mass * vn) * w + push * vn * dw;
    if (!(slope < 0)) {
      vn *= 1.01;
      continue;
    }
    double change = damped((push * w * vn - mass) / slope, speed);
    vn -= change;
    if (fabs(change) < SETTLED * speed) return vn;
  }
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
  double zeta = cubic(k, t), w = cubic(k + 2, t), m2 = cubic(k + 4, t);
  if (!(m2 > 1 && at <= gas->cells)) give_up("subsonic, or past the table");
  double beta = sqrt(m2 - 1);
  double c = u / speed, s = v / speed, c0 = front->cosine[j], s0 = front->sine[j];
  double turn = s * c0 - c * s0;
  int small = turn < SMALL_TURN && turn > -SMALL_TURN && c * c0 + s * s0 > 0;
  front->theta[j] = small ? front->theta[j] + small_arcsine(turn) : atan2(v, u);
  front->speed[j] = speed;
  front->cosine[j] = c;
  front->sine[j] = s;
  front->ln_p[j] = zeta + ln_sigma;
  front->ln_sigma[j] = ln_sigma;
  front->beta[j] = beta;
  front->bend[j] = beta / (w * speed * speed);
}

static void update_tube(Front *f, const TubeGas *gas, int j) {
  double dx = f->x[j + 1] - f->x[j], dr = f->r[j + 1] - f->r[j];
  double length = sqrt(dx * dx + dr * dr);
  double nx = dr / length, nr = -dx / length;
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
  double pressure = exp(f->ln_p[j]);
  f->momentum_x[j] = mass * (vn * nx + vt * nr) + pressure * area * nx;
  f->momentum_r[j] = mass * (vn * nr - vt * nx) + pressure * area * nr;
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
    double pressure = exp(f->face_ln_p[i]);
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

static void step_tubes(Front *f, const TubeGas *gas, Wall *wall, double ambient, double ambient_nu, Work *w, double *lower, double *upper) {
  int n = f->count;
  const double *x = f->x, *r = f->r, *theta = f->theta, *ln_p = f->ln_p, *bend = f->bend, *beta = f->beta;
  w->lead[0] = 0;
  for (int j = 0; j < n; j++) {
    double c = f->cosine[j], s = f->sine[j], dx = x[j + 1] - x[j], dr = r[j + 1] - r[j];
    w->width[j] = dr * c - dx * s;
    w->lead[j + 1] = w->lead[j] + dx * c + dr * s;
  }
  double level = INFINITY;
  for (int i = 0; i <= n; i++) {
    double reach = i < n ? w->width[i] * beta[i] : INFINITY;
    if (i > 0) reach = least_of(reach, w->width[i - 1] * beta[i - 1]);
    double most = COURANT * reach;
    if (i == 0) most = least_of(most, length_of(wall->line) - wall->along);
    level = least_of(level, w->lead[i] + most);
  }
  for (int i = 0; i <= n; i++) {
    double ds = level - w->lead[i];
    w->step[i] = ds > 0 ? ds : 0;
  }
  move_on_wall(wall, w->step[0], &w->to_x[0], &w->to_r[0]);
  double wx = w->to_x[0] - x[0], wr = w->to_r[0] - r[0];
  double lower_theta = wx == 0 && wr == 0 ? f->face_theta[0] : atan2(wr, wx);
  double upper_theta = f->face_theta[n];
  for (int j = 0; j < n; j++) {
    double down_p = j > 0 ? ln_p[j] - ln_p[j - 1] : 2 * (ln_p[0] - f->face_ln_p[0]);
    double up_p = j < n - 1 ? ln_p[j + 1] - ln_p[j] : 2 * (ambient - ln_p[j]);
    double down_t = j > 0 ? theta[j] - theta[j - 1] : 2 * (theta[0] - lower_theta);
    double up_t = j < n - 1 ? theta[j + 1] - theta[j] : 2 * (upper_theta - theta[j]);
    double sp = limited(down_p, up_p), st = limited(down_t, up_t);
    w->slope_p[j] = sp;
    w->slope_t[j] = st;
    double wide = w->width[j], e = w->lead[j + 1] - w->lead[j], b2 = beta[j] * beta[j];
    double det = wide * wide - (e * e) / b2;
    double ds = 0.25 * (w->step[j] + w->step[j + 1]);
    w->half_p[j] = ln_p[j];
    w->half_t[j] = theta[j];
    if (ds > 0 && det > 0.3 * wide * wide) {
      double ratio = bend[j] / beta[j];
      double stretch = f->round ? f->sine[j] / (0.5 * (r[j] + r[j + 1])) : 0;
      double a = 1 / (ratio * b2), rp = sp + e * a * stretch;
      double pn = (wide * rp + e * a * st) / det, tn = (wide * st + e * ratio * rp) / det;
      w->half_p[j] = ln_p[j] - ds * a * (tn + stretch);
      w->half_t[j] = theta[j] - ds * ratio * pn;
    }
  }
  int m = n - 1;
  f->face_theta[0] = lower_theta;
  f->face_ln_p[0] = w->half_p[0] - 0.5 * w->slope_p[0] + (lower_theta - (w->half_t[0] - 0.5 * w->slope_t[0])) / bend[0];
  double jump = ambient - (w->half_p[m] + 0.5 * w->slope_p[m]);
  double above = w->half_t[m] + 0.5 * w->slope_t[m];
  f->face_ln_p[n] = ambient;
  if (fabs(jump) < SMALL_JUMP) f->face_theta[n] = above - bend[m] * jump;
  else f->face_theta[n] = above - (nu_of_speed(gas, f->speed[m]) - ambient_nu);
  for (int i = 1; i < n; i++) {
    double pl = w->half_p[i - 1] + 0.5 * w->slope_p[i - 1], pu = w->half_p[i] - 0.5 * w->slope_p[i];
    double tl = w->half_t[i - 1] + 0.5 * w->slope_t[i - 1], tu = w->half_t[i] - 0.5 * w->slope_t[i];
    double kl = bend[i - 1], ku = bend[i];
    double p = (tl - tu + kl * pl + ku * pu) / (kl + ku);
    f->face_ln_p[i] = p;
    f->face_theta[i] = tl - kl * (p - pl);
  }
  for (int i = 1; i <= n; i++) {
    int j = i < n ? i : n - 1;
    double turn = f->face_theta[i] - theta[j];
    if (turn < SMALL_TURN && turn > -SMALL_TURN) {
      double c = small_cosine(turn), s = small_sine(turn);
      w->to_x[i] = x[i] + w->step[i] * (f->cosine[j] * c - f->sine[j] * s);
      w->to_r[i] = r[i] + w->step[i] * (f->sine[j] * c + f->cosine[j] * s);
    } else {
      w->to_x[i] = x[i] + w->step[i] * cos(f->face_theta[i]);
      w->to_r[i] = r[i] + w->step[i] * sin(f->face_theta[i]);
    }
  }
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
