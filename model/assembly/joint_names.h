// What the joints of the assembly are called: by a number within their frame, the marks that meet
// there, and the members.
#pragma once

#include "model/assembly/assembly_order.h"
#include "model/schedule/piece_words.h"

#include <string>
#include <vector>

namespace model {

// By joint: its number within its frame, from 1, in the order in which the joints are set; 0 where
// nothing is. Paper, window and files call them by it.
std::vector<int> joint_numbers(const AssemblyOrder& order, const Resolved& resolved);

class JointNames {
public:
    // All must outlive it.
    JointNames(const PieceWords& words, const Resolved& resolved, const AssemblyOrder& order);

    int number(Index joint) const { return numbers_[joint]; }

    // "A1 + A7 opp."
    std::string marks(Index joint) const;

    // "post front left + rail left bottom"; where the same two meet more than once in one frame the
    // wall as well: "splice + rail part 2, leg a".
    const std::string& members(Index joint) const { return members_[joint]; }

private:
    const Resolved& resolved_;
    std::vector<int> numbers_;
    std::vector<std::string> members_;
};

// "1 to 4, 7"; `numbers` rise.
std::string ranges_of(const std::vector<int>& numbers);

// "joint 4", "joints 1 to 3, 7"
std::string joints_in_words(std::vector<int> numbers);

}  // namespace model
