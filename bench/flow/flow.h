/* Plain C version of the flow kernels, for bench/flow/run.mjs alone: same steps, same order of operations as src/physics/flow. */
#ifndef FLOW_H
#define FLOW_H

#include <math.h>
#include <setjmp.h>
#include <stddef.h>

/* Numbers per node: x, r, theta, nu, mu. */
enum { NODE = 5 };

typedef struct {
  double nu_max, step;
  int cells;
  /* value and slope times step, interleaved */
  const double *mu, *speed;
} Table;

typedef struct {
  double slowest, fastest, step;
  int cells;
  const double *knots;
  const Table *table;
} TubeGas;

typedef struct {
  double axial, radius, angle;
} WallPoint;

typedef struct {
  double *nodes;
  size_t capacity;
  /* number of the first node of each line, and one more */
  int *starts;
  int lines;
  /* nodes of the line under way; whether lines have run together; whether lines still reach the axis */
  int made, shocked, reaches_axis;
} Net;

typedef struct {
  int count;
  const double *x, *r, *along;
} WallLine;

typedef struct {
  int count;
  int round;
  double *x, *r, *mass, *momentum_x, *momentum_r, *speed, *theta, *cosine, *sine, *ln_p, *pressure, *ln_sigma, *bend, *beta;
  double *face_ln_p, *face_p, *face_theta;
} Front;

typedef struct {
  double force_lower, force_upper;
  int steps;
} Marched;

/* Where a kernel gives up. */
extern jmp_buf gave_up;
void give_up(const char *why);

static inline double column_at(const double *knots, double step, int cells, double nu) {
  double s = cbrt(nu) / step;
  int i = (int)s;
  if (i >= cells) i = cells - 1;
  double t = s - i;
  const double *k = knots + 2 * i;
  double a = k[0], da = k[1], db = k[3], d = k[2] - a;
  return a + t * (da + t * (3 * d - 2 * da - db + t * (da + db - 2 * d)));
}

/* Axisymmetric flow along a given wall. Returns the number of nodes. */
int march_along_wall(Net *net, const Table *table, const double *start, int start_count, const WallPoint *wall, int count);

/* Streamtubes between a wall below and a free boundary above. `front` is changed. */
Marched march_tubes(Front *front, const TubeGas *gas, const WallLine *wall, double ambient_ln_p, double ambient_nu);

#endif
