// Edits of members, diagonals, leaning members and the joints between them.
#include "model/project/change.h"
#include "model/project/in_frame.h"

namespace model {

namespace {

using engine::Done;
using engine::Error;
using engine::ErrorCode;

// A joint is known by the names of two members, so a diagonal may not be called as a member is, nor
// a leaning member as either.
template <class T>
bool is_another_kind(Frame& frame, const std::vector<T>& bars, const std::string& name) {
    const auto has = [&](auto& list) {
        const void* address = &list;
        return address != &bars && find_named(list, name) != list.end();
    };
    return has(frame.members) || has(frame.diagonals) || has(frame.leaning);
}

template <class T>
Changed put_bar(const Project& project,
                Frame& frame,
                std::vector<T>& bars,
                const T& bar,
                const std::string& instead_of) {
    if (is_another_kind(frame, bars, bar.name)) {
        return already_there(inside(described(frame), described(bar)));
    }
    auto put = put_in_frame(project, frame, bars, bar, instead_of);
    if (put && is_rename(instead_of, bar.name)) {
        rename_references(frame, {Target::member, instead_of}, bar.name);
    }
    return put;
}

template <class T>
Changed remove_bar(Frame& frame, std::vector<T>& bars, const std::string& name) {
    auto removed = remove_named(bars, name, described(frame));
    if (removed && !has_target({}, &frame, {Target::member, name})) {
        std::erase_if(frame.joints, [&](const JointOverride& joint) {
            return joint.members[0] == name || joint.members[1] == name;
        });
    }
    return removed;
}

auto find_joint(Frame& frame, const std::array<std::string, 2>& members) {
    return std::find_if(frame.joints.begin(), frame.joints.end(), [&](const JointOverride& joint) {
        return joint.members == members || joint.members == std::array{members[1], members[0]};
    });
}

std::vector<Member*> members_named(Frame& frame, const std::vector<std::string>& names) {
    std::vector<Member*> members;
    if (names.empty()) {
        for (Member& member : frame.members) members.push_back(&member);
    }
    for (const std::string& name : names) {
        const auto found = find_named(frame.members, name);
        members.push_back(found == frame.members.end() ? nullptr : &*found);
    }
    return members;
}

}  // namespace

Changed change(Project& project, const PutMember& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) {
        return put_bar(project, frame, frame.members, edit.member, edit.instead_of);
    });
}

Changed change(Project& project, const RemoveMember& edit) {
    return in_frame(project, edit.frame,
                    [&](Frame& frame) { return remove_bar(frame, frame.members, edit.member); });
}

Changed change(Project& project, const SetMemberStock& edit) {
    if (!has_target(project, nullptr, {Target::stock, edit.stock})) {
        return no_such<Stock>("", edit.stock);
    }
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        const std::vector<Member*> members = members_named(frame, edit.members);
        for (std::size_t i = 0; i < members.size(); ++i) {
            if (members[i] == nullptr) return no_such<Member>(described(frame), edit.members[i]);
        }
        for (Member* member : members) member->stock = edit.stock;
        return Done{};
    });
}

Changed change(Project& project, const PutDiagonal& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) {
        return put_bar(project, frame, frame.diagonals, edit.diagonal, edit.instead_of);
    });
}

Changed change(Project& project, const RemoveDiagonal& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) {
        return remove_bar(frame, frame.diagonals, edit.diagonal);
    });
}

Changed change(Project& project, const PutLeaning& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) {
        return put_bar(project, frame, frame.leaning, edit.leaning, edit.instead_of);
    });
}

Changed change(Project& project, const RemoveLeaning& edit) {
    return in_frame(project, edit.frame,
                    [&](Frame& frame) { return remove_bar(frame, frame.leaning, edit.leaning); });
}

Changed change(Project& project, const PutJoint& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        const JointOverride& joint = edit.joint;
        const std::string where = inside(described(frame), described(joint));
        if (joint.members[0] == joint.members[1]) {
            return Error{ErrorCode::invalid_value, where, "a joint is between two members"};
        }
        if (auto sound = check_thing(joint, where); !sound) return sound;
        const auto found = find_joint(frame, joint.members);
        const JointOverride* old = found == frame.joints.end() ? nullptr : &*found;
        if (auto sound = check_references(project, frame, joint, old, where); !sound) return sound;
        if (old != nullptr) {
            *found = joint;
        } else {
            frame.joints.push_back(joint);
        }
        return Done{};
    });
}

Changed change(Project& project, const RemoveJoint& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        const auto found = find_joint(frame, edit.members);
        if (found == frame.joints.end()) {
            return no_such<JointOverride>(described(frame),
                                          edit.members[0] + " + " + edit.members[1]);
        }
        frame.joints.erase(found);
        return Done{};
    });
}

}  // namespace model
