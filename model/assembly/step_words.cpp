#include "model/assembly/step_words.h"

#include "model/schedule/page_flow.h"
#include "model/schedule/pieces_by_mark.h"

#include <algorithm>
#include <array>
#include <map>

namespace model {
namespace {

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

// "joint 4", "joints 1 to 3, 7"
std::string joints_text(std::vector<int> numbers) {
    std::ranges::sort(numbers);
    return (numbers.size() == 1 ? "joint " : "joints ") + ranges_of(numbers);
}

// ", datum end below": two ends that look alike are told apart by it. Nothing of what runs along no
// axis of the frame, or is cut from sheet.
std::string datum_words(const Piece& piece) {
    if (is_of_sheet(piece.kind) || is_between_nodes(piece.kind)) return {};
    constexpr std::array<std::array<const char*, 2>, 3> sides{
        {{"on the left", "on the right"}, {"in front", "at the back"}, {"below", "above"}}};
    const auto axis = static_cast<std::size_t>(piece.run);
    return std::string(", datum end ") + sides[axis][piece.run_sense > 0 ? 0 : 1];
}

void add_note(std::string& note, const std::string& more) {
    note += (note.empty() ? "" : "; ") + more;
}

}  // namespace

StepWording::StepWording(const Project& project,
                         const Catalogue& catalogue,
                         const Resolved& resolved,
                         const AssemblyOrder& order)
    : project_{project},
      catalogue_{catalogue},
      resolved_{resolved},
      order_{order},
      words_{project, catalogue, resolved},
      fasteners_{catalogue, resolved},
      names_{words_, resolved, order},
      pinned_in_(resolved.joints.size(), no_index),
      set_in_(resolved.joints.size(), no_index) {
    for (Index s = 0; s < order.steps.size(); ++s) {
        for (const auto& pins : order.steps[s].pins) pinned_in_[pins.joint] = s;
        for (const auto& setting : order.steps[s].sets) set_in_[setting.joint] = s;
    }
}

std::vector<StepWords> StepWording::lines(Index number) const {
    const auto& step = order_.steps[number];
    std::vector<StepWords> all;
    for (const auto& move : step.moves) all.push_back({StepWork::put_on, move_words(move)});
    if (!step.pins.empty()) all.push_back({StepWork::pin, pin_words(step)});
    for (const Index square : step.squares) {
        if (square >= order_.squares.size()) continue;
        all.push_back({StepWork::measure, square_words(order_.squares[square])});
    }
    if (!step.sets.empty()) all.push_back({StepWork::set, set_words(step)});
    if (!step.fixing_holes.empty()) {
        all.push_back({StepWork::fix, "Fix it through " +
                                          counted(step.fixing_holes.size(), "hole of its foot",
                                                  "holes of its feet") +
                                          ", after you know what lies behind each."});
    }
    return all;
}

std::vector<StepJoint> StepWording::joints(Index number) const {
    const auto& step = order_.steps[number];
    std::map<int, StepJoint> rising;
    for (const auto& pins : step.pins) {
        auto joint = named(pins.joint);
        joint.pins = pins_in_words(pins);
        const Index set = set_in_[pins.joint];
        if (set != number && set != no_index)
            add_note(joint.note, "set in step " + std::to_string(step_number(order_, set)));
        rising[joint.number] = std::move(joint);
    }
    for (const auto& setting : step.sets) {
        auto& joint =
            rising.try_emplace(names_.number(setting.joint), named(setting.joint)).first->second;
        joint.fasteners = fasteners_in_words(setting.joint);
        const Index pinned = pinned_in_[setting.joint];
        if (pinned != number && pinned != no_index)
            add_note(joint.note, "pinned in step " + std::to_string(step_number(order_, pinned)));
        if (setting.long_nose) add_note(joint.note, "long nose");
        if (std::ranges::binary_search(order_.joints_not_reached, setting.joint))
            add_note(joint.note, "the tool has no room: mend that first");
    }
    std::vector<StepJoint> all;
    for (auto& [key, joint] : rising) all.push_back(std::move(joint));
    return all;
}

std::string StepWording::count(Index number) const {
    const auto& step = order_.steps[number];
    std::size_t pieces = 0;
    std::size_t carried = 0;
    for (const auto& move : step.moves) {
        if (move.made_in == no_index) pieces += move.pieces.size();
        if (move.made_in != no_index) ++carried;
    }
    if (pieces > 0) return counted(pieces, "piece", "pieces");
    if (carried > 0) return counted(carried, "part carried on", "parts carried on");
    if (!step.fixing_holes.empty())
        return counted(step.fixing_holes.size(), "hole to fix through", "holes to fix through");
    return counted(step.sets.size(), "joint to set", "joints to set");
}

std::string StepWording::mark_of(Index piece) const {
    return mark_on_drawing(resolved_, resolved_.pieces[piece]);
}

// "A1, 2 x B1".
std::string StepWording::marks_of(const std::vector<Index>& pieces) const {
    std::map<std::string, int> counts;
    for (const Index piece : pieces) ++counts[mark_of(piece)];
    std::string words;
    for (const auto& [mark, count] : counts) {
        words += (words.empty() ? "" : ", ") +
                 (count > 1 ? std::to_string(count) + " x " : std::string()) + mark;
    }
    return words;
}

std::string StepWording::move_words(const AssemblyMove& move) const {
    const bool has_way = std::ranges::none_of(move.pieces, [&](Index piece) {
        return std::ranges::binary_search(order_.pieces_without_way, piece);
    });
    const auto way =
        has_way ? words_of(move.along) : std::string("no straight way, mend that first");
    if (move.made_in < order_.steps.size()) {
        return "What step " + std::to_string(step_number(order_, move.made_in)) + " made, " + way +
               ": " + marks_of(move.pieces);
    }
    const Index piece = move.pieces.front();
    return mark_of(piece) + ", " + words_.member(piece) + ": " + way +
           datum_words(resolved_.pieces[piece]);
}

// "Pin joints 1 to 12 with 24 x sheet pin 1/8".
std::string StepWording::pin_words(const AssemblyStep& step) const {
    struct Alike {
        std::vector<int> joints;
        std::size_t pins = 0;
    };
    std::map<Index, Alike> by_pin;
    for (const auto& pins : step.pins) {
        auto& alike = by_pin[pins.pin];
        alike.joints.push_back(names_.number(pins.joint));
        alike.pins += pins.fasteners.size();
    }
    std::string words;
    for (const auto& [pin, alike] : by_pin) {
        const bool fits = pin < catalogue_.pins.size();
        words += words.empty() ? (fits ? "Pin " : "Clamp ") : (fits ? "; pin " : "; clamp ");
        words += joints_text(alike.joints);
        if (fits) words += " with " + std::to_string(alike.pins) + " x " + catalogue_.pins[pin].id;
        if (!fits) words += ", where no pin fits";
    }
    return words;
}

std::string StepWording::square_words(const SquareRow& row) const {
    return "Both diagonals of face " + row.face + ", " + row.between[0][0] + " to " +
           row.between[0][1] + ", " + row.between[1][0] + " to " + row.between[1][1] +
           ", measure " + length_on_paper(project_, row.diagonal);
}

std::string StepWording::set_words(const AssemblyStep& step) const {
    std::vector<int> numbers;
    for (const auto& setting : step.sets) numbers.push_back(names_.number(setting.joint));
    return "Set " + joints_text(numbers) + (numbers.size() > 1 ? ", in this order" : "");
}

StepJoint StepWording::named(Index joint) const {
    return {.joint = joint,
            .number = names_.number(joint),
            .marks = names_.marks(joint),
            .members = names_.members(joint)};
}

std::string StepWording::pins_in_words(const StepPins& pins) const {
    if (pins.pin >= catalogue_.pins.size()) return "clamp";
    return std::to_string(pins.fasteners.size()) + " x " + catalogue_.pins[pins.pin].id;
}

std::string StepWording::fasteners_in_words(Index index) const {
    const auto& joint = resolved_.joints[index];
    if (joint.fastener_count == 0) return {};
    return std::to_string(joint.fastener_count) + " x " + fasteners_.label_of(joint.first_fastener);
}

int step_number(const AssemblyOrder& order, Index step) {
    int number = 0;
    for (Index i = 0; i <= step && i < order.steps.size(); ++i) {
        if (order.steps[i].frame == order.steps[step].frame) ++number;
    }
    return number;
}

std::string step_title(const AssemblyOrder& order, Index step) {
    const auto& it = order.steps[step];
    return "Step " + std::to_string(step_number(order, step)) + ": " +
           std::string(name_of(it.work)) + (it.face.empty() ? "" : ", face " + it.face);
}

}  // namespace model
