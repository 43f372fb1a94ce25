#include "model/book/step_words.h"

#include "model/book/view_pages.h"

#include <algorithm>
#include <map>

namespace model {
namespace {

class StepWords {
public:
    StepWords(const BookOf& of, const AssemblyOrder& order) : of_{of}, order_{order} {}

    // `numbers` are those of the steps, counted in each frame.
    std::vector<std::string> lines(const AssemblyStep& step,
                                   const std::vector<int>& numbers) const {
        std::vector<std::string> all;
        // Pieces of one mark that come one after the other, and the same way, share a line.
        for (std::size_t i = 0; i < step.moves.size();) {
            const auto words = move_words(step.moves[i], numbers);
            const auto first = i;
            while (i < step.moves.size() && move_words(step.moves[i], numbers) == words) ++i;
            all.push_back(i - first > 1 ? std::to_string(i - first) + " x " + words : words);
        }
        if (!step.pins.empty()) all.push_back(pin_words(step));
        for (const Index square : step.squares) {
            if (square < order_.squares.size()) all.push_back(square_words(order_.squares[square]));
        }
        if (!step.sets.empty()) all.push_back(set_words(step));
        if (!step.fixing_holes.empty()) {
            all.push_back("Fix it through " + std::to_string(step.fixing_holes.size()) +
                          " holes of its feet, after you know what lies behind each.");
        }
        return all;
    }

private:
    std::string mark_of(Index piece) const {
        return mark_on_drawing(of_.resolved, of_.resolved.pieces[piece]);
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

    std::string move_words(const AssemblyMove& move, const std::vector<int>& numbers) const {
        const auto way = words_of(move.along);
        if (move.made_in < numbers.size()) {
            return "What step " + std::to_string(numbers[move.made_in]) + " made, " + way + ": " +
                   marks_of(move.pieces);
        }
        return marks_of(move.pieces) + ": " + way;
    }

    std::string joint_words(Index joint) const {
        const auto& it = of_.resolved.joints[joint];
        return mark_of(it.pieces[0]) + " + " + mark_of(it.pieces[1]);
    }

    // "Pin with 24 x sheet pin 1/8: 2 in each of 12 joints".
    std::string pin_words(const AssemblyStep& step) const {
        std::map<Index, std::vector<const StepPins*>> by_pin;
        for (const auto& pins : step.pins) by_pin[pins.pin].push_back(&pins);
        std::string words;
        for (const auto& [pin, all] : by_pin) {
            if (!words.empty()) words += "; ";
            if (pin >= of_.catalogue.pins.size()) {
                words += "clamp, since no pin fits: " + counts_by_joint(all);
                continue;
            }
            std::size_t count = 0;
            for (const auto* pins : all) count += pins->fasteners.size();
            words += "pin with " + std::to_string(count) + " x " + of_.catalogue.pins[pin].id +
                     ": " + counts_by_joint(all);
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
               ", measure " + length_on_paper(of_.project, row.diagonal) +
               ".  One:_________  other:_________";
    }

    std::string set_words(const AssemblyStep& step) const {
        std::string words = "Set in this order: ";
        bool is_first = true;
        bool has_nose = false;
        for (const auto& setting : step.sets) {
            words += is_first ? "" : ", ";
            is_first = false;
            words += joint_words(setting.joint) + (setting.long_nose ? "*" : "");
            has_nose = has_nose || setting.long_nose;
        }
        return words + (has_nose ? ". * only a long nose has room." : "");
    }

    const BookOf& of_;
    const AssemblyOrder& order_;
};

}  // namespace

std::vector<std::string> step_words(const BookOf& of,
                                    const AssemblyOrder& order,
                                    const AssemblyStep& step,
                                    const std::vector<int>& numbers) {
    return StepWords(of, order).lines(step, numbers);
}

}  // namespace model
