/* Loaded before the system's library, makes one call of a program fail, or ends the program there:
 *   FAULT_AT=N       the Nth call (from 1); 0 or none: count only
 *   FAULT_ERROR=E    with this error number; "kill": the program is killed there
 *   FAULT_COUNT=FILE the number of calls is written there when the program ends
 * Children count for themselves from where they began, and write no count. */
#define _GNU_SOURCE
#include <dirent.h>
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/types.h>
#include <sys/wait.h>
#include <unistd.h>

static long count, at = -1;
static int error_number, kills;
static pid_t owner;

static void begin(void) {
    if (at >= 0) return;
    const char* number = getenv("FAULT_AT");
    const char* how = getenv("FAULT_ERROR");
    at = number == NULL ? 0 : atol(number);
    kills = how != NULL && strcmp(how, "kill") == 0;
    error_number = how == NULL || kills ? EIO : atoi(how);
    owner = getpid();
}

static int fails(void) {
    begin();
    if (++count != at) return 0;
    if (kills) {
        kill(owner, SIGKILL);
        for (;;) pause();
    }
    errno = error_number;
    return 1;
}

__attribute__((destructor)) static void end(void) {
    const char* file = getenv("FAULT_COUNT");
    begin();
    if (file == NULL || getpid() != owner) return;
    at = 0;
    FILE* out = fopen(file, "w");
    if (out == NULL) return;
    fprintf(out, "%ld\n", count);
    fclose(out);
}

#define REAL(name) ((__typeof__(&name))dlsym(RTLD_NEXT, #name))
#define SHIM(type, name, parameters, arguments, failure)   \
    type name parameters {                                 \
        static __typeof__(&name) real;                     \
        if (real == NULL) real = REAL(name);               \
        return fails() ? (failure) : real arguments;       \
    }

SHIM(ssize_t, read, (int file, void* to, size_t size), (file, to, size), -1)
SHIM(ssize_t, write, (int file, const void* from, size_t size), (file, from, size), -1)
SHIM(int, fsync, (int file), (file), -1)
SHIM(int, flock, (int file, int how), (file, how), -1)
SHIM(int, rename, (const char* from, const char* to), (from, to), -1)
SHIM(int, renameat2, (int a, const char* from, int b, const char* to, unsigned flags), (a, from, b, to, flags), -1)
SHIM(int, unlink, (const char* name), (name), -1)
SHIM(int, mkdir, (const char* name, mode_t mode), (name, mode), -1)
SHIM(int, stat, (const char* name, struct stat* to), (name, to), -1)
SHIM(int, lstat, (const char* name, struct stat* to), (name, to), -1)
SHIM(int, fstat, (int file, struct stat* to), (file, to), -1)
SHIM(int, fchmod, (int file, mode_t mode), (file, mode), -1)
SHIM(int, ftruncate, (int file, off_t size), (file, size), -1)
SHIM(int, pipe2, (int ends[2], int flags), (ends, flags), -1)
SHIM(pid_t, fork, (void), (), -1)
SHIM(pid_t, waitpid, (pid_t child, int* status, int how), (child, status, how), -1)
SHIM(DIR*, opendir, (const char* name), (name), NULL)
SHIM(FILE*, fopen, (const char* name, const char* how), (name, how), NULL)

int open(const char* name, int flags, ...) {
    static int (*real)(const char*, int, ...);
    if (real == NULL) real = (int (*)(const char*, int, ...))dlsym(RTLD_NEXT, "open");
    va_list rest;
    va_start(rest, flags);
    const mode_t mode = flags & (O_CREAT | O_TMPFILE) ? va_arg(rest, mode_t) : 0;
    va_end(rest);
    return fails() ? -1 : real(name, flags, mode);
}
