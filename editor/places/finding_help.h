// What is behind one finding: the rule, its source and its numbers, and the mends as buttons.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/dialogs/dialog.h"
#include "editor/mend_board.h"
#include "editor/place.h"

#include <optional>
#include <string>
#include <vector>

namespace editor {

// Where help with findings goes.
struct FindingHands {
    const model::Catalogue& catalogue;
    MendBoard& mends;
    Dialog& dialog;
    Place& place;
    const BandWorker* bands = nullptr;  // null: nobody works them out
};

// "depth 1/8 in, wanted 1/4 in"; empty where there are none.
std::string number_words(const model::Finding& finding, const engine::TapeStyle& shown);

// The first finding of the group stands for all of them. Items are called "NAME mend 1" and so on.
std::optional<Change> draw_finding_help(const std::string& name,
                                        const Derived& derived,
                                        std::size_t group,
                                        FindingHands hands,
                                        float width);

// As the button would: for the undo list.
Change change_of_mend(const model::Mend& mend);

}  // namespace editor
