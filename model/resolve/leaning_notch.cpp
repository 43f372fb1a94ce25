#include "model/resolve/leaning_notch.h"

#include "model/resolve/face_laps.h"
#include "model/resolve/rect.h"
#include "model/resolve/slanted_end.h"

#include <algorithm>

namespace model {
namespace {

class Notching {
public:
    Notching(const PartRoom& room,
             const BraceLine& line,
             const PlacedLeaning& leaning,
             FrameSkeleton& skeleton,
             std::vector<Lap>& laps)
        : room_{room}, line_{line}, leaning_{leaning}, s_{skeleton}, laps_{laps} {}

    void notch(const FaceWall& wall) {
        if (area_of(lapped_part(leaning_.polygon, s_, wall)) < least_area) return;
        Piece& piece = s_.pieces[wall.piece];
        const std::size_t run = index_of(piece.run);
        if (run == line_.normal || s_.bars[s_.bar_of[wall.piece]].shape->is_closed) return;
        if (takes_a_fillet(piece)) return;
        for (std::size_t k = 0; k < piece.plate_count; ++k) {
            Plate& plate = piece.plates[k];
            if (plate.wall == wall.wall || plate.is_root_fillet) continue;
            if (enters(leaning_, line_, plate.box)) notch(wall.piece, piece, plate);
        }
    }

private:
    // A rounded root cannot be notched away with the leg.
    bool takes_a_fillet(const Piece& piece) const {
        return std::ranges::any_of(piece.walls(), [&](const Plate& plate) {
            return plate.is_root_fillet && enters(leaning_, line_, plate.box);
        });
    }

    // From the end that lies nearer, if what is left is longer than the leg is wide.
    void notch(Index number, Piece& piece, Plate& plate) {
        const std::size_t run = index_of(piece.run);
        const auto common = common_polygon(leaning_.polygon, rectangle(plate.box, line_.axes));
        const Box taken = box_round(common, line_.axes, 0);
        const Nm gap = room_.shop.end_gap;
        const Nm keep_low = taken.lo[run] - gap - plate.box.lo[run];
        const Nm keep_high = plate.box.hi[run] - taken.hi[run] - gap;
        const bool keeps_low = keep_low >= keep_high;
        const std::size_t end = keeps_low == (piece.run_sense > 0) ? 1 : 0;
        if (is_slanted(piece.ends[end])) return;
        const Nm kept = std::max(keep_low, keep_high);
        const Nm back = plate.box.hi[run] - plate.box.lo[run] - kept;
        if (kept < line_.width || back > most_notched * line_.width) return;
        Box left = plate.box;
        (keeps_low ? left.hi : left.lo)[run] += keeps_low ? -back : back;
        if (takes_hold_of_a_part(number, plate.wall, left)) return;
        piece.ends[end].wall_back[plate.wall] += back;
        plate.box = left;
        cut_laps(number, plate);
    }

    // A foot, a cleat or another part that is fastened to what would be notched away.
    bool takes_hold_of_a_part(Index number, std::uint8_t wall, const Box& left) const {
        return std::ranges::any_of(laps_, [&](const Lap& lap) {
            const bool is_upper = lap.upper == number && lap.upper_wall == wall;
            const bool is_lower = lap.lower == number && lap.lower_wall == wall;
            if (!is_upper && !is_lower) return false;
            if (s_.bar_of[is_upper ? lap.lower : lap.upper] != no_index) return false;
            return common_rect(lap.rect, left, lap.normal_axis, 0) !=
                   common_rect(lap.rect, lap.rect, lap.normal_axis, 0);
        });
    }

    void cut_laps(Index number, const Plate& plate) {
        std::erase_if(laps_, [&](Lap& lap) {
            const bool is_upper = lap.upper == number && lap.upper_wall == plate.wall;
            const bool is_lower = lap.lower == number && lap.lower_wall == plate.wall;
            if (!is_upper && !is_lower) return false;
            lap.rect =
                common_rect(lap.rect, plate.box, lap.normal_axis, lap.rect.lo[lap.normal_axis]);
            return !has_area(lap.rect, lap.normal_axis);
        });
    }

    // A level member that runs on further behind is better parted by hand.
    static constexpr Nm most_notched = 4;

    const PartRoom& room_;
    const BraceLine& line_;
    const PlacedLeaning& leaning_;
    FrameSkeleton& s_;
    std::vector<Lap>& laps_;
};

}  // namespace

void notch_for_leaning(const PartRoom& room,
                       const BraceLine& line,
                       const BraceFace& face,
                       const PlacedLeaning& leaning,
                       FrameSkeleton& skeleton,
                       std::vector<Lap>& laps) {
    Notching notching(room, line, leaning, skeleton, laps);
    for (const auto& wall : face.walls) {
        if (wall.is_of_member) notching.notch(wall);
    }
}

}  // namespace model
