/* Integrates a year of rooms with CVODE, a general integrator for stiff equations, and tells how long that takes and how near it
 * comes to the exact answer. What is integrated is read from a file that package warmth writes: README.md tells its lines.
 *
 *     C dT/dt = -G T + B u      u stands still in each hour
 *
 * Nodes that store nothing are taken out before the clock starts, and B u is worked out for every hour: what is timed
 * is CVODE at work, with the Jacobian given and the linear systems solved sparse (KLU). Both ways of meeting the jumps at
 * full hours are tried, by tolerance, and every try is printed. */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sunlinsol/sunlinsol_klu.h>
#include <sunmatrix/sunmatrix_sparse.h>
#include <time.h>

enum { MOST_ROOMS = 16, WORD = 64 };

static const double HOUR = 3600; /* s */

/* A network as it was read, then as it is integrated: the first `storing` of `node` in use. */
struct network {
  int states, inputs, hours, rooms, storing;
  double *capacity, *g, *b, *u, *truth;
  int room[MOST_ROOMS]; /* state of each room's air */
  double begin, asked;
  int *node;     /* states that store, in order */
  double *force; /* K/s of each of them in each hour */
  int *starts, *at;
  double *rate; /* -G/C by columns */
};

/* What is in force while CVODE asks for derivatives. */
struct moment {
  const struct network *n;
  const double *force;
};

static void refuse(const char *why) {
  fprintf(stderr, "stiff: %s\n", why);
  exit(1);
}

static void need(int failed, const char *what) {
  if (failed) refuse(what);
}

static void *room_for(size_t count, size_t size) {
  void *p = calloc(count ? count : 1, size);
  if (!p) refuse("not enough memory");
  return p;
}

static double number(FILE *f) {
  double v;
  if (fscanf(f, "%lf", &v) != 1) refuse("a number is missing");
  return v;
}

/* element adds to the heats that leave states and inputs by the temperatures of both; inputs count from -1 down. */
static void element(struct network *n, int a, int b, double v) {
  if (a < 0 && b < 0) return;
  if (a < 0) {
    int swap = a;
    a = b, b = swap;
  }
  if (b < 0) {
    n->b[a * n->inputs - 1 - b] -= v;
    return;
  }
  n->g[a * n->states + b] += v;
  if (a != b) n->g[b * n->states + a] += v;
}

static void read_hours(struct network *n, FILE *f) {
  n->u = room_for((size_t)n->hours * n->inputs, sizeof *n->u);
  n->truth = room_for((size_t)n->hours * n->rooms, sizeof *n->truth);
  for (int h = 0; h < n->hours; h++) {
    for (int k = 0; k < n->inputs; k++) n->u[h * n->inputs + k] = number(f);
    for (int r = 0; r < n->rooms; r++) n->truth[h * n->rooms + r] = number(f);
  }
}

static void read_network(struct network *n, FILE *f) {
  char word[WORD];
  while (fscanf(f, "%63s", word) == 1) {
    if (!strcmp(word, "size")) {
      n->states = (int)number(f), n->inputs = (int)number(f);
      n->capacity = room_for(n->states, sizeof *n->capacity);
      n->g = room_for((size_t)n->states * n->states, sizeof *n->g);
      n->b = room_for((size_t)n->states * n->inputs, sizeof *n->b);
    } else if (!strcmp(word, "holds")) {
      int i = (int)number(f);
      n->capacity[i] = number(f);
    } else if (!strcmp(word, "element")) {
      int a = (int)number(f), b = (int)number(f);
      element(n, a, b, number(f));
    } else if (!strcmp(word, "room")) {
      if (n->rooms == MOST_ROOMS) refuse("too many rooms");
      n->room[n->rooms++] = (int)number(f);
    } else if (!strcmp(word, "begin")) {
      n->begin = number(f);
    } else if (!strcmp(word, "asked")) {
      n->asked = number(f);
    } else if (!strcmp(word, "hours")) {
      n->hours = (int)number(f);
      read_hours(n, f);
    } else {
      refuse("a word that is none of size, holds, element, room, begin, asked, hours");
    }
  }
  need(!n->hours || !n->rooms, "no hours or no rooms in the file");
}

/* take_out lets a state without capacity follow the others at once. */
static void take_out(struct network *n, int m) {
  const double *row = n->g + (size_t)m * n->states;
  need(row[m] <= 0, "a node without capacity that nothing holds");
  for (int i = 0; i < n->states; i++) {
    double share = n->g[(size_t)i * n->states + m] / row[m];
    if (i == m || share == 0) continue;
    for (int j = 0; j < n->states; j++)
      if (j != m) n->g[(size_t)i * n->states + j] -= share * row[j];
    n->g[(size_t)i * n->states + m] = 0;
    for (int k = 0; k < n->inputs; k++) n->b[(size_t)i * n->inputs + k] -= share * n->b[(size_t)m * n->inputs + k];
  }
}

/* settle leaves dT/dt = rate T + force of the states that store. */
static void settle(struct network *n) {
  int *place = room_for(n->states, sizeof *place);
  n->node = room_for(n->states, sizeof *n->node);
  for (int i = 0; i < n->states; i++) {
    place[i] = -1;
    if (n->capacity[i] > 0)
      place[i] = n->storing, n->node[n->storing++] = i;
    else
      take_out(n, i);
  }
  for (int r = 0; r < n->rooms; r++) need((n->room[r] = place[n->room[r]]) < 0, "the air of a room stores nothing");
  n->force = room_for((size_t)n->hours * n->storing, sizeof *n->force);
  for (int h = 0; h < n->hours; h++)
    for (int p = 0; p < n->storing; p++)
      for (int k = 0; k < n->inputs; k++)
        n->force[h * n->storing + p] += n->b[n->node[p] * n->inputs + k] * n->u[h * n->inputs + k] / n->capacity[n->node[p]];
  n->starts = room_for(n->storing + 1, sizeof *n->starts);
  n->at = room_for((size_t)n->storing * n->storing, sizeof *n->at);
  n->rate = room_for((size_t)n->storing * n->storing, sizeof *n->rate);
  for (int j = 0; j < n->storing; j++) {
    int count = n->starts[j];
    for (int i = 0; i < n->storing; i++) {
      double g = n->g[n->node[i] * n->states + n->node[j]];
      if (g != 0) n->at[count] = i, n->rate[count++] = -g / n->capacity[n->node[i]];
    }
    n->starts[j + 1] = count;
  }
  free(place);
}

