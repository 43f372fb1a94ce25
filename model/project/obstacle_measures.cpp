#include "model/project/obstacle_measures.h"

#include "engine/measure/formula.h"
#include "model/project/step_over_sides.h"
#include "model/project/walk_texts.h"

#include <cstddef>
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

bool begins_with(const std::string& dimension, const std::string& name) {
    return dimension.starts_with(name + " ");
}

}  // namespace

std::vector<std::string> obstacle_measures(const Project& project) {
    std::vector<std::string> measures(project.dimensions.size());
    Places places;
    for (std::size_t i = 0; i < measures.size(); ++i) places.emplace(project.dimensions[i].name, i);
    std::vector<std::set<std::size_t>> found;
    std::vector<int> count(measures.size());
    for (const auto& obstacle : project.room) {
        found.push_back(measures_under(project, places, obstacle));
        for (const auto i : found.back()) ++count[i];
    }
    for (std::size_t o = 0; o < found.size(); ++o) {
        const auto& obstacle = project.room[o].name;
        for (const auto i : found[o]) {
            const auto& name = project.dimensions[i].name;
            const bool is_its =
                begins_with(name, obstacle) || begins_with(name, name_in_formulas(obstacle));
            if (count[i] == 1 && is_its) measures[i] = obstacle;
        }
    }
    return measures;
}

}  // namespace model
