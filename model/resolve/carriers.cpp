#include "model/resolve/carriers.h"

#include "model/resolve/bay_box.h"

#include <algorithm>

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

}  // namespace

Point StatedLine::at(Nm along) const {
    const auto axes = across(run);
    Point point{};
    point[index_of(run)] = along;
    point[index_of(axes[0])] = on[0];
    point[index_of(axes[1])] = on[1];
    return point;
}

Carriers::Carriers(const Frame& frame, const ResolvedFrame& placed)
    : frame_{frame}, placed_{placed} {
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
    for (const Box& box : sheets_) {
        if (is_beside(box, x, y, 0)) stretches.emplace_back(box.lo[2], box.hi[2]);
    }
    std::sort(stretches.begin(), stretches.end());
    return stretches;
}

bool Carriers::holds(const Point& node) const {
    if (std::ranges::find(brace_ends_, node) != brace_ends_.end()) return true;
    return std::ranges::any_of(level_, [&](const StatedLine& line) {
        const Nm along = node[index_of(line.run)];
        return line.from < along && along < line.to && line.at(along) == node;
    });
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
        const StatedLine line{m, member.run, {*first, *second}, *from, *to};
        const Box box = hull_of_nodes(line.at(*from), line.at(*to));
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
        if (from && to) upright_.push_back(hull_of_nodes(*from, *to));
    }
    for (const Diagonal& brace : frame_.diagonals) {
        for (const auto* end : {&brace.from, &brace.to}) {
            if (const auto at = node(brace.face, *end)) brace_ends_.push_back(*at);
        }
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
