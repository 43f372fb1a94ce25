// The words by which schedules name pieces, their stock and their walls.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace model {

std::string_view name_of(PieceKind kind);  // "bar", "cleat", "gusset"

// Of a piece that belongs to no member: what it is and what it is for, as in PieceWords::member; a
// shim is only "shim".
std::string part_words(const Project& project, const Piece& piece);

class PieceWords {
public:
    // The three must outlive this.
    PieceWords(const Project& project, const Catalogue& catalogue, const Resolved& resolved);

    // "rail front top"; of a member in several pieces "mid rail part 2"; of a shim
    // "between post left and rail front top"; of another part what it is and what it is for:
    // "cleat at post left and rail front top", "foot of post left", "brace back", "leaning member
    // post", "panel door".
    std::string member(Index piece) const;

    const std::string& frame(Index piece) const;

    // Section id in the catalogue; of a part of sheet "shim 1/16 x 55/64": thickness, then width.
    std::string section(Index piece) const;

    // Of a panel its material; empty for a shim, which is cut from what is at hand.
    std::string_view alloy(Index piece) const;

    std::string_view wall(Index piece,
                          std::uint8_t wall) const;  // "leg a"; of a part of sheet "face"

private:
    std::string sheet_section(const Piece& piece) const;

    const Project& project_;
    const Catalogue& catalogue_;
    const Resolved& resolved_;
    std::vector<std::vector<Index>> part_counts_;            // by frame, member
    std::vector<Index> joint_of_shim_;                       // by piece; no_index for a bar
    std::vector<std::vector<std::string_view>> wall_names_;  // by section, only of those in use
};

}  // namespace model
