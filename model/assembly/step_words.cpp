#include "model/assembly/step_words.h"

#include "model/resolve/finding.h"

#include <array>
#include <map>

namespace model {
namespace {

// "B2", "B2 opposite".
std::string mark_of(const Resolved& resolved, Index piece) {
    const auto& it = resolved.pieces[piece];
    if (it.mark >= resolved.marks.size()) return {};
    return resolved.marks[it.mark].name + (it.hand == Hand::opposite ? " opposite" : "");
}

// "A1, 2 x B1".
std::string marks_of(const Resolved& resolved, const std::vector<Index>& pieces) {
    std::map<std::string, int> counts;
    for (const Index piece : pieces) ++counts[mark_of(resolved, piece)];
    std::string words;
    for (const auto& [mark, count] : counts) {
        words += words.empty() ? "" : ", ";
        words += (count > 1 ? std::to_string(count) + " x " : std::string()) + mark;
    }
    return words;
}

std::string move_words(const Resolved& resolved,
                       const AssemblyOrder& order,
                       const AssemblyMove& move) {
    const auto way = words_of(move.along);
    const auto marks = marks_of(resolved, move.pieces);
    if (move.made_in >= order.steps.size()) return marks + ": " + way;
    return "what step " + std::to_string(step_number(order, move.made_in)) + " made, " + way +
           ": " + marks;
}

std::string joint_words(const Resolved& resolved, Index joint) {
    const auto& it = resolved.joints[joint];
    return mark_of(resolved, it.pieces[0]) + " + " + mark_of(resolved, it.pieces[1]);
}

// "8 x sheet pin 1/8 (2 in A1 + B1, 2 in A1 + B2)".
std::string pin_words(const Catalogue& catalogue,
                      const Resolved& resolved,
                      const AssemblyStep& step) {
    std::map<Index, std::size_t> counts;
    std::map<Index, std::string> where;
    for (const auto& pins : step.pins) {
        counts[pins.pin] += pins.fasteners.size();
        auto& words = where[pins.pin];
        words += words.empty() ? "" : ", ";
        words += std::to_string(pins.fasteners.size()) + " in " + joint_words(resolved, pins.joint);
    }
    std::string words;
    for (const auto& [pin, count] : counts) {
        words += words.empty() ? "" : "; ";
        words += pin < catalogue.pins.size()
                     ? std::to_string(count) + " x " + catalogue.pins[pin].id
                     : std::string("no pin fits, clamp");
        words += " (" + where[pin] + ")";
    }
    return words;
}

std::string square_words(const Project& project, const SquareRow& row) {
    return "both diagonals of face " + row.face + ", " + row.between[0][0] + " to " +
           row.between[0][1] + ", " + row.between[1][0] + " to " + row.between[1][1] +
           ", measure " + length_in_words(row.diagonal, project.shown);
}

std::string set_words(const Resolved& resolved, const AssemblyStep& step) {
    std::string words;
    bool has_nose = false;
    for (const auto& setting : step.sets) {
        words += words.empty() ? "" : ", ";
        words += joint_words(resolved, setting.joint) + (setting.long_nose ? "*" : "");
        has_nose = has_nose || setting.long_nose;
    }
    return "in this order: " + words + (has_nose ? "; * only a long nose has room" : "");
}

}  // namespace

std::string_view name_of(StepWork work) {
    constexpr std::array<std::string_view, 5> names{"put on", "pin", "measure", "set", "fix"};
    return names[static_cast<std::size_t>(work)];
}

std::vector<StepWords> step_words(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved,
                                  const AssemblyOrder& order,
                                  Index step_index) {
    const auto& step = order.steps[step_index];
    std::vector<StepWords> all;
    for (const auto& move : step.moves) {
        all.push_back({StepWork::put_on, move_words(resolved, order, move)});
    }
    if (!step.pins.empty()) all.push_back({StepWork::pin, pin_words(catalogue, resolved, step)});
    for (const Index square : step.squares) {
        if (square >= order.squares.size()) continue;
        all.push_back({StepWork::measure, square_words(project, order.squares[square])});
    }
    if (!step.sets.empty()) all.push_back({StepWork::set, set_words(resolved, step)});
    if (!step.fixing_holes.empty()) {
        all.push_back(
            {StepWork::fix, "through " + std::to_string(step.fixing_holes.size()) +
                                " holes of its feet, after you know what lies behind each"});
    }
    return all;
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
