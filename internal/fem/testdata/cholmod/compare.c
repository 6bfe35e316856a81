/* Solves a plane-stress mesh of four-node quadrilaterals or three-node triangles on
   springs with CHOLMOD
   (SuiteSparse), from a given mesh to the stress in the middle of every element, and
   prints the median times of the processor over five runs, in milliseconds.
   The mesh is read from the file named first: nodes, elements, corners of an element,
   then x y of every node, then the node numbers of every element, as int64 and double.

   A second word "metis" asks for that order instead of CHOLMOD's own choice.

   Printed: full, pattern known, then stages of the full run: pattern and assembly,
   analysis, factor, solve and stress; then the elastic energy and that of the springs. */
#include <cholmod.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static const double E = 20e9, NU = 0.2, T = 0.15, EPS = -300e-6, KS = 10e6;
static int64_t nodes, elements, corners;
static double *xy;
static int64_t *node;

static double now(void) {
	struct timespec t;
	clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
	return t.tv_sec * 1e3 + t.tv_nsec * 1e-6;
}

/* The points where integrals are taken, with their weights: two by two in
   quadrilaterals, the middles of the sides in triangles, exact for both terms. */
static int points(double at[4][2], double *weight) {
	double g = 1 / sqrt(3);
	if (corners == 3) {
		double middle[3][2] = {{0.5, 0}, {0.5, 0.5}, {0, 0.5}};
		memcpy(at, middle, sizeof middle);
		*weight = 1. / 6;
		return 3;
	}
	for (int m = 0; m < 4; m++) {
		at[m][0] = m & 1 ? g : -g;
		at[m][1] = m & 2 ? g : -g;
	}
	*weight = 1;
	return 4;
}

/* Shape functions and slopes at a local place; returns the determinant. */
static double shape(const int64_t *en, double xi, double eta, double n[4], double dx[4], double dy[4]) {
	static const double cx[4] = {-1, 1, 1, -1}, cy[4] = {-1, -1, 1, 1};
	double a = 0, b = 0, c = 0, d = 0, p[4] = {-1, 1, 0, 0}, q[4] = {-1, 0, 1, 0};
	n[0] = 1 - xi - eta;
	n[1] = xi;
	n[2] = eta;
	for (int i = 0; i < corners; i++) {
		double x = xy[2 * en[i]], y = xy[2 * en[i] + 1];
		if (corners == 4) {
			double u = 1 + cx[i] * xi, v = 1 + cy[i] * eta;
			n[i] = u * v / 4;
			p[i] = cx[i] * v / 4;
			q[i] = u * cy[i] / 4;
		}
		a += p[i] * x;
		b += p[i] * y;
		c += q[i] * x;
		d += q[i] * y;
	}
	double det = a * d - b * c;
	for (int i = 0; i < corners; i++) {
		dx[i] = (d * p[i] - b * q[i]) / det;
		dy[i] = (a * q[i] - c * p[i]) / det;
	}
	return det;
}

static void stiffness(int64_t e, double k[8][8], double f[8]) {
	const int64_t *en = node + corners * e;
	double d = E / (1 - NU * NU), d33 = d * (1 - NU) / 2, n[4], dx[4], dy[4], at[4][2], weight;
	int number = points(at, &weight);
	memset(k, 0, 64 * sizeof(double));
	memset(f, 0, 8 * sizeof(double));
	for (int m = 0; m < number; m++) {
		double area = weight * shape(en, at[m][0], at[m][1], n, dx, dy);
		double w = area * T, s = area * KS, stress = w * d * (1 + NU) * EPS;
		for (int i = 0; i < corners; i++) {
			double x0 = w * d * dx[i], x1 = w * d * NU * dx[i], x2 = w * d33 * dy[i];
			double y0 = w * d * NU * dy[i], y1 = w * d * dy[i], y2 = w * d33 * dx[i];
			for (int j = 0; j <= i; j++) {
				double spring = s * n[i] * n[j];
				k[2 * i][2 * j] += x0 * dx[j] + x2 * dy[j] + spring;
				k[2 * i][2 * j + 1] += x1 * dy[j] + x2 * dx[j];
				k[2 * i + 1][2 * j] += y0 * dx[j] + y2 * dy[j];
				k[2 * i + 1][2 * j + 1] += y1 * dy[j] + y2 * dx[j] + spring;
			}
			f[2 * i] += dx[i] * stress;
			f[2 * i + 1] += dy[i] * stress;
		}
	}
}

