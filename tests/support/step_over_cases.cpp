#include "tests/support/step_over_cases.h"

#include "tests/support/dice.h"
#include "tests/support/frame_builder.h"

#include <algorithm>
#include <cassert>
#include <cstdlib>
#include <optional>
#include <set>
#include <vector>

namespace tests {
namespace {

using engine::Box;
using engine::Nm;
using model::Axis;
using model::Formula;
using model::Project;

struct Leg {
    const char* section;
    Nm width;
    Nm thickness;
};

constexpr std::array<Leg, 5> legs{{{"angle 1 x 1 x 1/8", inches(1), inches_64(8)},
                                   {"angle 3/4 x 3/4 x 1/8", inches_64(48), inches_64(8)},
                                   {"angle 1 1/4 x 1 1/4 x 1/8", inches_64(80), inches_64(8)},
                                   {"angle 1 x 1 x 1/16", inches(1), inches_64(4)},
                                   {"angle 30 x 30 x 3 mm", millimetres(30), millimetres(3)}}};

Nm value_of(const Project& project, const Formula& formula) {
    const auto bare = engine::bare_unit(project.shown);
    std::vector<engine::NamedFormula> formulas;
    for (const auto& d : project.dimensions) formulas.push_back({d.name, d.formula, d.kind});
    formulas.push_back({"", formula});
    const auto values = engine::evaluate_all(formulas, bare);
    return values.back() ? values.back()->length.nm() : 0;
}

// A turn about Z: x goes to Y, y to -X.
engine::Point turned(engine::Point p, int quarter_turns) {
    for (int i = 0; i < quarter_turns; ++i) p = {-p[1], p[0], p[2]};
    return p;
}

using Positions = std::array<std::vector<Nm>, 3>;

Positions plane_positions(const Project& project) {
    Positions positions;
    for (const auto& plane : project.frames.front().planes) {
        positions[index_of(plane.axis)].push_back(value_of(project, plane.position));
    }
    for (auto& at : positions) std::sort(at.begin(), at.end());
    return positions;
}

// ---- frames -------------------------------------------------------------------------------------

class Drawing {
public:
    explicit Drawing(std::uint32_t seed) : dice_{seed} {}

    StepOverCase draw() {
        const Leg& leg = dice_.one_of(legs);
        it_.apart = 2 * leg.width + 4 * leg.thickness;
        is_metric_ = leg.thickness == millimetres(3);
        it_.project.stock = {stock_of("main", leg.section, "6063-T52", is_metric_)};
        if (is_metric_) it_.project.shown.form = engine::TapeForm::millimetre;
        if (leg.width < inches(1)) {  // too narrow for 1/8 in rivets where two are set in
            it_.project.shop.fastener = "blind rivet 3/32";
            it_.project.shop.edge_distance = 1.75;
            standing_ = inches_64(6);
        }
        apart_ = it_.apart + standing_;
        it_.words = leg.section;
        lay_out();
        place();
        put_obstacle();
        it_.edit.frame = "cabinet";
        it_.edit.obstacle = "wheel well";
        return std::move(it_);
    }

private:
    Nm step() const { return is_metric_ ? millimetres(1) : inches_64(4); }

    Nm between(Nm least, Nm most) { return dice_.between(least / step(), most / step()) * step(); }

    std::vector<Formula> partitions(Nm extent, std::uint32_t most) {
        std::vector<Formula> found;
        Nm last = 0;
        for (std::uint32_t i = dice_.below(most + 1); i > 0; --i) {
            const Nm least = last + inches(9);
            if (least > extent - inches(9)) break;
            last = between(least, extent - inches(9));
            found.push_back(formula_of(last));
        }
        return found;
    }

    void lay_out() {
        const Nm width = between(inches(24), inches(80));
        const Nm depth = between(inches(16), inches(44));
        const Nm height = between(inches(20), inches(60));
        const auto kind = dice_.below(10);
        if (kind < 6) return start_box(width, depth, height);
        if (kind < 8) return start_step(width, depth, height);
        BoxShape shape{.width = width, .depth = depth, .height = height, .shelves = {}};
        if (dice_.chance(50)) shape.shelves.push_back(between(inches(9), height - inches(9)));
        it_.project.frames.push_back(box_frame("cabinet", shape));
        it_.words += ", built box";
    }

