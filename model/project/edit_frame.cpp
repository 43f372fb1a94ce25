// Edits of frames, their planes and their bays.
#include "engine/files/json_text.h"
#include "model/project/change.h"
#include "model/project/check_thing.h"
#include "model/project/in_frame.h"

#include <set>

namespace model {

namespace {

using engine::Done;

// A joint is known by the names of two members, so a diagonal may not be called as a member is, nor
// a leaning member as either. The thing in words that shares its name; empty: none does.
std::string sharer_of_name(const Frame& frame) {
    std::set<std::string_view> taken;
    for (const Member& member : frame.members) taken.insert(member.name);
    for (const Diagonal& diagonal : frame.diagonals) {
        if (taken.contains(diagonal.name)) return described(diagonal);
    }
    for (const Diagonal& diagonal : frame.diagonals) taken.insert(diagonal.name);
    for (const Leaning& leaning : frame.leaning) {
        if (taken.contains(leaning.name)) return described(leaning);
    }
    return {};
}

std::string in_words(const std::string& frame) { return "frame " + frame; }

}  // namespace

Changed change(Project& project, const PutFrame& edit) {
    const std::string& old_name = edit.instead_of.empty() ? edit.frame.name : edit.instead_of;
    const auto replaced = find_named(project.frames, old_name);
    const std::string where = described(edit.frame);
    const auto known = replaced == project.frames.end()
                           ? std::vector<Reference>{}
                           : missing_references(project, &*replaced, *replaced);
    if (auto sound =
            check_missing(missing_references(project, &edit.frame, edit.frame), known, where);
        !sound) {
        return sound;
    }
    if (const auto shared = sharer_of_name(edit.frame); !shared.empty()) {
        return already_there(inside(where, shared));
    }
    return put_named(project.frames, edit.frame, edit.instead_of, "");
}

Changed change(Project& project, const PlaceFrame& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        for (const Formula& formula : edit.origin) {
            auto readable = check_formula(formula, engine::QuantityKind::length,
                                          inside(described(frame), "origin"));
            if (!readable) return readable;
        }
        frame.origin = edit.origin;
        frame.quarter_turns = (edit.quarter_turns % 4 + 4) % 4;
        return Done{};
    });
}

Changed change(Project& project, const SetFrameRecipe& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        if (!engine::is_utf8(edit.recipe)) {
            return engine::Error{engine::ErrorCode::invalid_text, "recipe",
                                 "not readable as UTF-8 text"};
        }
        frame.recipe = edit.recipe;
        return Done{};
    });
}

Changed change(Project& project, const RemoveFrame& edit) {
    return remove_named(project.frames, edit.frame, "");
}

Changed change(Project& project, const PutPlane& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        auto put = put_named(frame.planes, edit.plane, edit.instead_of, in_words(edit.frame));
        if (put && is_rename(edit.instead_of, edit.plane.name)) {
            rename_references(frame, {Target::plane, edit.instead_of}, edit.plane.name);
        }
        return put;
    });
}

Changed change(Project& project, const SetPlanePosition& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        const std::string where = in_words(edit.frame);
        const auto plane = find_named(frame.planes, edit.plane);
        if (plane == frame.planes.end()) return no_such<Plane>(where, edit.plane);
        auto readable = check_formula(edit.position, engine::QuantityKind::length,
                                      inside(where, described(*plane)));
        if (readable) plane->position = edit.position;
        return readable;
    });
}

Changed change(Project& project, const RemovePlane& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        if (auto unused = check_unused(frame, {Target::plane, edit.plane}); !unused) return unused;
        return remove_named(frame.planes, edit.plane, in_words(edit.frame));
    });
}

Changed change(Project& project, const PutBay& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        auto put = put_in_frame(project, frame, frame.bays, edit.bay, edit.instead_of);
        if (put && is_rename(edit.instead_of, edit.bay.name)) {
            rename_references(frame, {Target::bay, edit.instead_of}, edit.bay.name);
        }
        return put;
    });
}

Changed change(Project& project, const RemoveBay& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        if (auto unused = check_unused(frame, {Target::bay, edit.bay}); !unused) return unused;
        return remove_named(frame.bays, edit.bay, in_words(edit.frame));
    });
}

}  // namespace model
