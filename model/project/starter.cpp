#include "model/project/starter.h"

#include "model/project/check_thing.h"
#include "model/project/named_list.h"
#include "model/project/references.h"

#include <utility>

namespace model {

namespace {

constexpr std::size_t most_partitions = 100;

}  // namespace

Starter::Starter(Project& project, std::string frame, std::string stock, const Place& origin)
    : project_{project},
      frame_{.name = std::move(frame), .origin = origin},
      stock_{std::move(stock)} {}

Formula Starter::value(const std::string& name, const Formula& formula, const std::string& note) {
    if (!engine::names_in(formula).empty()) return formula;
    const std::string free = free_dimension_name(name);
    project_.dimensions.push_back({.name = free, .formula = formula, .note = note});
    return free;
}

std::string Starter::free_dimension_name(const std::string& wanted) const {
    const std::string with_frame =
        engine::is_name(frame_.name) ? frame_.name + " " + wanted : wanted;
    std::string candidate = wanted;
    for (int n = 1; find_named(project_.dimensions, candidate) != project_.dimensions.end(); ++n) {
        candidate = n == 1 ? with_frame : with_frame + " " + std::to_string(n);
    }
    return candidate;
}

void Starter::plane(const std::string& name, Axis axis, const Formula& position) {
    frame_.planes.push_back({name, axis, position});
}

void Starter::member(Member member) {
    member.stock = stock_;
    frame_.members.push_back(std::move(member));
}

void Starter::bay(Bay bay) { frame_.bays.push_back(std::move(bay)); }

Changed Starter::finish() { return change(project_, PutFrame{.frame = std::move(frame_)}); }

Changed check_start(const Project& project,
                    const std::string& frame,
                    const std::string& stock,
                    std::span<const StarterFormula> formulas) {
    const std::string where = "frame " + frame;
    const auto has_name = [&](const auto& thing) { return thing.name == frame; };
    if (std::any_of(project.frames.begin(), project.frames.end(), has_name)) {
        return already_there(where);
    }
    if (!has_target(project, nullptr, {Target::stock, stock})) return no_such<Stock>(where, stock);
    if (formulas.size() > most_partitions) {
        return engine::Error{engine::ErrorCode::out_of_range, where,
                             "more shelves and dividers than a starter lays out at once"};
    }
    for (const StarterFormula& it : formulas) {
        auto readable =
            check_formula(it.formula, engine::QuantityKind::length, where + ", " + it.name);
        if (!readable) return readable;
    }
    return engine::Done{};
}

Partitions add_partitions(Starter& start,
                          std::span<const Formula> dividers,
                          std::span<const Formula> shelf_levels) {
    Partitions added;
    for (const Formula& formula : dividers) {
        const std::string name = "divider " + std::to_string(added.dividers.size() + 1);
        start.plane(name, Axis::x, start.value(name, formula, "from the left outside"));
        added.dividers.push_back(name);
    }
    for (const Formula& formula : shelf_levels) {
        const std::string name = "shelf " + std::to_string(added.shelves.size() + 1);
        start.plane(name, Axis::z, start.value(name, formula, "top of the rails it lies on"));
        added.shelves.push_back(name);
    }
    return added;
}

void add_x_rail(Starter& start, const std::string& name, const Side& y, const Side& z, Seat seat) {
    start.member({.name = name,
                  .run = Axis::x,
                  .on = {std::string(y.plane), std::string(z.plane)},
                  .from = "left",
                  .to = "right",
                  .legs = {y.inward, z.inward},
                  .seat = seat});
}

void add_y_rail(Starter& start,
                const std::string& name,
                const Side& x,
                const Side& z,
                const std::string& from,
                const std::string& to) {
    start.member({.name = name,
                  .run = Axis::y,
                  .on = {std::string(x.plane), std::string(z.plane)},
                  .from = from,
                  .to = to,
                  .legs = {x.inward, z.inward}});
}

void add_post(Starter& start,
              const std::string& name,
              const Side& x,
              const Side& y,
              const std::string& from,
              const std::string& to) {
    start.member({.name = name,
                  .run = Axis::z,
                  .on = {std::string(x.plane), std::string(y.plane)},
                  .from = from,
                  .to = to,
                  .legs = {x.inward, y.inward}});
}

namespace {

std::string bay_name(const std::string& prefix, std::size_t column, std::size_t level) {
    std::string name = prefix;
    if (column > 0) name += (name.empty() ? "column " : " column ") + std::to_string(column);
    if (level > 0) name += (name.empty() ? "level " : " level ") + std::to_string(level);
    return name.empty() ? "inside" : name;
}

}  // namespace

void add_bays(Starter& start,
              const std::string& prefix,
              std::span<const std::string> dividers,
              const std::array<std::string, 2>& y,
              std::span<const std::string> levels) {
    std::vector<std::string> columns{"left"};
    columns.insert(columns.end(), dividers.begin(), dividers.end());
    columns.push_back("right");
    for (std::size_t x = 0; x + 1 < columns.size(); ++x) {
        for (std::size_t z = 0; z + 1 < levels.size(); ++z) {
            start.bay({.name = bay_name(prefix, columns.size() > 2 ? x + 1 : 0,
                                        levels.size() > 2 ? z + 1 : 0),
                       .x = {columns[x], columns[x + 1]},
                       .y = y,
                       .z = {levels[z], levels[z + 1]}});
        }
    }
}

}  // namespace model
