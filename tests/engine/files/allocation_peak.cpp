// Replaces operator new and delete in the whole of this test program by ones that count.
#include "tests/engine/files/allocation_peak.h"

#include <malloc.h>

#include <atomic>
#include <cstdlib>
#include <new>

namespace {

std::atomic<std::size_t> held{0};
std::atomic<std::size_t> most_held{0};

void* counted(std::size_t bytes) noexcept {
    void* const given = std::malloc(bytes == 0 ? 1 : bytes);
    if (given == nullptr) return nullptr;
    const std::size_t now = held += malloc_usable_size(given);
    std::size_t most = most_held;
    while (now > most && !most_held.compare_exchange_weak(most, now)) {
    }
    return given;
}

void uncounted(void* given) noexcept {
    if (given != nullptr) held -= malloc_usable_size(given);
    std::free(given);
}

}  // namespace

void* operator new(std::size_t bytes) {
    if (void* const given = counted(bytes)) return given;
    throw std::bad_alloc{};
}
void* operator new[](std::size_t bytes) { return operator new(bytes); }
void* operator new(std::size_t bytes, const std::nothrow_t&) noexcept { return counted(bytes); }
void* operator new[](std::size_t bytes, const std::nothrow_t&) noexcept { return counted(bytes); }
void operator delete(void* given) noexcept { uncounted(given); }
void operator delete[](void* given) noexcept { uncounted(given); }
void operator delete(void* given, std::size_t) noexcept { uncounted(given); }
void operator delete[](void* given, std::size_t) noexcept { uncounted(given); }
void operator delete(void* given, const std::nothrow_t&) noexcept { uncounted(given); }
void operator delete[](void* given, const std::nothrow_t&) noexcept { uncounted(given); }

namespace tests {

AllocationPeak::AllocationPeak() : first_{held} { most_held = held.load(); }

std::size_t AllocationPeak::bytes() const { return most_held - first_; }

}  // namespace tests
