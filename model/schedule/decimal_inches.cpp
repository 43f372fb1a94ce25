#include "model/schedule/decimal_inches.h"

#include <cstdint>

namespace model {

std::string decimal_inches(engine::Length length) {
    constexpr std::int64_t nm_per_step = 2540;
    constexpr std::int64_t steps = 10'000;  // in an inch
    const auto nearest = (length.nm() + nm_per_step / 2) / nm_per_step;
    return std::to_string(nearest / steps) + "." +
           std::to_string(steps + nearest % steps).substr(1);
}

}  // namespace model
