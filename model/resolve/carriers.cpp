#include "model/resolve/carriers.h"

#include "model/resolve/bay_box.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace model {
namespace {

Box hull_of_nodes(const Point& a, const Point& b) {
    Box box;
    for (std::size_t k = 0; k < 3; ++k) {
        box.lo[k] = std::min(a[k], b[k]);
        box.hi[k] = std::max(a[k], b[k]);
    }
    return box;
}

bool is_beside(const Box& box, Nm x, Nm y, Nm reach) {
    return box.lo[0] - reach <= x && x <= box.hi[0] + reach && box.lo[1] - reach <= y &&
           y <= box.hi[1] + reach;
}

bool is_near(const Point& a, const Point& b, Nm reach) {
    for (std::size_t k = 0; k < 3; ++k) {
        if (std::abs(a[k] - b[k]) > reach) return false;
    }
    return true;
}

}  // namespace

Point StatedLine::at(Nm along) const {
    const auto axes = across(run);
    Point point{};
    point[index_of(run)] = along;
    point[index_of(axes[0])] = on[0];
    point[index_of(axes[1])] = on[1];
    return point;
}

// Where along it, from 0 to 1, it enters and leaves what lies within reach.
std::optional<Stretch> Carriers::Slanting::beside(Nm x, Nm y, Nm reach) const {
    const std::array<Nm, 2> at{x, y};
    double enters = 0.0;
    double leaves = 1.0;
    for (std::size_t k = 0; k < 2; ++k) {
        const Nm least = at[k] - reach - from[k];
        const Nm most = at[k] + reach - from[k];
        const auto rise = static_cast<double>(to[k] - from[k]);
        if (to[k] == from[k]) {
            if (least > 0 || most < 0) return std::nullopt;
            continue;
        }
        const double first = static_cast<double>(least) / rise;
        const double second = static_cast<double>(most) / rise;
        enters = std::max(enters, std::min(first, second));
        leaves = std::min(leaves, std::max(first, second));
    }
    if (enters > leaves) return std::nullopt;
    const auto level = [&](double along) {
        return from[2] + std::llround(along * static_cast<double>(to[2] - from[2]));
    };
    return std::minmax({level(enters), level(leaves)});
}

Carriers::Carriers(const Frame& frame, const ResolvedFrame& placed, const NamedValues& values)
    : frame_{frame}, placed_{placed}, values_{values} {
    for (std::size_t i = 0; i < frame.planes.size() && i < placed.planes.size(); ++i) {
        plane_.emplace(frame.planes[i].name, i);
    }
    add_members();
    add_between_nodes();
    add_panels();
}

std::vector<Stretch> Carriers::beside(Nm x, Nm y, Nm reach) const {
    std::vector<Stretch> stretches;
    for (const Box& box : upright_) {
        if (is_beside(box, x, y, reach)) stretches.emplace_back(box.lo[2], box.hi[2]);
    }
    for (const Slanting& leaning : leaning_) {
        if (const auto stretch = leaning.beside(x, y, reach)) stretches.push_back(*stretch);
    }
    for (const Box& box : sheets_) {
        if (is_beside(box, x, y, 0)) stretches.emplace_back(box.lo[2], box.hi[2]);
    }
    std::sort(stretches.begin(), stretches.end());
    return stretches;
}

bool Carriers::is_passed(const Point& node, Nm reach) const {
    return std::ranges::any_of(level_, [&](const StatedLine& line) {
        const Nm along = node[index_of(line.run)];
        return line.from + reach < along && along < line.to - reach &&
               is_near(line.at(along), node, reach);
    });
}

bool Carriers::is_braced(const Point& node, Nm reach) const {
    return std::ranges::any_of(brace_ends_,
                               [&](const Point& end) { return is_near(end, node, reach); });
}

std::optional<Nm> Carriers::position(std::string_view plane) const {
    const auto at = plane_.find(plane);
    return at == plane_.end() ? std::nullopt : placed_.planes[at->second].position;
}

std::optional<Point> Carriers::node(const std::string& face,
                                    const std::array<std::string, 2>& on) const {
    const auto plane = plane_.find(face);
    const auto at = position(face);
    const auto first = position(on[0]);
    const auto second = position(on[1]);
    if (!at || !first || !second) return std::nullopt;
    const StatedLine across_face{.run = placed_.planes[plane->second].axis,
                                 .on = {*first, *second}};
    return across_face.at(*at);
}

void Carriers::add_members() {
    for (Index m = 0; m < frame_.members.size(); ++m) {
        const Member& member = frame_.members[m];
        const auto first = position(member.on[0]);
        const auto second = position(member.on[1]);
        const auto from = position(member.from);
        const auto to = position(member.to);
        if (!first || !second || !from || !to || *from >= *to) continue;
        const StatedLine line{m,
                              member.run,
                              {*first, *second},
                              *from + values_.length(member.allowance_from).value_or(0),
                              *to - values_.length(member.allowance_to).value_or(0)};
        if (line.from >= line.to) continue;
        const Box box = hull_of_nodes(line.at(line.from), line.at(line.to));
        const bool is_first = level_.empty() && upright_.empty();
        height_ = {is_first ? box.lo[2] : std::min(height_.first, box.lo[2]),
                   is_first ? box.hi[2] : std::max(height_.second, box.hi[2])};
        if (member.run == Axis::z) {
            upright_.push_back(box);
        } else {
            level_.push_back(line);
        }
    }
}

void Carriers::add_between_nodes() {
    for (const Leaning& leaning : frame_.leaning) {
        const auto from = node(leaning.face, leaning.from);
        const auto to = node(leaning.face, leaning.to);
        if (from && to) leaning_.push_back({*from, *to});
    }
    // One that lies level keeps corners square, and lets them sag.
    for (const Diagonal& brace : frame_.diagonals) {
        const auto from = node(brace.face, brace.from);
        const auto to = node(brace.face, brace.to);
        if (!from || !to || (*from)[2] == (*to)[2]) continue;
        brace_ends_.insert(brace_ends_.end(), {*from, *to});
    }
}

void Carriers::add_panels() {
    for (const Panel& panel : frame_.panels) {
        if (panel.use != PanelUse::fixed || panel.face_axis == Axis::z) continue;
        const auto bay = std::ranges::find(frame_.bays, panel.bay, &Bay::name);
        if (bay == frame_.bays.end()) continue;
        auto face = bay_box(frame_, placed_, *bay);
        if (!face) continue;
        const std::size_t axis = index_of(panel.face_axis);
        const Nm at = panel.face_side == Sense::plus ? face->hi[axis] : face->lo[axis];
        face->lo[axis] = face->hi[axis] = at;
        sheets_.push_back(*face);
    }
}

}  // namespace model
