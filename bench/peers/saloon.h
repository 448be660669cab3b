/* Case b-saloon-hump written out by hand for the C and C++ peers: scalar code, term by term, numbers as in
   cases/b-saloon-hump.json. State: z, theta, phi, u_FL, u_FR, u_RL, u_RR and their rates. */
#pragma once
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

static const double G = 9.80665, M = 1420, IYY = 2350, IXX = 520, H_PITCH = 0.28, H_ROLL = 0.48;
static const double X[2] = {1.22, -1.50}, Y[2] = {0.77, 0.755}, M_WHEEL[2] = {43, 40};
static const double K[2] = {24500, 27000}, K_BAR[2] = {14500, 6500}, KT = 215000, CT = 140;
static const double V_TABLE[7] = {0, 0.03, 0.06, 0.15, 0.3, 0.6, 1.2};
static const double F_TABLE[2][7] = {{0, 105, 170, 310, 470, 740, 1210}, {0, 95, 155, 285, 430, 670, 1090}};
static const double REBOUND_TIMES = 2;
static const double BUMP_GAP[2][3] = {{0.048, 0.062, 0.072}, {0.058, 0.072, 0.082}}, BUMP_RATE[3] = {22000, 43000, 95000};
static const double REBOUND_GAP[2] = {0.075, 0.080}, REBOUND_RATE = 125000;
#define WIDTH 3.7
#define SPEED (60 / 3.6)
#define WHEELBASE 2.72
static const double HUMP = 0.10;

static inline double static_load(int axle) {
    return M * G * (axle ? X[0] : -X[1]) / WHEELBASE / 2 + M_WHEEL[axle] * G;
}

/* Times at which an axle comes to a foot of the hump, in order. */
static const double CORNERS[4] = {0, WHEELBASE / SPEED, WIDTH / SPEED, (WHEELBASE + WIDTH) / SPEED};
/* A solver that starts afresh at the corners sets this to the middle of the stretch it is on, which holds the road on
   one smooth piece; not a number = the time itself decides which piece is under the wheels. */
static double held = NAN;

/* Height and rate of the road (flat, circular arc, flat) under one axle, which reaches it 'later' seconds after the front. */
static inline void road(double t, double later, double *height, double *rate) {
    const double piece = SPEED * ((isnan(held) ? t : held) - later);
    *height = *rate = 0;
    if (piece < 0 || piece >= WIDTH) return;
    const double radius = (WIDTH * WIDTH / 4 + HUMP * HUMP) / (2 * HUMP), from_top = SPEED * (t - later) - WIDTH / 2;
    const double root = sqrt(radius * radius - from_top * from_top);
    *height = root - (radius - HUMP);
    *rate = -SPEED * from_top / root;
}

static inline double damper(int axle, double v) {
    const double side = v < 0 ? -REBOUND_TIMES : 1, w = fabs(v), *f = F_TABLE[axle];
    int i = 0;
    while (i < 5 && w > V_TABLE[i + 1]) i++;
    return side * (f[i] + (f[i + 1] - f[i]) / (V_TABLE[i + 1] - V_TABLE[i]) * (w - V_TABLE[i]));
}

static inline double stops(int axle, double s) {
    double force = 0;
    for (int i = 0; i < 3; i++)
        if (s > BUMP_GAP[axle][i]) force += BUMP_RATE[i] * (s - BUMP_GAP[axle][i]);
    if (-s > REBOUND_GAP[axle]) force -= REBOUND_RATE * (-s - REBOUND_GAP[axle]);
    return force;
}

static inline double tyre(double n, double squash, double rate) {
    if (squash <= -n / KT) return 0;
    const double load = n + KT * squash + CT * rate;
    return load > 0 ? load : 0;
}

static long calls;

static inline void right_hand_side(double t, const double *y, double *d) {
    double lift = 0, pitch = M * G * H_PITCH * y[1], roll = M * G * H_ROLL * y[2];
    calls++;
    for (int a = 0; a < 2; a++) {
        double height, rate, s[2], v[2];
        road(t, a ? WHEELBASE / SPEED : 0, &height, &rate);
        for (int i = 0; i < 2; i++) {
            const double side = i ? -Y[a] : Y[a];
            s[i] = y[3 + 2 * a + i] - (y[0] - X[a] * y[1] + side * y[2]);
            v[i] = y[10 + 2 * a + i] - (y[7] - X[a] * y[8] + side * y[9]);
        }
        const double bar = K_BAR[a] * (s[0] - s[1]), n = static_load(a);
        for (int i = 0; i < 2; i++) {
            const int w = 2 * a + i;
            const double force = K[a] * s[i] + damper(a, v[i]) + stops(a, s[i]) + (i ? -bar : bar);
            lift += force;
            pitch -= X[a] * force;
            roll += (i ? -Y[a] : Y[a]) * force;
            d[10 + w] = (tyre(n, height - y[3 + w], rate - y[10 + w]) - n - force) / M_WHEEL[a];
        }
    }
    for (int i = 0; i < 7; i++) d[i] = y[7 + i];
    d[7] = lift / M;
    d[8] = pitch / IYY;
    d[9] = roll / IXX;
}

/* Greatest |theta - kept theta| over greatest |kept theta| in results/b-saloon-hump.csv (100 Hz, 3 s). */
static inline double pitch_error(const char *csv, const double *theta) {
    FILE *f = fopen(csv, "r");
    char line[4096];
    double worst = 0, peak = 0;
    int k = 0;
    if (!f || !fgets(line, sizeof line, f)) { perror(csv); exit(1); }
    for (double t, z, th; fgets(line, sizeof line, f) && sscanf(line, "%lf,%lf,%lf", &t, &z, &th) == 3; k++) {
        worst = fmax(worst, fabs(theta[k] - th));
        peak = fmax(peak, fabs(th));
    }
    fclose(f);
    if (k != 301) { fprintf(stderr, "%s: %d lines, 301 expected\n", csv, k); exit(1); }
    return worst / peak;
}
