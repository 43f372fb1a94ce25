#include "model/project/obstacle_measures.h"

#include "engine/measure/formula.h"
#include "model/project/named_list.h"
#include "model/project/step_over_sides.h"
#include "model/project/walk_texts.h"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <map>
#include <set>
#include <string_view>

namespace model {
namespace {

using Places = std::map<std::string_view, std::size_t>;

std::vector<std::string> names_in_formulas_of(const Obstacle& obstacle) {
    std::vector<std::string> names;
    walk_texts(obstacle, [&](const Meaning& meaning, const std::string& text, const Trail&) {
        if (meaning.role != Role::formula) return;
        for (auto& name : engine::names_in(text)) names.push_back(std::move(name));
    });
    return names;
}

// The places of all dimensions that the obstacle stands on.
std::set<std::size_t> measures_under(const Project& project,
                                     const Places& places,
                                     const Obstacle& obstacle) {
    std::set<std::size_t> found;
    auto names = names_in_formulas_of(obstacle);
    while (!names.empty()) {
        const auto at = places.find(names.back());
        const bool is_new = at != places.end() && found.insert(at->second).second;
        names.pop_back();
        if (!is_new) continue;
        for (auto& name : engine::names_in(project.dimensions[at->second].formula))
            names.push_back(std::move(name));
    }
    return found;
}

// What its name says behind that of the obstacle: " height"; empty where it begins otherwise.
std::string behind_name(const std::string& dimension, const std::string& obstacle) {
    for (const auto& name : {obstacle, name_in_formulas(obstacle)}) {
        if (dimension.starts_with(name + " ")) return dimension.substr(name.size());
    }
    return {};
}

// The dimensions under each obstacle, and under no other one.
std::vector<std::vector<std::size_t>> measures_alone(const Project& project) {
    Places places;
    for (std::size_t i = 0; i < project.dimensions.size(); ++i)
        places.emplace(project.dimensions[i].name, i);
    std::vector<std::set<std::size_t>> under;
    std::vector<int> count(project.dimensions.size());
    for (const auto& obstacle : project.room) {
        under.push_back(measures_under(project, places, obstacle));
        for (const auto i : under.back()) ++count[i];
    }
    std::vector<std::vector<std::size_t>> alone(under.size());
    for (std::size_t o = 0; o < under.size(); ++o) {
        std::ranges::copy_if(under[o], std::back_inserter(alone[o]),
                             [&](std::size_t i) { return count[i] == 1; });
    }
    return alone;
}

}  // namespace

std::vector<std::string> obstacle_measures(const Project& project) {
    std::vector<std::string> measures(project.dimensions.size());
    const auto alone = measures_alone(project);
    for (std::size_t o = 0; o < alone.size(); ++o) {
        const auto& obstacle = project.room[o].name;
        for (const auto i : alone[o]) {
            if (!behind_name(project.dimensions[i].name, obstacle).empty()) measures[i] = obstacle;
        }
    }
    return measures;
}

void rename_measures(Project& project, const std::string& before, const std::string& now) {
    if (before == now) return;
    const auto alone = measures_alone(project);
    for (std::size_t o = 0; o < alone.size(); ++o) {
        if (project.room[o].name != now) continue;
        for (const auto i : alone[o]) {
            auto& dimension = project.dimensions[i];
            const auto rest = behind_name(dimension.name, before);
            const std::string name = name_in_formulas(now) + rest;
            if (rest.empty() || find_named(project.dimensions, name) != project.dimensions.end())
                continue;
            walk_texts(project, [&](const Meaning& meaning, std::string& text, const Trail&) {
                if (meaning.role == Role::formula)
                    text = engine::with_name_replaced(text, dimension.name, name);
            });
            dimension.name = name;
        }
    }
}

}  // namespace model
