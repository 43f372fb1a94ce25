// The same work for many things at once, on the threads that the machine can spare.
#pragma once

#include <cstddef>
#include <functional>

namespace engine {

// One of the machine's is left for what waits for the result; where there are but two, they share.
std::size_t spare_threads();

// Calls act(0) .. act(count - 1), each once, on this thread and on others beside it, `threads` in
// all at most; `act` must be safe to be called so. What it throws ends the work, and the first of
// it is thrown again by this thread. Ends early where `go_on`, called by this thread alone between
// two calls, answers false; it may be empty. Gives whether all calls were made.
bool for_each_on_threads(std::size_t count,
                         const std::function<void(std::size_t)>& act,
                         const std::function<bool()>& go_on = {},
                         std::size_t threads = spare_threads());

}  // namespace engine
