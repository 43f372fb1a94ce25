#include "model/assembly/assembly_problems.h"

#include "model/resolve/piece_subject.h"
#include "model/schedule/piece_words.h"

#include <algorithm>
#include <string>
#include <utility>

namespace model {
namespace {

constexpr std::size_t most_named = 6;

class Problems {
public:
    Problems(const Project& project, const FrameParts& parts)
        : parts_{parts}, words_{project, parts.catalogue(), parts.resolved()} {}

    Finding not_reached(const JointNotReached& it) const {
        return {.code = "no_order_of_rivets",
                .severity = Severity::warning,
                .concerns = subjects({it.joint}),
                .what = "in whatever order the pieces come, " + list(it.in_way, " or ") +
                        " must be on before these are together and keeps the tool off them",
                .mend =
                    "make the joint removable, so that it is screwed; or turn a leg of what is in "
                    "the way, end it before the joint, or choose another recipe there"};
    }

    Finding without_way(const PieceWithoutWay& it) const {
        Finding finding{.code = "no_way_into_place",
                        .severity = Severity::warning,
                        .concerns = {subject(it.piece)},
                        .what =
                            "it cannot be brought to its place in a straight line, in whatever "
                            "order the pieces come: " +
                            list(it.in_way, " and ") + " must be there before and in its way",
                        .mend =
                            "make its joint with one of these removable, end it before them, split "
                            "it there, or turn a leg"};
        for (const Index j : parts_.joints_of(it.piece)) {
            const bool is_of_these = std::ranges::any_of(
                it.in_way, [&](Index other) { return parts_.joints()[j].set.contains(other); });
            if (is_of_these) add(subjects({j}), finding.concerns);
        }
        return finding;
    }

    Finding shut_in(const ShutIn& it) const {
        const bool is_way = it.joints.empty();
        Finding finding{
            .code = "screwed_on_early",
            .severity = Severity::note,
            .concerns = subjects(it.joints),
            .what = std::string("it is meant to come apart, but ") +
                    (is_way ? "it comes out in a straight line" : "the driver reaches its screws") +
                    " only while " + list(it.by, " and ") +
                    (is_way ? " are off; so it is put in before them"
                            : " are off; so they are put in before"),
            .mend = std::string(is_way ? "tip it out between them; or make" : "make") +
                    " the joints of these removable too, or turn a leg"};
        for (const Index i : it.pieces) add({subject(i)}, finding.concerns);
        return finding;
    }

private:
    Subject subject(Index piece) const {
        return piece_subject(parts_.stated(), parts_.piece(piece));
    }

    std::vector<Subject> subjects(const std::vector<Index>& joints) const {
        std::vector<Subject> all;
        for (const Index j : joints) {
            add(joint_subjects(parts_.stated(), parts_.resolved(), parts_.joints()[j].joint), all);
        }
        return all;
    }

    static void add(std::vector<Subject> more, std::vector<Subject>& to) {
        for (auto& subject : more) {
            if (std::ranges::find(to, subject) == to.end()) to.push_back(std::move(subject));
        }
    }

    // "rail left, post part 2 and 4 more"
    std::string list(const std::vector<Index>& pieces, std::string_view last) const {
        std::vector<std::string> names;
        for (const Index i : pieces) {
            auto name = words_.member(parts_.number(i));
            if (std::ranges::find(names, name) == names.end()) names.push_back(std::move(name));
        }
        if (names.size() > most_named) {
            const auto more = names.size() - most_named + 1;
            names.resize(most_named - 1);
            names.push_back(std::to_string(more) + " more");
        }
        std::string text;
        for (std::size_t i = 0; i < names.size(); ++i) {
            if (i > 0) text += i + 1 == names.size() ? std::string(last) : std::string(", ");
            text += names[i];
        }
        return text;
    }

    const FrameParts& parts_;
    PieceWords words_;
};

}  // namespace

std::vector<Finding> assembly_problems(const Project& project,
                                       const FrameParts& parts,
                                       const TakenApart& taken,
                                       const std::vector<ShutIn>& shut_in) {
    std::vector<Finding> findings;
    if (taken.not_reached.empty() && taken.without_way.empty() && shut_in.empty()) return findings;
    const Problems problems(project, parts);
    for (const auto& it : taken.not_reached) findings.push_back(problems.not_reached(it));
    for (const auto& it : taken.without_way) findings.push_back(problems.without_way(it));
    for (const auto& it : shut_in) findings.push_back(problems.shut_in(it));
    merge_alike(findings, 0);
    return findings;
}

}  // namespace model