/* Puts all elements into triplets of the lower half and the load. */
static void triplets(cholmod_triplet *t, double *load) {
	double k[8][8], f[8], *v = t->x;
	int *row = t->i, *col = t->j;
	size_t z = 0;
	memset(load, 0, 2 * nodes * sizeof(double));
	for (int64_t e = 0; e < elements; e++) {
		stiffness(e, k, f);
		for (int i = 0; i < 2 * corners; i++) {
			int gi = 2 * node[corners * e + i / 2] + i % 2;
			load[gi] += f[i];
			for (int j = 0; j <= i; j++) {
				int gj = 2 * node[corners * e + j / 2] + j % 2;
				row[z] = gi > gj ? gi : gj;
				col[z] = gi > gj ? gj : gi;
				v[z++] = k[i][j];
			}
		}
	}
	t->nnz = z;
}

/* Where each triplet goes in the assembled matrix. */
static int *scatter(const cholmod_triplet *t, const cholmod_sparse *a) {
	int *to = malloc(t->nnz * sizeof(int)), *p = a->p, *r = a->i, *row = t->i, *col = t->j;
	for (size_t z = 0; z < t->nnz; z++) {
		int lo = p[col[z]], hi = p[col[z] + 1];
		while (hi - lo > 1) {
			int mid = (lo + hi) / 2;
			if (r[mid] <= row[z]) lo = mid; else hi = mid;
		}
		to[z] = lo;
	}
	return to;
}

static void refill(const int *to, cholmod_sparse *a, double *load) {
	double k[8][8], f[8], *v = a->x;
	size_t z = 0;
	memset(v, 0, ((int *)a->p)[a->ncol] * sizeof(double));
	memset(load, 0, 2 * nodes * sizeof(double));
	for (int64_t e = 0; e < elements; e++) {
		stiffness(e, k, f);
		for (int i = 0; i < 2 * corners; i++) {
			load[2 * node[corners * e + i / 2] + i % 2] += f[i];
			for (int j = 0; j <= i; j++) v[to[z++]] += k[i][j];
		}
	}
}

static double *centre_stress(const double *u) {
	double *out = malloc(3 * elements * sizeof(double)), n[4], dx[4], dy[4], d = E / (1 - NU * NU);
	for (int64_t e = 0; e < elements; e++) {
		const int64_t *en = node + corners * e;
		shape(en, corners == 4 ? 0 : 1. / 3, corners == 4 ? 0 : 1. / 3, n, dx, dy);
		double ex = -EPS, ey = -EPS, g = 0;
		for (int i = 0; i < corners; i++) {
			ex += dx[i] * u[2 * en[i]];
			ey += dy[i] * u[2 * en[i] + 1];
			g += dy[i] * u[2 * en[i]] + dx[i] * u[2 * en[i] + 1];
		}
		out[3 * e] = d * (ex + NU * ey);
		out[3 * e + 1] = d * (NU * ex + ey);
		out[3 * e + 2] = d * (1 - NU) / 2 * g;
	}
	return out;
}

