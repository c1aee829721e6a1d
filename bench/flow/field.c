/*
 * The step of a flow field in plain C, on floats of REAL: one block of one perfect gas between walls, the same sums in the
 * same order of cells as src/physics/euler. Reads the field of its arguments, takes steps, writes processor seconds and a sum.
 *
 *   field <ni> <nj> <seconds a step> <steps> <input>     input: nodes x, y, then density, u, v, pressure of the cells
 */
#define _POSIX_C_SOURCE 199309L
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#ifdef SINGLE
typedef float REAL;
#define SQRT sqrtf
#else
typedef double REAL;
#define SQRT sqrt
#endif

enum { RHO, U, V, P, Y, K, ETA, Z, E, VALUES };
enum { SLOPES = 5, FLUXES = 6 };

static int ni, nj, stride;
static REAL *field[VALUES], *kept[VALUES], *volume, *plane, *normal[2][3], *over;
static unsigned char *shock[2], *wall[2];

static REAL *reals(size_t n) { return calloc(n + 16, sizeof(REAL)); }
static int cell(int i, int j) { return (j + 2) * stride + i + 2; }

static void slopes_of_row(int from, int count, int step, REAL *restrict out, int width) {
  static const int of[SLOPES] = {RHO, U, V, P, Y};
  for (int k = 0; k < SLOPES; k++) {
    const REAL *restrict q = field[of[k]];
    REAL *restrict s = out + k * width;
    for (int i = 0; i < count; i++) {
      const REAL here = q[from + i], behind = here - q[from + i - step], ahead = q[from + i + step] - here;
      const REAL product = behind * ahead;
      s[i] = product > 0 ? 2 * product / (behind + ahead) : 0;
    }
  }
}

