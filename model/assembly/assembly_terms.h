// What things are called where an assembly is told: the words that window, paper and file share.
#pragma once

#include "model/assembly/assembly_order.h"
#include "model/assembly/joint_names.h"
#include "model/assembly/step_names.h"
#include "model/schedule/fastener_words.h"
#include "model/schedule/piece_words.h"

#include <string>

namespace model {

class AssemblyTerms {
public:
    // All must outlive it.
    AssemblyTerms(const Project& project,
                  const Catalogue& catalogue,
                  const Resolved& resolved,
                  const AssemblyOrder& order);

    const Project& project;
    const Catalogue& catalogue;
    const Resolved& resolved;
    const AssemblyOrder& order;
    const PieceWords words;
    const FastenersInUse fasteners;
    const JointNames names;
    const std::vector<std::string> steps;  // by step_names

    // "joined on, rail front top and 3 more", with `between` before what it is about.
    std::string step_name(Index step, const std::string& between = ", ") const;

    // "sheet pin 1/8, long", as it is bought; empty where no pin fits: it is clamped.
    std::string pin(const StepPins& pins) const;

    // "2 sheet pin 1/8", with `between` behind the number; empty where no pin fits: it is clamped.
    std::string pins(const StepPins& pins, const std::string& between = " ") const;

    // "2 blind rivet 1/8, grip 4-4", with `between` behind the number; empty where it has none.
    std::string fasteners_of(Index joint, const std::string& between = " ") const;

    // Whether it can be brought to its place in a straight line.
    bool has_way(Index piece) const;
};

// "bottom", "left": at which side of its frame the datum end of a piece lies. Two ends that look
// alike are told apart by it. Empty for what runs along no axis of the frame, or is cut from sheet.
std::string datum_side(const Piece& piece);

}  // namespace model
