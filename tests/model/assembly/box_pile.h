// Pieces of boxes put together by hand, and rivets between them.
#pragma once

#include "model/assembly/assembly_order.h"

#include "tests/support/frame_builder.h"

#include <string>
#include <vector>

namespace tests {

// One frame. Everything in inches.
class BoxPile {
public:
    BoxPile() {
        project_.frames.resize(1);
        project_.frames[0].name = "pile";
        resolved_.frames.resize(1);
        resolved_.shop.nose_radius = inches_64(14);
        resolved_.shop.nose_reach = inches_64(32);
        resolved_.shop.housing_radius = inches_64(32);
    }

    static model::Box box(std::array<Nm, 3> lo, std::array<Nm, 3> hi) {
        return {{inches(lo[0]), inches(lo[1]), inches(lo[2])},
                {inches(hi[0]), inches(hi[1]), inches(hi[2])}};
    }

    // At most six boxes.
    model::Index piece(const std::vector<model::Box>& boxes) {
        model::Piece piece{.section = 0};
        piece.member = static_cast<model::Index>(resolved_.pieces.size());
        piece.extents = boxes.front();
        for (const auto& box : boxes) {
            piece.plates[piece.plate_count++].box = box;
            piece.extents = engine::hull(piece.extents, box);
        }
        project_.frames[0].members.push_back({.name = "p" + std::to_string(piece.member)});
        resolved_.pieces.push_back(piece);
        ++resolved_.frames[0].piece_count;
        return piece.member;
    }

    // A rivet through the cube of one inch of `head_side` whose middle is `middle_64`, in 1/64 in,
    // into the other piece.
    model::Index rivet(model::Index head_side,
                       model::Index other,
                       std::array<Nm, 3> middle_64,
                       std::size_t axis,
                       int drive) {
        const auto number = static_cast<model::Index>(resolved_.joints.size());
        model::Fastener fastener{.joint = number};
        for (std::size_t k = 0; k < 3; ++k) fastener.at[k] = inches_64(middle_64[k]);
        fastener.at[axis] -= drive * inches_64(32);
        fastener.axis = static_cast<std::uint8_t>(axis);
        fastener.drive = static_cast<std::int8_t>(drive);
        fastener.stack = {{{.piece = head_side}, {.piece = other}, {}}};
        resolved_.joints.push_back({.pieces = {head_side, other},
                                    .lap = {fastener.at, fastener.at},
                                    .first_fastener = number,
                                    .fastener_count = 1});
        resolved_.fasteners.push_back(fastener);
        return number;
    }

    // The same with a screw, which is meant to come out again.
    model::Index screw(model::Index head_side,
                       model::Index other,
                       std::array<Nm, 3> middle_64,
                       std::size_t axis,
                       int drive) {
        const auto joint = rivet(head_side, other, middle_64, axis, drive);
        resolved_.fasteners[joint].spec.kind = model::FastenerSpec::Kind::screw_through;
        resolved_.fasteners[joint].spec.index = 0;
        resolved_.fasteners[joint].spec.grip = 0;
        const auto& members = project_.frames[0].members;
        project_.frames[0].joints.push_back(
            {.members = {members[head_side].name, members[other].name}, .removable = true});
        return joint;
    }

    const model::Project& project() const { return project_; }
    const model::Resolved& resolved() const { return resolved_; }

    // Of one section and one screw.
    static const model::Catalogue& catalogue() {
        static const model::Catalogue plain = [] {
            model::Catalogue made;
            made.sections.resize(1);
            made.screws.resize(1);
            made.screws[0].lengths.push_back(engine::Length::from_nm(inches(2)));
            made.screws[0].head_diameter_most = engine::Length::from_nm(inches_64(20));
            return made;
        }();
        return plain;
    }

    model::AssemblyOrder order() const {
        return model::assembly_order(project_, catalogue(), resolved_);
    }

private:
    model::Project project_;
    model::Resolved resolved_;
};

}  // namespace tests
