#include "model/assembly/step_names.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace model {
namespace {

class StepNaming {
public:
    StepNaming(const PieceWords& words, const JointNames& joints, const AssemblyOrder& order)
        : words_{words}, joints_{joints}, order_{order} {}

    // Where nothing else bears that name.
    std::string short_name(const AssemblyStep& step) const {
        if (step.work == AssemblyWork::fixed_to_van) return {};
        return step.face.empty() ? subject(step) : "face " + step.face;
    }

    std::string long_name(const AssemblyStep& step) const {
        const auto name = short_name(step);
        return step.face.empty() ? subject(step, true) : name + " with " + subject(step);
    }

private:
    // "post left and rail front top", "rail front top and 3 more pieces", "face right", "joints 14
    // to 18".
    std::string subject(const AssemblyStep& step, bool tells_origin = false) const {
        if (step.moves.empty()) return joints_set(step);
        const auto moved = [&](std::size_t at) {
            return moved_words(words_, order_, step.moves[at], tells_origin);
        };
        if (step.moves.size() == 1) return moved(0);
        if (step.moves.size() == 2 && moved(0) == moved(1)) return "2 pieces of " + moved(0);
        if (step.moves.size() == 2) return moved(0) + " and " + moved(1);
        const bool are_pieces =
            std::all_of(step.moves.begin() + 1, step.moves.end(),
                        [](const AssemblyMove& move) { return move.made_in == no_index; });
        const auto first = moved(0);
        const bool has_and = first.find(" and ") != std::string::npos;
        return first + (has_and ? ", and " : " and ") + std::to_string(step.moves.size() - 1) +
               " more" + (are_pieces ? " pieces" : "");
    }

    std::string joints_set(const AssemblyStep& step) const {
        std::vector<int> numbers;
        for (const auto& setting : step.sets) numbers.push_back(joints_.number(setting.joint));
        return joints_in_words(std::move(numbers));
    }

    const PieceWords& words_;
    const JointNames& joints_;
    const AssemblyOrder& order_;
};

}  // namespace

// Of two faces alike in name each says in which step it was made.
std::string moved_words(const PieceWords& words,
                        const AssemblyOrder& order,
                        const AssemblyMove& move,
                        bool tells_origin) {
    if (move.made_in >= order.steps.size()) return words.member(move.pieces.front());
    const auto& face = order.steps[move.made_in].face;
    const auto step = "step " + std::to_string(step_number(order, move.made_in));
    if (face.empty()) return "what " + step + " made";
    return "face " + face + (tells_origin ? " of " + step : std::string());
}

std::vector<std::string> step_names(const PieceWords& words,
                                    const JointNames& joints,
                                    const AssemblyOrder& order) {
    const StepNaming naming(words, joints, order);
    using Name = std::tuple<Index, AssemblyWork, std::string>;
    std::map<Name, int> shorts;
    for (const auto& step : order.steps) ++shorts[{step.frame, step.work, naming.short_name(step)}];
    std::map<Name, int> given;
    std::vector<std::string> names;
    for (const auto& step : order.steps) {
        auto name = naming.short_name(step);
        if (shorts[{step.frame, step.work, name}] > 1) name = naming.long_name(step);
        const int times = ++given[{step.frame, step.work, name}];
        names.push_back(times > 1 ? name + " (" + std::to_string(times) + ")" : name);
    }
    return names;
}

int step_number(const AssemblyOrder& order, Index step) {
    int number = 0;
    for (Index i = 0; i <= step && i < order.steps.size(); ++i) {
        if (order.steps[i].frame == order.steps[step].frame) ++number;
    }
    return number;
}

}  // namespace model
