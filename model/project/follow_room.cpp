#include "model/project/follow_room.h"

#include "engine/measure/formula.h"
#include "model/project/named_list.h"
#include "model/project/references.h"
#include "model/project/step_over_sides.h"
#include "model/project/walk_texts.h"

#include <algorithm>
#include <set>
#include <string_view>
#include <utility>

namespace model {

namespace {

std::vector<Formula> formulas_of(const Obstacle& obstacle) {
    std::vector<Formula> formulas;
    walk_texts(obstacle, [&](const Meaning& meaning, const std::string& text, const Trail&) {
        if (meaning.role == Role::formula) formulas.push_back(text);
    });
    return formulas;
}

// How many formulas other than those of planes refer to a dimension.
int uses_beside_planes(const Project& project, const std::string& dimension) {
    int uses = 0;
    const auto count = [&](const auto& thing) {
        walk_texts(thing, [&](const Meaning& meaning, const std::string& text, const Trail&) {
            if (meaning.role != Role::formula) return;
            const auto names = engine::names_in(text);
            uses += std::ranges::count(names, dimension) > 0 ? 1 : 0;
        });
    };
    Project rest = project;
    for (Frame& frame : rest.frames) frame.planes.clear();
    count(rest);
    return uses;
}

std::string free_dimension_name(const Project& project, const std::string& wanted) {
    const auto is_taken = [&](const std::string& name) {
        return std::ranges::find(project.dimensions, name, &Dimension::name) !=
               project.dimensions.end();
    };
    std::string name = wanted;
    for (int n = 2; is_taken(name); ++n) name = wanted + " " + std::to_string(n);
    return name;
}

// What is measured from one formula from now on is measured from another one.
class Following {
public:
    // `obstacle`: the one whose planes these are; empty: any.
    Following(Project& project, std::string obstacle)
        : project_{project}, obstacle_{std::move(obstacle)} {}

    Formula follow(const Formula& old, const Formula& now, const std::string& name) {
        if (old == now || !is_measured_from(old)) return now;
        if (is_plain(now) && is_for_this_alone(old)) {
            find_named(project_.dimensions, old)->formula = now;
            return old;
        }
        const Formula by = named(now, name);
        for_each_measured_from(old, [&](Plane& plane) {
            plane.position = with_term_replaced(plane.position, as_term(old), as_term(by));
        });
        return by;
    }

    // A plain value as a dimension, so that the planes can stand on it.
    Formula named(const Formula& formula, const std::string& name) {
        if (!is_plain(formula)) return formula;
        const auto own = free_dimension_name(project_, engine::is_name(name) ? name : "obstacle");
        project_.dimensions.push_back({.name = own, .formula = formula});
        return own;
    }

    bool is_measured_from(const Formula& formula) {
        bool is_so = false;
        for_each_measured_from(formula, [&](Plane&) { is_so = true; });
        return is_so;
    }

private:
    template <class Do>
    void for_each_measured_from(const Formula& formula, Do act) {
        const Formula term = as_term(formula);
        for (Frame& frame : project_.frames) {
            for (Plane& plane : frame.planes) {
                const bool is_its = obstacle_.empty() || is_of_step_over(plane.name, obstacle_);
                if (is_its && has_term(plane.position, term)) act(plane);
            }
        }
    }

    // Counts the formula that is about to be stated anew.
    bool is_for_this_alone(const Formula& old) {
        return engine::is_name(old) &&
               find_named(project_.dimensions, old) != project_.dimensions.end() &&
               uses_beside_planes(project_, old) <= 1;
    }

