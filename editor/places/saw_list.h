// Make, at the saw: each bar with its cuts, to be ticked as they are made; or the same by the
// settings of the stop.
#pragma once

#include "editor/change.h"
#include "editor/derived.h"
#include "editor/selection.h"
#include "model/buying/spoiled.h"
#include "model/catalogue/catalogue.h"
#include "model/schedule/saw_bars.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace editor {

enum class SawOrder { bars, stops };

// What is said when a piece was cut wrong, until it is cut again and the bad one has its place.
struct SpoilTalk {
    model::SpoiledPiece piece;
    std::string typed;  // how long it is
    std::string trouble;
    bool has_place = false;     // the bad piece, on the rack or in the scrap
    bool is_cut_again = false;  //
    bool was_shown = false;     // scrolled to once
};

struct SawListState {
    SawOrder order = SawOrder::bars;
    std::string trouble;        // why the last tick was refused
    model::SawTick troubled;    // which that was
    bool wants_bought = false;  // the bars are bought: see editor/purchase_desk.h
    std::optional<SpoilTalk> spoiled;

    // How high a bar was drawn, with so many cuts and at that scale.
    struct Drawn {
        float height = 0.0F;
        std::size_t cuts = 0;
        float scale = 0.0F;
        bool has_talk = false;
    };
    std::map<int, Drawn> heights;  // by SawBar::number
};

std::optional<Change> draw_saw_list(const Derived& derived,
                                    const model::Catalogue& catalogue,
                                    SawListState& state,
                                    Selection& selection);

// What the commands do; none where there is nothing to do it to.
std::optional<Change> planned_anew(const Derived& derived, SawListState& state);
bool has_bars_cut_up(const Derived& derived);  // what offcuts_racked is for
std::optional<Change> offcuts_racked(const Derived& derived, const model::Catalogue& catalogue);
// The first at the longest setting of the stop.
std::optional<Change> next_cut_ticked(const Derived& derived,
                                      const model::Catalogue& catalogue,
                                      SawListState& state);

}  // namespace editor
