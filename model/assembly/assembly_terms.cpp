#include "model/assembly/assembly_terms.h"

#include "model/schedule/sheet_pins.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace model {

AssemblyTerms::AssemblyTerms(const Project& of_project,
                             const Catalogue& of_catalogue,
                             const Resolved& of_resolved,
                             const AssemblyOrder& of_order)
    : project{of_project},
      catalogue{of_catalogue},
      resolved{of_resolved},
      order{of_order},
      words{project, catalogue, resolved},
      fasteners{catalogue, resolved},
      names{words, resolved, order},
      steps{step_names(words, names, order)} {}

std::string AssemblyTerms::step_name(Index step, const std::string& between) const {
    const std::string work(name_of(order.steps[step].work));
    return steps[step].empty() ? work : work + between + steps[step];
}

std::string AssemblyTerms::pin(const StepPins& pins) const {
    if (pins.pin >= catalogue.pins.size()) return {};
    const auto& first = resolved.fasteners[resolved.joints[pins.joint].first_fastener];
    return pin_name(catalogue.pins[pins.pin], engine::Length::from_nm(first.grip));
}

std::string AssemblyTerms::pins(const StepPins& pins, const std::string& between) const {
    const auto name = pin(pins);
    return name.empty() ? name : std::to_string(pins.fasteners.size()) + between + name;
}

std::string AssemblyTerms::fasteners_of(Index index, const std::string& between) const {
    const auto& joint = resolved.joints[index];
    if (joint.fastener_count == 0) return {};
    return std::to_string(joint.fastener_count) + between +
           fasteners.label_of(joint.first_fastener);
}

bool AssemblyTerms::has_way(Index piece) const {
    return !std::ranges::binary_search(order.pieces_without_way, piece);
}

std::string datum_side(const Piece& piece) {
    if (is_of_sheet(piece.kind) || is_between_nodes(piece.kind)) return {};
    constexpr std::array<std::array<const char*, 2>, 3> sides{
        {{"left", "right"}, {"front", "back"}, {"bottom", "top"}}};
    return sides[static_cast<std::size_t>(piece.run)][piece.run_sense > 0 ? 0 : 1];
}

}  // namespace model
