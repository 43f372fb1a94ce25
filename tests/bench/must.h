// Ends a bench whose figures would mean nothing.
#pragma once

#include <cstdio>
#include <cstdlib>

namespace tests {

inline void must(bool is_so, const char* what) {
    if (is_so) return;
    std::fprintf(stderr, "bench: this did not happen: %s\n", what);
    std::exit(1);
}

}  // namespace tests