static double energy(const double *u, double *bed) {
	double sum = 0, n[4], dx[4], dy[4], at[4][2], weight, d = E / (1 - NU * NU);
	int number = points(at, &weight);
	*bed = 0;
	for (int64_t e = 0; e < elements; e++)
		for (int m = 0; m < number; m++) {
			const int64_t *en = node + corners * e;
			double area = weight * shape(en, at[m][0], at[m][1], n, dx, dy), x = 0, y = 0, ex = -EPS, ey = -EPS, s = 0;
			for (int i = 0; i < corners; i++) {
				x += n[i] * u[2 * en[i]];
				y += n[i] * u[2 * en[i] + 1];
				ex += dx[i] * u[2 * en[i]];
				ey += dy[i] * u[2 * en[i] + 1];
				s += dy[i] * u[2 * en[i]] + dx[i] * u[2 * en[i] + 1];
			}
			sum += area * T / 2 * d * (ex * ex + ey * ey + 2 * NU * ex * ey + (1 - NU) / 2 * s * s);
			*bed += area * KS / 2 * (x * x + y * y);
		}
	return sum;
}

static int rising(const void *a, const void *b) {
	double d = *(const double *)a - *(const double *)b;
	return (d > 0) - (d < 0);
}

int main(int argc, char **argv) {
	enum { RUNS = 5, TIMES = 6 };
	double time[TIMES][RUNS], elastic = 0, bed = 0;
	FILE *in = argc > 1 ? fopen(argv[1], "rb") : NULL;
	if (!in || fread(&nodes, 8, 1, in) != 1 || fread(&elements, 8, 1, in) != 1 || fread(&corners, 8, 1, in) != 1) return 1;
	xy = malloc(16 * nodes);
	node = malloc(8 * corners * elements);
	if (fread(xy, 16, nodes, in) != (size_t)nodes || fread(node, 8 * corners, elements, in) != (size_t)elements) return 1;
	cholmod_common c;
	cholmod_start(&c);
	if (argc > 2 && !strcmp(argv[2], "metis")) {
		c.nmethods = 1;
		c.method[0].ordering = CHOLMOD_METIS;
		c.postorder = 1;
	}
	for (int r = 0; r < RUNS; r++) {
		double t0 = now();
		cholmod_dense *load = cholmod_zeros(2 * nodes, 1, CHOLMOD_REAL, &c);
		cholmod_triplet *t = cholmod_allocate_triplet(2 * nodes, 2 * nodes, 36 * elements, -1, CHOLMOD_REAL, &c);
		triplets(t, load->x);
		cholmod_sparse *a = cholmod_triplet_to_sparse(t, 0, &c);
		double t1 = now();
		cholmod_factor *l = cholmod_analyze(a, &c);
		double t2 = now();
		cholmod_factorize(a, l, &c);
		double t3 = now();
		cholmod_dense *u = cholmod_solve(CHOLMOD_A, l, load, &c);
		double t4 = now();
		free(centre_stress(u->x));
		double t5 = now();
		int *to = scatter(t, a);
		double t6 = now();
		refill(to, a, load->x);
		cholmod_factorize(a, l, &c);
		cholmod_dense *again = cholmod_solve(CHOLMOD_A, l, load, &c);
		free(centre_stress(again->x));
		double t7 = now();
		double all[TIMES] = {t5 - t0, t7 - t6, t1 - t0, t2 - t1, t3 - t2, t5 - t3};
		(void)t4;
		for (int i = 0; i < TIMES; i++) time[i][r] = all[i];
		elastic = energy(again->x, &bed);
		free(to);
		cholmod_free_dense(&again, &c);
		cholmod_free_dense(&u, &c);
		cholmod_free_dense(&load, &c);
		cholmod_free_factor(&l, &c);
		cholmod_free_sparse(&a, &c);
		cholmod_free_triplet(&t, &c);
	}
	for (int i = 0; i < TIMES; i++) {
		qsort(time[i], RUNS, sizeof(double), rising);
		printf("%.3f ", time[i][RUNS / 2]);
	}
	printf("%.6f %.6f\n", elastic, bed);
	cholmod_finish(&c);
	return 0;
}
