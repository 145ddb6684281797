/* start.c - a whole run of the command against the least that a process can do, and its peak memory.
 *
 * usage: start COMMAND RIG. The two take turns, so that whatever else the machine does meets both. */
#define _DEFAULT_SOURCE         /* wait4 */
#define _POSIX_C_SOURCE 200809L /* clock_gettime, posix_spawn */

#include <fcntl.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>

#define RUNS 201

extern char **environ;

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

static int compare(const void *left, const void *right)
{
    double a = *(const double *)left;
    double b = *(const double *)right;
    return (a > b) - (a < b);
}

/* Run it with its output thrown away; seconds until it has ended. *peak is raised to its peak memory [KiB].
 */
static double run(char *const arguments[], long *peak)
{
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", O_WRONLY, 0);
    pid_t child;
    int status;
    struct rusage usage;
    double begin = seconds();
    if (posix_spawn(&child, arguments[0], &actions, NULL, arguments, environ) != 0 ||
        wait4(child, &status, 0, &usage) != child) {
        fprintf(stderr, "start: cannot run %s\n", arguments[0]);
        exit(1);
    }
    double spent = seconds() - begin;
    posix_spawn_file_actions_destroy(&actions);
    if (!WIFEXITED(status) || WEXITSTATUS(status) == 2) {
        fprintf(stderr, "start: %s fails\n", arguments[0]);
        exit(1);
    }
    if (usage.ru_maxrss > *peak) *peak = usage.ru_maxrss;
    return spent;
}

static double median(double *values)
{
    qsort(values, RUNS, sizeof *values, compare);
    return values[RUNS / 2];
}

int main(int count, char **arguments)
{
    static char nothing[] = "/bin/true";
    static char report[] = "report";
    if (count != 3) {
        fprintf(stderr, "usage: start COMMAND RIG\n");
        return 2;
    }
    char *const least[] = {nothing, NULL};
    char *const whole[] = {arguments[1], report, arguments[2], NULL};
    static double least_times[RUNS];
    static double whole_times[RUNS];
    long least_peak = 0;
    long whole_peak = 0;
    for (int i = 0; i < RUNS; i++) {
        least_times[i] = run(least, &least_peak);
        whole_times[i] = run(whole, &whole_peak);
    }
    double ratio = median(whole_times) / median(least_times);
    printf("process start to finished report, medians of %d runs in turn:\n", RUNS);
    printf("  %.2f ms, /bin/true %.2f ms: %.2f times; peak memory %.1f MiB, /bin/true %.1f MiB\n",
           1e3 * median(whole_times), 1e3 * median(least_times), ratio, (double)whole_peak / 1024,
           (double)least_peak / 1024);
    return 0;
}
