#include "model/assembly/joint_names.h"

#include "model/schedule/pieces_by_mark.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace model {

std::vector<int> joint_numbers(const AssemblyOrder& order, const Resolved& resolved) {
    std::vector<int> numbers(resolved.joints.size(), 0);
    std::vector<int> last(resolved.frames.size(), 0);
    for (const auto& step : order.steps) {
        for (const auto& setting : step.sets) numbers[setting.joint] = ++last[step.frame];
    }
    return numbers;
}

JointNames::JointNames(const PieceWords& words,
                       const Resolved& resolved,
                       const AssemblyOrder& order)
    : resolved_{resolved}, numbers_{joint_numbers(order, resolved)} {
    std::map<std::pair<Index, std::string>, int> times;
    for (const auto& joint : resolved.joints) {
        members_.push_back(words.member(joint.pieces[0]) + " + " + words.member(joint.pieces[1]));
        ++times[{joint.frame, members_.back()}];
    }
    for (Index j = 0; j < members_.size(); ++j) {
        const Joint& joint = resolved.joints[j];
        if (times[{joint.frame, members_[j]}] < 2) continue;
        members_[j] += ", " + std::string(words.wall(joint.pieces[0], joint.walls[0]));
    }
}

std::string JointNames::marks(Index joint) const {
    const auto& pieces = resolved_.joints[joint].pieces;
    return mark_on_drawing(resolved_, resolved_.pieces[pieces[0]]) + " + " +
           mark_on_drawing(resolved_, resolved_.pieces[pieces[1]]);
}

std::string ranges_of(const std::vector<int>& numbers) {
    std::string text;
    for (std::size_t i = 0; i < numbers.size();) {
        std::size_t last = i;
        while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
        text += (text.empty() ? "" : ", ") + std::to_string(numbers[i]);
        if (last > i) text += (last > i + 1 ? " to " : ", ") + std::to_string(numbers[last]);
        i = last + 1;
    }
    return text;
}

std::string joints_in_words(std::vector<int> numbers) {
    std::ranges::sort(numbers);
    return (numbers.size() == 1 ? "joint " : "joints ") + ranges_of(numbers);
}

}  // namespace model
