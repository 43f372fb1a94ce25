#include "model/assembly/step_words.h"

#include "model/schedule/page_flow.h"
#include "model/schedule/pieces_by_mark.h"

#include <algorithm>
#include <map>

namespace model {
namespace {

class Wording {
public:
    Wording(const Project& project,
            const Catalogue& catalogue,
            const Resolved& resolved,
            const AssemblyOrder& order)
        : project_{project}, catalogue_{catalogue}, resolved_{resolved}, order_{order} {}

    std::vector<StepWords> lines(const AssemblyStep& step) const {
        std::vector<StepWords> all;
        // Pieces of one mark that come one after the other, and the same way, share a line.
        for (std::size_t i = 0; i < step.moves.size();) {
            const auto words = move_words(step.moves[i]);
            const auto first = i;
            while (i < step.moves.size() && move_words(step.moves[i]) == words) ++i;
            all.push_back({StepWork::put_on,
                           i - first > 1 ? std::to_string(i - first) + " x " + words : words});
        }
        if (!step.pins.empty()) all.push_back({StepWork::pin, pin_words(step)});
        for (const Index square : step.squares) {
            if (square >= order_.squares.size()) continue;
            all.push_back({StepWork::measure, square_words(order_.squares[square])});
        }
        if (!step.sets.empty()) all.push_back({StepWork::set, set_words(step)});
        if (!step.fixing_holes.empty()) {
            all.push_back(
                {StepWork::fix, "Fix it through " + std::to_string(step.fixing_holes.size()) +
                                    " holes of its feet, after you know what lies behind each."});
        }
        return all;
    }

private:
    std::string mark_of(Index piece) const {
        return mark_on_drawing(resolved_, resolved_.pieces[piece]);
    }

    // "A1 and 2 x B1".
    std::string marks_of(const std::vector<Index>& pieces) const {
        std::map<std::string, int> counts;
        for (const Index piece : pieces) ++counts[mark_of(piece)];
        std::string words;
        for (const auto& [mark, count] : counts) {
            words += (words.empty() ? "" : ", ") +
                     (count > 1 ? std::to_string(count) + " x " : std::string()) + mark;
        }
        return words;
    }

    std::string move_words(const AssemblyMove& move) const {
        const bool has_way = std::ranges::none_of(move.pieces, [&](Index piece) {
            return std::ranges::binary_search(order_.pieces_without_way, piece);
        });
        const auto way =
            has_way ? words_of(move.along) : std::string("no straight way, mend that first");
        if (move.made_in < order_.steps.size()) {
            return "What step " + std::to_string(step_number(order_, move.made_in)) + " made, " +
                   way + ": " + marks_of(move.pieces);
        }
        return marks_of(move.pieces) + ": " + way;
    }

    std::string joint_words(Index joint) const {
        const auto& it = resolved_.joints[joint];
        return mark_of(it.pieces[0]) + " + " + mark_of(it.pieces[1]);
    }

    // "Pin with 24 x sheet pin 1/8: 2 in each of 12 joints".
    std::string pin_words(const AssemblyStep& step) const {
        std::map<Index, std::vector<const StepPins*>> by_pin;
        for (const auto& pins : step.pins) by_pin[pins.pin].push_back(&pins);
        std::string words;
        for (const auto& [pin, all] : by_pin) {
            if (!words.empty()) words += "; ";
            if (pin >= catalogue_.pins.size()) {
                words += "clamp, since no pin fits: " + counts_by_joint(all);
                continue;
            }
            std::size_t count = 0;
            for (const auto* pins : all) count += pins->fasteners.size();
            words += "pin with " + std::to_string(count) + " x " + catalogue_.pins[pin].id + ": " +
                     counts_by_joint(all);
        }
        words.front() = words.front() == 'p' ? 'P' : 'C';
        return words;
    }

    std::string counts_by_joint(const std::vector<const StepPins*>& all) const {
        const auto count = all.front()->fasteners.size();
        const bool are_alike = std::ranges::all_of(
            all, [&](const StepPins* pins) { return pins->fasteners.size() == count; });
        if (are_alike && all.size() > 2)
            return std::to_string(count) + " in each of " + std::to_string(all.size()) + " joints";
        std::string words;
        for (const auto* pins : all) {
            words += (words.empty() ? "" : ", ") + std::to_string(pins->fasteners.size()) + " in " +
                     joint_words(pins->joint);
        }
        return words;
    }

    std::string square_words(const SquareRow& row) const {
        return "Both diagonals of face " + row.face + ", " + row.between[0][0] + " to " +
               row.between[0][1] + ", " + row.between[1][0] + " to " + row.between[1][1] +
               ", measure " + length_on_paper(project_, row.diagonal);
    }

    std::string set_words(const AssemblyStep& step) const {
        std::string words = "Set in this order: ";
        bool is_first = true;
        bool has_nose = false;
        for (const auto& setting : step.sets) {
            words += is_first ? "" : ", ";
            is_first = false;
            words += joint_words(setting.joint) + (setting.long_nose ? "*" : "");
            if (std::ranges::binary_search(order_.joints_not_reached, setting.joint))
                words += " (the tool has no room: mend that first)";
            has_nose = has_nose || setting.long_nose;
        }
        return words + (has_nose ? ". * only a long nose has room." : "");
    }

    const Project& project_;
    const Catalogue& catalogue_;
    const Resolved& resolved_;
    const AssemblyOrder& order_;
};

}  // namespace

std::vector<StepWords> step_words(const Project& project,
                                  const Catalogue& catalogue,
                                  const Resolved& resolved,
                                  const AssemblyOrder& order,
                                  Index step) {
    return Wording(project, catalogue, resolved, order).lines(order.steps[step]);
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
