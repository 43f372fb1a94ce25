#include "model/project/own_dimensions.h"

#include "engine/measure/formula.h"
#include "model/project/free_name.h"
#include "model/project/named_list.h"
#include "model/project/walk_texts.h"

#include <map>
#include <utility>

namespace model {

namespace {

using Names = std::set<std::string>;
using Renamed = std::map<std::string, std::string>;

template <class T, class Act>
void for_each_formula(T& thing, Act act) {
    walk_texts(thing, [&](const Meaning& meaning, auto& text, const Trail&) {
        if (meaning.role == Role::formula) act(text);
    });
}

template <class T>
void add_names(const T& thing, Names& names) {
    for_each_formula(thing, [&](const Formula& formula) {
        for (auto& name : engine::names_in(formula)) names.insert(std::move(name));
    });
}

// With those that they are worked out from.
Names with_grounds(const Project& project, Names names) {
    std::vector<std::string> waiting(names.begin(), names.end());
    while (!waiting.empty()) {
        const std::string name = std::move(waiting.back());
        waiting.pop_back();
        Names grounds;
        for (const Dimension& dimension : project.dimensions) {
            if (dimension.name == name) add_names(dimension, grounds);
        }
        for (const std::string& ground : grounds) {
            if (names.insert(ground).second) waiting.push_back(ground);
        }
    }
    return names;
}

std::string own_name(const Project& project,
                     const std::string& name,
                     const std::string& original,
                     const std::string& copy) {
    const bool is_called_after = name.starts_with(original + " ");
    const std::string rest = is_called_after ? name.substr(original.size() + 1) : name;
    const std::string wanted = copy + " " + rest;
    return free_name(engine::is_name(wanted) ? wanted : name, [&](const std::string& taken) {
        return std::any_of(project.dimensions.begin(), project.dimensions.end(),
                           [&](const Dimension& other) { return other.name == taken; });
    });
}

template <class T>
void rename_in_formulas(T& thing, const Renamed& renamed) {
    for_each_formula(thing, [&](Formula& formula) {
        for (const auto& [before, after] : renamed) {
            formula = engine::with_name_replaced(formula, before, after);
        }
    });
}

}  // namespace

void give_own_dimensions(Project& project,
                         Frame& copy,
                         const std::string& original,
                         const std::set<std::string>& places) {
    const Place origin = std::exchange(copy.origin, {"0", "0", "0"});
    Names used;
    add_names(copy, used);
    for (const std::string& name : places) used.erase(name);  // with what they stand on
    used = with_grounds(project, std::move(used));
    Names shared;
    for (const Obstacle& obstacle : project.room) add_names(obstacle, shared);
    add_names(project.shop, shared);
    shared = with_grounds(project, std::move(shared));
    shared.insert(places.begin(), places.end());

    Renamed renamed;
    const std::vector<Dimension> before = project.dimensions;
    for (const Dimension& dimension : before) {
        if (!used.contains(dimension.name) || shared.contains(dimension.name)) continue;
        Dimension own = dimension;
        own.name = own_name(project, dimension.name, original, copy.name);
        renamed.emplace(dimension.name, own.name);
        project.dimensions.push_back(std::move(own));
    }
    for (std::size_t i = before.size(); i < project.dimensions.size(); ++i) {
        rename_in_formulas(project.dimensions[i], renamed);
    }
    rename_in_formulas(copy, renamed);
    copy.origin = origin;
}

}  // namespace model
