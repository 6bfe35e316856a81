/* The hydrating slab of the model problem in plain C: backward Euler in steps of
 * five minutes, full Newton, one tridiagonal system per iteration. Prints the
 * seconds one week takes, the Newton iterations, and the middle of the slab at
 * the end. Argument: how many weeks to run. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { SLAB = 30, SOIL = 29, N = SLAB + SOIL + 1 };

static double x[N], capacity[N], conductance[N], weight[N];
static double u[N], age[N], start[N], lower[N], diagonal[N], upper[N], right[N];

static const double total = 350 * 350e3 * 0.75, tau = 14 * 3600.0, beta = 0.9, activation = 4500.0;
static const double pi = 3.14159265358979323846;

static double rate(double celsius, double *slope) {
    double absolute = 1 / (celsius + 273.15);
    double r = exp(activation * (1 / 293.15 - absolute));
    *slope = r * activation * absolute * absolute;
    return r;
}

static double release(int i, double s, double *slope) {
    if (s <= 0) {
        *slope = 0;
        return 0;
    }
    double power = exp(beta * log(tau / s));
    double amount = weight[i] * exp(-power);
    *slope = amount * power * beta / s;
    return amount;
}

static double into(double t, double top) {
    double clock = 8 + t / 3600, hour = fmod(clock, 24), sun = 0;
    double air = 20 + 8 * sin(2 * pi * (clock - 9) / 24);
    if (hour > 6 && hour < 18)
        sun = 0.6 * 700 * sin(pi * (hour - 6) / 12);
    return 15 * (air - top) + sun - 60;
}

static void lay(void) {
    double length = 0.15 / SLAB, ratio = 1.15;
    for (int i = 0; i <= SLAB; i++)
        x[i] = i * length;
    length = 1.5 * (ratio - 1) / (pow(ratio, SOIL) - 1);
    for (int i = SLAB; i + 1 < N; i++) {
        x[i + 1] = x[i] + length;
        length *= ratio;
    }
    for (int i = 0; i < N; i++) {
        capacity[i] = weight[i] = age[i] = 0;
        u[i] = i <= SLAB ? 25 : 16;
    }
    for (int i = 0; i + 1 < N; i++) {
        double dx = x[i + 1] - x[i], k = i < SLAB ? 2 : 1.5, c = i < SLAB ? 2.4e6 : 2.0e6;
        conductance[i] = k / dx;
        capacity[i] += c * dx / 2;
        capacity[i + 1] += c * dx / 2;
        if (i < SLAB) {
            weight[i] += total * dx / 2;
            weight[i + 1] += total * dx / 2;
        }
    }
}

static int step(double t, double dt) {
    int iterations = 0;
    double worst, slope, rise;
    for (int i = 0; i < N; i++) {
        start[i] = capacity[i] * u[i];
        if (i <= SLAB)
            start[i] -= release(i, age[i], &slope);
    }
    u[N - 1] = 16;
    do {
        iterations++;
        for (int i = 0; i < N; i++) {
            diagonal[i] = capacity[i];
            right[i] = start[i] - capacity[i] * u[i];
        }
        for (int i = 0; i <= SLAB; i++) {
            double r = rate(u[i], &slope);
            right[i] += release(i, age[i] + dt * r, &rise);
            diagonal[i] -= rise * dt * slope;
        }
        for (int i = 0; i + 1 < N; i++) {
            double w = dt * conductance[i], flow = w * (u[i] - u[i + 1]);
            right[i] -= flow;
            right[i + 1] += flow;
            diagonal[i] += w;
            diagonal[i + 1] += w;
            upper[i] = lower[i + 1] = -w;
        }
        right[0] += dt * into(t + dt, u[0]);
        diagonal[0] += dt * 15;
        diagonal[N - 1] = 1;
        lower[N - 1] = right[N - 1] = 0;
        for (int i = 1; i < N; i++) {
            double m = lower[i] / diagonal[i - 1];
            diagonal[i] -= m * upper[i - 1];
            right[i] -= m * right[i - 1];
        }
        right[N - 1] /= diagonal[N - 1];
        for (int i = N - 2; i >= 0; i--)
            right[i] = (right[i] - upper[i] * right[i + 1]) / diagonal[i];
        worst = 0;
        for (int i = 0; i < N; i++) {
            u[i] += right[i];
            if (fabs(right[i]) > worst)
                worst = fabs(right[i]);
        }
    } while (worst > 1e-8 && iterations < 25);
    for (int i = 0; i <= SLAB; i++)
        age[i] += dt * rate(u[i], &slope);
    return iterations;
}

int main(int count, char **words) {
    int weeks = count > 1 ? atoi(words[1]) : 1, iterations = 0;
    struct timespec a, b;
    clock_gettime(CLOCK_MONOTONIC, &a);
    for (int w = 0; w < weeks; w++) {
        lay();
        iterations = 0;
        for (int k = 0; k < 2016; k++)
            iterations += step(k * 300.0, 300);
    }
    clock_gettime(CLOCK_MONOTONIC, &b);
    printf("%.9f %d %.8f\n", ((b.tv_sec - a.tv_sec) + 1e-9 * (b.tv_nsec - a.tv_nsec)) / weeks, iterations, u[15]);
    return 0;
}
