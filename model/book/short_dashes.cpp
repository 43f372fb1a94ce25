#include "model/book/short_dashes.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace model {
namespace {

using engine::PagePoint;

constexpr double dash_mm = 1.5;
constexpr double gap_mm = 0.75;

PagePoint between(const PagePoint& from, const PagePoint& to, double share) {
    return {from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share};
}

}  // namespace

void append_short_dashes(std::vector<std::array<PagePoint, 2>>& dashes,
                         const std::vector<PagePoint>& line) {
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const double length = std::hypot(line[i + 1].x - line[i].x, line[i + 1].y - line[i].y);
        const double count = std::max(1.0, std::round((length + gap_mm) / (dash_mm + gap_mm)));
        const double share = 1.0 / (count * (dash_mm + gap_mm) - gap_mm);
        for (int k = 0; k < static_cast<int>(count); ++k) {
            const double from = k * (dash_mm + gap_mm) * share;
            dashes.push_back({between(line[i], line[i + 1], from),
                              between(line[i], line[i + 1], from + dash_mm * share)});
        }
    }
}

}  // namespace model
