#include "model/resolve/brace_ends.h"

#include "model/resolve/values.h"

#include <algorithm>
#include <cmath>

namespace model {
namespace {

// A second cut that takes less than this from a corner is none: a tenth of a millimetre.
constexpr Nm least_cut = 100'000;

// One end: places inward from its node along the run, by the distance across from the heel edge.
struct CutEnd {
    std::vector<std::array<Nm, 2>> corners;  // from the heel edge to the far one

    Nm least() const { return std::ranges::min_element(corners, {}, along)->at(0); }
    Nm most() const { return std::ranges::max_element(corners, {}, along)->at(0); }

private:
    static Nm along(const std::array<Nm, 2>& corner) { return corner[0]; }
};

class EndCutter {
public:
    // `turn` is 1 at the first node and -1 at the second: seen from there the heel lies on the
    // other side.
    EndCutter(const BraceLine& line, const EndLimits& limits, double turn)
        : width_{line.width}, slope_{slope_of(line)}, limits_{limits}, turn_{turn} {}

    CutEnd cut(BraceEnds ends) const {
        CutEnd end;
        add(end, 0);
        if (const auto across = corner_between()) add(end, *across);
        add(end, width_);
        if (ends == BraceEnds::square) {
            const Nm most = end.most();
            end.corners = {{most, 0}, {most, width_}};
        }
        return end;
    }

private:
    double from_middle(Nm across) const {
        return turn_ * (static_cast<double>(across) - static_cast<double>(width_) / 2.0);
    }

    // Where both edges meet, if that lies within the width: the brace then ends in a point.
    std::optional<Nm> corner_between() const {
        if (!limits_[0] || !limits_[1]) return std::nullopt;
        const double middle = slope_[0] * static_cast<double>(*limits_[1]) -
                              slope_[1] * static_cast<double>(*limits_[0]);
        const Nm across = std::llround(turn_ * middle + static_cast<double>(width_) / 2.0);
        if (across < least_cut || across > width_ - least_cut) return std::nullopt;
        return across;
    }

    void add(CutEnd& end, Nm across) const {
        const double q = from_middle(across);
        std::optional<double> along;
        const auto bound = [&](double at) { along = along ? std::max(*along, at) : at; };
        if (limits_[0]) bound((static_cast<double>(*limits_[0]) + q * slope_[1]) / slope_[0]);
        if (limits_[1]) bound((static_cast<double>(*limits_[1]) - q * slope_[0]) / slope_[1]);
        constexpr auto furthest = static_cast<double>(4 * most_length);
        end.corners.push_back(
            {std::llround(std::clamp(along.value_or(0.0), -furthest, furthest)), across});
    }

    Nm width_;
    std::array<double, 2> slope_;
    const EndLimits& limits_;
    double turn_;
};

Nm between_nodes(const BraceLine& line) {
    const auto& [from, to] = line.nodes;
    return std::llround(
        std::hypot(static_cast<double>(to[0] - from[0]), static_cast<double>(to[1] - from[1])));
}

// Whether the two ends leave metal between them on both edges.
bool leave_metal(const CutEnd& first, const CutEnd& second, Nm whole) {
    return first.most() + second.most() < whole;
}

// What is beyond the last mark of the tape is taken from both ends alike.
void cut_to_mark(CutEnd& first, CutEnd& second, Nm whole, Nm graduation) {
    const Nm over = (whole - first.most() - second.most()) % graduation;
    for (auto& corner : first.corners) corner[0] += over / 2;
    for (auto& corner : second.corners) corner[0] += over - over / 2;
}

}  // namespace

std::array<double, 2> slope_of(const BraceLine& line) {
    const auto& [from, to] = line.nodes;
    const double d0 = std::abs(static_cast<double>(to[0] - from[0]));
    const double d1 = std::abs(static_cast<double>(to[1] - from[1]));
    const double length = std::hypot(d0, d1);
    return {d0 / length, d1 / length};
}

std::optional<BraceCut> brace_cut(const BraceLine& line,
                                  const std::array<EndLimits, 2>& limits,
                                  Nm graduation) {
    CutEnd first = EndCutter(line, limits[0], 1.0).cut(line.ends);
    CutEnd second = EndCutter(line, limits[1], -1.0).cut(line.ends);
    const Nm whole = between_nodes(line);
    if (!leave_metal(first, second, whole)) return std::nullopt;
    if (line.ends == BraceEnds::square && graduation > 0) {
        cut_to_mark(first, second, whole, graduation);
        if (!leave_metal(first, second, whole)) return std::nullopt;
    }
    BraceCut cut{.from_node = first.least(), .corners = {}};
    cut.length = whole - second.least() - cut.from_node;
    const auto& near = first.corners;
    const auto& far = second.corners;
    cut.corners.push_back({near.front()[0] - cut.from_node, near.front()[1]});
    for (const auto& corner : far) {
        cut.corners.push_back({whole - corner[0] - cut.from_node, corner[1]});
    }
    for (std::size_t i = near.size(); i-- > 1;) {
        cut.corners.push_back({near[i][0] - cut.from_node, near[i][1]});
    }
    return cut;
}

}  // namespace model
