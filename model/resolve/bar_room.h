// How long a piece of each stock can be: what its bars and offcuts leave between their end trims.
#pragma once

#include "model/resolve/resolved.h"

#include <map>
#include <vector>

namespace model {

// Worked out when a stock is first asked for; lengths that cannot be read are passed over, since
// the schedule of bars tells them.
class BarRoom {
public:
    // Both must outlive it; of the second the dimensions and the shop are used.
    BarRoom(const Project& project, const Resolved& resolved)
        : project_{project}, resolved_{resolved}, by_stock_(project.stock.size()) {}

    // Whether a piece of that length can be cut from a bar of the stock. Of longer bars of which
    // there are only so many, and of offcuts, one is used up by it. True where no bar is stated.
    bool take(Index stock, Nm length);

    // The longest piece that a bar gives of which there are always more; where all are limited, the
    // longest. 0: no bar is stated.
    Nm longest(Index stock) { return of(stock).usual; }

private:
    struct Room {
        bool is_known = false;
        Nm usual = 0;
        std::map<Nm, int> longer;  // than usual: how many are left
    };

    Room& of(Index stock);

    const Project& project_;
    const Resolved& resolved_;
    std::vector<Room> by_stock_;
};

}  // namespace model