static void faces_of_row(int from, int count, int step, const REAL *restrict sl_, const REAL *restrict sr_, int width,
                         int dir, REAL *restrict out) {
  const REAL *const q[VALUES] = {field[RHO], field[U], field[V], field[P], field[Y], field[K], field[ETA], field[Z], field[E]};
  const REAL *restrict nx_ = normal[dir][0] + from, *restrict ny_ = normal[dir][1] + from,
             *restrict area_ = normal[dir][2] + from;
  const unsigned char *restrict mark = shock[1 - dir] + from, *restrict walls = wall[dir] + from;
#pragma GCC ivdep
  for (int i = 0; i < count; i++) {
    const int a = from + i, b = a + step;
    const REAL nx = nx_[i], ny = ny_[i], area = area_[i];
    REAL rl = q[RHO][a] + sl_[i] / 2, pl = q[P][a] + sl_[i + 3 * width] / 2;
    const REAL okl = rl > 0 && pl > 0 ? 1 : 0;
    rl = okl > 0 ? rl : q[RHO][a];
    pl = okl > 0 ? pl : q[P][a];
    REAL ux = q[U][a] + okl * sl_[i + width] / 2, uy = q[V][a] + okl * sl_[i + 2 * width] / 2;
    REAL yl = q[Y][a] + okl * sl_[i + 4 * width] / 2;
    REAL ul = ux * nx + uy * ny, vl = uy * nx - ux * ny;
    REAL rr = q[RHO][b] - sr_[i] / 2, pr = q[P][b] - sr_[i + 3 * width] / 2;
    const REAL okr = rr > 0 && pr > 0 ? 1 : 0;
    rr = okr > 0 ? rr : q[RHO][b];
    pr = okr > 0 ? pr : q[P][b];
    ux = q[U][b] - okr * sr_[i + width] / 2, uy = q[V][b] - okr * sr_[i + 2 * width] / 2;
    REAL yr = q[Y][b] - okr * sr_[i + 4 * width] / 2;
    REAL ur = ux * nx + uy * ny, vr = uy * nx - ux * ny;
    REAL kl = q[K][a], el = q[ETA][a], zl = q[Z][a], kr = q[K][b], er = q[ETA][b], zr = q[Z][b];
    const int low = walls[i] == 1, high = walls[i] == 2;
    const REAL through = ul;
    ul = low ? -ur : ul, ur = high ? -through : ur;
    rl = low ? rr : rl, pl = low ? pr : pl, vl = low ? vr : vl, yl = low ? yr : yl;
    kl = low ? kr : kl, el = low ? er : el, zl = low ? zr : zl;
    rr = high ? rl : rr, pr = high ? pl : pr, vr = high ? vl : vr, yr = high ? yl : yr;
    kr = high ? kl : kr, er = high ? el : er, zr = high ? zl : zr;
    const REAL between = q[Y][a] - q[Y][b];
    const int apart = between > (REAL)1e-9 || between < (REAL)-1e-9;
    const REAL moving_l = rl * (ul * ul + vl * vl) / 2, moving_r = rr * (ur * ur + vr * vr) / 2;
    const REAL left_a = kl * pl + el * rl + zl + moving_l, right_b = kr * pr + er * rr + zr + moving_r;
    const REAL right_a = apart ? kl * pr + el * rr + zl + moving_r : right_b;
    const REAL left_b = apart ? kr * pl + er * rl + zr + moving_l : left_a;
    const REAL square_l = ((kl + 1) * pl + zl) / (kl * rl), square_r = ((kr + 1) * pr + zr) / (kr * rr);
    const REAL wl = SQRT(rl), part = wl / (wl + SQRT(rr)), jump = ur - ul, mean = part * ul + (1 - part) * ur;
    const REAL middle = SQRT(part * square_l + (1 - part) * square_r + part * (1 - part) * jump * jump / 2);
    const REAL s1 = ul - SQRT(square_l), s2 = mean - middle, s3 = ur + SQRT(square_r), s4 = mean + middle;
    const REAL sl = s1 < s2 ? s1 : s2, sr = s3 > s4 ? s3 : s4;
    const REAL ml = rl * (sl - ul), mr = rr * (sr - ur);
    const REAL sm = (pr - pl + ul * ml - ur * mr) / (ml - mr);
    const int from_l = sl >= 0, from_r = !from_l && sr <= 0, left = !from_r && (from_l || sm >= 0);
    const REAL rk = left ? rl : rr, pk = left ? pl : pr, uk = left ? ul : ur, vk = left ? vl : vr, yk = left ? yl : yr;
    const REAL sk = left ? sl : sr, mk = left ? ml : mr;
    const REAL by_a = left ? left_a : right_a, by_b = left ? left_b : right_b;
    const REAL speed = from_l || from_r ? uk : sm;
    (void)rk;
    const REAL star = pk + mk * (speed - uk), per = speed / (sk - speed);
    REAL m = mk * per, pn = m * speed + star, pt = m * vk, my = m * yk;
    const REAL work = star * speed - pk * uk, push = star * speed;
    REAL ea = ((sk - uk) * by_a + work) * per + push, eb = ((sk - uk) * by_b + work) * per + push;
    const int strong = (mark[i] | mark[i + step]) && !from_l && !from_r;
    const REAL w = 1 / (sr - sl), gl = sr * w, gr = -sl * w, g = sl * gl, nl = rl * ul, nr = rr * ur;
    m = strong ? gl * nl + gr * nr + g * (rr - rl) : m;
    pn = strong ? gl * (nl * ul + pl) + gr * (nr * ur + pr) + g * (nr - nl) : pn;
    pt = strong ? gl * nl * vl + gr * nr * vr + g * (rr * vr - rl * vl) : pt;
    my = strong ? gl * nl * yl + gr * nr * yr + g * (rr * yr - rl * yl) : my;
    ea = strong ? gl * (left_a + pl) * ul + gr * (right_a + pr) * ur + g * (right_a - left_a) : ea;
    eb = strong ? gl * (left_b + pl) * ul + gr * (right_b + pr) * ur + g * (right_b - left_b) : eb;
    out[i] = m * area;
    out[i + width] = (pn * nx - pt * ny) * area;
    out[i + 2 * width] = (pn * ny + pt * nx) * area;
    out[i + 3 * width] = ea * area;
    out[i + 4 * width] = eb * area;
    out[i + 5 * width] = my * area;
  }
}

/* fi from the face before the row's first cell; lo, hi at its first cell. */
static void row_of_stage(int from, const REAL *restrict fi, const REAL *restrict lo, const REAL *restrict hi, int w,
                         int stage) {
  REAL *restrict rho = field[RHO] + from, *restrict u = field[U] + from, *restrict v = field[V] + from,
       *restrict p = field[P] + from, *restrict y = field[Y] + from, *restrict e = field[E] + from;
  const REAL *restrict k = field[K] + from, *restrict eta = field[ETA] + from, *restrict z = field[Z] + from;
  const REAL *restrict r0 = kept[RHO] + from, *restrict u0 = kept[U] + from, *restrict v0 = kept[V] + from,
             *restrict y0 = kept[Y] + from, *restrict e0 = kept[E] + from, *restrict dt = over + from,
             *restrict pa = plane + from;
  const REAL mix = stage ? (REAL)0.5 : 1;
#pragma GCC ivdep
  for (int i = 0; i < ni; i++) {
    REAL mass = rho[i] + dt[i] * (fi[i] - fi[i + 1] + lo[i] - hi[i]);
    REAL mx = rho[i] * u[i] + dt[i] * (fi[i + w] - fi[i + w + 1] + lo[i + w] - hi[i + w]);
    REAL my = rho[i] * v[i] + dt[i] * (fi[i + 2 * w] - fi[i + 2 * w + 1] + lo[i + 2 * w] - hi[i + 2 * w] + p[i] * pa[i]);
    REAL held = e[i] + dt[i] * (fi[i + 4 * w] - fi[i + 3 * w + 1] + lo[i + 4 * w] - hi[i + 3 * w]);
    REAL in = rho[i] * y[i] + dt[i] * (fi[i + 5 * w] - fi[i + 5 * w + 1] + lo[i + 5 * w] - hi[i + 5 * w]);
    mass = mix * mass + (1 - mix) * r0[i];
    mx = mix * mx + (1 - mix) * r0[i] * u0[i];
    my = mix * my + (1 - mix) * r0[i] * v0[i];
    held = mix * held + (1 - mix) * e0[i];
    in = mix * in + (1 - mix) * r0[i] * y0[i];
    const REAL per = 1 / mass;
    rho[i] = mass, u[i] = mx * per, v[i] = my * per, y[i] = in * per, e[i] = held;
    p[i] = (held - (mx * mx + my * my) * per / 2 - eta[i] * mass - z[i]) / k[i];
  }
}