    void start_box(Nm width, Nm depth, Nm height) {
        model::StartBoxFrame start{.frame = "cabinet", .stock = "main"};
        start.width = formula_of(width);
        start.depth = formula_of(depth);
        start.height = formula_of(height);
        start.dividers = partitions(width, 2);
        start.shelf_levels = partitions(height, 2);
        it_.words += ", box with " + std::to_string(start.dividers.size()) + " dividers and " +
                     std::to_string(start.shelf_levels.size()) + " shelves";
        it_.project = *apply(it_.project, start);
    }

    void start_step(Nm width, Nm depth, Nm height) {
        model::StartSteppedFrame start{.frame = "cabinet", .stock = "main"};
        start.width = formula_of(width);
        start.depth = formula_of(depth);
        start.height = formula_of(height);
        start.well_height = formula_of(height / 3 / step() * step());
        start.well_depth = formula_of(depth / 3 / step() * step());
        start.dividers = partitions(width, 1);
        it_.words += ", stepped with " + std::to_string(start.dividers.size()) + " dividers";
        it_.project = *apply(it_.project, start);
    }

    void place() {
        auto& frame = it_.project.frames.front();
        frame.quarter_turns = static_cast<int>(dice_.below(4));
        it_.words += ", turned " + std::to_string(frame.quarter_turns);
        for (std::size_t k = 0; k < 3; ++k) {
            origin_[k] = dice_.chance(30) ? 0 : between(-inches(40), inches(90));
            frame.origin[k] = stated("place " + std::to_string(k), origin_[k]);
        }
    }

    // As a plain value, a name, or a sum of a name and a value.
    Formula stated(const std::string& name, Nm length) {
        const auto way = dice_.below(4);
        if (way < 2) return formula_of(length);
        const Nm offset = way == 2 ? 0 : inches(3);
        it_.project.dimensions.push_back({.name = name, .formula = formula_of(length - offset)});
        return way == 2 ? name : name + " + " + formula_of(offset);
    }

    // ---- the obstacle ---------------------------------------------------------------------------

    void put_obstacle() {
        it_.clearance = inches_64(16);
        if (dice_.chance(60)) it_.clearance = between(0, inches(2));
        const Box notch = draw_notch();
        engine::Point p = turned(notch.lo, it_.project.frames.front().quarter_turns);
        engine::Point q = turned(notch.hi, it_.project.frames.front().quarter_turns);
        Box box = engine::hull({p, p}, {q, q});
        for (std::size_t k = 0; k < 3; ++k) {
            box.lo[k] += origin_[k] + kept();
            box.hi[k] += origin_[k] - kept();
        }
        model::Obstacle obstacle{.name = "wheel well", .shape = shape_of(box)};
        if (it_.clearance != inches_64(16)) {
            if (dice_.chance(50)) {
                obstacle.clearance = stated("free", it_.clearance);
            } else {
                it_.edit.clearance = stated("free", it_.clearance);
            }
        }
        it_.project.room.push_back(std::move(obstacle));
    }

    model::ObstacleShape shape_of(const Box& box) {
        const bool is_round = box.hi[0] - box.lo[0] == box.hi[1] - box.lo[1];
        if (is_round) {
            model::CylinderObstacle pipe;
            const Nm radius = (box.hi[0] - box.lo[0]) / 2;
            pipe.foot = {stated("pipe x", box.lo[0] + radius), stated("pipe y", box.lo[1] + radius),
                         stated("pipe z", box.lo[2])};
            pipe.radius = stated("pipe radius", radius);
            pipe.length = stated("pipe length", box.hi[2] - box.lo[2]);
            it_.words += ", pipe";
            return pipe;
        }
        model::Place least;
        model::Place most;
        for (std::size_t k = 0; k < 3; ++k) {
            least[k] = stated("least " + std::to_string(k), box.lo[k]);
            most[k] = stated("most " + std::to_string(k), box.hi[k]);
        }
        if (dice_.chance(40)) return model::WheelWell{.least = least, .most = most};
        return model::BoxObstacle{.least = least, .most = most};
    }

