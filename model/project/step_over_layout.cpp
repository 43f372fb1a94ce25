#include "model/project/step_over_layout.h"

#include "model/project/named_list.h"

#include <algorithm>

namespace model {

namespace {

using engine::Error;
using engine::ErrorCode;
using engine::Result;

Result<Nm> place_of(const FrameLayout& layout,
                    const Frame& frame,
                    const std::string& plane,
                    Axis axis,
                    const std::string& where) {
    const auto found = layout.planes.find(plane);
    const auto stated = std::ranges::find(frame.planes, plane, &Plane::name);
    if (found != layout.planes.end() && stated->axis == axis) return found->second;
    return Error{
        ErrorCode::invalid_value, where,
        "its plane \"" + plane + "\" is not there or lies across another axis; mend that first"};
}

struct PlaneUse {
    std::string plane;
    Axis axis;
};

Result<engine::Done> check_uses(const FrameLayout& layout,
                                const Frame& frame,
                                const std::vector<PlaneUse>& uses,
                                const std::string& where) {
    for (const auto& use : uses) {
        if (auto place = place_of(layout, frame, use.plane, use.axis, where); !place) {
            return place.error();
        }
    }
    return engine::Done{};
}

Error has_no_extent(const std::string& where) {
    return {ErrorCode::invalid_value, where,
            "nothing is left of it between its planes; move them apart or swap them first"};
}

Result<engine::Done> add_members(FrameLayout& layout, const Frame& frame) {
    for (const Member& member : frame.members) {
        const auto [b, c] = across(member.run);
        const std::string where = inside(described(frame), described(member));
        auto sound = check_uses(layout, frame,
                                {{member.on[0], b},
                                 {member.on[1], c},
                                 {member.from, member.run},
                                 {member.to, member.run}},
                                where);
        if (!sound) return sound;
        layout.lines.push_back(line_of(member, layout));
        if (layout.lines.back().from >= layout.lines.back().to) return has_no_extent(where);
    }
    return engine::Done{};
}

Result<engine::Done> add_bays(FrameLayout& layout, const Frame& frame) {
    for (const Bay& bay : frame.bays) {
        auto sound = check_uses(layout, frame,
                                {{bay.x[0], Axis::x},
                                 {bay.x[1], Axis::x},
                                 {bay.y[0], Axis::y},
                                 {bay.y[1], Axis::y},
                                 {bay.z[0], Axis::z},
                                 {bay.z[1], Axis::z}},
                                inside(described(frame), described(bay)));
        if (!sound) return sound;
        layout.bays.push_back({{layout.at(bay.x[0]), layout.at(bay.y[0]), layout.at(bay.z[0])},
                               {layout.at(bay.x[1]), layout.at(bay.y[1]), layout.at(bay.z[1])}});
        if (engine::is_empty(layout.bays.back())) {
            return has_no_extent(inside(described(frame), described(bay)));
        }
    }
    return engine::Done{};
}

Box hull_of(const std::vector<Box>& boxes) {
    Box all = boxes.front();
    for (const Box& box : boxes) all = engine::hull(all, box);
    return all;
}

}  // namespace

DimensionValues::DimensionValues(const Project& project) : bare_{engine::bare_unit(project.shown)} {
    std::vector<engine::NamedFormula> formulas;
    for (const auto& d : project.dimensions) formulas.push_back({d.name, d.formula, d.kind});
    const auto values = engine::evaluate_all(formulas, bare_);
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (values[i]) named_.emplace(project.dimensions[i].name, *values[i]);
    }
}

Result<Nm> DimensionValues::length(const Formula& formula, const std::string& where) const {
    const auto lookup = [&](std::string_view name) -> std::optional<engine::Quantity> {
        const auto found = named_.find(name);
        return found == named_.end() ? std::nullopt : std::optional(found->second);
    };
    // 1 km: beyond it nothing is worked with, and sums stay far from overflow.
    constexpr Nm most = 1'000'000'000'000;
    const auto value = engine::evaluate(formula, engine::QuantityKind::length, bare_, lookup);
    if (!value) {
        return Error{value.error().code, where,
                     "the formula \"" + formula + "\" has no value: " + value.error().message};
    }
    if (value->length.nm() > most || value->length.nm() < -most) {
        return Error{ErrorCode::out_of_range, where,
                     "\"" + formula + "\" is longer than 1 km; give a length that a bar can have"};
    }
    return value->length.nm();
}

MemberLine line_of(const Member& member, const FrameLayout& layout) {
    MemberLine line{.run = member.run,
                    .on = {layout.at(member.on[0]), layout.at(member.on[1])},
                    .from = layout.at(member.from),
                    .to = layout.at(member.to),
                    .legs = member.legs,
                    .inward = member.legs};
    if (member.seat == Seat::root) {
        for (Sense& sense : line.inward) {
            sense = sense == Sense::plus ? Sense::minus : Sense::plus;
        }
    }
    return line;
}

