#include "model/project/obstacle_measures.h"

#include "engine/measure/formula.h"
#include "model/project/walk_texts.h"

#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <string_view>

namespace model {
namespace {

using Names = std::set<std::string, std::less<>>;

template <class Thing>
Names names_in_formulas_of(const Thing& thing) {
    Names names;
    walk_texts(thing, [&](const Meaning& meaning, const std::string& text, const Trail&) {
        if (meaning.role != Role::formula) return;
        for (auto& name : engine::names_in(text)) names.insert(std::move(name));
    });
    return names;
}

// What stands on each dimension, by their places in the project.
class Uses {
public:
    explicit Uses(const Project& project) : project_{project} {
        for (std::size_t i = 0; i < project.dimensions.size(); ++i) {
            places_.emplace(project.dimensions[i].name, i);
            needs_.push_back(names_in_formulas_of(project.dimensions[i]));
        }
    }

    std::set<std::size_t> reached_from(const Names& names) const {
        std::set<std::size_t> reached;
        reach(names, reached);
        return reached;
    }

    // Whether anything but obstacles, and dimensions other than those, needs it.
    bool is_needed_outside(const std::string& dimension, const std::set<std::size_t>& those) const {
        if (outside_.empty()) {
            for (const auto& frame : project_.frames) outside_.merge(names_in_formulas_of(frame));
            outside_.merge(names_in_formulas_of(project_.shop));
        }
        if (outside_.count(dimension) > 0) return true;
        for (std::size_t i = 0; i < needs_.size(); ++i) {
            if (those.count(i) == 0 && needs_[i].count(dimension) > 0) return true;
        }
        return false;
    }

private:
    void reach(const Names& names, std::set<std::size_t>& reached) const {
        for (const auto& name : names) {
            const auto at = places_.find(name);
            if (at == places_.end() || !reached.insert(at->second).second) continue;
            reach(needs_[at->second], reached);
        }
    }

    const Project& project_;
    std::map<std::string, std::size_t, std::less<>> places_;
    std::vector<Names> needs_;
    mutable Names outside_;
};

bool bears_name_of(const std::string& dimension, const std::string& obstacle) {
    return dimension.size() > obstacle.size() + 1 &&
           dimension.compare(0, obstacle.size(), obstacle) == 0 &&
           dimension[obstacle.size()] == ' ';
}

}  // namespace

std::vector<std::string> obstacle_measures(const Project& project) {
    std::vector<std::string> measures(project.dimensions.size());
    if (project.room.empty() || project.dimensions.empty()) return measures;
    const Uses uses(project);
    std::vector<std::set<std::size_t>> reached;
    std::vector<int> count(measures.size());
    for (const auto& obstacle : project.room) {
        reached.push_back(uses.reached_from(names_in_formulas_of(obstacle)));
        for (const auto i : reached.back()) ++count[i];
    }
    for (std::size_t o = 0; o < project.room.size(); ++o) {
        const auto& obstacle = project.room[o].name;
        for (const auto i : reached[o]) {
            const auto& name = project.dimensions[i].name;
            if (count[i] > 1) continue;
            if (bears_name_of(name, obstacle) || !uses.is_needed_outside(name, reached[o]))
                measures[i] = obstacle;
        }
    }
    return measures;
}

}  // namespace model
