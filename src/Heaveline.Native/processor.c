/* The native program is compiled for processors with AVX2, FMA and BMI (x86-64-v3), and its runtime ends at once on any other. This looks before the runtime
   starts: on an older processor the program beside it, compiled as it runs, takes its place. */
#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

__attribute__((constructor)) static void look(int count, char **words, char **settings)
{
    (void)count;
    (void)settings;
    __builtin_cpu_init();
    if (__builtin_cpu_supports("avx2") && __builtin_cpu_supports("fma") && __builtin_cpu_supports("bmi") && __builtin_cpu_supports("bmi2")
        && __builtin_cpu_supports("lzcnt") && __builtin_cpu_supports("movbe"))
        return;

    static const char name[] = "Heaveline.Cli";
    char path[4096 + sizeof name] = "";
    char *folder = readlink("/proc/self/exe", path, 4095) > 0 ? strrchr(path, '/') : NULL;
    if (folder != NULL)
    {
        memcpy(folder + 1, name, sizeof name);
        execv(path, words);
    }

    fprintf(stderr, "heaveline: this processor lacks AVX2, and the program for such, %s, cannot be started: %s.\n", name,
        folder != NULL ? strerror(errno) : "its folder is not known");
    _exit(3);
}
