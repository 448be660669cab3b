// Case b-saloon-hump by Boost.odeint's four-step Adams-Bashforth method at a fixed step, striding over the road's corners.
// g++ -O3 -march=native odeint_ab4.cpp; arguments: the kept CSV, seconds, runs, steps an output (16: 0.625 ms).
#include <algorithm>
#include <array>
#include <boost/numeric/odeint.hpp>
#include <chrono>
#include <vector>
#include "saloon.h"

using State = std::array<double, 14>;

int main(int count, char **args) {
    if (count != 5) { std::fprintf(stderr, "usage: odeint_ab4 kept.csv seconds runs steps\n"); return 2; }
    const int outputs = static_cast<int>(std::lround(100 * std::atof(args[2]))) + 1, runs = std::atoi(args[3]), steps = std::atoi(args[4]);
    const double step = 0.01 / steps;
    std::vector<double> theta(outputs), took;
    const auto system = [](const State &y, State &d, double t) { right_hand_side(t, y.data(), d.data()); };
    for (int run = 0; run < runs; run++) {
        calls = 0;
        const auto from = std::chrono::steady_clock::now();
        boost::numeric::odeint::adams_bashforth<4, State> method;
        State y{}, next{};
        for (int k = 0; k < steps * (outputs - 1); k++) {
            if (k % steps == 0) theta[k / steps] = y[1];
            // Out of place: with Boost 1.74 the in-place call spoils the three starting steps (the extrapolation that
            // makes them then reads the state it is writing), which costs a factor of ten in accuracy here.
            method.do_step(system, y, k * step, next, step);
            y = next;
        }
        theta[outputs - 1] = y[1];
        took.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count());
    }
    std::sort(took.begin(), took.end());
    std::printf("odeint Adams-Bashforth 4, step %.4f ms: %.3f ms per run (median of %d; least %.3f), %ld calls, pitch error %.1e of peak\n",
                1e3 * step, took[runs / 2], runs, took[0], calls, pitch_error(args[1], theta.data()));
}
