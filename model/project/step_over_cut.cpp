#include "model/project/step_over_cut.h"

#include "model/project/named_list.h"

#include <algorithm>
#include <cstdlib>
#include <limits>
#include <set>
#include <utility>

namespace model {

namespace {

// What lies on a side of the notch is in the way too: the notch's edges take its place.
bool is_in_the_way(const MemberLine& line, const Notch& notch) {
    const auto axes = across(line.run);
    for (std::size_t i = 0; i < 2; ++i) {
        const std::size_t axis = index_of(axes[i]);
        if (line.on[i] < notch.box.lo[axis] || line.on[i] > notch.box.hi[axis]) return false;
    }
    const std::size_t run = index_of(line.run);
    return line.from < notch.box.hi[run] && line.to > notch.box.lo[run];
}

// ---- names --------------------------------------------------------------------------------------

class Names {
public:
    explicit Names(const Frame& frame) {
        for (const auto& it : frame.members) taken_.insert(it.name);
        for (const auto& it : frame.diagonals) taken_.insert(it.name);
        for (const auto& it : frame.leaning) taken_.insert(it.name);
    }

    std::string take(const std::string& wanted) {
        std::string name = wanted;
        for (int n = 2; !taken_.insert(name).second; ++n) {
            name = wanted + " " + std::to_string(n);
        }
        return name;
    }

private:
    std::set<std::string> taken_;
};

// "rail wheel well front shelf 1", "edge wheel well front top", "tie left wheel well top".
std::string wanted_name(const Member& member, const Notch& notch) {
    std::string kind = member.run == Axis::z ? "post " : "rail ";
    if (member.rank == rank_of_ties) kind = "tie ";
    std::string second = member.on[1];
    if (member.seat == Seat::root) {
        kind = "edge ";
        if (second.starts_with(notch.name + " ")) second.erase(0, notch.name.size() + 1);
    }
    return kind + member.on[0] + " " + second;
}

// ---- what new members are made of ---------------------------------------------------------------

// Sections of the catalogue begin with their form.
bool is_angle(const Project& project, const Member& member) {
    const auto stock = std::ranges::find(project.stock, member.stock, &Stock::name);
    return stock != project.stock.end() && stock->section.starts_with("angle");
}

Nm distance(const Box& a, const Box& b) {
    Nm sum = 0;
    for (std::size_t k = 0; k < 3; ++k) {
        sum += std::max({Nm{0}, a.lo[k] - b.hi[k], b.lo[k] - a.hi[k]});
    }
    return sum;
}

// The member that a new one takes its stock from: one that runs alike, on one of its planes, near.
const Member* pattern_for(const Member& added, const Stepping& it) {
    const Member* best = nullptr;
    auto least = std::numeric_limits<Nm>::max();
    const Box place = box_of(line_of(added, it.layout));
    for (std::size_t m = 0; m < it.frame.members.size(); ++m) {
        const Member& member = it.frame.members[m];
        if (added.seat == Seat::root && !is_angle(it.project, member)) continue;
        Nm cost = distance(place, box_of(it.layout.lines[m]));
        if (member.run != added.run) cost += 100 * far_out;
        const bool shares = member.on[0] == added.on[0] || member.on[1] == added.on[1];
        if (!shares) cost += far_out;
        if (cost >= least) continue;
        least = cost;
        best = &member;
    }
    return best;
}

// ---- cutting ------------------------------------------------------------------------------------

// What is left of each member that was there.
struct Left {
    std::vector<Member> members;
    std::vector<std::size_t> of;                       // as in the frame before
    std::set<std::pair<std::string, Axis>> lost_feet;  // by the plane that they stood on
};

class Cut {
public:
    Cut(const Stepping& it, Names& names) : it_{it}, names_{names} {}