    // Cuts some of the frame off, leaves it in one, and keeps apart from its planes and from
    // itself.
    Box draw_notch() {
        const Positions at = plane_positions(it_.project);
        for (;;) {
            std::array<char, 3> kinds{};
            Box box;
            bool is_good = true;
            for (std::size_t k = 0; k < 3; ++k) {
                kinds[k] = "LHTMMLH"[dice_.below(7)];
                is_good = is_good && draw_along(at[k], kinds[k], box.lo[k], box.hi[k]);
            }
            const auto count = [&](char kind) {
                return std::count(kinds.begin(), kinds.end(), kind);
            };
            const bool parts_in_two = count('T') == 2 && count('M') == 1;
            if (!is_good || count('M') == 3 || count('T') == 3 || parts_in_two) continue;
            if (!is_fit_for_step(at, box)) continue;
            if (dice_.chance(15)) make_round(at, box, kinds);
            it_.words += std::string(", notch ") + std::string(kinds.begin(), kinds.end());
            return box;
        }
    }

    // Of a stepped frame only what does not meet the step that it has.
    bool is_fit_for_step(const Positions& at, const Box& box) const {
        if (it_.words.find("stepped") == std::string::npos) return true;
        const Nm well_front = at[1][1];
        const Nm well_top = at[2][1];
        return box.hi[1] < well_front - apart_ || box.lo[2] > well_top + apart_;
    }

    bool draw_along(const std::vector<Nm>& at, char kind, Nm& lo, Nm& hi) {
        const Nm out = dice_.chance(20) ? 0 : between(0, inches(6));
        lo = at.front() - out - kept();
        hi = at.back() + out + kept();
        if (kind == 'L' || kind == 'M') hi = between(at.front(), at.back());
        if (kind == 'H' || kind == 'M') lo = between(at.front(), at.back());
        if (hi - lo < std::max(apart_ + standing_, 2 * kept() + inches(1))) return false;
        return is_apart(at, lo, kind == 'H' || kind == 'M') &&
               is_apart(at, hi, kind == 'L' || kind == 'M');
    }

    // Between the obstacle and the notch's sides, at most.
    Nm kept() const { return it_.clearance + standing_; }

    bool is_apart(const std::vector<Nm>& at, Nm side, bool cuts) const {
        return !cuts ||
               std::ranges::all_of(at, [&](Nm plane) { return std::abs(plane - side) >= apart_; });
    }

    // As wide as deep, where that can be had by moving what lies out of the frame.
    static void make_round(const Positions& at, Box& box, const std::array<char, 3>& kinds) {
        for (std::size_t k = 0; k < 2; ++k) {
            const Nm wanted = box.hi[1 - k] - box.lo[1 - k];
            if (kinds[k] == 'L' && box.hi[k] - wanted <= at[k].front()) {
                box.lo[k] = box.hi[k] - wanted;
                return;
            }
            if (kinds[k] == 'H' && box.lo[k] + wanted >= at[k].back()) {
                box.hi[k] = box.lo[k] + wanted;
                return;
            }
        }
    }

    Dice dice_;
    StepOverCase it_;
    Nm standing_ = inches_64(8);  // no tail of a 1/8 in rivet stands out further
    Nm apart_ = 0;
    bool is_metric_ = false;
    std::array<Nm, 3> origin_{};
};

// ---- moving it ----------------------------------------------------------------------------------

std::vector<Formula> formulas_of(const model::Obstacle& obstacle) {
    if (const auto* box = std::get_if<model::BoxObstacle>(&obstacle.shape)) {
        return {box->least[0], box->least[1], box->least[2],
                box->most[0],  box->most[1],  box->most[2]};
    }
    if (const auto* well = std::get_if<model::WheelWell>(&obstacle.shape)) {
        return {well->least[0], well->least[1], well->least[2],
                well->most[0],  well->most[1],  well->most[2]};
    }
    const auto& pipe = std::get<model::CylinderObstacle>(obstacle.shape);
    return {pipe.foot[0], pipe.foot[1], pipe.foot[2], pipe.radius, pipe.length};
}

// Where each of the frame's planes lies among those of its axis, and whether any two are too near.
struct Order {
    std::array<std::vector<std::string>, 3> names;
    bool is_apart = true;

