/* Case b-saloon-hump by SUNDIALS CVODE (Adams, fixed-point or BDF, dense), as a third opinion.
   cc -O2 cvode_case.c -lsundials_cvode -lsundials_nvecserial -lm; arguments: the kept CSV, rtol, atol, seconds, runs, adams|bdf. */
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <string.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>
#include <time.h>
#include "saloon.h"

static int rhs(realtype t, N_Vector y, N_Vector d, void *user) {
    (void)user;
    right_hand_side(t, N_VGetArrayPointer(y), N_VGetArrayPointer(d));
    return 0;
}

static void demand(int flag, const char *what) {
    if (flag < 0) { fprintf(stderr, "%s failed: %s\n", what, CVodeGetReturnFlagName(flag)); exit(1); }
}

static int by_value(const void *a, const void *b) {
    const double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

int main(int count, char **args) {
    if (count != 7) { fprintf(stderr, "usage: cvode_case kept.csv rtol atol seconds runs adams|bdf\n"); return 2; }
    const double rtol = atof(args[2]), atol = atof(args[3]);
    const int outputs = (int)lround(100 * atof(args[4])) + 1, runs = atoi(args[5]), bdf = !strcmp(args[6], "bdf");
    double *theta = calloc(outputs, sizeof *theta), *took = calloc(runs, sizeof *took);
    SUNContext context;
    demand(SUNContext_Create(NULL, &context), "SUNContext_Create");
    for (int run = 0; run < runs; run++) {
        struct timespec from, to;
        calls = 0;
        clock_gettime(CLOCK_MONOTONIC, &from);
        N_Vector y = N_VNew_Serial(14, context);
        N_VConst(0, y);
        void *cvode = CVodeCreate(bdf ? CV_BDF : CV_ADAMS, context);
        demand(CVodeInit(cvode, rhs, 0, y), "CVodeInit");
        demand(CVodeSStolerances(cvode, rtol, atol), "CVodeSStolerances");
        demand(CVodeSetMaxNumSteps(cvode, 10000000), "CVodeSetMaxNumSteps");
        demand(CVodeSetMaxStep(cvode, 1e-2), "CVodeSetMaxStep");
        SUNMatrix matrix = SUNDenseMatrix(14, 14, context);
        SUNLinearSolver linear = SUNLinSol_Dense(y, matrix, context);
        SUNNonlinearSolver fixed = SUNNonlinSol_FixedPoint(y, 0, context);
        if (bdf) demand(CVodeSetLinearSolver(cvode, linear, matrix), "CVodeSetLinearSolver");
        else demand(CVodeSetNonlinearSolver(cvode, fixed), "CVodeSetNonlinearSolver");
        double t;
        int k = 1;
        for (int stretch = 0; stretch < 4; stretch++) {  /* start afresh where the road has a corner */
            const double from_t = CORNERS[stretch], to_t = stretch < 3 ? CORNERS[stretch + 1] : 0.01 * (outputs - 1);
            held = (from_t + to_t) / 2;
            demand(CVodeReInit(cvode, from_t, y), "CVodeReInit");
            demand(CVodeSetStopTime(cvode, to_t), "CVodeSetStopTime");
            for (; k < outputs && 0.01 * k < to_t; k++) {
                demand(CVode(cvode, 0.01 * k, y, &t, CV_NORMAL), "CVode");
                theta[k] = NV_Ith_S(y, 1);
            }
            demand(CVode(cvode, to_t, y, &t, CV_NORMAL), "CVode");
        }
        theta[outputs - 1] = NV_Ith_S(y, 1);
        CVodeFree(&cvode);
        SUNLinSolFree(linear);
        SUNNonlinSolFree(fixed);
        SUNMatDestroy(matrix);
        N_VDestroy(y);
        clock_gettime(CLOCK_MONOTONIC, &to);
        took[run] = 1e3 * (to.tv_sec - from.tv_sec) + 1e-6 * (to.tv_nsec - from.tv_nsec);
    }
    qsort(took, runs, sizeof *took, by_value);
    printf("CVODE %s rtol %s: %.3f ms per run (median of %d), %ld calls, pitch error %.1e of peak\n", args[6], args[2], took[runs / 2], runs, calls,
           pitch_error(args[1], theta));
    SUNContext_Free(&context);
    free(theta);
    free(took);
    return 0;
}
