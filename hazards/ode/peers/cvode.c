/* The reference cases, and the two stiff problems, with a multistep solver.
   Usage: cvode DIRECTORY-OF-TABLES RTOL REPETITIONS
   Prints: problem, method, rtol, median ms, right-hand sides, greatest error
   over the times of the table in K and in conversion (for the stiff problems
   the relative error of y1, and the error of T, at the end). */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#define GAS 8.314462618
#define SOLID 0.194605
#define LIQUID 0.018015

typedef struct {
	double Ea, Tref, nuHF, dH, cpS, Td, law, eps, aev, Kb, Hv, Tb, kref, V, mL, cpL, Cv, nHF0, ntot, T0, ns0;
	double segment[8][8], time[64], T[64], reacted[64];
	int segments, times, now;
	long calls;
} vessel;

static int rate(realtype t, N_Vector yv, N_Vector dv, void *user) {
	vessel *p = user;
	double *y = N_VGetArrayPointer(yv), *d = N_VGetArrayPointer(dv), *s = p->segment[p->now];
	double T = y[3], k = p->kref * exp(-p->Ea / GAS * (1 / T - 1 / p->Tref));
	double c = fmax(0, (p->nHF0 - p->nuHF * y[2]) / p->V), ns = fmax(0, y[0]), r = k * c * ns, q, vapour = 0, heat;
	p->calls++;
	if (p->law == 2) r *= p->eps + y[2] / p->ntot;
	if (p->law == 3) r = k * c * cbrt(ns) * cbrt(ns) * cbrt(p->ntot);
	q = s[4] * (T - s[5]);
	if (p->aev != 0) vapour = p->aev * exp(-p->Hv / GAS * (1 / T - 1 / p->Tb)) + p->Kb / p->Hv * fmax(0, T - p->Tb);
	heat = (p->mL - LIQUID * y[5]) * p->cpL + (y[0] + y[1] + y[2]) * SOLID * p->cpS + p->Cv;
	d[0] = (s[3] != 0 ? 0 : s[2]) - r;
	d[1] = s[3] != 0 ? s[2] : 0;
	d[2] = r;
	d[3] = (p->dH * r - q - s[2] * SOLID * p->cpS * (T - p->Td) + s[6] - p->Hv * vapour) / heat;
	d[4] = q;
	d[5] = vapour;
	return 0;
}

static FILE *table(const char *dir, const char *name) {
	char path[4096], line[512];
	snprintf(path, sizeof path, "%s/%s", dir, name);
	FILE *f = fopen(path, "r");
	if (!f || !fgets(line, sizeof line, f)) { perror(path); exit(1); }
	return f;
}

static void set(vessel *p, const char *key, double x) {
#define KEY(n) if (!strcmp(key, #n)) p->n = x;
	KEY(Ea) KEY(Tref) KEY(nuHF) KEY(dH) KEY(cpS) KEY(Td) KEY(law) KEY(eps) KEY(aev) KEY(Kb) KEY(Hv) KEY(Tb)
	KEY(kref) KEY(V) KEY(mL) KEY(cpL) KEY(Cv) KEY(nHF0) KEY(ntot) KEY(T0) KEY(ns0)
}

static void load(vessel *p, const char *dir, const char *name) {
	char line[512], who[16], key[32];
	double x, v[10];
	memset(p, 0, sizeof *p);
	FILE *f = table(dir, "parameters.csv");
	while (fgets(line, sizeof line, f))
		if (sscanf(line, "%15[^,],%31[^,],%lf", who, key, &x) == 3 && !strcmp(who, name)) set(p, key, x);
	fclose(f);
	f = table(dir, "segments.csv");
	while (fgets(line, sizeof line, f))
		if (sscanf(line, "%15[^,],%lf,%lf,%lf,%lf,%lf,%lf,%lf,%lf", who, v, v + 1, v + 2, v + 3, v + 4, v + 5, v + 6, v + 7) == 9 && !strcmp(who, name))
			memcpy(p->segment[p->segments++], v, 8 * sizeof *v);
	fclose(f);
	f = table(dir, "trajectories.csv");
	while (fgets(line, sizeof line, f))
		if (sscanf(line, "%15[^,],%lf,%lf,%lf,%lf", who, v, v + 1, v + 2, v + 3) == 5 && !strcmp(who, name)) {
			p->time[p->times] = v[0];
			p->T[p->times] = v[1];
			p->reacted[p->times++] = v[3];
		}
	fclose(f);
}

