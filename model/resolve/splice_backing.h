// What can lie behind a splice: flat bar on the walls of the member, or an angle nested in it.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/skeleton.h"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace model {

// One piece of backing beside a member's section, in the section's own axes (0: a, 1: b).
struct Backing {
    const StockShape* shape = nullptr;
    std::array<Nm, 2> datum{};       // of the backing's section
    std::size_t a_along = 0;         // the member's section axis that its own a lies along
    std::array<int, 2> sense{1, 1};  // of its extent along the member's section axes
    bool is_outside = false;         // on an outer face: of a tube
    std::array<Nm, 2> lo{};          // what it takes up
    std::array<Nm, 2> hi{};
    std::array<int, 2> away{};  // along the section axes from the walls that it lies on
};

using Backings = std::vector<Backing>;

struct BackingRoom {
    const Catalogue& catalogue;
    std::span<const StockShape> shapes;
    Nm gap = 0;          // between it and a wall or another backing beside it
    Nm least_width = 0;  // that holds a row of fasteners
};

// The ways to back that section with what is in stock, the best one first. Each backing is at least
// as thick as the wall that it lies on and as wide as there is room. Inside of an angle, a channel
// and a flat; a tube can be riveted from outside only.
//   flat     one on its inner face
//   angle    one on each leg; without such flats an angle nested in it, where its root is square
//   channel  on web and flanges, else on the flanges, else on the web
//   tube     on two opposite sides
std::vector<Backings> backings_for(const StockShape& member, const BackingRoom& room);

// The flat bar of the catalogue that would back it, by its id; none where no flat would.
std::optional<std::string> flat_that_backs(const StockShape& member, const BackingRoom& room);

}  // namespace model
