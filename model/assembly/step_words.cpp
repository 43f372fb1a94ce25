#include "model/assembly/step_words.h"

#include "model/assembly/loose_steps.h"
#include "model/assembly/step_holding.h"
#include "model/project/listed_words.h"
#include "model/schedule/page_flow.h"
#include "model/schedule/pieces_by_mark.h"

#include <algorithm>
#include <array>
#include <map>
#include <utility>

namespace model {
namespace {

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

void add_note(std::string& note, const std::string& more) {
    note += (note.empty() ? "" : "; ") + more;
}

}  // namespace

StepWording::StepWording(const Project& project,
                         const Catalogue& catalogue,
                         const Resolved& resolved,
                         const AssemblyOrder& order)
    : terms_{project, catalogue, resolved, order},
      pinned_in_(resolved.joints.size(), no_index),
      set_in_(resolved.joints.size(), no_index) {
    for (Index s = 0; s < order.steps.size(); ++s) {
        for (const auto& pins : order.steps[s].pins) pinned_in_[pins.joint] = s;
        for (const auto& setting : order.steps[s].sets) set_in_[setting.joint] = s;
    }
}

std::vector<StepWords> StepWording::lines(Index number) const {
    const auto& step = terms_.order.steps[number];
    std::vector<StepWords> all;
    for (const auto& move : step.moves)
        all.push_back(
            {StepWork::put_on, move_words(move, lies_on(terms_.project, terms_.order, number))});
    for (auto& words : loose_words(number)) all.push_back({StepWork::put_on, std::move(words)});
    const auto holding = holding_words(terms_.resolved, terms_.order, number);
    if (!holding.empty()) all.push_back({StepWork::put_on, holding});
    if (!step.pins.empty()) all.push_back({StepWork::pin, pin_words(step)});
    for (const Index square : step.squares) {
        if (square >= terms_.order.squares.size()) continue;
        all.push_back({StepWork::measure, square_words(terms_.order.squares[square])});
    }
    if (!step.by_try_square.empty()) all.push_back({StepWork::try_square, try_square_words(step)});
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
    const auto& step = terms_.order.steps[number];
    std::map<int, StepJoint> rising;
    for (const auto& pins : step.pins) {
        auto joint = named(pins.joint);
        joint.pins = terms_.pins(pins, " x ");
        if (joint.pins.empty()) joint.pins = "clamp";
        const Index set = set_in_[pins.joint];
        if (set != number && set != no_index)
            add_note(joint.note, "set in step " + std::to_string(step_number(terms_.order, set)));
        rising[joint.number] = std::move(joint);
    }
    for (const auto& setting : step.sets) {
        auto& joint = rising.try_emplace(terms_.names.number(setting.joint), named(setting.joint))
                          .first->second;
        joint.fasteners = terms_.fasteners_of(setting.joint, " x ");
        const Index pinned = pinned_in_[setting.joint];
        if (pinned != number && pinned != no_index)
            add_note(joint.note,
                     "pinned in step " + std::to_string(step_number(terms_.order, pinned)));
        if (setting.long_nose) add_note(joint.note, "long nose");
        if (std::ranges::binary_search(terms_.order.joints_not_reached, setting.joint))
            add_note(joint.note, "the tool has no room: mend that first");
    }
    std::vector<StepJoint> all;
    for (auto& [key, joint] : rising) all.push_back(std::move(joint));
    return all;
}

std::string StepWording::count(Index number) const {
    const auto& step = terms_.order.steps[number];
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
    return mark_on_drawing(terms_.resolved, terms_.resolved.pieces[piece]);
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

std::string StepWording::move_words(const AssemblyMove& move, std::string_view lies_on) const {
    const bool has_way =
        std::ranges::all_of(move.pieces, [&](Index piece) { return terms_.has_way(piece); });
    auto way = has_way ? words_of(move.along) : std::string("no straight way, mend that first");
    if (move.along == Travel{} && !lies_on.empty()) way += " " + std::string(lies_on);
    if (move.made_in < terms_.order.steps.size()) {
        return "What step " + std::to_string(step_number(terms_.order, move.made_in)) + " made, " +
               way + ": " + marks_of(move.pieces);
    }
    const Index piece = move.pieces.front();
    const auto side = datum_side(terms_.resolved.pieces[piece]);
    return mark_of(piece) + ", " + terms_.words.member(piece) + ": " + way +
           (side.empty() ? "" : ", datum end at the frame's " + side);
}

// "They lie loose until step 5 holds them"; of some of what is put on "door and shelf lie
// loose ...".
std::vector<std::string> StepWording::loose_words(Index number) const {
    const auto& steps = terms_.order.steps;
    const auto& moves = steps[number].moves;
    std::map<Index, std::vector<std::string>> loose;  // by the step that holds them
    for (const auto& move : moves) {
        if (is_put_on_loose(steps, number, move))
            loose[move.held_in].push_back(moved_words(terms_.words, terms_.order, move, true));
    }
    std::vector<std::string> lines;
    for (const auto& [until, names] : loose) {
        const bool is_one = names.size() == 1;
        auto words = names.size() == moves.size() ? std::string(is_one ? "It" : "They")
                                                  : listed_words(names);
        words += is_one ? " lies loose" : " lie loose";
        if (until != no_index)
            words += " until step " + std::to_string(step_number(terms_.order, until)) + " holds " +
                     (is_one ? "it" : "them");
        lines.push_back(std::move(words));
    }
    return lines;
}

// "Pin joints 1 to 12 with 24 x sheet pin 1/8".
std::string StepWording::pin_words(const AssemblyStep& step) const {
    struct Alike {
        std::vector<int> joints;
        std::size_t pins = 0;
    };
    std::map<std::pair<Index, std::string>, Alike> by_pin;  // with its name
    for (const auto& pins : step.pins) {
        auto& alike = by_pin[{pins.pin, terms_.pin(pins)}];
        alike.joints.push_back(terms_.names.number(pins.joint));
        alike.pins += pins.fasteners.size();
    }
    std::string words;
    for (const auto& [pin, alike] : by_pin) {
        const auto& name = pin.second;
        const bool fits = !name.empty();
        words += words.empty() ? (fits ? "Pin " : "Clamp ") : (fits ? "; pin " : "; clamp ");
        words += joints_in_words(alike.joints);
        if (fits) words += " with " + std::to_string(alike.pins) + " x " + name;
        if (!fits) words += ", where no pin fits";
    }
    return words;
}

std::string StepWording::square_words(const SquareRow& row) const {
    return "Both diagonals of face " + row.face + ", " + row.between[0][0] + " to " +
           row.between[0][1] + ", " + row.between[1][0] + " to " + row.between[1][1] +
           (row.is_heel_to_heel ? ", from heel to heel" : "") + ", measure " +
           length_on_paper(terms_.project, row.diagonal);
}

// "No diagonal proves joints 37, 38: hold a try square into each before you set it".
std::string StepWording::try_square_words(const AssemblyStep& step) const {
    std::vector<int> numbers;
    for (const Index joint : step.by_try_square) numbers.push_back(terms_.names.number(joint));
    const bool is_one = numbers.size() == 1;
    return "No diagonal proves " + joints_in_words(std::move(numbers)) + ": make " +
           (is_one ? "it" : "each") + " square with a try square before you set it";
}

std::string StepWording::set_words(const AssemblyStep& step) const {
    std::vector<int> numbers;
    for (const auto& setting : step.sets) numbers.push_back(terms_.names.number(setting.joint));
    return "Set " + joints_in_words(numbers) + (numbers.size() > 1 ? ", in this order" : "");
}

StepJoint StepWording::named(Index joint) const {
    return {.joint = joint,
            .number = terms_.names.number(joint),
            .marks = terms_.names.marks(joint),
            .members = terms_.names.members(joint)};
}

std::string StepWording::title_in_frame(Index step) const {
    return "Step " + std::to_string(step_number(terms_.order, step)) + ": " +
           terms_.step_name(step);
}

std::string StepWording::title(Index step) const {
    const auto& frames = terms_.project.frames;
    const Index frame = terms_.order.steps[step].frame;
    if (frames.size() < 2 || frame >= frames.size()) return title_in_frame(step);
    return title_in_frame(step) + " (" + frames[frame].name + ")";
}

}  // namespace model