static double dosed(vessel *p) {
	double n = p->ns0;
	for (int i = 0; i < p->segments; i++) n += p->segment[i][2] * (p->segment[i][1] - p->segment[i][0]);
	return n;
}

static double now_ms(void) {
	struct timespec t;
	clock_gettime(CLOCK_MONOTONIC, &t);
	return t.tv_sec * 1e3 + t.tv_nsec * 1e-6;
}

/* solve runs one case; with errors != NULL it stops at the times of the table. */
static void solve(vessel *p, int method, double rtol, double *errors, SUNContext cx, N_Vector y, N_Vector tol, SUNMatrix J, SUNLinearSolver L) {
	double *Y = N_VGetArrayPointer(y), *A = N_VGetArrayPointer(tol), t, total = dosed(p);
	A[0] = A[1] = A[2] = rtol * 1e-2 * p->ntot;
	A[3] = rtol * 0.1;
	A[4] = rtol * 1e-2 * p->dH * p->ntot;
	A[5] = rtol * 1e-2;
	memset(Y, 0, 6 * sizeof *Y);
	Y[0] = p->ns0;
	Y[3] = p->T0;
	p->calls = 0;
	p->now = 0;
	void *m = CVodeCreate(method, cx);
	CVodeInit(m, rate, 0, y);
	CVodeSVtolerances(m, rtol, tol);
	CVodeSetUserData(m, p);
	CVodeSetLinearSolver(m, L, J);
	CVodeSetMaxNumSteps(m, 2000000);
	for (int s = 0; s < p->segments; s++) {
		double *seg = p->segment[s];
		p->now = s;
		if (seg[7] != 0) { Y[0] += Y[1]; Y[1] = 0; }
		if (s > 0) CVodeReInit(m, seg[0], y);
		CVodeSetStopTime(m, seg[1]);
		for (int i = 0; errors && i < p->times; i++)
			if (p->time[i] > seg[0] && p->time[i] <= seg[1]) {
				CVode(m, p->time[i], y, &t, CV_NORMAL);
				errors[0] = fmax(errors[0], fabs(Y[3] - p->T[i]));
				errors[1] = fmax(errors[1], fabs(Y[2] - p->reacted[i]) / total);
				if (p->time[i] == seg[1]) goto next;
			}
		CVode(m, seg[1], y, &t, CV_NORMAL);
	next:;
	}
	CVodeFree(&m);
}

static int robertson(realtype t, N_Vector a, N_Vector b, void *u) {
	double *y = N_VGetArrayPointer(a), *d = N_VGetArrayPointer(b);
	d[0] = -0.04 * y[0] + 1e4 * y[1] * y[2];
	d[2] = 3e7 * y[1] * y[1];
	d[1] = -d[0] - d[2];
	return 0;
}

static int slopes(realtype t, N_Vector a, N_Vector fy, SUNMatrix J, void *u, N_Vector x, N_Vector z, N_Vector w) {
	double *y = N_VGetArrayPointer(a), j[9] = {-0.04, 1e4 * y[2], 1e4 * y[1], 0.04, -1e4 * y[2] - 6e7 * y[1], -1e4 * y[1], 0, 6e7 * y[1], 0};
	for (int i = 0; i < 9; i++) SM_ELEMENT_D(J, i / 3, i % 3) = j[i];
	return 0;
}

static int exotherm(realtype t, N_Vector a, N_Vector b, void *u) {
	double *y = N_VGetArrayPointer(a), *d = N_VGetArrayPointer(b), feed = *(int *)u ? 0 : 5e-5;
	double r = 1e9 * exp(-7e4 / (GAS * y[2])) * y[0] * y[1] / y[6], c = y[1] / y[6];
	d[0] = -r;
	d[1] = 10 * feed - r;
	d[2] = (3e5 * r - 0.5 * (y[2] - y[3]) - 4000 * feed * (y[2] - 293.15)) / (4000 * y[6]);
	d[3] = (0.5 * (y[2] - y[3]) - 40 * (y[3] - 293.15)) / 400;
	d[4] = 1.5 * r;
	d[5] = 1e3 * (c / (1 + c) - y[5]);
	d[6] = feed;
	return 0;
}

