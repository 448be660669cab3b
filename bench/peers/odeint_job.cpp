// A job that Heaveline.Bench writes ("peers"): cars, the road under their wheels step by step, and the exact solver's pitch and tyre loads; by Boost.odeint's
// four-step Adams-Bashforth method over one double, or over eight side by side, the equations written out by hand as sums of hinges. And what this core can
// do at most. g++ -O3 -march=native odeint_job.cpp; arguments: the job, what (scalar, simd, peak-double, peak-float). Prints milliseconds of processor a run.
#include <algorithm>
#include <array>
#include <boost/numeric/odeint.hpp>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <ctime>
#include <vector>

static double now() { timespec t; clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t); return 1e3 * t.tv_sec + 1e-6 * t.tv_nsec; }

typedef double Eight __attribute__((vector_size(64)));
static inline Eight larger(Eight a, Eight b) { return a > b ? a : b; }
static inline Eight smaller(Eight a, Eight b) { return a < b ? a : b; }
static inline double larger(double a, double b) { return a > b ? a : b; }
static inline double smaller(double a, double b) { return a < b ? a : b; }
static inline double all(double x, double *) { return x; }
static inline Eight all(double x, Eight *) { return Eight{x, x, x, x, x, x, x, x}; }
static inline double first(double x) { return x; }
static inline double first(Eight x) { return x[0]; }
static inline void put(double &x, int, double v) { x = v; }
static inline void put(Eight &x, int lane, double v) { x[lane] = v; }

// The file: steps, samples, steps a sample, dampers' kinks, opening and closing ones, numbers of a car, cars; step; numbers, eight numbers of road a step
// (four heights, four rates), five numbers a sample (pitch, four changes of load).
struct Job { int steps, samples, each, dampers, above, below, numbers, cars; double step; std::vector<double> car, road, exact; };

static Job read(const char *name) {
    Job job;
    FILE *file = std::fopen(name, "rb");
    int head[8];
    if (!file || std::fread(head, sizeof head, 1, file) != 1 || std::fread(&job.step, 8, 1, file) != 1) { std::fprintf(stderr, "no job\n"); std::exit(2); }
    std::memcpy(&job, head, sizeof head);
    job.car.resize((size_t)job.numbers * job.cars);
    job.road.resize(8 * (size_t)job.steps);
    job.exact.resize(5 * (size_t)job.samples);
    for (auto *part : {&job.car, &job.road, &job.exact})
        if (std::fread(part->data(), 8, part->size(), file) != part->size()) { std::fprintf(stderr, "short job\n"); std::exit(2); }
    std::fclose(file);
    return job;
}

enum { Most = 16 };
template <class T> struct Axle { T x, yl, yr, start[2], rate, cross, damping, tyreRate, tyreDamping, unload, perWheel, across, kinks[3][Most][2]; };
template <class T> struct Car { T perMass, pitchPerPitch, rollPerRoll, pitchPerRoll, pitchGravity, rollGravity; Axle<T> axle[2]; };

template <class T> static void fill(const Job &job, Car<T> &car, int lane, int which) {
    int j = 0;
    const auto next = [&](T &x) { put(x, lane, job.car[(size_t)j++ * job.cars + which]); };
    for (T *x : {&car.perMass, &car.pitchPerPitch, &car.rollPerRoll, &car.pitchPerRoll, &car.pitchGravity, &car.rollGravity}) next(*x);
    for (auto &a : car.axle) {
        for (T *x : {&a.x, &a.yl, &a.yr, &a.start[0], &a.start[1], &a.rate, &a.cross, &a.damping, &a.tyreRate, &a.tyreDamping, &a.unload, &a.perWheel, &a.across}) next(*x);
        const int counts[3] = {job.dampers, job.above, job.below};
        for (int kind = 0; kind < 3; kind++) for (int k = 0; k < counts[kind]; k++) { next(a.kinks[kind][k][0]); next(a.kinks[kind][k][1]); }
    }
}

template <class T, int Dampers, int Above, int Below> struct Hand {
    typedef std::array<T, 14> State;
    const Job &job;
    const Car<T> &car;
    T *tyre;
    __attribute__((always_inline)) void operator()(const State &y, State &d, double t) const {
        const double *road = &job.road[8 * std::min<long>(job.steps - 1, std::lround(t / job.step))];
        T sum[2], pitch = car.pitchGravity * y[1], roll = car.rollGravity * y[2];
        for (int i = 0; i < 2; i++) {
            const Axle<T> &a = car.axle[i];
            const int l = 3 + 2 * i, r = l + 1;
            const T h = y[0] + a.x * y[1], hv = y[7] + a.x * y[8];
            const T sl = y[l] - h + a.yl * y[2], sr = y[r] - h + a.yr * y[2], vl = y[7 + l] - hv + a.yl * y[9], vr = y[7 + r] - hv + a.yr * y[9];
            T fl = a.start[0] + a.rate * sl + a.cross * sr + a.damping * vl, fr = a.start[1] + a.rate * sr + a.cross * sl + a.damping * vr;
            for (int k = 0; k < Dampers; k++) { fl += a.kinks[0][k][1] * larger(vl, a.kinks[0][k][0]); fr += a.kinks[0][k][1] * larger(vr, a.kinks[0][k][0]); }
            for (int k = 0; k < Above; k++) { fl += a.kinks[1][k][1] * larger(sl, a.kinks[1][k][0]); fr += a.kinks[1][k][1] * larger(sr, a.kinks[1][k][0]); }
            for (int k = 0; k < Below; k++) { fl += a.kinks[2][k][1] * smaller(sl, a.kinks[2][k][0]); fr += a.kinks[2][k][1] * smaller(sr, a.kinks[2][k][0]); }
            const T el = a.tyreRate * (road[2 * i] - y[l]), er = a.tyreRate * (road[2 * i + 1] - y[r]);
            const T tl = larger(a.unload, el + a.tyreDamping * (road[4 + 2 * i] - y[7 + l])), tr = larger(a.unload, er + a.tyreDamping * (road[5 + 2 * i] - y[7 + r]));
            tyre[2 * i] = el <= a.unload ? a.unload : tl;
            tyre[2 * i + 1] = er <= a.unload ? a.unload : tr;
            d[7 + l] = a.perWheel * (tyre[2 * i] - fl);
            d[7 + r] = a.perWheel * (tyre[2 * i + 1] - fr);
            sum[i] = fl + fr;
            pitch += a.x * sum[i];
            roll -= a.yl * fl + a.yr * fr;
        }
        for (int i = 0; i < 7; i++) d[i] = y[7 + i];
        d[7] = car.perMass * (sum[0] + sum[1]);
        d[8] = car.pitchPerPitch * pitch + car.pitchPerRoll * roll;
        d[9] = car.rollPerRoll * roll + car.pitchPerRoll * pitch;
    }
};

