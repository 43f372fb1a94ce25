#include "editor/turned_members.h"

#include "editor/by_name.h"
#include "model/room/resolve_in_room.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace editor {
namespace {

// Beyond this each member would be tried too slowly for a click: all are turned together, or none.
constexpr std::size_t most_tried_alone = 60;

const model::Member* find_member(const model::Project& project, const PieceName& piece) {
    const model::Frame* frame = by_name(project.frames, piece.frame);
    return frame == nullptr ? nullptr : by_name(frame->members, piece.member);
}

// Errors, warnings, notes: compared in that order.
using Faults = std::array<std::ptrdiff_t, 3>;

// One frame alone with the dimensions that it stands on, whose members are turned for a trial.
class Trial {
public:
    Trial(const model::Project& project,
          const model::Catalogue& catalogue,
          const model::ScanLibrary& scans,
          const model::Frame& frame)
        : project_{project}, catalogue_{catalogue}, scans_{scans} {
        project_.frames = {frame};
    }

    std::vector<model::Member>& members() { return project_.frames[0].members; }

    Faults faults() const {
        const auto resolved = model::resolve_in_room(project_, catalogue_, scans_);
        Faults faults{};
        for (const auto& finding : resolved.findings) {
            ++faults.at(2 - static_cast<std::size_t>(finding.severity));
        }
        return faults;
    }

private:
    model::Project project_;
    const model::Catalogue& catalogue_;
    const model::ScanLibrary& scans_;
};

std::vector<std::size_t> numbers_of(const std::vector<model::Member>& all,
                                    const std::vector<std::string>& named) {
    std::vector<std::size_t> numbers;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const bool is_named = std::find(named.begin(), named.end(), all[i].name) != named.end();
        if (named.empty() || is_named) numbers.push_back(i);
    }
    return numbers;
}

void turn(Trial& trial, const std::vector<std::size_t>& numbers) {
    for (const std::size_t i : numbers) trial.members()[i].turned = !trial.members()[i].turned;
}

// Turns one after another and keeps what is better, until nothing is.
Faults turn_one_by_one(Trial& trial, const std::vector<std::size_t>& numbers, Faults least) {
    constexpr int most_rounds = 3;
    for (int round = 0; round < most_rounds; ++round) {
        const Faults before = least;
        for (const std::size_t i : numbers) {
            turn(trial, {i});
            const Faults faults = trial.faults();
            if (faults < least) {
                least = faults;
            } else {
                turn(trial, {i});
            }
        }
        if (least == before || least == Faults{}) break;
    }
    return least;
}

// From all as they are and from all turned over: what crosses one another may have to be turned
// together.
void turn_to_best(Trial& trial, const std::vector<std::size_t>& numbers) {
    const bool tries_alone = numbers.size() <= most_tried_alone;
    const auto descended = [&](Trial& from) {
        const Faults faults = from.faults();
        if (!tries_alone || faults == Faults{}) return faults;
        return turn_one_by_one(from, numbers, faults);
    };
    Trial other = trial;
    turn(other, numbers);
    const Faults as_they_are = descended(trial);
    if (as_they_are == Faults{}) return;
    if (descended(other) < as_they_are) trial.members() = other.members();
}

}  // namespace

Change turn_change(const model::Project& project, const std::vector<PieceName>& pieces) {
    Change change;
    std::vector<const model::Member*> done;  // a split member is chosen once for each part
    for (const auto& piece : pieces) {
        const model::Member* member = find_member(project, piece);
        if (member == nullptr || std::find(done.begin(), done.end(), member) != done.end()) {
            continue;
        }
        done.push_back(member);
        model::Member turned = *member;
        turned.turned = !turned.turned;
        change.edits.emplace_back(model::PutMember{piece.frame, turned, turned.name});
    }
    if (done.size() == 1) change.label = "Turn " + done.front()->name;
    if (done.size() > 1) change.label = "Turn " + std::to_string(done.size()) + " bars";
    return change;
}

std::vector<model::Edit> best_turns(const model::Project& project,
                                    const model::Catalogue& catalogue,
                                    const model::ScanLibrary& scans,
                                    const std::string& frame,
                                    const std::vector<std::string>& members) {
    const model::Frame* found = by_name(project.frames, frame);
    if (found == nullptr) return {};
    Trial trial(project, catalogue, scans, *found);
    turn_to_best(trial, numbers_of(found->members, members));
    std::vector<model::Edit> edits;
    for (std::size_t i = 0; i < found->members.size(); ++i) {
        const model::Member& best = trial.members()[i];
        if (best == found->members[i]) continue;
        edits.emplace_back(model::PutMember{frame, best, best.name});
    }
    return edits;
}

}  // namespace editor
