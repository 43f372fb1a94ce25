// What carries the corners of a frame, as it is stated: upright and leaning members, fixed panels,
// braces. Positions are those of planes, less the allowances of members.
#pragma once

#include "model/resolve/named_values.h"
#include "model/resolve/resolved.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

namespace model {

// From a level to a higher one.
using Stretch = std::pair<Nm, Nm>;

// A member between its ends.
struct StatedLine {
    Index member = 0;
    Axis run = Axis::x;
    std::array<Nm, 2> on{};  // along across(run)
    Nm from = 0;
    Nm to = 0;

    Point at(Nm along) const;  // of its run
};

class Carriers {
public:
    Carriers(const Frame& frame, const ResolvedFrame& placed, const NamedValues& values);

    const std::vector<StatedLine>& level() const { return level_; }

    // Over all members.
    Stretch height() const { return height_; }

    // Over which levels something stands within that reach of the upright line at x and y.
    std::vector<Stretch> beside(Nm x, Nm y, Nm reach) const;

    // Whether a level member passes within that reach of the node, and further than it both ways.
    bool is_passed(const Point& node, Nm reach) const;

    // Whether a brace ends within that reach of the node that comes from another level.
    bool is_braced(const Point& node, Nm reach) const;

private:
    struct Slanting {
        Point from{};
        Point to{};

        std::optional<Stretch> beside(Nm x, Nm y, Nm reach) const;
    };

    std::optional<Nm> position(std::string_view plane) const;
    std::optional<Point> node(const std::string& face, const std::array<std::string, 2>& on) const;
    void add_members();
    void add_between_nodes();
    void add_panels();

    const Frame& frame_;
    const ResolvedFrame& placed_;
    const NamedValues& values_;
    std::unordered_map<std::string_view, std::size_t> plane_;
    std::vector<StatedLine> level_;
    std::vector<Box> upright_;  // without width
    std::vector<Slanting> leaning_;
    std::vector<Box> sheets_;  // of fixed panels
    std::vector<Point> brace_ends_;
    Stretch height_{};
};

}  // namespace model
