/*
 * Reads the input file named on its command line, then a request a line on standard input, `<kernel> <warm-up s> <s>`,
 * and answers each with a line of JSON: processor seconds of every run, checksum, count.
 */
#define _POSIX_C_SOURCE 199309L
#include "flow.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

jmp_buf gave_up;

static const char *reason;

void give_up(const char *why) {
  reason = why;
  longjmp(gave_up, 1);
}

enum { FRONT_ARRAYS = 17 };

static const double *input;

static double next(void) {
  return *input++;
}

static const double *take(size_t count) {
  const double *at = input;
  input += count;
  return at;
}

typedef struct {
  const double *front[FRONT_ARRAYS];
  WallLine wall;
  double ln_p, nu;
} PlugCase;

static Table bell_table, plug_table;
static const double *start;
static int start_count, wall_count, plug_count, tubes;
static const WallPoint *wall;
static TubeGas gas;
static PlugCase *plugs;
static Front front;

static Table read_table(void) {
  Table t;
  t.nu_max = next();
  t.step = next();
  t.cells = (int)next();
  t.mu = take(2 * ((size_t)t.cells + 1));
  t.speed = take(2 * ((size_t)t.cells + 1));
  return t;
}

/* Arrays of a front in the order of Front; faces and nodes have one number more than tubes. */
static size_t front_length(int k) {
  return (size_t)tubes + (k < 2 || k >= 14 ? 1 : 0);
}

static double **front_arrays(void) {
  static double *memory[FRONT_ARRAYS];
  for (int k = 0; k < FRONT_ARRAYS; k++) memory[k] = malloc(front_length(k) * sizeof(double));
  return memory;
}

static double **fields;

static void read_input(const char *path) {
  FILE *file = fopen(path, "rb");
  if (!file) exit(2);
  fseek(file, 0, SEEK_END);
  size_t size = (size_t)ftell(file);
  rewind(file);
  double *all = malloc(size);
  if (!all || fread(all, 1, size, file) != size) exit(2);
  fclose(file);
  input = all;
  bell_table = read_table();
  start_count = (int)next();
  start = take((size_t)start_count * NODE);
  wall_count = (int)next();
  wall = (const WallPoint *)take((size_t)wall_count * 3);
  plug_table = read_table();
  gas.slowest = next();
  gas.fastest = next();
  gas.step = next();
  gas.cells = (int)next();
  gas.knots = take(((size_t)gas.cells + 1) * 8);
  gas.table = &plug_table;
  tubes = (int)next();
  plug_count = (int)next();
  plugs = malloc((size_t)plug_count * sizeof(PlugCase));
  for (int i = 0; i < plug_count; i++) {
    PlugCase *c = plugs + i;
    for (int k = 0; k < FRONT_ARRAYS; k++) c->front[k] = take(front_length(k));
    c->ln_p = next();
    c->nu = next();
    c->wall.count = (int)next();
    c->wall.x = take((size_t)c->wall.count);
    c->wall.r = take((size_t)c->wall.count);
    c->wall.along = take((size_t)c->wall.count);
  }
  fields = front_arrays();
  front.count = tubes;
  front.round = 1;
  front.x = fields[0];
  front.r = fields[1];
  front.mass = fields[2];
  front.momentum_x = fields[3];
  front.momentum_r = fields[4];
  front.speed = fields[5];
  front.theta = fields[6];
  front.cosine = fields[7];
  front.sine = fields[8];
  front.ln_p = fields[9];
  front.pressure = fields[10];
  front.ln_sigma = fields[11];
  front.bend = fields[12];
  front.beta = fields[13];
  front.face_ln_p = fields[14];
  front.face_p = fields[15];
  front.face_theta = fields[16];
}

typedef struct {
  double checksum;
  long count;
} Result;

static Result run_bell(int summed) {
  Net net;
  Result result = {0, march_along_wall(&net, &bell_table, start, start_count, wall, wall_count)};
  if (summed)
    for (long i = 0; i < result.count * NODE; i++) result.checksum += net.nodes[i];
  free(net.nodes);
  free(net.starts);
  return result;
}

static Result run_plug(int summed) {
  Result result = {0, 0};
  for (int i = 0; i < plug_count; i++) {
    for (int k = 0; k < FRONT_ARRAYS; k++) memcpy(fields[k], plugs[i].front[k], front_length(k) * sizeof(double));
    Marched marched = march_tubes(&front, &gas, &plugs[i].wall, plugs[i].ln_p, plugs[i].nu);
    result.count += marched.steps;
    result.checksum += marched.force_lower + marched.force_upper;
    if (summed)
      for (int j = 0; j < tubes; j++) result.checksum += front.momentum_x[j] + front.momentum_r[j];
  }
  return result;
}

static double read_clock(clockid_t clock) {
  struct timespec t;
  clock_gettime(clock, &t);
  return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

int main(int count, char **arguments) {
  char kernel[16];
  double warm_up, seconds;
  if (count != 2) return 2;
  read_input(arguments[1]);
  if (setjmp(gave_up)) {
    fprintf(stderr, "the C version gave up: %s\n", reason);
    return 1;
  }
  while (scanf("%15s %lf %lf", kernel, &warm_up, &seconds) == 3) {
    Result (*run)(int) = strcmp(kernel, "bell") == 0 ? run_bell : run_plug;
    Result result = run(1);
    double end = read_clock(CLOCK_MONOTONIC) + warm_up;
    while (read_clock(CLOCK_MONOTONIC) < end) run(0);
    printf("{\"seconds\":[");
    end = read_clock(CLOCK_MONOTONIC) + seconds;
    for (int i = 0; i < 3 || read_clock(CLOCK_MONOTONIC) < end; i++) {
      double from = read_clock(CLOCK_PROCESS_CPUTIME_ID);
      run(0);
      printf("%s%.9g", i ? "," : "", read_clock(CLOCK_PROCESS_CPUTIME_ID) - from);
    }
    printf("],\"checksum\":%.17g,\"count\":%ld}\n", result.checksum, result.count);
    fflush(stdout);
  }
  return 0;
}