    Left cut() {
        for (std::size_t m = 0; m < it_.frame.members.size(); ++m) cut(m);
        return std::move(left_);
    }

private:
    void cut(std::size_t m) {
        const Member& member = it_.frame.members[m];
        const MemberLine& line = it_.layout.lines[m];
        if (!is_in_the_way(line, it_.notch)) return keep(member, m);
        const std::size_t run = index_of(line.run);
        const bool has_first = it_.notch.is_closed(run, 0) && line.from < it_.notch.box.lo[run];
        const bool has_last = it_.notch.is_closed(run, 1) && line.to > it_.notch.box.hi[run];
        if (!has_first && member.foot_from) left_.lost_feet.insert({member.from, member.run});
        if (!has_last && member.foot_to) left_.lost_feet.insert({member.to, member.run});
        if (has_first) {
            Member first = member;
            first.to = it_.notch.plane[run][0];
            first.allowance_to = "0";
            first.foot_to = false;
            keep(std::move(first), m);
        }
        if (has_last) {
            Member last = member;
            last.from = it_.notch.plane[run][1];
            last.allowance_from = "0";
            last.foot_from = false;
            if (has_first) last.name = names_.take(member.name);
            keep(std::move(last), m);
        }
    }

    void keep(Member member, std::size_t of) {
        left_.members.push_back(std::move(member));
        left_.of.push_back(of);
    }

    const Stepping& it_;
    Names& names_;
    Left left_;
};

// Posts that now stand where one with a foot stood get feet of their own.
void put_feet(Member& added, const Left& left) {
    if (added.seat == Seat::root || added.rank == rank_of_ties) return;
    added.foot_from = left.lost_feet.contains({added.from, added.run});
    added.foot_to = left.lost_feet.contains({added.to, added.run});
}

// ---- joints -------------------------------------------------------------------------------------

bool meet(const MemberLine& a, const MemberLine& b) {
    return a.run != b.run && distance(box_of(a), box_of(b)) == 0;
}

// What was said of two members is said of those of their parts that still meet. Of braces and
// leaning members nothing is cut, but a member that they are joined to may be.
std::vector<JointOverride> joints_left(const Stepping& it, const Left& left) {
    std::vector<JointOverride> joints;
    const auto parts_of = [&](const std::string& name) {
        std::vector<std::size_t> parts;
        for (std::size_t i = 0; i < left.members.size(); ++i) {
            if (it.frame.members[left.of[i]].name == name) parts.push_back(i);
        }
        return parts;
    };
    const auto is_member = [&](const std::string& name) {
        return std::ranges::find(it.frame.members, name, &Member::name) != it.frame.members.end();
    };
    for (const JointOverride& joint : it.frame.joints) {
        if (!is_member(joint.members[0]) || !is_member(joint.members[1])) {
            joints.push_back(joint);
            continue;
        }
        for (const std::size_t a : parts_of(joint.members[0])) {
            for (const std::size_t b : parts_of(joint.members[1])) {
                const bool are_whole = left.members[a] == it.frame.members[left.of[a]] &&
                                       left.members[b] == it.frame.members[left.of[b]];
                const bool do_meet =
                    meet(line_of(left.members[a], it.layout), line_of(left.members[b], it.layout));
                if (!are_whole && !do_meet) continue;
                joints.push_back(joint);
                joints.back().members = {left.members[a].name, left.members[b].name};
            }
        }
    }
    return joints;
}

}  // namespace

Changed reframe(Frame& frame, const Stepping& it) {
    Names names(it.frame);
    Left left = Cut(it, names).cut();
    frame.joints = joints_left(it, left);
    std::vector<Member> added = edges_of_notch(it);
    std::vector<Member> members = left.members;
    members.insert(members.end(), added.begin(), added.end());
    const auto ties = ties_of_notch(it, members);
    added.insert(added.end(), ties.begin(), ties.end());
    for (Member& member : added) {
        const Member* pattern = pattern_for(member, it);
        if (pattern == nullptr) {
            return engine::Error{engine::ErrorCode::invalid_value, described(it.frame),
                                 "a re-entrant edge wants angle, and no member of the frame is "
                                 "made of it; make one of angle first"};
        }
        member.stock = pattern->stock;
        member.turned = pattern->turned;
        put_feet(member, left);
        member.name = names.take(wanted_name(member, it.notch));
    }
    frame.members = std::move(left.members);
    frame.members.insert(frame.members.end(), added.begin(), added.end());
    return engine::Done{};
}

}  // namespace model
