#include "engine/files/csv.h"
#include "model/schedule/csv_tables.h"
#include "model/schedule/decimal_mm.h"
#include "model/schedule/fastener_words.h"
#include "model/schedule/pin_rows.h"
#include "model/schedule/tables.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace model {
namespace {

// What is bought beyond what is needed, rounded up to whole ones.
int spares_for(int needed, double spare_percent) {
    if (!(spare_percent > 0.0)) return 0;
    const double spares = std::ceil(needed * std::min(spare_percent, 1000.0) / 100.0 - 1e-9);
    return static_cast<int>(spares);
}

// Counts fasteners of one kind as they come, joint by joint.
struct Tally {
    int needed = 0;
    int joints = 0;
    Index last_joint = no_index;
    engine::Length thinnest_stack;
    engine::Length thickest_stack;

    void add(const Fastener& fastener) {
        const auto stack = engine::Length::from_nm(fastener.grip);
        thinnest_stack = needed == 0 ? stack : std::min(thinnest_stack, stack);
        thickest_stack = std::max(thickest_stack, stack);
        if (fastener.joint != last_joint) ++joints;
        last_joint = fastener.joint;
        ++needed;
    }

    engine::Length only_stack() const {
        return thinnest_stack == thickest_stack ? thinnest_stack : engine::Length{};
    }
};

FastenerRow row_of(const FastenerWords& words, const Tally& tally, double spare_percent) {
    return {.fastener = words.label,
            .diameter = words.diameter,
            .grip_or_length = words.grip_or_length,
            .stack = tally.only_stack(),
            .needed = tally.needed,
            .spares = spares_for(tally.needed, spare_percent),
            .joints = tally.joints};
}

FastenerWords rivet_nut_words(const Catalogue& catalogue, const RivetNut& nut) {
    const auto* screw = find_screw(catalogue, nut.screw);
    if (screw == nullptr) return {.label = nut.id, .diameter = "", .grip_or_length = ""};
    return {.label = nut.id,
            .diameter = size_text(screw->diameter, screw->system),
            .grip_or_length = size_text(nut.grip_least, screw->system) + " to " +
                              size_text(nut.grip_most, screw->system)};
}

// A screw is one thing to buy, whatever holds it.
std::vector<std::size_t> first_spec_of_label(const FastenersInUse& in_use) {
    std::vector<std::size_t> first;
    for (std::size_t i = 0; i < in_use.specs().size(); ++i) {
        std::size_t same = 0;
        while (in_use.words(same).label != in_use.words(i).label) ++same;
        first.push_back(same);
    }
    return first;
}

void append_set_fasteners(std::vector<FastenerRow>& rows,
                          const Project& project,
                          const Catalogue& catalogue,
                          const Resolved& resolved) {
    const FastenersInUse in_use{catalogue, resolved};
    const auto row_specs = first_spec_of_label(in_use);
    std::vector<Tally> tallies(row_specs.size());
    std::vector<Tally> nuts(catalogue.screws.size());
    std::vector<Tally> rivet_nuts(catalogue.rivet_nuts.size());
    for (Index i = 0; i < resolved.fasteners.size(); ++i) {
        const auto spec = in_use.spec_of(i);
        tallies[row_specs[spec]].add(resolved.fasteners[i]);
        const auto& [kind, index, grip, nut] = in_use.specs()[spec];
        if (kind == FastenerSpec::Kind::screw_through) nuts[index].add(resolved.fasteners[i]);
        if (nut < rivet_nuts.size()) rivet_nuts[nut].add(resolved.fasteners[i]);
    }
    const double spare_percent = project.shop.spare_percent;
    for (std::size_t i = 0; i < tallies.size(); ++i) {
        if (tallies[i].needed == 0) continue;
        rows.push_back(row_of(in_use.words(i), tallies[i], spare_percent));
    }
    for (std::size_t i = 0; i < nuts.size(); ++i) {
        if (nuts[i].needed == 0) continue;
        const auto& screw = catalogue.screws[i];
        const FastenerWords words{.label = "nut for " + screw.id,
                                  .diameter = size_text(screw.diameter, screw.system),
                                  .grip_or_length = ""};
        rows.push_back(row_of(words, nuts[i], spare_percent));
    }
    for (std::size_t i = 0; i < rivet_nuts.size(); ++i) {
        if (rivet_nuts[i].needed == 0) continue;
        rows.push_back(row_of(rivet_nut_words(catalogue, catalogue.rivet_nuts[i]), rivet_nuts[i],
                              spare_percent));
    }
}

}  // namespace

std::vector<FastenerRow> fastener_rows(const Project& project,
                                       const Catalogue& catalogue,
                                       const Resolved& resolved,
                                       const AssemblyOrder* order) {
    std::vector<FastenerRow> rows;
    append_set_fasteners(rows, project, catalogue, resolved);
    for (auto& row : pin_rows(catalogue, resolved, order)) rows.push_back(std::move(row));
    return rows;
}

std::string fastener_csv(const std::vector<FastenerRow>& rows) {
    engine::CsvText text{"fastener", "diameter", "grip_or_length", "stack_mm",
                         "needed",   "spares",   "total",          "joints"};
    for (const auto& row : rows) {
        const bool has_one_stack = row.stack != engine::Length{};
        text.row({row.fastener, row.diameter, row.grip_or_length,
                  has_one_stack ? decimal_mm(row.stack) : "", std::to_string(row.needed),
                  std::to_string(row.spares), std::to_string(row.needed + row.spares),
                  std::to_string(row.joints)});
    }
    return std::move(text).take();
}

}  // namespace model