    bool operator==(const Order&) const = default;
};

Order order_of(const Project& project, Nm apart) {
    Order order;
    std::array<std::vector<std::pair<Nm, std::string>>, 3> at;
    for (const auto& plane : project.frames.front().planes) {
        at[index_of(plane.axis)].push_back({value_of(project, plane.position), plane.name});
    }
    for (std::size_t k = 0; k < 3; ++k) {
        std::sort(at[k].begin(), at[k].end());
        for (std::size_t i = 0; i < at[k].size(); ++i) {
            order.names[k].push_back(at[k][i].second);
            if (i > 0 && at[k][i].first - at[k][i - 1].first < apart) order.is_apart = false;
        }
    }
    return order;
}

// Whether what lies out of the frame still does.
bool is_open_where_it_was(const StepOverCase& it, const Project& before, const Project& after) {
    const auto hull = plane_positions(before);
    const auto in_frame = [&](const Project& project) {
        Box box = box_of_obstacle(project, project.room.front());
        const auto& frame = project.frames.front();
        for (std::size_t k = 0; k < 3; ++k) {
            const Nm origin = value_of(project, frame.origin[k]);
            box.lo[k] -= it.clearance + origin;
            box.hi[k] += it.clearance - origin;
        }
        const int back = (4 - frame.quarter_turns) % 4;
        const auto p = turned(box.lo, back);
        const auto q = turned(box.hi, back);
        return engine::hull({p, p}, {q, q});
    };
    const Box then = in_frame(before);
    const Box now = in_frame(after);
    for (std::size_t k = 0; k < 3; ++k) {
        if ((then.lo[k] <= hull[k].front()) != (now.lo[k] <= hull[k].front())) return false;
        if ((then.hi[k] >= hull[k].back()) != (now.hi[k] >= hull[k].back())) return false;
    }
    return true;
}

}  // namespace

StepOverCase step_over_case(std::uint32_t seed) { return Drawing{seed}.draw(); }

Box box_of_obstacle(const Project& project, const model::Obstacle& obstacle) {
    const auto f = formulas_of(obstacle);
    std::vector<Nm> v;
    for (const auto& formula : f) v.push_back(value_of(project, formula));
    if (v.size() == 6) return {{v[0], v[1], v[2]}, {v[3], v[4], v[5]}};
    return {{v[0] - v[3], v[1] - v[3], v[2]}, {v[0] + v[3], v[1] + v[3], v[2] + v[4]}};
}

Project with_obstacle_moved(const StepOverCase& it, const Project& stepped, std::uint32_t seed) {
    Dice dice{seed + 1'000'000};
    std::set<std::string> names;
    for (const auto& formula : formulas_of(stepped.room.front())) {
        for (auto& name : engine::names_in(formula)) names.insert(std::move(name));
    }
    Project moved = stepped;
    for (const auto& name : names) {
        for (int tries = 0; tries < 6; ++tries) {  // each as far as the notch stays what it is
            const Nm by = dice.between(-inches(64 >> tries), inches(64 >> tries)) / 16;
            const Nm wanted = (value_of(moved, name) + by) / inches_64(4) * inches_64(4);
            const auto next = apply(moved, model::SetFormula{name, formula_of(wanted)});
            if (!next || order_of(*next, it.apart) != order_of(stepped, it.apart)) continue;
            if (!is_open_where_it_was(it, stepped, *next)) continue;
            if (engine::is_empty(box_of_obstacle(*next, next->room.front()))) continue;
            moved = *next;
            break;
        }
    }
    return moved;
}

}  // namespace tests
