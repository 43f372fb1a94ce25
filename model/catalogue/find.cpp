#include "model/catalogue/catalogue.h"

#include <algorithm>
#include <cctype>
#include <numeric>

namespace model {
namespace {

template <class T>
const T* find_by(const std::vector<T>& all, std::string T::*name, std::string_view wanted) {
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const T& one) { return one.*name == wanted; });
    return found == all.end() ? nullptr : &*found;
}

// Spaces and capitals are what people write differently, not what they mean differently.
std::string compact(std::string_view text) {
    std::string out;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (std::isspace(byte) == 0) out += static_cast<char>(std::tolower(byte));
    }
    return out;
}

// How many characters to put in, take out or change (Levenshtein distance).
std::size_t changes_between(const std::string& a, const std::string& b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const auto change = diagonal + (a[i - 1] == b[j - 1] ? 0U : 1U);
            diagonal = row[j];
            row[j] = std::min({row[j] + 1, row[j - 1] + 1, change});
        }
    }
    return row[b.size()];
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
    const auto wanted = compact(id.substr(0, longest));
    const auto far = std::max<std::size_t>(3, wanted.size() / 2);
    std::vector<Candidate> near;
    for (const auto& section : catalogue.sections) {
        const auto changes = changes_between(wanted, compact(section.id));
        if (changes <= far) near.push_back({changes, &section.id});
    }
    std::stable_sort(near.begin(), near.end(),
                     [](const Candidate& a, const Candidate& b) { return a.changes < b.changes; });
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < std::min(most, near.size()); ++i) ids.push_back(*near[i].id);
    return ids;
}

}  // namespace model
