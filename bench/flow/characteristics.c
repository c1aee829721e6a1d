/* src/physics/flow/points.ts, lineMarch.ts, wallMarch.ts, net.ts; axisymmetric. */
#include "flow.h"

#include <stdlib.h>
#include <string.h>

static const double TOLERANCE = 1e-11;
static const int MOST_STEPS = 40;

static double mu_at(const Table *table, double nu) {
  return column_at(table->mu, table->step, table->cells, nu);
}

static void require_in_table(const Table *table, double nu) {
  if (!(nu >= 0 && nu <= table->nu_max * (1 + 1e-12))) give_up("outside the table");
}

static double curvature_term(double theta, double r, double other_theta, double other_r) {
  if (r > 1e-12 * (other_r > 0 ? other_r : 1)) return sin(theta) / r;
  return other_r > 0 ? sin(other_theta) / other_r : 0;
}

static void meet(double *out, const Table *table, const double *a, const double *b) {
  double ax = a[0], ar = a[1], a_theta = a[2], a_mu = a[4];
  double bx = b[0], br = b[1], b_theta = b[2], b_mu = b[4];
  double minus = a_theta + a[3], plus = b_theta - b[3];
  double theta = 0.5 * (minus + plus), nu = 0.5 * (minus - plus), mu = 0.5 * (a_mu + b_mu);
  double x = 0, r = 0;
  for (int step = 0;; step++) {
    double down = 0.5 * (a_theta - a_mu + theta - mu), up = 0.5 * (b_theta + b_mu + theta + mu);
    double cd = cos(down), sd = sin(down), cu = cos(up), su = sin(up);
    double cross = cd * su - sd * cu;
    if (!(fabs(cross) > 1e-9)) give_up("characteristics side by side");
    double s = ((bx - ax) * su - (br - ar) * cu) / cross;
    double t = ((bx - ax) * sd - (br - ar) * cd) / cross;
    x = ax + s * cd;
    r = ar + s * sd;
    double here = curvature_term(theta, r, a_theta, ar) * sin(mu);
    double new_minus =
      minus + (2 * r < ar ? (s * sin(0.5 * (a_theta + theta)) * sin(0.5 * (a_mu + mu))) / (0.5 * (ar + r))
                          : 0.5 * s * (curvature_term(a_theta, ar, theta, r) * sin(a_mu) + here));
    double new_plus = plus - 0.5 * t * (curvature_term(b_theta, br, theta, r) * sin(b_mu) + here);
    double next_theta = 0.5 * (new_minus + new_plus), next_nu = 0.5 * (new_minus - new_plus);
    double moved = fabs(next_theta - theta) + fabs(next_nu - nu);
    theta = next_theta;
    nu = next_nu;
    if (!(nu >= 0 && nu <= table->nu_max)) require_in_table(table, nu);
    mu = mu_at(table, nu);
    if (step > 0 && moved < TOLERANCE) break;
    if (step > MOST_STEPS) give_up("interior point");
  }
  out[0] = x;
  out[1] = r;
  out[2] = theta;
  out[3] = nu;
  out[4] = mu;
}

static void meet_axis(double *out, const Table *table, const double *a) {
  double ax = a[0], ar = a[1], a_theta = a[2], a_mu = a[4];
  double minus = a_theta + a[3], curvature = sin(a_theta) / ar;
  double nu = minus, mu = mu_at(table, nu < table->nu_max ? nu : table->nu_max), x = 0;
  for (int step = 0;; step++) {
    double angle = 0.5 * (a_theta - a_mu - mu);
    double s = -ar / sin(angle);
    x = ax + s * cos(angle);
    double next = minus + 0.5 * s * curvature * (sin(a_mu) + sin(mu));
    double moved = fabs(next - nu);
    nu = next;
    require_in_table(table, nu);
    mu = mu_at(table, nu);
    if (step > 0 && moved < TOLERANCE) break;
    if (step > MOST_STEPS) give_up("axis point");
  }
  out[0] = x;
  out[1] = 0;
  out[2] = 0;
  out[3] = nu;
  out[4] = mu;
}

static double wall_from_segment(double *out, const Table *table, const double *i, const double *j) {
  double x = out[0], r = out[1], theta = out[2];
  double dx = j[0] - i[0], dr = j[1] - i[1];
  double share = 0.5, nu = i[3], mu = i[4];
  for (int step = 0;; step++) {
    double f_theta = i[2] + share * (j[2] - i[2]);
    double f_nu = i[3] + share * (j[3] - i[3]);
    double f_mu = i[4] + share * (j[4] - i[4]);
    double angle = 0.5 * (f_theta + f_mu + theta + mu);
    double c = cos(angle), s = sin(angle);
    double cross = dx * s - dr * c;
    if (!(fabs(cross) > 1e-14 * (fabs(dx) + fabs(dr)))) give_up("characteristics side by side");
    share = ((x - i[0]) * s - (r - i[1]) * c) / cross;
    if (!(share > -4 && share < 5)) return share;
    double fx = i[0] + share * dx, fr = i[1] + share * dr;
    double length = (x - fx) * c + (r - fr) * s;
    double plus = f_theta - f_nu;
    double foot = curvature_term(f_theta, fr, theta, r) * sin(f_mu);
    plus -= 0.5 * length * (foot + (sin(theta) / r) * sin(mu));
    double next = theta - plus, moved = fabs(next - nu);
    nu = next;
    if (!(nu >= 0 && nu <= table->nu_max)) {
      if (share < 0 || share > 1) return share;
      require_in_table(table, nu);
    }
    mu = mu_at(table, nu);
    if (step > 1 && moved < TOLERANCE) break;
    if (step > MOST_STEPS) give_up("wall point");
  }
  out[3] = nu;
  out[4] = mu;
  return share;
}

