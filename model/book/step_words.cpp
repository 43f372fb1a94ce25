#include "model/book/step_words.h"

#include "model/book/view_pages.h"

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
        for (const auto& move : step.moves) {
            all.push_back(move_words(move, numbers));
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

    std::string pin_words(const AssemblyStep& step) const {
        std::map<Index, std::size_t> counts;
        std::map<Index, std::string> where;
        for (const auto& pins : step.pins) {
            counts[pins.pin] += pins.fasteners.size();
            auto& words = where[pins.pin];
            words += (words.empty() ? "" : ", ") + std::to_string(pins.fasteners.size()) + " in " +
                     joint_words(pins.joint);
        }
        std::string words = "Pin: ";
        bool is_first = true;
        for (const auto& [pin, count] : counts) {
            words += is_first ? "" : "; ";
            is_first = false;
            words += pin < of_.catalogue.pins.size()
                         ? std::to_string(count) + " x " + of_.catalogue.pins[pin].id
                         : std::string("no pin fits, clamp");
            words += " (" + where[pin] + ")";
        }
        return words;
    }

    std::string square_words(const SquareRow& row) const {
        return "Both diagonals of face " + row.face + ", " + row.between[0][0] + " to " +
               row.between[0][1] + ", " + row.between[1][0] + " to " + row.between[1][1] +
               ", measure " + length_on_paper(of_.project, row.diagonal) +
               ".  One _________  other _________";
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