static double stiff(int which, double rtol, SUNContext cx, long *calls) {
	int n = which ? 7 : 3, after = 0;
	long before = 0;
	double start[2][7] = {{1}, {0.2, 0, 293.15, 293.15, 0, 0, 0.1}}, atol[3] = {1e-10, 1e-14, 1e-10}, t, answer;
	N_Vector y = N_VNew_Serial(n, cx), tol = N_VNew_Serial(n, cx);
	SUNMatrix J = SUNDenseMatrix(n, n, cx);
	SUNLinearSolver L = SUNLinSol_Dense(y, J, cx);
	memcpy(N_VGetArrayPointer(y), start[which], n * sizeof(double));
	void *m = CVodeCreate(CV_BDF, cx);
	CVodeInit(m, which ? exotherm : robertson, 0, y);
	if (which) {
		CVodeSStolerances(m, rtol, 1e-9);
	} else {
		memcpy(N_VGetArrayPointer(tol), atol, sizeof atol);
		CVodeSVtolerances(m, rtol, tol);
	}
	CVodeSetUserData(m, &after);
	CVodeSetLinearSolver(m, L, J);
	if (!which) CVodeSetJacFn(m, slopes);
	CVodeSetMaxNumSteps(m, 2000000);
	if (which) {
		CVodeSetStopTime(m, 1200);
		CVode(m, 1200, y, &t, CV_NORMAL);
		CVodeGetNumRhsEvals(m, &before);
		after = 1;
		CVodeReInit(m, 1200, y);
	}
	CVodeSetStopTime(m, which ? 7200 : 4e10);
	CVode(m, which ? 7200 : 4e10, y, &t, CV_NORMAL);
	CVodeGetNumRhsEvals(m, calls);
	*calls += before;
	answer = N_VGetArrayPointer(y)[which ? 2 : 0];
	CVodeFree(&m);
	SUNLinSolFree(L);
	SUNMatDestroy(J);
	N_VDestroy(y);
	N_VDestroy(tol);
	return answer;
}

static int ascending(const void *a, const void *b) {
	double d = *(const double *)a - *(const double *)b;
	return d > 0 ? 1 : d < 0 ? -1 : 0;
}

int main(int count, char **argument) {
	if (count != 4) { fprintf(stderr, "usage: cvode directory rtol repetitions\n"); return 2; }
	const char *names[] = {"R1", "R2", "R3", "R4a", "R4b", "R5", "R6", "R8", "R9"}, *labels[] = {"", "adams", "bdf"};
	double rtol = atof(argument[2]);
	int reps = atoi(argument[3]);
	double *ms = malloc(reps * sizeof *ms), reference[2] = {5.208345176610e-08, 293.58977293634};
	static vessel p;
	SUNContext cx;
	SUNContext_Create(NULL, &cx);
	N_Vector y = N_VNew_Serial(6, cx), tol = N_VNew_Serial(6, cx);
	SUNMatrix J = SUNDenseMatrix(6, 6, cx);
	SUNLinearSolver L = SUNLinSol_Dense(y, J, cx);
	for (int i = 0; i < 9; i++)
		for (int method = CV_BDF; method >= CV_ADAMS; method--) {
			double errors[2] = {0, 0};
			load(&p, argument[1], names[i]);
			solve(&p, method, rtol, errors, cx, y, tol, J, L);
			for (int k = 0; k < reps; k++) {
				double start = now_ms();
				solve(&p, method, rtol, NULL, cx, y, tol, J, L);
				ms[k] = now_ms() - start;
			}
			qsort(ms, reps, sizeof *ms, ascending);
			printf("%s,cvode %s,%g,%.4f,%ld,%.1e,%.1e\n", names[i], labels[method], rtol, ms[reps / 2], p.calls, errors[0], errors[1]);
		}
	for (int which = 0; which < 2; which++) {
		double answer = 0;
		long calls = 0;
		for (int k = 0; k < reps; k++) {
			double start = now_ms();
			answer = stiff(which, rtol, cx, &calls);
			ms[k] = now_ms() - start;
		}
		qsort(ms, reps, sizeof *ms, ascending);
		printf("%s,cvode bdf,%g,%.4f,%ld,%.1e,\n", which ? "exotherm" : "robertson", rtol, ms[reps / 2], calls,
		       which ? fabs(answer - reference[1]) : fabs(answer / reference[0] - 1));
	}
	return 0;
}
