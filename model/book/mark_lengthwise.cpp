#include "model/book/mark_lengthwise.h"

#include <algorithm>
#include <cstddef>

namespace model {
namespace {

constexpr double same = 1.0e-4;  // mm

// What each gap may take at most, so that all of them take the room.
double cap_of(std::vector<double> gaps, double room) {
    std::sort(gaps.begin(), gaps.end());
    double left = room;
    for (std::size_t i = 0; i < gaps.size(); ++i) {
        const double share = left / static_cast<double>(gaps.size() - i);
        if (gaps[i] > share) return share;
        left -= gaps[i];
    }
    return gaps.back();
}

}  // namespace

MarkLengthwise::MarkLengthwise(std::vector<double> features, double scale, double room)
    : features_{std::move(features)} {
    std::sort(features_.begin(), features_.end());
    const auto is_same = [](double a, double b) { return b - a < same; };
    features_.erase(std::unique(features_.begin(), features_.end(), is_same), features_.end());
    std::vector<double> gaps;
    for (std::size_t i = 1; i < features_.size(); ++i)
        gaps.push_back((features_[i] - features_[i - 1]) / scale);
    const double cap = gaps.empty() ? 0.0 : cap_of(gaps, room);
    places_.push_back(0.0);
    for (const double gap : gaps) {
        const double from = places_.back();
        places_.push_back(from + std::min(gap, cap));
        if (gap > cap + same) breaks_.push_back(from + cap / 2);
    }
}

double MarkLengthwise::at(double mm) const {
    const auto after = std::lower_bound(features_.begin(), features_.end(), mm - same);
    if (after == features_.end()) return places_.back();
    const auto i = static_cast<std::size_t>(after - features_.begin());
    if (i == 0 || *after - mm < same) return places_[i];
    const double share = (mm - features_[i - 1]) / (features_[i] - features_[i - 1]);
    return places_[i - 1] + share * (places_[i] - places_[i - 1]);
}

}  // namespace model