    Project& project_;
    std::string obstacle_;
};

void follow_clearance(Project& project, const Obstacle& before, Obstacle& now) {
    if (before.clearance == now.clearance) return;
    Following planes(project, before.name);
    const std::string name = name_in_formulas(before.name) + " clearance";
    if (!before.clearance.empty() && !now.clearance.empty()) {
        now.clearance = planes.follow(before.clearance, now.clearance, name);
        return;
    }
    Formula& shops = project.shop.clearance;
    if (!planes.is_measured_from(before.clearance.empty() ? shops : before.clearance)) return;
    if (before.clearance.empty()) {
        now.clearance = planes.named(now.clearance, name);
        planes.follow(shops, now.clearance, name);
    } else {
        shops = planes.named(shops, "clearance");
        planes.follow(before.clearance, shops, name);
    }
}

}  // namespace

bool is_plain(const Formula& formula) { return engine::names_in(formula).empty(); }

bool is_of_step_over(const std::string& plane, const std::string& obstacle) {
    if (!plane.starts_with(obstacle + " ")) return false;
    std::string_view rest = std::string_view(plane).substr(obstacle.size() + 1);
    for (const auto& sides : frame_sides) {
        for (const std::string_view side : sides) {
            if (!rest.starts_with(side)) continue;
            const auto number = rest.substr(side.size());  // of a name that was taken
            const bool is_number = number.size() > 1 && number[0] == ' ' &&
                                   number.find_first_not_of("0123456789", 1) == number.npos;
            if (number.empty() || is_number) return true;
        }
    }
    return false;
}

void rename_planes_of_steps(Project& project, const std::string& before, const std::string& after) {
    if (before == after) return;
    for (Frame& frame : project.frames) {
        for (Plane& plane : frame.planes) {
            if (!is_of_step_over(plane.name, before)) continue;
            const std::string old = plane.name;
            const auto name = free_name_among(after + old.substr(before.size()), frame.planes);
            plane.name = name;
            rename_references(frame, {Target::plane, old}, name);
        }
    }
}

std::vector<TermStretch> terms_of(const Formula& sum) {
    std::vector<TermStretch> terms;
    std::size_t from = 0;
    int depth = 0;
    for (std::size_t i = 0; i < sum.size(); ++i) {
        if (sum[i] == '(') ++depth;
        if (sum[i] == ')') --depth;
        const bool is_sign = (sum[i] == '+' || sum[i] == '-') && i > 0 && i + 1 < sum.size() &&
                             sum[i - 1] == ' ' && sum[i + 1] == ' ';
        if (depth != 0 || !is_sign) continue;
        terms.push_back({from, i - 1});
        from = i + 2;
    }
    terms.push_back({from, sum.size()});
    return terms;
}

Formula as_term(const Formula& formula) {
    return engine::is_name(formula) ? formula : "(" + formula + ")";
}

bool has_term(const Formula& position, const Formula& term) {
    return std::ranges::any_of(terms_of(position), [&](const TermStretch& it) {
        return position.substr(it.from, it.to - it.from) == term;
    });
}

Formula with_term_replaced(const Formula& position, const Formula& term, const Formula& by) {
    Formula replaced;
    std::size_t done = 0;
    for (const auto& [from, to] : terms_of(position)) {
        if (position.substr(from, to - from) != term) continue;
        replaced += position.substr(done, from - done) + by;
        done = to;
    }
    return replaced + position.substr(done);
}

Obstacle followed_by_planes(Project& project, const Obstacle& before, Obstacle now) {
    Obstacle old = before;
    old.clearance = now.clearance;  // it is looked at by itself
    const auto then = formulas_of(old);
    if (then.size() == formulas_of(now).size() && before.shape.index() == now.shape.index()) {
        std::size_t i = 0;
        walk_texts(now, [&](const Meaning& meaning, std::string& text, const Trail&) {
            if (meaning.role != Role::formula) return;
            const Formula& was = then[i++];
            const std::string name =
                engine::is_name(was) ? was : name_in_formulas(before.name) + " measure";
            if (was != text) text = Following(project, before.name).follow(was, text, name);
        });
    }
    follow_clearance(project, before, now);
    return now;
}

Formula clearance_followed_by_planes(Project& project, const Formula& now) {
    return Following(project, "").follow(project.shop.clearance, now, "clearance");
}

std::vector<std::string> planes_measured_from_room(const Project& project, const Frame& frame) {
    std::set<std::string> places;
    for (const Formula& formula : frame.origin) {
        for (auto& name : engine::names_in(formula)) places.insert(std::move(name));
    }
    std::set<std::string> measures;
    for (const Obstacle& obstacle : project.room) {
        for (const Formula& formula : formulas_of(obstacle)) {
            for (auto& name : engine::names_in(formula)) measures.insert(std::move(name));
        }
    }
    std::vector<std::string> planes;
    for (const Plane& plane : frame.planes) {
        const auto names = engine::names_in(plane.position);
        const auto is_in = [&](const std::set<std::string>& known) {
            return std::ranges::any_of(names,
                                       [&](const auto& name) { return known.contains(name); });
        };
        if (plane.axis != Axis::z && is_in(places) && is_in(measures)) planes.push_back(plane.name);
    }
    return planes;
}

}  // namespace model