static int derivative(realtype t, N_Vector y, N_Vector dy, void *data) {
  (void)t;
  const struct moment *m = data;
  const double *T = N_VGetArrayPointer(y);
  double *d = N_VGetArrayPointer(dy);
  memcpy(d, m->force, (size_t)m->n->storing * sizeof *d);
  for (int j = 0; j < m->n->storing; j++)
    for (int e = m->n->starts[j]; e < m->n->starts[j + 1]; e++) d[m->n->at[e]] += m->n->rate[e] * T[j];
  return 0;
}

static int jacobian(realtype t, N_Vector y, N_Vector dy, SUNMatrix J, void *data, N_Vector a, N_Vector b, N_Vector c) {
  (void)t, (void)y, (void)dy, (void)a, (void)b, (void)c;
  const struct network *n = ((struct moment *)data)->n;
  for (int j = 0; j <= n->storing; j++) SUNSparseMatrix_IndexPointers(J)[j] = n->starts[j];
  for (int e = 0; e < n->starts[n->storing]; e++) SUNSparseMatrix_IndexValues(J)[e] = n->at[e], SUNSparseMatrix_Data(J)[e] = n->rate[e];
  return 0;
}

static double seconds(void) {
  struct timespec t;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return t.tv_sec + 1e-9 * t.tv_nsec;
}

/* A try is one year: how long it took, s, how far the rooms' air was off, K rms, and the steps made. */
struct try {
  double took, off;
  long steps;
};

/* live integrates the year to a tolerance, K. Afresh: CVODE starts anew at each full hour, else it goes on with what it remembers. */
static struct try live(const struct network *n, double tolerance, int afresh, SUNContext context) {
  struct moment m = {n, n->force};
  struct try got = {0};
  double squares = 0;
  N_Vector y = N_VNew_Serial(n->storing, context);
  N_VConst(n->begin, y);
  void *cv = CVodeCreate(CV_BDF, context);
  SUNMatrix A = SUNSparseMatrix(n->storing, n->storing, n->starts[n->storing], CSC_MAT, context);
  SUNLinearSolver solver = SUNLinSol_KLU(y, A, context);
  need(CVodeInit(cv, derivative, 0, y) || CVodeSStolerances(cv, 0, tolerance) || CVodeSetUserData(cv, &m) ||
           CVodeSetLinearSolver(cv, solver, A) || CVodeSetJacFn(cv, jacobian) || CVodeSetMaxNumSteps(cv, 1000000),
       "CVODE does not start");
  double begin = seconds();
  for (int h = 0; h < n->hours; h++) {
    realtype end = (h + 1) * HOUR, t = h * HOUR;
    long steps;
    m.force = n->force + (size_t)h * n->storing;
    if (afresh && h > 0) need(CVodeReInit(cv, t, y), "CVODE does not start anew");
    need(CVodeSetStopTime(cv, end) || CVode(cv, end, y, &t, CV_NORMAL) < 0, "CVODE gives up");
    if (afresh) CVodeGetNumSteps(cv, &steps), got.steps += steps;
    for (int r = 0; r < n->rooms; r++) {
      double off = N_VGetArrayPointer(y)[n->room[r]] - n->truth[h * n->rooms + r];
      squares += off * off;
    }
  }
  got.took = seconds() - begin;
  if (!afresh) CVodeGetNumSteps(cv, &got.steps);
  got.off = sqrt(squares / ((double)n->hours * n->rooms));
  N_VDestroy(y);
  CVodeFree(&cv);
  SUNLinSolFree(solver);
  SUNMatDestroy(A);
  return got;
}

int main(int argc, char **argv) {
  struct network n = {0};
  FILE *f = argc == 2 ? fopen(argv[1], "r") : NULL;
  SUNContext context;
  double best = INFINITY;
  if (!f) refuse("give the file with the rooms: stiff rooms.txt");
  read_network(&n, f);
  fclose(f);
  settle(&n);
  need(SUNContext_Create(NULL, &context), "no context for CVODE");
  printf("%d nodes that store, %d others, %d couplings; %d hours; rooms in few modes are off by %.5f K rms\n", n.storing, n.states - n.storing,
         n.starts[n.storing], n.hours, n.asked);
  printf("%-22s %12s %12s %12s %12s\n", "at full hours", "tolerance, K", "off, K rms", "steps", "ms a year");
  for (int afresh = 0; afresh < 2; afresh++)
    for (double tolerance = 1; tolerance > 1e-6; tolerance /= sqrt(10)) {
      struct try t = live(&n, tolerance, afresh, context);
      printf("%-22s %12.2g %12.5f %12ld %12.1f\n", afresh ? "starts anew" : "goes on", tolerance, t.off, t.steps, 1e3 * t.took);
      if (t.off > n.asked) continue;
      if (t.took < best) best = t.took;
      break;
    }
  SUNContext_Free(&context);
  need(!isfinite(best), "no tolerance came as near as the rooms in few modes");
  printf("best %.9g\n", best);
  return 0;
}
