// The edit that steps a frame over an obstacle, in one page.
#include "model/project/change.h"
#include "model/project/named_list.h"
#include "model/project/step_over_bays.h"
#include "model/project/step_over_cut.h"
#include "model/project/step_over_sides.h"

#include <algorithm>
#include <utility>

namespace model {

namespace {

using engine::Error;
using engine::ErrorCode;

// Beyond it the cells between planes are too many to look at one by one.
constexpr std::size_t most_cells = 1'000'000;

// Positions of the planes on which anything stands, and of the notch's sides.
std::array<std::vector<Nm>, 3> positions(const FrameLayout& layout, const Notch& notch) {
    std::array<std::vector<Nm>, 3> at;
    const auto add = [&](const Box& box) {
        for (std::size_t k = 0; k < 3; ++k) {
            at[k].push_back(box.lo[k]);
            at[k].push_back(box.hi[k]);
        }
    };
    for (const auto& line : layout.lines) add(box_of(line));
    for (const Box& bay : layout.bays) add(bay);
    for (std::size_t k = 0; k < 3; ++k) {
        for (std::size_t side = 0; side < 2; ++side) {
            if (notch.is_closed(k, side)) at[k].push_back(notch.at(k, side));
        }
        std::sort(at[k].begin(), at[k].end());
        at[k].erase(std::unique(at[k].begin(), at[k].end()), at[k].end());
    }
    return at;
}

Changed take_out(FrameCells& cells, const Notch& notch, const Frame& frame) {
    const std::string where = "obstacle " + notch.name;
    const auto refuse = [&](const std::string& why) {
        return Error{ErrorCode::invalid_value, where, why};
    };
    const std::size_t eaten = cells.filled_in(notch.box);
    if (eaten == 0) {
        return refuse(
            "it and its clearance do not reach into the frame: there is nothing to step "
            "over");
    }
    if (eaten == cells.filled()) {
        return refuse("nothing would remain of " + described(frame) + "; move one of the two");
    }
    bool is_open = false;
    for (std::size_t k = 0; k < 3; ++k) {
        is_open = is_open || !notch.is_closed(k, 0) || !notch.is_closed(k, 1);
    }
    if (!is_open) {
        return refuse("it lies inside of " + described(frame) +
                      " and reaches none of its faces: there is nothing to step over");
    }
    cells.take_out(notch.box);
    if (cells.is_in_one()) return engine::Done{};
    return refuse("it would part " + described(frame) +
                  " in two; make it two frames, one on each side");
}

}  // namespace

Changed change(Project& project, const StepOver& stated) {
    const auto found = find_named(project.frames, stated.frame);
    if (found == project.frames.end()) return no_such<Frame>("", stated.frame);
    StepOver edit = stated;
    edit.standing = shared_standing(project, *found, stated.standing);
    const Frame before = *found;
    const DimensionValues values(project);
    auto layout = layout_of(before, values);
    if (!layout) return layout.error();
    Frame& frame = *found;
    const auto notch = add_notch(project, frame, *layout, edit);
    if (!notch) return notch.error();

    FrameLayout with_notch = *layout;
    for (std::size_t k = 0; k < 3; ++k) {
        for (std::size_t side = 0; side < 2; ++side) {
            if (notch->is_closed(k, side)) {
                with_notch.planes.emplace(notch->plane[k][side], notch->at(k, side));
            }
        }
    }
    const auto at = positions(with_notch, *notch);
    if ((at[0].size() + 1) * (at[1].size() + 1) * (at[2].size() + 1) > most_cells) {
        return Error{ErrorCode::out_of_range, described(before),
                     "it has more planes than this edit can look through"};
    }
    FrameCells cells(with_notch, at);
    if (auto taken = take_out(cells, *notch, before); !taken) return taken;
    const Stepping it{project, before, with_notch, *notch, cells, walls_of(before, with_notch)};
    if (auto parted = part_bays(frame, it, values); !parted) return parted;
    return reframe(frame, it);
}

}  // namespace model
