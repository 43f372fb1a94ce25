#include "model/resolve/check_stated.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace model {
namespace {

template <class Things>
auto find_named(const Things& things, const std::string& name) {
    return std::find_if(things.begin(), things.end(),
                        [&](const auto& thing) { return thing.name == name; });
}

Finding fault(std::string code, Subject subject, std::string what, std::string mend) {
    return {.code = std::move(code),
            .severity = Severity::warning,
            .concerns = {std::move(subject)},
            .what = std::move(what),
            .mend = std::move(mend)};
}

void check_bay_planes(const Frame& frame,
                      const Bay& bay,
                      Axis axis,
                      const std::array<std::string, 2>& names,
                      std::vector<Finding>& findings) {
    const Subject subject{SubjectKind::bay, frame.name, bay.name};
    for (const auto& name : names) {
        const auto plane = find_named(frame.planes, name);
        if (plane == frame.planes.end()) {
            findings.push_back(fault("unknown_plane", subject,
                                     "it refers to a plane \"" + name + "\" that is not there",
                                     "add the plane, or choose another"));
        } else if (plane->axis != axis) {
            findings.push_back(fault("wrong_axis", subject,
                                     "its plane \"" + name + "\" lies across another axis",
                                     "choose a plane across the right axis"));
        }
    }
}

void check_bay_name(const Frame& frame,
                    const Subject& subject,
                    const std::string& bay,
                    std::vector<Finding>& findings) {
    if (find_named(frame.bays, bay) != frame.bays.end()) return;
    findings.push_back(fault("unknown_bay", subject,
                             "it refers to a bay \"" + bay + "\" that is not there",
                             "add the bay, or choose another"));
}

}  // namespace

void check_shop(const Shop& shop, const Catalogue& catalogue, std::vector<Finding>& findings) {
    const Subject subject{SubjectKind::shop, {}, {}};
    const bool known = shop.fastener.empty() || find_rivet(catalogue, shop.fastener) != nullptr;
    if (!known && find_screw(catalogue, shop.fastener) != nullptr) {
        findings.push_back(fault("screw_is_riveted", subject, "screws are not laid out yet",
                                 "choose a blind rivet; until then one is chosen by the thickness "
                                 "of the plates"));
    } else if (!known) {
        findings.push_back(fault(
            "unknown_fastener", subject, "the catalogue has no fastener \"" + shop.fastener + "\"",
            "choose one that it has; until then one is chosen by the thickness "
            "of the plates"));
    }
    for (const auto& drill : shop.drills) {
        if (find_drill(catalogue, drill) != nullptr) continue;
        findings.push_back(fault("unknown_drill", subject,
                                 "the catalogue has no drill \"" + drill + "\"",
                                 "name it as the catalogue does: #30, 1/8, F, 3.3 mm"));
    }
}

void check_kept_things(const Frame& frame, std::vector<Finding>& findings) {
    for (const auto& bay : frame.bays) {
        check_bay_planes(frame, bay, Axis::x, bay.x, findings);
        check_bay_planes(frame, bay, Axis::y, bay.y, findings);
        check_bay_planes(frame, bay, Axis::z, bay.z, findings);
    }
    for (const auto& panel : frame.panels) {
        check_bay_name(frame, {SubjectKind::panel, frame.name, panel.name}, panel.bay, findings);
    }
    for (const auto& load : frame.loads) {
        const Subject subject{SubjectKind::load, frame.name, load.name};
        if (const auto* bay = std::get_if<std::string>(&load.where)) {
            check_bay_name(frame, subject, *bay, findings);
        }
        if (!std::isfinite(load.mass_kg) || load.mass_kg < 0.0) {
            findings.push_back(
                fault("bad_load", subject, "its mass is below zero", "give its mass in kilograms"));
        }
    }
}

}  // namespace model
