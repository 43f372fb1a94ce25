// A step of the assembly in words, for the window and for paper.
#pragma once

#include "model/assembly/assembly_terms.h"

#include <string>
#include <string_view>
#include <vector>

namespace model {

enum class StepWork { put_on, pin, measure, try_square, set, fix };

struct StepWords {
    StepWork work = StepWork::put_on;
    std::string text;

    bool operator==(const StepWords&) const = default;
};

// A joint that is pinned or set in a step.
struct StepJoint {
    Index joint = 0;
    int number = 0;         // within its frame, in the order in which the joints are set
    std::string marks;      // "A1 + A7 opp."
    std::string members;    // "post front left + rail left bottom"
    std::string pins;       // "2 x sheet pin 1/8", "clamp"; empty where it is not pinned now
    std::string fasteners;  // "2 x blind rivet 1/8, grip 4-4"; empty where it is not set now
    std::string note;       // "set in step 4", "pinned in step 2", "long nose"

    bool operator==(const StepJoint&) const = default;
};

class StepWording {
public:
    // All must outlive it.
    StepWording(const Project& project,
                const Catalogue& catalogue,
                const Resolved& resolved,
                const AssemblyOrder& order);

    // "Step 3: joined on, rail front top and 3 more"; counted and named within its frame.
    std::string title_in_frame(Index step) const;

    // The same, with its frame where there are several: no other step of the project is called so.
    // "Step 1: flat on the bench, face left (counter)".
    std::string title(Index step) const;

    // What is done in a step, in the order of the work, a line for each thing to do: what is put
    // on, which of it lies loose until when, the pins, each diagonal, the fasteners, the fixing to
    // the van. Joints are named by their numbers, which `joints` explains.
    std::vector<StepWords> lines(Index step) const;

    // By rising number.
    std::vector<StepJoint> joints(Index step) const;

    // What is done in it, counted: "7 pieces"; "1 part carried on", "12 joints to set", "6 holes to
    // fix through" where nothing is put on by hand.
    std::string count(Index step) const;

private:
    std::string mark_of(Index piece) const;
    std::string marks_of(const std::vector<Index>& pieces) const;
    std::string move_words(const AssemblyMove& move, std::string_view lies_on) const;
    std::vector<std::string> loose_words(Index number) const;
    std::string pin_words(const AssemblyStep& step) const;
    std::string square_words(const SquareRow& row) const;
    std::string try_square_words(const AssemblyStep& step) const;
    std::string set_words(const AssemblyStep& step) const;
    StepJoint named(Index joint) const;

    AssemblyTerms terms_;
    std::vector<Index> pinned_in_;  // by joint: the step
    std::vector<Index> set_in_;
};

}  // namespace model
