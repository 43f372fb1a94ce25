// The places of the job, in one table: tabs, commands, reports and the command line read it.
#pragma once

#include <array>
#include <string_view>

namespace editor {

// A stage of the job; each has its own panel at the left of the view.
enum class Place { measure, lay_out, join, prove, buy, make };

struct PlaceRow {
    Place place = Place::lay_out;
    std::string_view name;     // on the command line and in reports
    const char* tab = "";      // on its tab
    std::string_view command;  // that goes there
    float usual_width = 0.0F;  // of its panel, design pixels
};

inline constexpr std::array<PlaceRow, 6> place_rows{
    {{Place::measure, "measure", "Measure", "place.measure", 400.0F},
     {Place::lay_out, "lay out", "Lay out", "place.lay_out", 330.0F},
     {Place::join, "join", "Join", "place.join", 430.0F},
     {Place::prove, "prove", "Prove", "place.prove", 470.0F},
     {Place::buy, "buy", "Buy", "place.buy", 470.0F},
     {Place::make, "make", "Make", "place.make", 640.0F}}};

constexpr const PlaceRow& row_of(Place place) {
    for (const auto& row : place_rows) {
        if (row.place == place) return row;
    }
    return place_rows.front();
}

// That of the name; Lay out for any other text: with what is measured there is something to do.
constexpr Place place_named(std::string_view name) {
    for (const auto& row : place_rows) {
        if (row.name == name) return row.place;
    }
    return Place::lay_out;
}

}  // namespace editor
