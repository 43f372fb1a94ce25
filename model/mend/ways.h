// The ways in which findings may be mended, by what they are about. Each gives some, the mildest
// first, or none.
#pragma once

#include "model/mend/mend.h"

#include <array>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace model {

// One finding of a project.
struct Case {
    const Ailing& ailing;
    const Finding& finding;

    const Project& project() const { return ailing.project; }
    const Catalogue& catalogue() const { return ailing.catalogue; }
};

using Ways = std::vector<Mend>;

// ---- what a finding is about --------------------------------------------------------------------

const Frame* frame_named(const Case& of, const std::string& name);

template <class Thing>
const Thing* named(const std::vector<Thing>& things, const std::string& name) {
    for (const auto& thing : things) {
        if (thing.name == name) return &thing;
    }
    return nullptr;
}

struct FrameJoint {
    std::string frame;
    std::array<std::string, 2> members;

    bool operator==(const FrameJoint&) const = default;
};

// Its joints, each once.
std::vector<FrameJoint> joints_of(const Case& of);

// What is stated for the joint, or an entry that says nothing yet.
JointOverride stated_joint(const Case& of, const FrameJoint& joint);

// The number of that name; none when there is no such number.
std::optional<engine::Length> length_of(const Finding& finding, const std::string& name);
std::optional<double> number_of(const Finding& finding, const std::string& name);

// The frame's number in the project; none where there is no such frame.
std::optional<Index> index_of_frame(const Case& of, const std::string& name);

// "1/8 in", and the formula that is as much more: "1 1/8 in", "(width/2) + 1/8 in".
std::string words_of(const Case& of, engine::Length length);
Formula formula_plus(const Case& of, const Formula& formula, Nm value, Nm more);

// Up to a mark of the tape.
Nm up_to_mark(const Case& of, Nm length);

// The same change made to each joint, with its words; none where it changes none of them.
void change_joints(const Case& of,
                   Ways& ways,
                   const std::string& name,
                   const std::string& words,
                   const std::function<void(JointOverride&)>& change);

// ---- ways ---------------------------------------------------------------------------------------

// At joints.
Ways other_recipes(const Case& of);
Ways other_fasteners(const Case& of);  // thinner ones, fewer, on finer marks; then other recipes
Ways thicker_fasteners(const Case& of);
Ways other_grips(const Case& of);
Ways other_holds(const Case& of);    // of screws: thread, nut, rivet nut; another screw; riveted
Ways drills_to_get(const Case& of);  // and other fasteners
Ways plain_joint(const Case& of);    // what is stated there is taken out, piece by piece
Ways no_entry(const Case& of);       // the entry for the joint is taken out
Ways comes_apart(const Case& of);    // held by screws, or made by another recipe

// At members, braces and leaning members.
Ways hold_end(const Case& of);
Ways other_place(const Case& of);  // of a brace or a leaning member; or it is taken out
Ways post_in_corner(const Case& of);
Ways other_rank(const Case& of);
Ways other_stock(const Case& of);
Ways other_planes(const Case& of);
Ways take_out(const Case& of);
Ways take_out_together(const Case& of);
Ways drills_or_take_out(const Case& of);  // of what has no length: a screw, or a member
Ways joints_of_member(const Case& of);    // its joints are made by another recipe
Ways apart(const Case& of);               // two that are in the same place
Ways foot_elsewhere(const Case& of);      // or fixed by another screw, or none

// Of panels, bays and loads.
Ways other_panel(const Case& of);
Ways other_bay(const Case& of);

// In the room.
Ways keep_clear(const Case& of);
Ways frames_apart(const Case& of);
Ways lower_or_narrower(const Case& of);

// Of bars.
Ways bars_as_stated(const Case& of);
Ways longer_bars(const Case& of);
Ways more_bars(const Case& of);
Ways lay_on_rack(const Case& of);
Ways fewer_bars(const Case& of);  // what cannot be read is left out
Ways known_section(const Case& of);
Ways known_alloy(const Case& of);

// Of what is stated for the whole project.
Ways within_limits(const Case& of);
Ways other_name(const Case& of);
Ways usual_setting(const Case& of);
Ways plain_value(const Case& of);

}  // namespace model