Box box_of(const MemberLine& line) {
    Box box;
    const auto [b, c] = across(line.run);
    box.lo[index_of(line.run)] = line.from;
    box.hi[index_of(line.run)] = line.to;
    box.lo[index_of(b)] = box.hi[index_of(b)] = line.on[0];
    box.lo[index_of(c)] = box.hi[index_of(c)] = line.on[1];
    return box;
}

Result<FrameLayout> layout_of(const Frame& frame, const DimensionValues& values) {
    FrameLayout layout;
    for (const Plane& plane : frame.planes) {
        const auto at = values.length(plane.position, inside(described(frame), described(plane)));
        if (!at) return at.error();
        layout.planes.emplace(plane.name, *at);
    }
    if (auto sound = add_members(layout, frame); !sound) return sound.error();
    if (auto sound = add_bays(layout, frame); !sound) return sound.error();
    if (layout.lines.empty()) {
        return Error{ErrorCode::invalid_value, described(frame),
                     "it has no members yet; lay it out first"};
    }
    std::vector<Box> boxes;
    for (const auto& line : layout.lines) boxes.push_back(box_of(line));
    layout.hull = hull_of(boxes);
    return layout;
}

// ---- cells --------------------------------------------------------------------------------------

FrameCells::FrameCells(const FrameLayout& layout, const std::array<std::vector<Nm>, 3>& positions)
    : at_{positions} {
    for (auto& at : at_) {
        std::sort(at.begin(), at.end());
        at.erase(std::unique(at.begin(), at.end()), at.end());
    }
    std::vector<Box> solid = layout.bays;
    if (solid.empty() || hull_of(solid) != layout.hull) solid = {layout.hull};
    filled_.assign((at_[0].size() + 1) * (at_[1].size() + 1) * (at_[2].size() + 1), 0);
    for (std::size_t x = 1; x < at_[0].size(); ++x) {
        for (std::size_t y = 1; y < at_[1].size(); ++y) {
            for (std::size_t z = 1; z < at_[2].size(); ++z) {
                const Box cell = box({x, y, z});
                const auto holds = [&](const Box& b) { return engine::overlaps(b, cell); };
                filled_[index({x, y, z})] = std::ranges::any_of(solid, holds) ? 1 : 0;
            }
        }
    }
}

std::size_t FrameCells::index(const std::array<std::size_t, 3>& cell) const {
    return (cell[0] * (at_[1].size() + 1) + cell[1]) * (at_[2].size() + 1) + cell[2];
}

bool FrameCells::is_filled(const std::array<std::size_t, 3>& cell) const {
    return filled_[index(cell)] != 0;
}

Box FrameCells::box(const std::array<std::size_t, 3>& cell) const {
    Box box;
    for (std::size_t k = 0; k < 3; ++k) {
        box.lo[k] = at_[k][cell[k] - 1];
        box.hi[k] = at_[k][cell[k]];
    }
    return box;
}

template <class Visit>
void FrameCells::for_each_filled(Visit visit) const {
    for (std::size_t x = 1; x < at_[0].size(); ++x) {
        for (std::size_t y = 1; y < at_[1].size(); ++y) {
            for (std::size_t z = 1; z < at_[2].size(); ++z) {
                if (is_filled({x, y, z})) visit(std::array{x, y, z});
            }
        }
    }
}

std::size_t FrameCells::filled_in(const Box& within) const {
    std::size_t count = 0;
    for_each_filled(
        [&](const auto& cell) { count += engine::overlaps(box(cell), within) ? 1U : 0U; });
    return count;
}

std::size_t FrameCells::filled() const {
    return static_cast<std::size_t>(std::count(filled_.begin(), filled_.end(), 1));
}

void FrameCells::take_out(const Box& within) {
    std::vector<std::size_t> gone;
    for_each_filled([&](const auto& cell) {
        if (engine::overlaps(box(cell), within)) gone.push_back(index(cell));
    });
    for (const std::size_t i : gone) filled_[i] = 0;
}

bool FrameCells::is_in_one() const {
    std::vector<std::array<std::size_t, 3>> waiting;
    for_each_filled([&](const auto& cell) {
        if (waiting.empty()) waiting.push_back(cell);
    });
    std::vector<char> seen(filled_.size(), 0);
    std::size_t count = 0;
    while (!waiting.empty()) {
        const auto cell = waiting.back();
        waiting.pop_back();
        if (!is_filled(cell) || seen[index(cell)] != 0) continue;
        seen[index(cell)] = 1;
        ++count;
        for (std::size_t k = 0; k < 3; ++k) {  // filled ones have neighbours on all sides
            auto next = cell;
            ++next[k];
            waiting.push_back(next);
            next[k] -= 2;
            waiting.push_back(next);
        }
    }
    return count == filled();
}

}  // namespace model
