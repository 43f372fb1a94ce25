// What may be tried where a corner hangs in the air: the post that is missing.
#include "model/mend/ways.h"
#include "model/project/free_name.h"
#include "model/resolve/open_corners.h"

#include <algorithm>
#include <string>
#include <utility>

namespace model {
namespace {

// Of what the posts of the frame are made, then of what its rails are that end there.
std::vector<std::string> stocks_for_post(const Frame& frame, const OpenCorner& corner) {
    std::vector<std::string> stocks;
    const auto add = [&](const std::string& stock) {
        if (std::ranges::find(stocks, stock) == stocks.end()) stocks.push_back(stock);
    };
    for (const Member& member : frame.members) {
        if (member.run == Axis::z) add(member.stock);
    }
    for (const Index rail : corner.rails) add(frame.members[rail].stock);
    return stocks;
}

Mend with_post(const Frame& frame, const OpenCorner& corner, const std::string& stock) {
    const std::string place = corner.on[1] + " " + corner.on[0];
    return {
        "post " + stock,
        "Put a post of " + stock + " at " + place + ", from " + corner.from + " to " + corner.to,
        {PutMember{frame.name,
                   {.name = free_bar_name(frame, "post " + place),
                    .stock = stock,
                    .run = Axis::z,
                    .on = corner.on,
                    .from = corner.from,
                    .to = corner.to,
                    .legs = corner.legs,
                    .seat = corner.seat},
                   {}}}};
}

}  // namespace

Ways post_in_corner(const Case& of) {
    Ways ways;
    if (of.finding.concerns.empty()) return ways;
    const auto f = index_of_frame(of, of.finding.concerns.front().frame);
    if (!f || *f >= of.ailing.resolved.frames.size()) return ways;
    const Frame& frame = of.project().frames[*f];
    for (const auto& corner :
         open_corners(of.project(), of.catalogue(), of.ailing.resolved, static_cast<Index>(*f))) {
        if (finding_of(frame, corner).what != of.finding.what) continue;
        for (const auto& stock : stocks_for_post(frame, corner)) {
            ways.push_back(with_post(frame, corner, stock));
        }
    }
    return ways;
}

}  // namespace model