static void beyond_wall(int ghost, int inside, int next, int mirrored, int layer, REAL nx, REAL ny) {
  const REAL r = field[RHO][inside] + (layer + 1) * (field[RHO][inside] - field[RHO][next]);
  const REAL p = field[P][inside] + (layer + 1) * (field[P][inside] - field[P][next]);
  const int on = r > 0 && p > 0, from = on ? inside : mirrored;
  for (int q = 0; q < VALUES; q++) field[q][ghost] = field[q][from];
  if (on) {
    field[RHO][ghost] = r, field[P][ghost] = p;
    field[U][ghost] += (layer + 1) * (field[U][inside] - field[U][next]);
    field[V][ghost] += (layer + 1) * (field[V][inside] - field[V][next]);
  } else {
    const REAL t = field[U][from] * nx + field[V][from] * ny;
    field[U][ghost] -= 2 * t * nx, field[V][ghost] -= 2 * t * ny;
  }
}

static void look(void) {
  for (int layer = 0; layer < 2; layer++) {
    for (int j = 0; j < nj; j++) {
      const int f = cell(-1, j), l = cell(ni - 1, j);
      beyond_wall(cell(-1 - layer, j), cell(0, j), cell(1, j), cell(layer, j), layer, normal[0][0][f], normal[0][1][f]);
      beyond_wall(cell(ni + layer, j), cell(ni - 1, j), cell(ni - 2, j), cell(ni - 1 - layer, j), layer,
                  normal[0][0][l], normal[0][1][l]);
    }
    for (int i = 0; i < ni; i++) {
      const int f = cell(i, -1), l = cell(i, nj - 1);
      beyond_wall(cell(i, -1 - layer), cell(i, 0), cell(i, 1), cell(i, layer), layer, normal[1][0][f], normal[1][1][f]);
      beyond_wall(cell(i, nj + layer), cell(i, nj - 1), cell(i, nj - 2), cell(i, nj - 1 - layer), layer,
                  normal[1][0][l], normal[1][1][l]);
    }
  }
  const REAL *restrict p = field[P];
  for (int j = 0; j < nj; j++)
    for (int d = 0; d < 2; d++) {
      const int step = d ? stride : 1, at = cell(0, j);
      unsigned char *restrict out = shock[d];
      for (int i = at; i < at + ni; i++) {
        const REAL lo = p[i - step] < p[i + step] ? p[i - step] : p[i + step];
        const REAL hi = p[i - step] < p[i + step] ? p[i + step] : p[i - step];
        out[i] = hi - lo > (REAL)0.8 * lo;
      }
    }
  for (int d = 0; d < 2; d++) {
    for (int j = 0; j < nj; j++) shock[d][cell(-1, j)] = shock[d][cell(0, j)], shock[d][cell(ni, j)] = shock[d][cell(ni - 1, j)];
    for (int i = 0; i < ni; i++) shock[d][cell(i, -1)] = shock[d][cell(i, 0)], shock[d][cell(i, nj)] = shock[d][cell(i, nj - 1)];
  }
}

