#include "model/resolve/check_stated.h"

#include "model/project/walk_texts.h"
#include "model/resolve/name_index.h"
#include "model/resolve/recipe.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <unordered_set>
#include <utility>

namespace model {
namespace {

Finding fault(std::string code, Subject subject, std::string what, std::string mend) {
    return {.code = std::move(code),
            .severity = Severity::warning,
            .concerns = {std::move(subject)},
            .what = std::move(what),
            .mend = std::move(mend)};
}

// What a frame's kept things may refer to.
struct Names {
    const Frame& frame;
    NameIndex planes;
    NameIndex bays;
};

void check_bay_planes(const Names& names,
                      const Bay& bay,
                      Axis axis,
                      const std::array<std::string, 2>& planes,
                      std::vector<Finding>& findings) {
    const Subject subject{SubjectKind::bay, names.frame.name, bay.name};
    for (const auto& name : planes) {
        const auto plane = names.planes.find(name);
        if (plane == names.planes.end()) {
            findings.push_back(fault("unknown_plane", subject,
                                     "it refers to a plane \"" + name + "\" that is not there",
                                     "add the plane, or choose another"));
        } else if (names.frame.planes[plane->second].axis != axis) {
            findings.push_back(fault("wrong_axis", subject,
                                     "its plane \"" + name + "\" lies across another axis",
                                     "choose a plane across the right axis"));
        }
    }
}

void check_bay_name(const Names& names,
                    const Subject& subject,
                    const std::string& bay,
                    std::vector<Finding>& findings) {
    if (names.bays.contains(bay)) return;
    findings.push_back(fault("unknown_bay", subject,
                             "it refers to a bay \"" + bay + "\" that is not there",
                             "add the bay, or choose another"));
}

// Diagonals and leaning members.
template <class T>
void check_between_nodes(const Project& project,
                         const Names& names,
                         const std::vector<T>& bars,
                         SubjectKind kind,
                         std::vector<Finding>& findings) {
    for (const T& bar : bars) {
        const Subject subject{kind, names.frame.name, bar.name};
        for (const auto& plane : {bar.face, bar.from[0], bar.from[1], bar.to[0], bar.to[1]}) {
            if (names.planes.contains(plane)) continue;
            findings.push_back(fault("unknown_plane", subject,
                                     "it refers to a plane \"" + plane + "\" that is not there",
                                     "add the plane, or choose another"));
        }
        if (std::ranges::find(project.stock, bar.stock, &Stock::name) != project.stock.end()) {
            continue;
        }
        findings.push_back(fault("unknown_stock", subject,
                                 "it refers to stock \"" + bar.stock + "\" that is not there",
                                 "add the stock, or choose another"));
    }
}

// All formulas of a thing that nothing else works out.
template <class Thing>
void check_formulas(const Thing& thing, const Subject& subject, Values& values) {
    walk_texts(thing, [&](const Meaning& meaning, const std::string& formula, const Trail& trail) {
        if (meaning.role != Role::formula || (meaning.may_be_empty && formula.empty())) return;
        const auto what = trail.empty() ? std::string{"formula"} : "formula of the " + trail.back();
        values.check(formula, meaning.quantity.value_or(engine::QuantityKind::length), subject,
                     what + " \"" + formula + "\"");
    });
}

}  // namespace

void check_shop(const Shop& shop, const Catalogue& catalogue, std::vector<Finding>& findings) {
    const Subject subject{SubjectKind::shop, {}, {}};
    const auto is_known = [&](const std::string& id) {
        return find_rivet(catalogue, id) != nullptr || find_screw(catalogue, id) != nullptr;
    };
    if (!shop.fastener.empty() && !is_known(shop.fastener)) {
        findings.push_back(fault(
            "unknown_fastener", subject, "the catalogue has no fastener \"" + shop.fastener + "\"",
            "choose one that it has; until then one is chosen by the thickness "
            "of the plates"));
    }
    if (!shop.screw.empty() && find_screw(catalogue, shop.screw) == nullptr) {
        findings.push_back(fault("unknown_screw", subject,
                                 "the catalogue has no machine screw \"" + shop.screw + "\"",
                                 "choose one that it has; until then one is chosen by the "
                                 "thickness of the plates"));
    }
    if (!shop.foot_screw.empty() && find_screw(catalogue, shop.foot_screw) == nullptr) {
        findings.push_back(fault(
            "unknown_screw", subject,
            "the catalogue has no machine screw \"" + shop.foot_screw + "\" to fix feet with",
            "choose one that it has; until then holes are for 1/4 in, or M6 in metric stock"));
    }
    if (!find_recipe(shop.recipe)) {
        findings.push_back(fault(
            "unknown_recipe", subject, "there is no recipe \"" + shop.recipe + "\"",
            "choose one of: " + recipe_names() + "; until then members meet by the staggered lap"));
    }
    if (find_alloy(catalogue, shop.gusset_alloy) == nullptr) {
        findings.push_back(
            fault("unknown_alloy", subject,
                  "the catalogue has no alloy \"" + shop.gusset_alloy + "\" to cut gussets from",
                  "choose one that it has; until then they are weighed as aluminium"));
    }
    for (const auto& drill : shop.drills) {
        if (find_drill(catalogue, drill) != nullptr) continue;
        findings.push_back(fault("unknown_drill", subject,
                                 "the catalogue has no drill \"" + drill + "\"",
                                 "name it as the catalogue does: #30, 1/8, F, 3.3 mm"));
    }
}

void check_room(const Project& project, Values& values, std::vector<Finding>& findings) {
    index_names(project.room, SubjectKind::obstacle, {}, findings);
    for (const auto& obstacle : project.room) {
        check_formulas(obstacle, {SubjectKind::obstacle, {}, obstacle.name}, values);
    }
    std::unordered_set<std::string_view> in_use;  // the schedule of bars speaks of these
    for (const auto& frame : project.frames) {
        for (const auto& member : frame.members) in_use.insert(member.stock);
        for (const auto& diagonal : frame.diagonals) in_use.insert(diagonal.stock);
        for (const auto& leaning : frame.leaning) in_use.insert(leaning.stock);
    }
    for (const auto& stock : project.stock) {
        if (in_use.contains(stock.name)) continue;
        check_formulas(stock, {SubjectKind::stock, {}, stock.name}, values);
    }
}

void check_kept_things(const Project& project,
                       const Frame& frame,
                       Values& values,
                       std::vector<Finding>& findings) {
    std::vector<Finding> told_already;  // planes are indexed where members are laid out
    const Names names{frame,
                      index_names(frame.planes, SubjectKind::plane, frame.name, told_already),
                      index_names(frame.bays, SubjectKind::bay, frame.name, findings)};
    index_names(frame.panels, SubjectKind::panel, frame.name, findings);
    for (const auto& bay : frame.bays) {
        check_bay_planes(names, bay, Axis::x, bay.x, findings);
        check_bay_planes(names, bay, Axis::y, bay.y, findings);
        check_bay_planes(names, bay, Axis::z, bay.z, findings);
    }
    for (const auto& panel : frame.panels) {
        const Subject subject{SubjectKind::panel, frame.name, panel.name};
        check_bay_name(names, subject, panel.bay, findings);
    }
    for (const auto& load : frame.loads) {
        const Subject subject{SubjectKind::load, frame.name, load.name};
        if (const auto* bay = std::get_if<std::string>(&load.where)) {
            check_bay_name(names, subject, *bay, findings);
        }
        check_formulas(load, subject, values);
        if (!std::isfinite(load.mass_kg) || load.mass_kg < 0.0) {
            findings.push_back(
                fault("bad_load", subject, "its mass is below zero", "give its mass in kilograms"));
        }
    }
    check_between_nodes(project, names, frame.diagonals, SubjectKind::diagonal, findings);
    check_between_nodes(project, names, frame.leaning, SubjectKind::leaning, findings);
    index_names(frame.openings, SubjectKind::opening, frame.name, findings);
    for (const auto& opening : frame.openings) {
        check_formulas(opening, {SubjectKind::opening, frame.name, opening.name}, values);
    }
}

}  // namespace model
