#include "editor/places/place_words.h"

#include "editor/check_words.h"
#include "editor/places/bar_text.h"

namespace editor {
namespace {

std::string open_words(int open) { return std::to_string(open) + " open"; }

std::string pieces_words(int pieces) {
    return std::to_string(pieces) + (pieces == 1 ? " piece" : " pieces");
}

std::string buy_words(const Derived& derived) {
    return derived.bars_price ? "bars " + price_text(*derived.bars_price, bars_currency(derived))
                              : bars_text(derived);
}

bool has_openings(const model::Project& project) {
    for (const auto& frame : project.frames) {
        if (!frame.openings.empty()) return true;
    }
    return false;
}

// Where nothing of the place's own is open.
std::string settled_words(const Derived& derived, Place place) {
    const auto& project = *derived.project;
    if (place == Place::measure) {
        return project.room.empty() && !has_openings(project) ? "no room yet" : "settled";
    }
    if (project.frames.empty()) return place == Place::lay_out ? "to begin" : "nothing yet";
    if (derived.resolved.pieces.empty())
        return place == Place::lay_out ? "planes alone" : "nothing yet";
    switch (place) {
        case Place::measure:
        case Place::lay_out:
        case Place::prove:
            break;
        case Place::join:
            if (derived.resolved.joints.empty()) return "no joint";
            break;
        case Place::buy:
            return buy_words(derived);
        case Place::make:
            return pieces_words(derived.summary.pieces);
    }
    return "settled";
}

}  // namespace

PlaceWords place_words(const Derived& derived, Place place) {
    // All that is open anywhere is told at Prove; what is not fit to cut from keeps Make waiting.
    const int open = place == Place::prove ? derived.summary.open() : open_at(derived, place);
    if (open > 0) return {open_words(open), true};
    if (place == Place::make && derived.summary.errors > 0 && derived.summary.pieces > 0) {
        return {"not to cut yet", true};
    }
    return {settled_words(derived, place), false};
}

}  // namespace editor