static void step(void) {
  static REAL *rows;
  const int w = (stride + 15) / 16 * 16;
  if (!rows) rows = reals((size_t)w * 33);
  for (int stage = 0; stage < 2; stage++) {
    look();
    if (stage == 0) for (int q = 0; q < VALUES; q++) memcpy(kept[q], field[q], sizeof(REAL) * (size_t)stride * (size_t)(nj + 4));
    REAL *si = rows, *behind = rows + 5 * w, *here = rows + 10 * w, *fi = rows + 15 * w, *lo = rows + 21 * w, *hi = rows + 27 * w;
    slopes_of_row(cell(0, -1), ni, stride, behind, w);
    for (int line = 0; line <= nj; line++) {
      slopes_of_row(cell(0, line), ni, stride, here, w);
      faces_of_row(cell(0, line - 1), ni, stride, behind, here, w, 1, hi);
      if (line > 0) {
        slopes_of_row(cell(-1, line - 1), ni + 2, 1, si, w);
        faces_of_row(cell(-1, line - 1), ni + 1, 1, si, si + 1, w, 0, fi);
        row_of_stage(cell(0, line - 1), fi, lo, hi, w, stage);
      }
      REAL *t = lo; lo = hi; hi = t;
      t = behind; behind = here; here = t;
    }
  }
}

int main(int argc, char **argv) {
  if (argc != 6) return 2;
  ni = atoi(argv[1]), nj = atoi(argv[2]), stride = ni + 4;
  const double seconds = atof(argv[3]);
  const int steps = atoi(argv[4]);
  const size_t all = (size_t)stride * (size_t)(nj + 4), nodes = (size_t)(ni + 1) * (size_t)(nj + 1), cells = (size_t)ni * (size_t)nj;
  double *in = malloc(sizeof(double) * (2 * nodes + 4 * cells));
  FILE *file = fopen(argv[5], "rb");
  if (!file || fread(in, sizeof(double), 2 * nodes + 4 * cells, file) != 2 * nodes + 4 * cells) return 3;
  fclose(file);
  for (int q = 0; q < VALUES; q++) field[q] = reals(all), kept[q] = reals(all);
  for (int d = 0; d < 2; d++) {
    for (int k = 0; k < 3; k++) normal[d][k] = reals(all);
    shock[d] = calloc(all + 16, 1), wall[d] = calloc(all + 16, 1);
  }
  volume = reals(all), plane = reals(all), over = reals(all);
  for (size_t c = 0; c < all; c++) field[RHO][c] = field[P][c] = field[K][c] = volume[c] = 1;
  const double *x = in, *y = in + nodes, *start = in + 2 * nodes;
  for (int j = 0; j <= nj; j++)
    for (int i = 0; i <= ni; i++) {
      const int n = j * (ni + 1) + i, r = n + 1, t = n + ni + 1;
      if (j < nj) {
        const double ax = y[t] - y[n], ay = x[n] - x[t], area = sqrt(ax * ax + ay * ay);
        const int c = cell(i - 1, j);
        normal[0][0][c] = (REAL)(ax / area), normal[0][1][c] = (REAL)(ay / area), normal[0][2][c] = (REAL)area;
        if (i == 0) wall[0][c] = 1;
        if (i == ni) wall[0][c] = 2;
      }
      if (i < ni) {
        const double ax = y[n] - y[r], ay = x[r] - x[n], area = sqrt(ax * ax + ay * ay);
        const int c = cell(i, j - 1);
        normal[1][0][c] = (REAL)(ax / area), normal[1][1][c] = (REAL)(ay / area), normal[1][2][c] = (REAL)area;
        if (j == 0) wall[1][c] = 1;
        if (j == nj) wall[1][c] = 2;
      }
      if (i < ni && j < nj) {
        const int c = cell(i, j), k = t + 1;
        const double size = ((x[r] - x[n]) * (y[k] - y[n]) - (x[k] - x[n]) * (y[r] - y[n]) +
                             (x[k] - x[n]) * (y[t] - y[n]) - (x[t] - x[n]) * (y[k] - y[n])) / 2;
        const size_t s = (size_t)j * (size_t)ni + (size_t)i;
        const double rho = start[s], u = start[cells + s], v = start[2 * cells + s], p = start[3 * cells + s];
        volume[c] = (REAL)size, over[c] = (REAL)(seconds / size);
        field[RHO][c] = (REAL)rho, field[U][c] = (REAL)u, field[V][c] = (REAL)v, field[P][c] = (REAL)p;
        field[K][c] = (REAL)2.5, field[E][c] = (REAL)(2.5 * p + rho * (u * u + v * v) / 2);
      }
    }
  struct timespec a, b;
  double least = 1e30, sum = 0;
  for (int n = 0; n < steps; n++) {
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &a);
    step();
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &b);
    const double took = (double)(b.tv_sec - a.tv_sec) + 1e-9 * (double)(b.tv_nsec - a.tv_nsec);
    if (took < least) least = took;
  }
  for (int j = 0; j < nj; j++)
    for (int i = 0; i < ni; i++) sum += (double)field[P][cell(i, j)] * (double)field[RHO][cell(i, j)];
  printf("{\"least\":%.9g,\"sum\":%.15g}\n", least, sum);
  return 0;
}
