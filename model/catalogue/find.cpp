#include "model/catalogue/catalogue.h"
#include "model/catalogue/near_name.h"

#include <algorithm>

namespace model {
namespace {

template <class T>
const T* find_by(const std::vector<T>& all, std::string T::*name, std::string_view wanted) {
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const T& one) { return one.*name == wanted; });
    return found == all.end() ? nullptr : &*found;
}

}  // namespace

const Section* find_section(const Catalogue& catalogue, std::string_view id) {
    return find_by(catalogue.sections, &Section::id, id);
}

const Alloy* find_alloy(const Catalogue& catalogue, std::string_view id) {
    return find_by(catalogue.alloys, &Alloy::id, id);
}

const SheetMaterial* find_sheet_material(const Catalogue& catalogue, std::string_view id) {
    return find_by(catalogue.sheet_materials, &SheetMaterial::id, id);
}

const VentCover* find_vent_cover(const Catalogue& catalogue, std::string_view id) {
    return find_by(catalogue.vent_covers, &VentCover::id, id);
}

std::optional<double> sheet_density_kg_m3(const Catalogue& catalogue, std::string_view material) {
    if (const auto* alloy = find_alloy(catalogue, material)) return alloy->density_kg_m3;
    if (const auto* sheet = find_sheet_material(catalogue, material)) return sheet->density_kg_m3;
    return std::nullopt;
}

const Drill* find_drill(const Catalogue& catalogue, std::string_view name) {
    return find_by(catalogue.drills, &Drill::name, name);
}

const BlindRivet* find_rivet(const Catalogue& catalogue, std::string_view id) {
    return find_by(catalogue.rivets, &BlindRivet::id, id);
}

const MachineScrew* find_screw(const Catalogue& catalogue, std::string_view id) {
    return find_by(catalogue.screws, &MachineScrew::id, id);
}

const LayoutRule* find_layout_rule(const Catalogue& catalogue, std::string_view id) {
    return find_by(catalogue.layout_rules, &LayoutRule::id, id);
}

const DrillingSpeed* find_drilling_speed(const Catalogue& catalogue, std::string_view material) {
    return find_by(catalogue.drilling_speeds, &DrillingSpeed::material, material);
}

std::vector<std::string> nearest_section_ids(const Catalogue& catalogue,
                                             std::string_view id,
                                             std::size_t most) {
    struct Candidate {
        std::size_t changes;
        const std::string* id;
    };
    // A longer text than any id is no misspelt id, and would only cost time.
    constexpr std::size_t longest = 200;
    const auto wanted = compact_name(id.substr(0, longest));
    const auto far = std::max<std::size_t>(3, wanted.size() / 2);
    std::vector<Candidate> near;
    for (const auto& section : catalogue.sections) {
        const auto changes = changes_between(wanted, compact_name(section.id));
        if (changes <= far) near.push_back({changes, &section.id});
    }
    std::stable_sort(near.begin(), near.end(),
                     [](const Candidate& a, const Candidate& b) { return a.changes < b.changes; });
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < std::min(most, near.size()); ++i) ids.push_back(*near[i].id);
    return ids;
}

}  // namespace model
