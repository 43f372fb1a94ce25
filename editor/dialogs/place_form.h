// Where a frame stands in the room, and which way round: what would then be wrong is told before it
// is put there.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "model/catalogue/catalogue.h"
#include "model/room/scans.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace editor {

// What the frame would come to as the form stands.
struct PlaceTrial {
    Revision revision = 0;
    std::shared_ptr<const model::ScanLibrary> scans;
    model::PlaceFrame edit;
    std::string refusal;                   // why it is no place
    std::vector<model::Finding> findings;  // errors and warnings that it would bring
    std::size_t cured = 0;                 // of those there are now
};

struct PlaceForm {
    std::string frame;
    model::Place origin;
    int quarter_turns = 0;
    std::optional<PlaceTrial> trial;
    bool is_fresh = true;
};

// Of the named frame, or of the first one where there is none of that name.
PlaceForm new_place_form(const model::Project& project, const std::string& frame);

struct PlaceOutcome {
    std::optional<Change> change;
    bool is_cancelled = false;
};

PlaceOutcome draw_place_form(PlaceForm& form,
                             const Derived& derived,
                             const model::Catalogue& catalogue,
                             const std::shared_ptr<const model::ScanLibrary>& scans);

}  // namespace editor
