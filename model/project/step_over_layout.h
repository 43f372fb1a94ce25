// A frame as the edit sees it that steps it over an obstacle: its planes in place, the lines that
// its members lie on, and which cells between the planes belong to the cabinet.
#pragma once

#include "engine/geometry/box.h"
#include "engine/result.h"
#include "model/project/project.h"

#include <array>
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace model {

using engine::Box;
using engine::Nm;

// The values of all dimensions, for working out formulas.
class DimensionValues {
public:
    explicit DimensionValues(const Project& project);

    // `where` names the thing whose formula it is.
    engine::Result<Nm> length(const Formula& formula, const std::string& where) const;

private:
    engine::LengthUnit bare_;
    std::map<std::string, engine::Quantity, std::less<>> named_;
};

// The line that a member lies on, between the planes it is stated by: its allowances do not count.
struct MemberLine {
    Axis run = Axis::x;
    std::array<Nm, 2> on{};  // positions across across(run)
    Nm from = 0;
    Nm to = 0;
    std::array<Sense, 2> legs{};    // where it extends to
    std::array<Sense, 2> inward{};  // from its planes into the metal
};

struct FrameLayout {
    std::map<std::string, Nm, std::less<>> planes;  // by name
    std::vector<MemberLine> lines;                  // as in Frame::members
    std::vector<Box> bays;                          // as in Frame::bays
    Box hull;                                       // of all lines

    Nm at(const std::string& plane) const { return planes.at(plane); }
};

// Error: a formula of the frame that has no value, a reference to nothing, no member at all.
engine::Result<FrameLayout> layout_of(const Frame& frame, const DimensionValues& values);

MemberLine line_of(const Member& member, const FrameLayout& layout);

// The same, as a box without width.
Box box_of(const MemberLine& line);

// Cells between the positions of planes.
class FrameCells {
public:
    // Those of the layout's bays; of a frame without bays, or whose bays leave out parts that have
    // members, those of its hull. Positions where nothing stands may be given too.
    FrameCells(const FrameLayout& layout, const std::array<std::vector<Nm>, 3>& positions);

    const std::vector<Nm>& at(std::size_t axis) const { return at_[axis]; }

    // Cell i lies between positions i - 1 and i of each axis; those outside are empty.
    bool is_filled(const std::array<std::size_t, 3>& cell) const;

    Box box(const std::array<std::size_t, 3>& cell) const;

    // How many of the filled cells lie in the box.
    std::size_t filled_in(const Box& box) const;
    std::size_t filled() const;

    void take_out(const Box& box);

    // Whether one can go from each filled cell to each other one through faces of cells.
    bool is_in_one() const;

private:
    std::size_t index(const std::array<std::size_t, 3>& cell) const;

    template <class Visit>
    void for_each_filled(Visit visit) const;

    std::array<std::vector<Nm>, 3> at_;
    std::vector<char> filled_;
};

}  // namespace model
