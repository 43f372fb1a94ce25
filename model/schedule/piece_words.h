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

class PieceWords {
public:
    // The three must outlive this.
    PieceWords(const Project& project, const Catalogue& catalogue, const Resolved& resolved);

    // "rail front top"; of a member in several pieces "mid rail part 2"; of a shim
    // "between post left and rail front top"; of another part that belongs to no member what it is.
    std::string member(Index piece) const;

    const std::string& frame(Index piece) const;

    // Section id in the catalogue; of a part of sheet "shim 1/16 x 55/64": thickness, then width.
    std::string section(Index piece) const;

    std::string_view alloy(Index piece) const;  // empty for a part without stock

    std::string_view wall(Index piece,
                          std::uint8_t wall) const;  // "leg a"; of a part of sheet "face"

private:
    std::string sheet_section(const Piece& shim) const;

    const Project& project_;
    const Catalogue& catalogue_;
    const Resolved& resolved_;
    std::vector<std::vector<Index>> part_counts_;            // by frame, member
    std::vector<Index> joint_of_shim_;                       // by piece; no_index for a bar
    std::vector<std::vector<std::string_view>> wall_names_;  // by section, only of those in use
};

}  // namespace model
