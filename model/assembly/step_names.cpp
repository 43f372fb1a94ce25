#include "model/assembly/step_names.h"

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
    // "rail front top and 3 more", "face right", "joints 14 to 18".
    std::string subject(const AssemblyStep& step, bool tells_origin = false) const {
        if (step.moves.empty()) return joints_set(step);
        const auto first = moved(step.moves.front(), tells_origin);
        if (step.moves.size() == 1) return first;
        return first + " and " + std::to_string(step.moves.size() - 1) + " more";
    }

    // Of two faces alike in name each says in which step it was made.
    std::string moved(const AssemblyMove& move, bool tells_origin) const {
        if (move.made_in >= order_.steps.size()) return words_.member(move.pieces.front());
        const auto& face = order_.steps[move.made_in].face;
        const auto step = "step " + std::to_string(step_number(order_, move.made_in));
        if (face.empty()) return "what " + step + " made";
        return "face " + face + (tells_origin ? " of " + step : std::string());
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