static int lies_downstream(const double *from, const double *old) {
  double angle = 0.5 * (from[2] - from[4] + old[2] - old[4]);
  double dx = old[0] - from[0], dr = old[1] - from[1];
  return cos(angle) * dr - sin(angle) * dx >= 0;
}

static void overtake(double *out, const Table *table, const double *ahead) {
  const double *before = out - NODE;
  double x = ahead[0], r = ahead[1];
  double plus = ahead[2] - ahead[3], minus = before[2] + before[3];
  if (before[1] > 0) {
    double length = hypot(x - before[0], r - before[1]);
    double at_before = (sin(before[2]) / before[1]) * sin(before[4]);
    double at_here = r > 0 ? (sin(ahead[2]) / r) * sin(ahead[4]) : at_before;
    minus += 0.5 * length * (at_before + at_here);
  }
  double nu = 0.5 * (minus - plus);
  require_in_table(table, nu);
  out[0] = x;
  out[1] = r;
  out[2] = 0.5 * (minus + plus);
  out[3] = nu;
  out[4] = mu_at(table, nu);
}

static int meet_past_crossings(double *first, const Table *table, int made, const double *ahead) {
  for (;;) {
    double *at = first + made * NODE, *before = at - NODE;
    meet(at, table, before, ahead);
    double angle = before[2] - before[4];
    double along = (at[0] - before[0]) * cos(angle) + (at[1] - before[1]) * sin(angle);
    if (along > 0 || made < 2) return made;
    made--;
  }
}

static double *open_line(Net *net, int count) {
  size_t first = (size_t)net->starts[net->lines] * NODE;
  size_t wanted = first + (size_t)count * NODE;
  if (wanted > net->capacity) {
    net->capacity = 2 * net->capacity > wanted ? 2 * net->capacity : wanted;
    net->nodes = realloc(net->nodes, net->capacity * sizeof(double));
    if (!net->nodes) give_up("out of memory");
  }
  return net->nodes + first;
}

static void close_line(Net *net, int count) {
  net->starts[net->lines + 1] = net->starts[net->lines] + count;
  net->lines++;
}

static void complete_line(Net *net, const Table *table, double *first, const double *old, int foot, int count) {
  for (int j = foot + 1; j < count; j++) {
    const double *ahead = old + j * NODE;
    double *before = first + (net->made - 1) * NODE;
    int overtaken = lies_downstream(before, ahead);
    if (overtaken && ahead[1] == 0) break;
    if (overtaken) {
      overtake(before + NODE, table, ahead);
      net->shocked = 1;
    } else {
      net->made = meet_past_crossings(first, table, net->made, ahead);
      if (first[net->made * NODE + 1] <= 0) break;
    }
    net->made++;
  }
  if (net->reaches_axis) {
    meet_axis(first + net->made * NODE, table, first + (net->made - 1) * NODE);
    net->made++;
  }
}

static void march_one_line(Net *net, const Table *table, const WallPoint *point) {
  int line = net->lines - 1;
  int count = net->starts[line + 1] - net->starts[line];
  double *first = open_line(net, count + 1);
  const double *old = net->nodes + (size_t)net->starts[line] * NODE;
  first[0] = point->axial;
  first[1] = point->radius;
  first[2] = point->angle;
  int foot = 0;
  for (;; foot++) {
    if (foot + 1 >= count) give_up("wall step too long");
    if (wall_from_segment(first, table, old + foot * NODE, old + (foot + 1) * NODE) <= 1 + 1e-12) break;
  }
  net->made = 1;
  /* Where an internal shock meets the axis the net of weak shocks ends, and the line with what it has. */
  jmp_buf outer;
  memcpy(&outer, &gave_up, sizeof outer);
  if (setjmp(gave_up) == 0) complete_line(net, table, first, old, foot, count);
  else {
    memcpy(&gave_up, &outer, sizeof outer);
    if (!net->shocked || net->made < 3) give_up("a line ended without a shock");
    net->reaches_axis = 0;
  }
  memcpy(&gave_up, &outer, sizeof outer);
  close_line(net, net->made);
}

int march_along_wall(Net *net, const Table *table, const double *start, int start_count, const WallPoint *wall, int count) {
  net->lines = 0;
  net->shocked = 0;
  net->reaches_axis = 1;
  net->starts = malloc((size_t)(count + 2) * sizeof(int));
  net->capacity = (size_t)start_count * (size_t)(count + 2) * NODE;
  net->nodes = malloc(net->capacity * sizeof(double));
  if (!net->starts || !net->nodes) give_up("out of memory");
  net->starts[0] = 0;
  memcpy(open_line(net, start_count), start, (size_t)start_count * NODE * sizeof(double));
  close_line(net, start_count);
  for (int i = 0; i < count; i++) march_one_line(net, table, wall + i);
  return net->starts[net->lines];
}