template <class T> static void run(const Job &job, int side) {
    static Car<T> car;
    for (int lane = 0; lane < side; lane++) fill(job, car, lane, lane);
    typedef Hand<T, 11, 3, 1> Right;
    if (job.dampers != 11 || job.above != 3 || job.below != 1) { std::fprintf(stderr, "other kinks: %d %d %d\n", job.dampers, job.above, job.below); std::exit(2); }
    typedef typename Right::State State;
    T tyre[4];
    const Right right{job, car, tyre};
    // Per axle: peak and mean square of pitch and of the loads, as whoever searches takes along.
    T most = all(0.0, (T *)nullptr), squares = most, loads[4] = {most, most, most, most};
    double worst = 0, worstLoad = 0, peak = 0, peakLoad = 0;
    boost::numeric::odeint::adams_bashforth<4, State> method;
    State y, next, d;
    for (auto &x : y) x = all(0.0, (T *)nullptr);
    const double from = now();
    double aside = 0;
    for (int n = 0; n < job.steps; n++) {
        if (n % job.each == 0) {
            most = larger(most, larger(y[1], -y[1]));
            squares += y[1] * y[1];
        }
        method.do_step(right, y, n * job.step, next, job.step);
        if (n % job.each == 0) for (int i = 0; i < 4; i++) loads[i] += tyre[i] * tyre[i];
        y = next;
    }
    const double took = now() - from - aside;
    boost::numeric::odeint::adams_bashforth<4, State> again;
    for (auto &x : y) x = all(0.0, (T *)nullptr);
    for (int n = 0; n < job.steps; n++) {
        if (n % job.each == 0) {
            right(y, d, n * job.step);
            const double *exact = &job.exact[5 * (n / job.each)];
            worst = std::max(worst, std::fabs(first(y[1]) - exact[0]));
            peak = std::max(peak, std::fabs(exact[0]));
            for (int i = 0; i < 4; i++) { worstLoad = std::max(worstLoad, std::fabs(first(tyre[i]) - exact[1 + i])); peakLoad = std::max(peakLoad, std::fabs(exact[1 + i])); }
        }
        again.do_step(right, y, n * job.step, next, job.step);
        y = next;
    }
    std::printf("%.5f ms per run; pitch error %.3e load error %.3e (%g %g)\n", took / side, worst / peak, worstLoad / peakLoad, first(most), first(squares) + first(loads[0]));
}

// Twelve chains that do not wait for each other: more than the two units of four cycles need.
template <class N, class V> static void most() {
    V b, c, zero;
    for (size_t i = 0; i < sizeof(V) / sizeof(N); i++) { b[i] = (N)0.999; c[i] = (N)1e-3; zero[i] = 0; }
    V a0 = zero, a1 = c, a2 = b, a3 = zero + c, a4 = b + c, a5 = a4 + c, a6 = a5 + c, a7 = a6 + c, a8 = a7 + c, a9 = a8 + c, a10 = a9 + c, a11 = a10 + c;
    const long turns = 4000000;
    double best = 1e9;
    for (int k = 0; k < 5; k++) {
        const double from = now();
        for (long n = 0; n < turns; n++) {
            a0 = a0 * b + c; a1 = a1 * b + c; a2 = a2 * b + c; a3 = a3 * b + c; a4 = a4 * b + c; a5 = a5 * b + c;
            a6 = a6 * b + c; a7 = a7 * b + c; a8 = a8 * b + c; a9 = a9 * b + c; a10 = a10 * b + c; a11 = a11 * b + c;
        }
        best = std::min(best, now() - from);
    }
    const V sum = a0 + a1 + a2 + a3 + a4 + a5 + a6 + a7 + a8 + a9 + a10 + a11;
    std::printf("%.2f GFLOP/s (%g)\n", 2.0 * 12 * turns * (sizeof(V) / sizeof(N)) / best / 1e6, (double)sum[0]);
}

typedef float Sixteen __attribute__((vector_size(64)));

int main(int count, char **args) {
    if (count != 3) { std::fprintf(stderr, "usage: odeint_job job scalar|simd|peak-double|peak-float\n"); return 2; }
    if (!std::strcmp(args[2], "peak-double")) { most<double, Eight>(); return 0; }
    if (!std::strcmp(args[2], "peak-float")) { most<float, Sixteen>(); return 0; }
    const Job job = read(args[1]);
    if (!std::strcmp(args[2], "simd")) run<Eight>(job, 8); else run<double>(job, 1);
}
